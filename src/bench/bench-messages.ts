import type {Unit} from '../content/unit.ts';
import type {Action} from './actions.ts';
import type {BenchView} from './bench-view.ts';
import type {Debrief} from './debrief.ts';

/** An attempt as a worker needs it to begin or to resume. The seal stays closed on the page's side. */
export interface InitMessage {
  readonly ask: 'init';
  readonly unit: Unit;
  readonly sealed: string;
  readonly complaint: string;
  readonly seed: number;
  readonly actions: readonly Action[];
}

export interface ActMessage {
  readonly ask: 'act';
  readonly action: Action;
}

/** Only answered once a fault has been named or the search given up. */
export interface DebriefMessage {
  readonly ask: 'debrief';
}

/** Everything that may be named on this unit. It depends on the unit alone, not on what is hidden. */
export interface CatalogueMessage {
  readonly ask: 'catalogue';
}

/** Page to worker; the number comes back with the answer. */
export type BenchRequest = {readonly number: number} & (
  InitMessage | ActMessage | DebriefMessage | CatalogueMessage
);

/** A fault as it may be chosen from a list. */
export interface CatalogueLine {
  readonly id: string;
  readonly name: string;
  readonly mode: string;
  /** Parts or wires that it sits on; none for the plant. */
  readonly parts: readonly string[];
  readonly wires: readonly string[];
}

/** Worker to page. Nothing of the fault is in any of these before it has been named. */
export type BenchAnswer = {readonly number: number} & (
  | {readonly is: 'view'; readonly view: BenchView}
  | {readonly is: 'refused'; readonly sentence: string}
  | {readonly is: 'debrief'; readonly debrief: Debrief}
  | {readonly is: 'catalogue'; readonly lines: readonly CatalogueLine[]}
  /** Something is wrong with the attempt or with Rungbench itself; the attempt cannot go on as it is. */
  | {readonly is: 'error'; readonly sentence: string}
);
