import {show, overload, digits} from './display.ts';
import {rangeOf} from './accuracy.ts';
import type {MeterDisplay} from './meter.ts';
import {clampFunctions, type MeterFunction} from './meter-function.ts';
import {meterSpec} from './meter-spec.ts';

/** The meter itself, as it is in the student's hand. */
export interface MeterCondition {
  readonly battery: 'good' | 'weak' | 'flat';
  readonly leads: 'good' | 'broken';
  readonly fuse: 'good' | 'blown';
}

/** What may be wrong with a meter when a call begins; `sound` = it only had to be proved. */
export const meterFlaws = ['sound', 'weak-battery', 'broken-lead', 'blown-fuse'] as const;
export type MeterFlaw = (typeof meterFlaws)[number];

/** What of the meter can be renewed. */
export const meterCares = ['battery', 'leads', 'fuse'] as const;
export type MeterCare = (typeof meterCares)[number];

export const soundMeter: MeterCondition = {battery: 'good', leads: 'good', fuse: 'good'};

export function conditionOf(flaw: MeterFlaw): MeterCondition {
  switch (flaw) {
    case 'sound':
      return soundMeter;
    case 'weak-battery':
      return {...soundMeter, battery: 'weak'};
    case 'broken-lead':
      return {...soundMeter, leads: 'broken'};
    case 'blown-fuse':
      return {...soundMeter, fuse: 'blown'};
  }
}

/** A weak battery leaves this share of a reading (common practice, no source: makers only warn of false readings). */
const weakShare = 0.55;

/**
 * What this meter shows in place of a sound one. A broken lead leaves the input on nothing: zero volts, OL ohms,
 * whatever is there, which is why a meter is proved on a known live source before and after a dead one. A blown fuse
 * leaves the microamps input open. A weak battery reads low and says so in a word; a flat one leaves the glass dark.
 */
export function asShownBy(
  condition: MeterCondition,
  fn: MeterFunction,
  sound: MeterDisplay,
): MeterDisplay {
  if (condition.battery === 'flat') return {text: '', unit: '', overload: false, batteryLow: true};
  let shown = sound;
  if (condition.leads === 'broken' && !clampFunctions.has(fn)) shown = onNothing(fn);
  else if (condition.fuse === 'blown' && fn === 'dc-microamps') shown = show(fn, 0);
  if (condition.battery === 'good') return shown;
  return {...weakened(fn, shown), batteryLow: true};
}

/** Whether the leads of this meter carry anything on this function: a microamps input that does not leaves a gap. */
export function conducts(condition: MeterCondition, fn: MeterFunction): boolean {
  if (condition.leads === 'broken') return false;
  return fn !== 'dc-microamps' || condition.fuse === 'good';
}

/**
 * Whether a display could come from leads that touch nothing, so that it says something about the circuit only once
 * the leads are proved.
 */
export function couldBeBrokenLead(fn: MeterFunction, display: MeterDisplay): boolean {
  if (clampFunctions.has(fn) || display.hazard) return false;
  const nothing = onNothing(fn);
  if (nothing.overload) return display.overload;
  return !display.overload && Math.abs(display.value ?? 0) <= nothingUpTo(fn);
}

/** Open leads pick up a little. */
function nothingUpTo(fn: MeterFunction): number {
  const {ranges, accuracy} = meterSpec[fn];
  return ranges[0].resolution * accuracy.counts;
}

function onNothing(fn: MeterFunction): MeterDisplay {
  if (fn === 'ohms') return overload(fn);
  if (fn === 'continuity') return {...overload(fn), tone: false};
  return show(fn, 0);
}

function weakened(fn: MeterFunction, shown: MeterDisplay): MeterDisplay {
  if (shown.value === undefined) return shown;
  const value = shown.value * weakShare;
  const {tone: _, ...rest} = shown;
  return {...rest, ...digits(value, rangeOf(fn, value)), ...(shown.tone ? {tone: true} : {})};
}
