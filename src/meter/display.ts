import type {MeterDisplay} from './meter.ts';
import type {MeterFunction} from './meter-function.ts';
import {meterSpec, type MeterRange} from './meter-spec.ts';

/**
 * Shows an amount as the meter would: lowest range that holds it, rounded to that range's last digit.
 * `amount` is in the base unit (volts, ohms, amps, hertz, farads), signed for direct current. Beyond the last range, or
 * infinite, it shows OL.
 */
export function show(fn: MeterFunction, amount: number): MeterDisplay {
  const {ranges} = meterSpec[fn];
  const range = ranges.find((r) => Math.abs(roundTo(amount, r)) <= r.upTo);
  return range ? digits(amount, range) : overload(fn);
}

/** Shows an amount on one given range, for meters that have only chosen it by other means. */
export function digits(amount: number, range: MeterRange): MeterDisplay {
  const value = roundTo(amount, range);
  const decimals = Math.max(0, Math.round(-Math.log10(range.resolution / range.scale)));
  const shown = value / range.scale;
  const text = shown.toFixed(decimals);
  return {
    text: Number(text) === 0 ? text.replace('-', '') : text,
    unit: range.unit,
    value,
    overload: false,
  };
}

/** OL, with the unit of the highest range of the function. */
export function overload(fn: MeterFunction): MeterDisplay {
  const {ranges} = meterSpec[fn];
  return {text: 'OL', unit: ranges[ranges.length - 1]!.unit, overload: true};
}

/** Whole counts, as a clean decimal: 24.31 and never 24.310000000000002. */
function roundTo(amount: number, range: MeterRange): number {
  const counts = Math.round(amount / range.resolution);
  return Number((counts * range.resolution).toPrecision(8)) + 0;
}
