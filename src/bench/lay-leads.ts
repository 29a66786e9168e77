import type {Calibration} from '../meter/calibration.ts';
import type {MeterFunction} from '../meter/meter-function.ts';
import {meterSpec} from '../meter/meter-spec.ts';
import type {MeterDisplay} from '../meter/meter.ts';
import {readMeter} from '../meter/read-meter.ts';
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

/**
 * Puts the microamps leads down: they become a part of the circuit, which may change what it does, and is read then. The
 * meter's own fuse opens, and so does the circuit, where a source lies across the leads before or after.
 */
export function readInSeries(
  operating: OperatingUnit,
  red: string,
  black: string,
  calibration?: Calibration,
): MeterDisplay {
  const before = readMeter('dc-microamps', operating, {red, black}, calibration);
  if (before.fuseBlew) {
    operating.disconnectMeter();
    return before;
  }
  layLeads(operating, 'dc-microamps', red, black);
  const display = readMeter('dc-microamps', operating, {red, black}, calibration);
  if (display.fuseBlew) operating.disconnectMeter();
  return display;
}
