import type {MeterDisplay} from './meter.ts';

/** The least and the most that a meter has shown while it recorded. */
export interface Extremes {
  readonly least: MeterDisplay;
  readonly most: MeterDisplay;
}

/** What the glass keeps: nothing, the last reading, or the least and the most since recording began. */
export const keepings = ['nothing', 'last', 'extremes'] as const;
export type Keeping = (typeof keepings)[number];

/** Takes one more display into account. OL is more than any number. */
export function widened(extremes: Extremes | undefined, shown: MeterDisplay): Extremes {
  if (!extremes) return {least: shown, most: shown};
  return {
    least: amount(shown) < amount(extremes.least) ? shown : extremes.least,
    most: amount(shown) > amount(extremes.most) ? shown : extremes.most,
  };
}

const amount = (shown: MeterDisplay): number =>
  shown.overload ? Infinity : (shown.value ?? Infinity);
