import {meterFunctions, type MeterFunction} from './meter-function.ts';
import {meterSpec} from './meter-spec.ts';

/** Gain error of one meter, per function: 0.004 reads 0.4 % high. */
export type Calibration = Readonly<Record<MeterFunction, number>>;

/** A meter without error. */
export const exact: Calibration = Object.fromEntries(meterFunctions.map((fn) => [fn, 0])) as Record<
  MeterFunction,
  number
>;

/**
 * The meter of one attempt: every function off by a constant gain, within half of what the spec allows,
 * always the same for a seed. So two students' meters differ as two real ones do, and one meter agrees
 * with itself. Seed 0 is the exact meter.
 */
export function calibrationOf(seed: number): Calibration {
  if (seed === 0) return exact;
  let state = seed | 0;
  const next = (): number => {
    // mulberry32, a public-domain 32-bit generator
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  return Object.fromEntries(
    meterFunctions.map((fn) => [
      fn,
      ((next() * 2 - 1) * 0.5 * meterSpec[fn].accuracy.percent) / 100,
    ]),
  ) as Record<MeterFunction, number>;
}
