import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import {catalogue, faultsById} from '../../src/faults/catalogue.ts';
import type {MeterFunction} from '../../src/meter/meter-function.ts';
import {readMeter} from '../../src/meter/read-meter.ts';
import {operateUnit} from '../../src/sequences/operate-unit.ts';
import type {OperatingUnit} from '../../src/sequences/operating-unit.ts';

/** A shipped unit with faults, as it stands when power has long been on. */
export function unitWith(id: string, ...faults: string[]): OperatingUnit {
  const unit = readShippedUnit(id);
  return operateUnit(unit, faultsById(catalogue(unit), faults));
}

/** Sets controls and plant values, then lets time pass. */
export function set(
  operating: OperatingUnit,
  values: Readonly<Record<string, string | number>>,
  seconds = 0,
): OperatingUnit {
  for (const [target, value] of Object.entries(values)) operating.set(target, value);
  operating.advance(seconds * 1000);
  return operating;
}

/** What an exact meter shows between two points; Infinity for OL. */
export function value(
  fn: MeterFunction,
  operating: OperatingUnit,
  red: string,
  black: string,
): number {
  return readMeter(fn, operating, {red, black}).value ?? Infinity;
}

export const volts = (operating: OperatingUnit, red: string, black: string): number =>
  value('ac-volts', operating, red, black);
export const ohms = (operating: OperatingUnit, red: string, black: string): number =>
  value('ohms', operating, red, black);
export const amps = (operating: OperatingUnit, wire: string): number =>
  readMeter('clamp-amps', operating, {wire}).value!;

/** What a person at the unit would see and hear of a part. */
export const is = (operating: OperatingUnit, part: string): string[] =>
  operating
    .observations()
    .filter((seen) => seen.part === part)
    .map((seen) => seen.is);

/** Seconds until something holds, looked at every `step`; undefined when it has not come within `limit`. */
export function secondsUntil(
  operating: OperatingUnit,
  holds: () => boolean,
  limit: number,
  step = 1,
): number | undefined {
  for (let seconds = 0; seconds <= limit; seconds += step) {
    if (holds()) return seconds;
    operating.advance(step * 1000);
  }
  return undefined;
}
