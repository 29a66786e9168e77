import type {ChargingPath} from '../circuits/capacitor-charge.ts';
import {digits, overload} from './display.ts';
import type {MeterDisplay} from './meter.ts';
import {meterSpec, thresholdSeconds, thresholdVolts} from './meter-spec.ts';

/**
 * Capacitance by filling: a constant current flows in, and the time until the leads are at the threshold tells the
 * microfarads. Whatever lies beside the capacitor takes a part of the current, so it fills more slowly and reads too
 * high; a motor's winding takes so much that the threshold is never reached, and no range settles.
 *
 * With only a resistance R beside C the time is −RC·ln(1 − V/IR), so the display is C·(−ln(1 − x)/x) with x = V/IR
 * (R–C charge: Lessons in Electric Circuits, vol. I, ch. 16).
 */
export function capacitanceShown(path: ChargingPath, gain: number): MeterDisplay {
  for (const range of meterSpec.capacitance.ranges) {
    const amps = (range.upTo * thresholdVolts) / thresholdSeconds;
    const seconds = secondsToThreshold(path, amps);
    if (seconds === undefined) continue;
    const shown = digits(((amps * seconds) / thresholdVolts) * gain, range);
    if (shown.value! <= range.upTo) return shown;
  }
  return overload('capacitance');
}

/** Seconds until the leads are at the threshold; undefined when that is later than the range allows, or never. */
function secondsToThreshold(path: ChargingPath, amps: number): number | undefined {
  const voltsAt = (seconds: number): number =>
    amps *
    path.terms.reduce(
      (sum, {ohms, seconds: tau}) => sum - ohms * Math.expm1(-seconds / tau),
      path.resistiveOhms,
    );
  if (voltsAt(0) >= thresholdVolts) return 0;
  // a little later than the range's end, for a capacitor of exactly that size
  let late = thresholdSeconds * 1.01;
  if (voltsAt(late) < thresholdVolts) return undefined;
  let early = 0;
  // the volts only rise, so halving the interval finds the time to more places than any range has
  for (let step = 0; step < 50; step += 1) {
    const middle = (early + late) / 2;
    if (voltsAt(middle) < thresholdVolts) early = middle;
    else late = middle;
  }
  return late;
}

/**
 * Whether an ohmmeter is seen to climb: a capacitor between the leads takes longer than a glance to fill, so the reading
 * begins low and ends at what lies beside it. An open capacitor does not climb, a shorted one stays at nothing.
 */
export function climbs({terms, resistiveOhms}: ChargingPath): boolean {
  const glanceSeconds = 0.1;
  const end = terms.reduce((sum, {ohms}) => sum + ohms, resistiveOhms);
  const slow = terms.reduce(
    (sum, {ohms, seconds}) => sum + ohms * Math.exp(-glanceSeconds / seconds),
    0,
  );
  return slow > climbingShare * end;
}

/** A smaller rise than this share of the reading is not seen. */
const climbingShare = 0.05;
