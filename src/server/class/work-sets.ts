import {pairUp, type Dealt} from '../../classroom/dealing.ts';
import type {WorkSet, WorkSetBody, WorkSetChange} from '../../classroom/protocol/work-set.ts';
import {catalogue} from '../../faults/catalogue.ts';
import type {StudentRow} from '../data/class-records.ts';
import {rulesOf, type AssignmentRow, type SetRow, type SetRules} from '../data/work-records.ts';
import {Refusal} from './refusal.ts';
import type {School} from './school.ts';
import {randomId, randomNumbers, randomSeed} from './secrets.ts';
import {isShippedTask, isShippedUnit} from './shipped-content.ts';

const isBegun = ({stage}: AssignmentRow): boolean => stage !== 'new' && stage !== 'waiting';
export const isFinished = ({stage}: AssignmentRow): boolean =>
  ['named', 'cleared', 'given-up', 'done'].includes(stage);

/** Makes a set for a class; what is hidden is checked and its complaint worked out first. */
export async function makeSet(
  school: School,
  classId: string,
  body: WorkSetBody,
): Promise<WorkSet> {
  const {kind} = body;
  const unit = kind === 'hookup' ? body.task : body.unit;
  if (kind === 'hookup' ? !isShippedTask(unit) : !isShippedUnit(unit)) {
    throw new Refusal(400, `There is no ${kind === 'hookup' ? 'wiring task' : 'unit'} "${unit}".`);
  }
  const rules: SetRules = {
    ...(body.limitMinutes === undefined ? {} : {limitMinutes: body.limitMinutes}),
    coach: body.coach,
    debriefWhen: body.debriefWhen,
    ...(kind === 'hookup' || body.meterFlaw === undefined ? {} : {meterFlaw: body.meterFlaw}),
    ...(kind === 'different' ? {difficulty: body.difficulty} : {}),
    ...(kind === 'in-pairs' ? {allowed: body.allowed} : {}),
    ...(kind === 'same' ? await hiddenForAll(school, body) : {}),
  };
  const title =
    kind === 'hookup' ? school.content.task(unit).title : school.content.unit(unit).title;
  const row: SetRow = {
    id: randomId(),
    class: classId,
    kind,
    title: body.title ?? title,
    unit,
    rules: JSON.stringify(rules),
    state: 'draft',
    created_at: school.clock.now(),
  };
  await school.work.addSet(row);
  return body.open ? changeSet(school, row, {state: 'open'}) : shownSet(school, row);
}

async function hiddenForAll(
  school: School,
  body: Extract<WorkSetBody, {kind: 'same'}>,
): Promise<{faults: string[]; complaint: string}> {
  const known = new Set(catalogue(school.content.unit(body.unit)).map(({id}) => id));
  if (body.faults.some((id) => !known.has(id))) {
    throw new Refusal(
      400,
      'One of the faults is not in the catalogue of this unit. Choose it from the list.',
    );
  }
  const given = body.complaint?.trim();
  const complaint =
    given || (await school.longWork.ask('complaint', {unit: body.unit, faults: body.faults})).text;
  return {faults: body.faults, complaint};
}

/** Opens, closes or changes a set. Opening deals it out to the roster. */
export async function changeSet(
  school: School,
  row: SetRow,
  change: WorkSetChange,
): Promise<WorkSet> {
  const rules = rulesOf(row);
  const {state = row.state, title = row.title, coach = rules.coach} = change;
  const {limitMinutes: before, ...others} = rules;
  const limitMinutes =
    change.limitMinutes === undefined ? before : (change.limitMinutes ?? undefined);
  const changed: SetRow = {
    ...row,
    state,
    title,
    rules: JSON.stringify({
      ...others,
      coach,
      ...(limitMinutes === undefined ? {} : {limitMinutes}),
    }),
  };
  if (state === 'open' && row.state === 'draft') await deal(school, changed);
  await school.work.changeSet(row.id, {
    state: changed.state,
    title: changed.title,
    rules: changed.rules,
  });
  school.bus.publish({is: 'desk', class: row.class});
  return shownSet(school, changed);
}

