import type {Debrief} from '../../bench/debrief.ts';
import type {Reasoning} from '../../diagnosis/reasoning.ts';
import {hidingPoints} from '../../classroom/hiding-grade.ts';
import type {School} from './school.ts';

export interface Judged {
  readonly debrief: Debrief;
  readonly reasoning: Reasoning;
  /** Actions that were judged: naming again makes it out of date. */
  readonly upTo: number;
}

const running = new WeakMap<School, Map<string, Promise<Judged>>>();

/** Debrief and judgement of a call that is over: worked out once, kept, and told from the records after that. */
export async function judge(school: School, assignment: string): Promise<Judged> {
  let own = running.get(school);
  if (!own) running.set(school, (own = new Map()));
  const before = own.get(assignment);
  const turn = (before?.catch(() => undefined) ?? Promise.resolve()).then(() =>
    judgeNow(school, assignment),
  );
  own.set(assignment, turn);
  try {
    return await turn;
  } finally {
    if (own.get(assignment) === turn) own.delete(assignment);
  }
}

async function judgeNow(school: School, assignment: string): Promise<Judged> {
  const {work, longWork, bus} = school;
  const row = await work.assignment(assignment);
  if (!row) throw new Error('This call is not kept any more.');
  const call = await work.call(row);
  // what is done after the repair is no part of the search
  const end = call.actions.findLastIndex(({do: what}) => what === 'name' || what === 'give-up') + 1;
  if (row.judged) {
    const judged = JSON.parse(row.judged) as Judged;
    if (judged.upTo === end) return judged;
  }
  const {debrief, reasoning} = await longWork.ask('judge', {call});
  const judged = {debrief, reasoning, upTo: end};
  await work.change(row.id, {
    judged: JSON.stringify(judged),
    verdict: debrief.verdict,
    points: reasoning.grade.points,
  });
  const hider = await work.hiderOf(row.id);
  if (hider) {
    await work.change(hider.id, {
      points: hidingPoints(debrief.verdict, reasoning),
      verdict:
        debrief.verdict === 'right' || debrief.verdict === 'equivalent' ? 'found' : 'not found',
    });
  }
  bus.publish({is: 'moved', class: row.class, student: row.student, assignment});
  return judged;
}
