import {accuracyBand} from '../meter/accuracy.ts';
import type {MeterDisplay} from '../meter/meter.ts';
import type {MeterFunction} from '../meter/meter-function.ts';

/** Suspects on which a meter would show the same, within its accuracy. */
export interface OutcomeGroup {
  /** Indices into the displays given. */
  readonly members: readonly number[];
  readonly weights: number[];
}

/**
 * Puts displays of one function into groups that the meter tells apart. Bands that meet in a chain count as one
 * group, so a gain worked out from the groups is never more than what the meter can tell. A warning triangle is an
 * outcome of its own.
 */
export function outcomeGroups(
  fn: MeterFunction,
  displays: readonly MeterDisplay[],
  weights: readonly number[],
): OutcomeGroup[] {
  const hazards: number[] = [];
  const bands: {index: number; low: number; high: number}[] = [];
  displays.forEach((display, index) => {
    if (display.hazard) hazards.push(index);
    else bands.push({index, ...accuracyBand(fn, display)});
  });
  bands.sort((a, b) => a.low - b.low);
  const groups: number[][] = [];
  let top = -Infinity;
  for (const {index, low, high} of bands) {
    if (groups.length === 0 || low > top) groups.push([]);
    groups[groups.length - 1].push(index);
    top = Math.max(top, high);
  }
  if (hazards.length) groups.push(hazards);
  return groups.map((members) => ({members, weights: members.map((index) => weights[index])}));
}
