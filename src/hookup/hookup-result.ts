import type {Occasion} from '../diagnosis/mastery.ts';
import {gradeHookup, type HookupGrade} from './hookup-grade.ts';
import {occasionsOfHookup} from './hookup-occasions.ts';
import type {HookupCounts, HookupWork} from './hookup-work.ts';

/** What came of work at a wiring task: what the history, the debrief and the skills are told. */
export interface HookupResult {
  readonly counts: HookupCounts;
  readonly rightFirstTime: boolean;
  /** Wires of one right answer. */
  readonly wiresNeeded: number;
  readonly grade: HookupGrade;
  /** Skills that it asked for and how each went; none before the first verdict and the first power. */
  readonly occasions: readonly Omit<Occasion, 'day'>[];
}

export function resultOf(work: HookupWork): HookupResult {
  const {counts, safety, task, firstFindings} = work;
  return {
    counts,
    rightFirstTime: counts.solved && counts.corrections === 0,
    wiresNeeded: task.answer.length,
    grade: gradeHookup(counts, safety, task.answer.length),
    occasions: occasionsOfHookup({task, counts, firstFindings, safety}),
  };
}
