import type {MeterDisplay} from './meter.ts';

/** What the glass says in words beside its digits; the warning comes first. */
export function displayNotes(display: MeterDisplay, held = false): readonly string[] {
  const {hazard, charged, batteryLow, fuseBlew, climbed} = display;
  return [
    ...(hazard ? [charged ? 'Charged: discharge first' : 'Live: do not trust this'] : []),
    ...(batteryLow ? ['Battery low'] : []),
    ...(fuseBlew ? ['The fuse has blown'] : []),
    ...(climbed ? [display.overload ? 'Climbed to OL' : 'Climbed'] : []),
    ...(held ? ['Held: not now'] : []),
  ];
}
