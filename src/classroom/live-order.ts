import type {LiveRow} from './protocol/instructor-messages.ts';

// When an instructor would go and look: our own choice, common practice, no source.
const stuckMs = 6 * 60_000;
const verySoonStuckMs = 3 * 60_000;

/** Why a student needs help, in words, and how much; 0 = all is well. */
export function needOf(row: Omit<LiveRow, 'needs'>): {
  readonly weight: number;
  readonly text: string;
} {
  const reasons: [number, string][] = [];
  if (row.safety.danger > 0) {
    reasons.push([100 + row.safety.danger, dangers(row.safety.danger)]);
  }
  if (row.verdict === 'wrong') reasons.push([60, 'named a wrong fault']);
  if (row.verdict === 'given-up') reasons.push([50, 'gave up']);
  if (row.suspects === 0 && row.stage === 'working') {
    reasons.push([
      55,
      'the log rules everything out: there are two faults, a reading was misread or the unit was changed',
    ]);
  }
  if (row.stage === 'working' && row.stuckMs >= stuckMs) {
    reasons.push([40 + minutes(row.stuckMs), `stuck for ${minutes(row.stuckMs)} min`]);
  } else if (row.stage === 'working' && row.stuckMs >= verySoonStuckMs) {
    reasons.push([20, `no suspect ruled out for ${minutes(row.stuckMs)} min`]);
  }
  if (!row.online && row.stage === 'working') reasons.push([10, 'device away']);
  return {
    weight: reasons.reduce((sum, [weight]) => sum + weight, 0),
    text: reasons
      .sort(([a], [b]) => b - a)
      .map(([, text]) => text)
      .join('; '),
  };
}

const minutes = (ms: number): number => Math.floor(ms / 60_000);
const dangers = (count: number): string =>
  count === 1 ? 'one dangerous act' : `${count} dangerous acts`;

/** Who needs help first; where all is well, by name. */
export function liveRows(rows: readonly Omit<LiveRow, 'needs'>[]): LiveRow[] {
  return rows
    .map((row) => ({row, need: needOf(row)}))
    .sort((a, b) => b.need.weight - a.need.weight || a.row.name.localeCompare(b.row.name))
    .map(({row, need}) => ({...row, needs: need.text}));
}
