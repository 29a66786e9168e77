import type {HintLevel} from '../../bench/actions.ts';
import type {Unit} from '../../content/unit.ts';
import type {CoachWord, SeenStep} from '../../diagnosis/coached-call.ts';

/** Asks the side that holds the fault for what the student has seen from step `from` on: all that the coach may know. */
export interface TrailRequest {
  readonly number: number;
  readonly ask: 'trail';
  readonly from: number;
}

export interface TrailAnswer {
  readonly number: number;
  readonly is: 'trail';
  readonly steps: readonly SeenStep[];
}

/** Page to the coach's worker. There is no fault in any of these. */
export type CoachRequest =
  | {readonly ask: 'begin'; readonly unit: Unit}
  /** Answered with `followed` once the last step is. */
  | {readonly ask: 'follow'; readonly number: number; readonly steps: readonly SeenStep[]}
  | {readonly ask: 'hint'; readonly number: number; readonly level: HintLevel};

export type CoachAnswer =
  /** Steps still to follow. */
  | {readonly is: 'following'; readonly left: number}
  | {readonly is: 'followed'; readonly number: number; readonly word: CoachWord}
  | {readonly is: 'hint'; readonly number: number; readonly text: string}
  | {readonly is: 'error'; readonly number: number; readonly sentence: string};
