import type {MeterDisplay} from './meter.ts';
import type {MeterFunction} from './meter-function.ts';
import {meterSpec, type Accuracy, type MeterRange} from './meter-spec.ts';

/** Largest error in the base unit: ±(percent of reading + counts). */
export function errorLimit(amount: number, accuracy: Accuracy, resolution: number): number {
  return (Math.abs(amount) * accuracy.percent) / 100 + accuracy.counts * resolution;
}

/**
 * The amounts (in the base unit) that may truly be there when the meter shows this. At OL the lower limit
 * is the top of the last range, less its error, and the upper limit is infinite.
 */
export function accuracyBand(
  fn: MeterFunction,
  display: MeterDisplay,
): {low: number; high: number} {
  const {ranges, accuracy} = meterSpec[fn];
  const top = ranges[ranges.length - 1]!;
  if (display.overload || display.value === undefined) {
    return {low: top.upTo - errorLimit(top.upTo, accuracy, top.resolution), high: Infinity};
  }
  const limit = errorLimit(display.value, accuracy, rangeOf(fn, display.value).resolution);
  const low = display.value - limit;
  // an amount without a sign cannot be below zero
  return {low: meterSpec[fn].signed ? low : Math.max(0, low), high: display.value + limit};
}

/**
 * Whether two displays of one function tell apart what is on the leads: their accuracy bands do not meet.
 * A warning triangle on one of them only, or a tone, tells them apart too.
 */
export function differ(fn: MeterFunction, a: MeterDisplay, b: MeterDisplay): boolean {
  if ((a.hazard ?? false) !== (b.hazard ?? false)) return true;
  if (a.hazard && b.hazard) return false;
  const bandA = accuracyBand(fn, a);
  const bandB = accuracyBand(fn, b);
  return bandA.high < bandB.low || bandB.high < bandA.low;
}

/** The range on which a function shows an amount. */
export function rangeOf(fn: MeterFunction, amount: number): MeterRange {
  const {ranges} = meterSpec[fn];
  return ranges.find((r) => Math.abs(amount) <= r.upTo) ?? ranges[ranges.length - 1]!;
}
