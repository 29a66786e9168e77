import type {HintLevel} from '../bench/actions.ts';

/**
 * What a hint takes off the points for method: a question that the coach asked is no longer one's own. Our own choice,
 * the same numbers as the minutes.
 */
export const hintPoints: Readonly<Record<HintLevel, number>> = {1: 1, 2: 3, 3: 6};
