import type {Action} from '../bench/actions.ts';
import type {AttemptRecord} from '../bench/attempt.ts';
import type {AttemptHead, AttemptProgress, AttemptPurpose, NewAttempt} from './attempt-store.ts';
import {randomName} from './tab-signal.ts';

/** The head row of an attempt that begins now. */
export function headOfNew(start: NewAttempt): AttemptHead {
  const now = new Date().toISOString();
  return {
    ...start,
    id: randomName(16),
    begunAt: now,
    touchedAt: now,
    actionCount: 0,
    minutes: 0,
    stage: 'working',
  };
}

/** The head row of an imported record. It counts as touched now, so that it is found at the top of the history. */
export function headOfRecord(
  record: AttemptRecord,
  more: {unitTitle: string; purpose: AttemptPurpose; progress: AttemptProgress},
): AttemptHead {
  return {
    id: record.id,
    unit: record.unit,
    unitTitle: more.unitTitle,
    complaint: record.complaint,
    sealed: record.sealed,
    seed: record.seed,
    purpose: more.purpose,
    begunAt: record.begunAt,
    touchedAt: new Date().toISOString(),
    actionCount: record.actions.length,
    ...more.progress,
  };
}

/** The record as exported, from its rows. */
export function recordOf(head: AttemptHead, actions: readonly Action[]): AttemptRecord {
  return {
    format: 'rungbench-attempt',
    version: 1,
    id: head.id,
    unit: head.unit,
    complaint: head.complaint,
    sealed: head.sealed,
    seed: head.seed,
    begunAt: head.begunAt,
    actions: [...actions],
  };
}

type Touched = Pick<AttemptHead, 'id' | 'touchedAt'>;

/** Sorts what was worked on last first; ties by id, so that the order never wavers. */
export function byTouched(a: Touched, b: Touched): number {
  return a.touchedAt < b.touchedAt ? 1 : a.touchedAt > b.touchedAt ? -1 : a.id < b.id ? -1 : 1;
}
