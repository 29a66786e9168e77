import type {MeterFunction} from '../meter/meter-function.ts';
import {meterSpec} from '../meter/meter-spec.ts';
import type {OperatingUnit} from '../sequences/operating-unit.ts';

/** Leads are held on this long for a reading (common practice, no source). */
const readingSeconds = 5;

/** Lays sound leads on two points: they stay there as the function's input until they are moved. */
export function layLeads(
  operating: OperatingUnit,
  fn: MeterFunction,
  red: string,
  black: string,
): void {
  const {inputOhms} = meterSpec[fn];
  if (inputOhms === undefined) operating.disconnectMeter();
  else operating.connectMeter(red, black, inputOhms);
}

/** What the reading takes of a capacitor's charge. */
export function readWithLeads(
  operating: OperatingUnit,
  fn: MeterFunction,
  red: string,
  black: string,
): void {
  const {inputOhms} = meterSpec[fn];
  if (inputOhms !== undefined) operating.bleed(red, black, inputOhms, readingSeconds);
}
