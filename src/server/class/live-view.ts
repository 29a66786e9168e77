import {liveRows} from '../../classroom/live-order.ts';
import type {LiveRow} from '../../classroom/protocol/instructor-messages.ts';
import type {AssignmentRow} from '../data/work-records.ts';
import type {School} from './school.ts';
import {isFinished} from './work-sets.ts';

/** Rows of a class for its instructor, who needs help first. */
export async function liveRowsOf(school: School, classId: string): Promise<LiveRow[]> {
  const [roster, assignments, sets] = await Promise.all([
    school.classes.roster(classId),
    school.work.ofClass(classId),
    school.work.sets(classId),
  ]);
  const titles = new Map(sets.map(({id, title}) => [id, title]));
  const running = new Set(sets.filter(({state}) => state !== 'draft').map(({id}) => id));
  const now = school.clock.now();
  const own = new Map<string, AssignmentRow[]>();
  for (const row of assignments) {
    if (!running.has(row.set)) continue;
    const rows = own.get(row.student);
    if (rows) rows.push(row);
    else own.set(row.student, [row]);
  }
  return liveRows(
    roster.map(({id, name}) => {
      const row = inHand(own.get(id) ?? []);
      const base = {student: id, name, online: school.presence.isOnline(id)};
      if (!row) {
        return {
          ...base,
          readings: 0,
          minutes: 0,
          stuckMs: 0,
          hints: 0,
          safety: {danger: 0, caution: 0},
        };
      }
      return {
        ...base,
        assignment: row.id,
        title: titles.get(row.set) ?? '',
        kind: row.kind as LiveRow['kind'],
        stage: row.stage as LiveRow['stage'],
        ...(row.doing ? {doing: row.doing} : {}),
        readings: row.readings,
        minutes: row.minutes,
        ...(row.suspects === null ? {} : {suspects: row.suspects}),
        ...(row.suspects_at_start === null ? {} : {suspectsAtStart: row.suspects_at_start}),
        stuckMs: row.stage === 'working' && row.progressed_at ? now - row.progressed_at : 0,
        hints: row.hints,
        safety: {danger: row.danger, caution: row.caution},
        ...(row.verdict && row.kind === 'call' ? {verdict: row.verdict as LiveRow['verdict']} : {}),
      };
    }),
  );
}

/** What a student is at: what is open, else what comes next, else what was finished last. */
function inHand(rows: readonly AssignmentRow[]): AssignmentRow | undefined {
  const open = rows.filter((row) => row.opened_at !== null && !isFinished(row));
  const latest = (of: readonly AssignmentRow[], when: (row: AssignmentRow) => number) =>
    of.reduce<AssignmentRow | undefined>(
      (best, row) => (best && when(best) >= when(row) ? best : row),
      undefined,
    );
  return (
    latest(open, (row) => row.opened_at ?? 0) ??
    latest(
      rows.filter((row) => !isFinished(row)),
      (row) => row.created_at,
    ) ??
    latest(rows, (row) => row.finished_at ?? 0)
  );
}

/** Assignments whose suspects are being worked out, or have been up to an action. */
const working = new WeakMap<School, Map<string, number>>();

/**
 * Works out the suspects that a call's log leaves, in the thread for long work and only while somebody looks; then the
 * row moves again.
 */
export async function refreshSuspects(school: School, id: string): Promise<void> {
  let own = working.get(school);
  if (!own) working.set(school, (own = new Map()));
  const row = await school.work.assignment(id);
  if (!row || row.kind !== 'call' || row.stage !== 'working') return;
  if (own.get(id) === row.last) return;
  own.set(id, row.last);
  try {
    const call = await school.work.call(row);
    const {left, atStart} = await school.longWork.ask('suspects', {assignment: id, call}, 'idle');
    const fewer = row.suspects === null || left < row.suspects;
    await school.work.change(id, {
      suspects: left,
      suspects_at_start: atStart,
      ...(fewer ? {progressed_at: school.clock.now()} : {}),
    });
    school.bus.publish({is: 'moved', class: row.class, student: row.student, assignment: id});
  } catch {
    // the list does without the number; the next action asks again
    own.delete(id);
  }
}
