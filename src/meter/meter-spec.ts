import type {MeterFunction} from './meter-function.ts';

/** One range of one function. Amounts are in the base unit: volts, ohms, amps, hertz, farads. */
export interface MeterRange {
  /** Largest amount that the range shows; above it the next range is taken. */
  readonly upTo: number;
  /** Amount of the last digit. */
  readonly resolution: number;
  /** Unit as shown, with its prefix. */
  readonly unit: string;
  /** Amount that a shown "1" stands for: 0.001 on a millivolt range. */
  readonly scale: number;
}

/** Accuracy as meter makers state it: ±(percent of reading + counts of the last digit). */
export interface Accuracy {
  readonly percent: number;
  readonly counts: number;
}

/** What the meter is on one function: ranges, stated accuracy, and what it puts on the circuit. */
export interface FunctionSpec {
  readonly ranges: readonly MeterRange[];
  readonly accuracy: Accuracy;
  /** Input resistance between the leads, ohms; absent for the clamp. */
  readonly inputOhms?: number;
  /** Input capacitance between the leads, picofarads. */
  readonly inputPicofarads?: number;
  /** Direct amounts have a sign: positive when red is the higher, or when current goes into red. */
  readonly signed?: boolean;
}

const fullCounts = 6000;

/** Ranges of 6000 counts each; the resolution follows from the full scale. */
function ranges(
  list: readonly (readonly [upTo: number, unit: string, scale: number])[],
): MeterRange[] {
  return list.map(([upTo, unit, scale]) => ({upTo, unit, scale, resolution: upTo / fullCounts}));
}

/** The top voltage range shows whole volts and stops at the input rating, not at 6000 counts. */
const rated = (unit: string): MeterRange => ({upTo: 1000, unit, scale: 1, resolution: 1});

const voltRanges = (kind: 'AC' | 'DC'): MeterRange[] => [
  ...ranges([
    [0.6, `mV ${kind}`, 0.001],
    [6, `V ${kind}`, 1],
    [60, `V ${kind}`, 1],
    [600, `V ${kind}`, 1],
  ]),
  rated(`V ${kind}`),
];

const hertzRanges: readonly MeterRange[] = ranges([
  [60, 'Hz', 1],
  [600, 'Hz', 1],
  [6000, 'Hz', 1],
]);

/**
 * The meter of the bench: hand-held, true RMS, 6000 counts, autoranging, rated CAT III 1000 V. Its figures
 * are those of the middle of the trade's range (common practice, no source); 10 MΩ and about 3 kΩ in the
 * low-impedance mode are what application notes on stray voltage give.
 */
export const meterSpec: Readonly<Record<MeterFunction, FunctionSpec>> = {
  'ac-volts': {
    ranges: voltRanges('AC'),
    accuracy: {percent: 1, counts: 3},
    inputOhms: 10e6,
    inputPicofarads: 50,
  },
  'dc-volts': {
    ranges: voltRanges('DC'),
    accuracy: {percent: 0.5, counts: 2},
    inputOhms: 10e6,
    signed: true,
  },
  'low-impedance-volts': {
    // no millivolt range: it is for telling a fed conductor from a stray one
    ranges: voltRanges('AC').slice(1),
    accuracy: {percent: 2, counts: 3},
    inputOhms: 3000,
  },
  ohms: {
    ranges: ranges([
      [600, 'Ω', 1],
      [6e3, 'kΩ', 1e3],
      [60e3, 'kΩ', 1e3],
      [600e3, 'kΩ', 1e3],
      [6e6, 'MΩ', 1e6],
      [60e6, 'MΩ', 1e6],
    ]),
    accuracy: {percent: 0.9, counts: 2},
    // what an outside voltage meets on the resistance input: the protection resistor
    inputOhms: 500e3,
  },
  continuity: {
    ranges: ranges([[600, 'Ω', 1]]),
    accuracy: {percent: 0.9, counts: 2},
    inputOhms: 500e3,
  },
  'clamp-amps': {
    ranges: ranges([
      [60, 'A AC', 1],
      [600, 'A AC', 1],
    ]),
    accuracy: {percent: 2, counts: 5},
  },
  hertz: {
    ranges: hertzRanges,
    accuracy: {percent: 0.1, counts: 1},
    inputOhms: 10e6,
    inputPicofarads: 50,
  },
  'clamp-hertz': {ranges: hertzRanges, accuracy: {percent: 0.1, counts: 1}},
  capacitance: {
    ranges: ranges([
      [60e-9, 'nF', 1e-9],
      [600e-9, 'nF', 1e-9],
      [6e-6, 'µF', 1e-6],
      [60e-6, 'µF', 1e-6],
      [600e-6, 'µF', 1e-6],
      [6e-3, 'µF', 1e-6],
    ]),
    accuracy: {percent: 1.9, counts: 2},
    inputOhms: 500e3,
  },
  'dc-microamps': {
    ranges: ranges([
      [60e-6, 'µA DC', 1e-6],
      [600e-6, 'µA DC', 1e-6],
    ]),
    accuracy: {percent: 1, counts: 3},
    // the shunt: what the meter adds to the circuit that it is a part of
    inputOhms: 100,
    signed: true,
  },
};

/** The tone sounds below this many ohms. */
export const toneBelowOhms = 30;

/** From this many volts on the leads a resistance function is disturbed beyond use, and says so. */
export const disturbingAcVolts = 1;
export const disturbingDcVolts = 0.5;

/**
 * Test current of each resistance range, amps, from the red lead. Small enough that no range puts more
 * than 0.6 V on the circuit, so silicon junctions stay out of the reading (common practice, no source).
 */
export const testAmps: readonly number[] = [1e-3, 1e-4, 1e-5, 1e-6, 1e-7, 1e-8];

/** A frequency is counted from this many volts, or amps in the jaw, on (common practice, no source). */
export const countedFromVolts = 0.5;
export const countedFromAmps = 0.3;

/**
 * Capacitance is found by filling the capacitor with a constant current and timing it: at the top of a range
 * `thresholdVolts` are reached after `thresholdSeconds` (C = I·t/V). What does not get there is beyond the range.
 */
export const thresholdVolts = 0.5;
export const thresholdSeconds = 0.5;

/** The fuse in the microamps input opens above this many amps, alternating or direct (common practice, no source). */
export const fuseAmps = 0.2;
