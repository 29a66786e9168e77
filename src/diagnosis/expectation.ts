import type {Expectation} from '../bench/actions.ts';
import type {MeterDisplay} from '../meter/meter.ts';
import type {MeterFunction} from '../meter/meter-function.ts';

/** How near is right: a share of what was read, and never less than a floor. Our own choice. */
const tolerance: Readonly<
  Record<MeterFunction, {readonly share: number; readonly atLeast: number}>
> = {
  'ac-volts': {share: 0.1, atLeast: 1},
  'dc-volts': {share: 0.1, atLeast: 0.5},
  'low-impedance-volts': {share: 0.1, atLeast: 1},
  ohms: {share: 0.2, atLeast: 1},
  continuity: {share: 0.2, atLeast: 2},
  'clamp-amps': {share: 0.2, atLeast: 0.3},
  hertz: {share: 0.02, atLeast: 0.5},
  'clamp-hertz': {share: 0.02, atLeast: 0.5},
  // run capacitors are sold within 6 %
  capacitance: {share: 0.1, atLeast: 0.1e-6},
  'dc-microamps': {share: 0.2, atLeast: 0.3e-6},
};

/**
 * Whether a reading came out as the student had expected it. Nobody expects a healthy 24 V circuit to read 24.00,
 * so a tenth (a fifth for ohms and amps) either way is right. Expecting OL is right when OL was read.
 */
export function expectationHolds(
  fn: MeterFunction,
  expected: Expectation,
  read: MeterDisplay,
): boolean {
  if (expected.open) return read.overload;
  if (expected.value === undefined || read.value === undefined || read.overload) return false;
  const {share, atLeast} = tolerance[fn];
  return Math.abs(expected.value - read.value) <= Math.max(share * Math.abs(read.value), atLeast);
}