/** Gives every student of the roster an assignment of the set. */
async function deal(school: School, set: SetRow): Promise<void> {
  const roster = await school.classes.roster(set.class);
  if (set.kind === 'in-pairs') await dealPairs(school, set, roster);
  else await dealTo(school, set, roster);
}

/** Open sets reach students who come onto the roster later. Pairs stay as they were dealt. */
export async function dealOpenSets(
  school: School,
  classId: string,
  students: readonly StudentRow[],
): Promise<void> {
  for (const set of await school.work.sets(classId)) {
    if (set.state === 'open' && set.kind !== 'in-pairs') await dealTo(school, set, students);
  }
}

async function dealTo(school: School, set: SetRow, students: readonly StudentRow[]): Promise<void> {
  const rules = rulesOf(set);
  let deals: readonly Dealt[] = [];
  if (set.kind === 'different' && students.length > 0) {
    deals = await school.longWork
      .ask('deal', {
        unit: set.unit,
        difficulty: rules.difficulty!,
        students: students.length,
        seed: Math.floor(randomNumbers(1)[0] * 2 ** 31),
      })
      .catch((error: Error) => {
        throw new Refusal(409, error.message);
      });
  }
  const same = {faults: rules.faults ?? [], complaint: rules.complaint ?? ''};
  await school.work.addAssignments(
    students.map((student, i) => ({
      ...blank(school, set, student.id),
      kind: set.kind === 'hookup' ? 'hookup' : 'call',
      stage: 'new',
      ...(set.kind === 'hookup' ? {} : hiddenColumns(deals[i] ?? same)),
    })),
  );
}

async function dealPairs(
  school: School,
  set: SetRow,
  roster: readonly StudentRow[],
): Promise<void> {
  // who has not joined cannot hide anything, and the other would wait in vain
  const joined = roster.filter(({device}) => device !== null);
  const pairs = pairUp(joined.length >= 2 ? joined : roster);
  if (pairs.length === 0) {
    throw new Refusal(
      409,
      'Students who hide for each other are two at least. Add names to the roster first.',
    );
  }
  await school.work.addAssignments(
    pairs.flatMap(({by, for: other}) => {
      const call = {...blank(school, set, other.id), kind: 'call', stage: 'waiting'};
      return [call, {...blank(school, set, by.id), kind: 'hide', stage: 'new', hides_for: call.id}];
    }),
  );
}

const hiddenColumns = ({faults, complaint}: Dealt) => ({
  faults: JSON.stringify(faults),
  complaint,
});

const blank = (school: School, set: SetRow, student: string) => ({
  id: randomId(),
  set: set.id,
  class: set.class,
  student,
  unit: set.unit,
  faults: null,
  complaint: null,
  // a meter's own error, drawn apart from what is hidden
  seed: randomSeed(),
  meter: rulesOf(set).meterFlaw ?? null,
  hides_for: null,
  created_at: school.clock.now(),
});

/** A set as its instructor sees it. */
export async function shownSet(school: School, row: SetRow): Promise<WorkSet> {
  const {faults, ...rules} = rulesOf(row);
  const assignments = await school.work.ofSet(row.id);
  const students = new Set(assignments.map(({student}) => student));
  const unfinished = new Set(
    assignments.filter((each) => !isFinished(each)).map(({student}) => student),
  );
  const names = faults
    ? new Map(catalogue(school.content.unit(row.unit)).map(({id, name}) => [id, name]))
    : undefined;
  return {
    id: row.id,
    class: row.class,
    title: row.title,
    kind: row.kind as WorkSet['kind'],
    unit: row.unit,
    state: row.state as WorkSet['state'],
    createdAt: row.created_at,
    ...rules,
    ...(faults ? {faults: faults.map((id) => ({id, name: names!.get(id) ?? id}))} : {}),
    counts: {
      students: students.size,
      begun: new Set(assignments.filter(isBegun).map(({student}) => student)).size,
      // who hides and searches has finished with both
      finished: students.size - unfinished.size,
    },
  };
}
