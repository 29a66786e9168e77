import type {PollBody, StudentPoll} from '../../classroom/protocol/poll.ts';
import type {Desk, DeskItem, Note} from '../../classroom/protocol/student-messages.ts';
import type {PollOutcome} from '../../classroom/poll-bench.ts';
import type {StudentRow} from '../data/class-records.ts';
import type {NoteRow, PollRow} from '../data/talk-records.ts';
import {rulesOf, type AssignmentRow, type SetRow} from '../data/work-records.ts';
import type {School} from './school.ts';
import {isFinished} from './work-sets.ts';

/** Milliseconds left of a call with a time limit; undefined without one, or before it is begun. */
export function leftMs(row: AssignmentRow, set: SetRow, now: number): number | undefined {
  const {limitMinutes} = rulesOf(set);
  if (limitMinutes === undefined || row.opened_at === null) return undefined;
  return Math.max(0, row.opened_at + limitMinutes * 60_000 - now);
}

/** Whether the debrief may be told: it tells the fault. */
export const isDebriefReady = (row: AssignmentRow, set: SetRow): boolean =>
  row.kind === 'call' &&
  isFinished(row) &&
  (rulesOf(set).debriefWhen === 'named' || set.state === 'closed');

/** What lies on a student's desk. Of what is hidden there is only the customer's complaint in it. */
export async function deskOf(
  school: School,
  student: StudentRow & {className: string},
): Promise<Desk> {
  const [rows, sets, notes, poll, roster] = await Promise.all([
    school.work.ofStudent(student.id),
    school.work.sets(student.class),
    school.talk.notesFor(student.class, student.id),
    school.talk.currentPoll(student.class),
    school.classes.roster(student.class),
  ]);
  const nameOf = new Map(roster.map(({id, name}) => [id, name]));
  const items: DeskItem[] = [];
  for (const row of rows) {
    const set = sets.find(({id}) => id === row.set);
    if (!set || set.state === 'draft') continue;
    const {limitMinutes, coach} = rulesOf(set);
    const left = leftMs(row, set, school.clock.now());
    const target = row.hides_for ? await school.work.assignment(row.hides_for) : undefined;
    items.push({
      assignment: row.id,
      kind: row.kind as DeskItem['kind'],
      title: set.title,
      unit: row.unit,
      ...(row.kind === 'call' && row.complaint !== null ? {complaint: row.complaint} : {}),
      stage: row.stage as DeskItem['stage'],
      closed: set.state === 'closed',
      coach,
      ...(limitMinutes === undefined ? {} : {limitMinutes}),
      ...(left === undefined ? {} : {leftMs: left}),
      ...(target ? {forName: nameOf.get(target.student) ?? ''} : {}),
      debriefReady: isDebriefReady(row, set),
    });
  }
  return {
    student: student.id,
    name: student.name,
    className: student.className,
    items,
    ...(poll ? {poll: await pollFor(school, poll, student.id)} : {}),
    notes: notes.map(shownNote),
  };
}

export const shownNote = ({id, kind, text, at}: NoteRow): Note => ({
  id,
  kind: kind === 'hint' ? 'hint' : 'note',
  text,
  at: new Date(at).toISOString(),
});

/** A poll as it may be seen now: what the change does only once it is shown. */
export async function pollFor(
  school: School,
  row: PollRow,
  student?: string,
): Promise<StudentPoll> {
  const body = JSON.parse(row.body) as PollBody;
  const outcome = JSON.parse(row.shown) as PollOutcome;
  const votes = await school.talk.votes(row.id);
  const isShown = row.state !== 'open';
  const mine = votes.find((vote) => vote.student === student)?.answer;
  return {
    id: row.id,
    question: body.question,
    answers: body.answers,
    unit: body.unit,
    state: row.state as StudentPoll['state'],
    readings: outcome.readings.map(({text, before, after}) => ({
      text,
      before,
      ...(isShown ? {after} : {}),
    })),
    committed: votes.length,
    ...(isShown
      ? {
          counts: body.answers.map((_, i) => votes.filter(({answer}) => answer === i).length),
          changed: outcome.changed,
          ...(body.right === undefined ? {} : {right: body.right}),
        }
      : {}),
    ...(mine === undefined ? {} : {mine}),
  };
}
