import {errorLimit, rangeOf} from './accuracy.ts';
import type {MeterDisplay} from './meter.ts';
import type {MeterFunction} from './meter-function.ts';
import {meterSpec} from './meter-spec.ts';

/** What a reading is worth: the limit of its error, and how that was worked out. */
export interface StatedError {
  /** `±0.27 V AC`. */
  readonly limit: string;
  /** `±(1 % of 24.00 + 3 × 0.01) V AC`. */
  readonly arithmetic: string;
}

/**
 * The limit of error of a reading, as meter makers state it: a share of the reading and so many counts of the last
 * digit of its range. Undefined at OL, and where the meter itself says not to trust it.
 */
export function statedError(fn: MeterFunction, display: MeterDisplay): StatedError | undefined {
  if (display.overload || display.value === undefined || display.batteryLow || display.hazard)
    return undefined;
  const {accuracy} = meterSpec[fn];
  const range = rangeOf(fn, display.value);
  const limit = errorLimit(display.value, accuracy, range.resolution) / range.scale;
  const step = range.resolution / range.scale;
  return {
    limit: `±${rounded(limit)} ${display.unit}`,
    arithmetic: `±(${accuracy.percent} % of ${display.text.replace('-', '')} + ${accuracy.counts} × ${rounded(step)}) ${display.unit}`,
  };
}

/** Two figures, as nobody states an error to more. */
const rounded = (amount: number): string => String(Number(amount.toPrecision(2)));
