import {createHash} from 'node:crypto';
import {stringify} from 'csv-stringify/sync';
import type {
  ClassDebrief,
  Gradebook,
  GradebookCell,
  HookupClassDebrief,
} from '../../classroom/protocol/rest.ts';
import {hookupDebrief} from '../../classroom/hookup-debrief.ts';
import {classDebrief, type DebriefedCall} from '../../classroom/class-debrief.ts';
import {csvCell} from '../../classroom/csv-cell.ts';
import {xapiStatement, type XapiStatement} from '../../classroom/xapi-schema.ts';
import {xapiStatements, type RecordedAttempt} from '../../classroom/xapi-statements.ts';
import {catalogue} from '../../faults/catalogue.ts';
import type {HookupReport} from '../../hookup/check-hookup.ts';
import type {HookupWire} from '../../hookup/hookup-task.ts';
import type {ClassRow, StudentRow} from '../data/class-records.ts';
import type {AssignmentRow, SetRow} from '../data/work-records.ts';
import {judge, type Judged} from './judging.ts';
import {publicAddress} from './join-url.ts';
import type {School} from './school.ts';
import {isFinished, shownSet} from './work-sets.ts';

/** Judges what is over and was not judged: the server was stopped in between, say. */
async function judgeWhatIsOver(school: School, rows: readonly AssignmentRow[]): Promise<void> {
  const over = rows.filter(
    (row) => row.kind === 'call' && isFinished(row) && (row.judged === null || row.points === null),
  );
  // one after another in the thread anyway; what cannot be judged stays without points
  await Promise.all(over.map(({id}) => judge(school, id).catch(() => undefined)));
}

export async function gradebookOf(school: School, classId: string): Promise<Gradebook> {
  await judgeWhatIsOver(school, await school.work.ofClass(classId));
  const [roster, sets, rows] = await Promise.all([
    school.classes.roster(classId),
    school.work.sets(classId),
    school.work.ofClass(classId),
  ]);
  // in the order in which they were given
  const given = [...sets].reverse().filter(({state}) => state !== 'draft');
  return {
    sets: given.map(({id, title}) => ({id, title})),
    rows: roster.map(({id, name}) => ({
      student: id,
      name,
      cells: given.flatMap((set) =>
        rows.filter((row) => row.student === id && row.set === set.id).map(cellOf),
      ),
    })),
  };
}

const cellOf = (row: AssignmentRow): GradebookCell => ({
  set: row.set,
  assignment: row.id,
  kind: row.kind as GradebookCell['kind'],
  stage: row.stage,
  ...(row.verdict === null ? {} : {verdict: row.verdict}),
  ...(row.points === null ? {} : {points: Math.round(row.points)}),
  readings: row.readings,
  minutes: Math.round(row.minutes * 10) / 10,
  danger: row.danger,
  caution: row.caution,
});

/** CSV as spreadsheets open it: byte order mark, CRLF (RFC 4180), no cell that could be a formula. */
export function csv(rows: readonly (readonly (string | number | null | undefined)[])[]): string {
  return stringify(
    rows.map((row) => row.map(csvCell)),
    {bom: true, record_delimiter: '\r\n'},
  );
}

export function gradebookCsv({sets, rows}: Gradebook): string {
  const title = new Map(sets.map((set) => [set.id, set.title]));
  return csv([
    [
      'name',
      'set',
      'kind',
      'stage',
      'verdict',
      'points',
      'readings',
      'minutes',
      'dangerous acts',
      'cautions',
    ],
    ...rows.flatMap(({name, cells}) =>
      cells.map((cell) => [
        name,
        title.get(cell.set),
        cell.kind,
        cell.stage,
        cell.verdict,
        cell.points,
        cell.readings,
        cell.minutes,
        cell.danger,
        cell.caution,
      ]),
    ),
  ]);
}

/** Every attempt of a class with its actions, in the order of the roster. */
export async function attemptsOf(
  school: School,
  found: ClassRow,
  only?: string,
): Promise<RecordedAttempt[]> {
  const [roster, sets, rows] = await Promise.all([
    school.classes.roster(found.id),
    school.work.sets(found.id),
    school.work.ofClass(found.id),
  ]);
  const attempts: RecordedAttempt[] = [];
  for (const student of roster) {
    if (only !== undefined && student.id !== only) continue;
    for (const row of rows) {
      const set = sets.find(({id}) => id === row.set);
      if (row.student !== student.id || !set) continue;
      attempts.push(await attemptOf(school, found, student, set, row));
    }
  }
  return attempts;
}

async function attemptOf(
  school: School,
  found: ClassRow,
  student: StudentRow,
  set: SetRow,
  row: AssignmentRow,
): Promise<RecordedAttempt> {
  return {
    assignment: row.id,
    student: {id: student.id, name: student.name},
    className: found.name,
    set: {id: set.id, title: set.title},
    kind: row.kind,
    unit: row.unit,
    openedAt: row.opened_at,
    finishedAt: row.finished_at,
    verdict: row.verdict,
    points: row.points,
    minutes: row.minutes,
    hints: row.hints,
    findings: row.danger + row.caution,
    actions: await school.work.timedActions(row.id),
    ...(row.kind === 'hookup' ? {handIns: await handInsOf(school, row.id)} : {}),
    ...(row.kind === 'hide' && row.faults !== null
      ? {hid: JSON.parse(row.faults) as string[]}
      : {}),
  };
}

async function handInsOf(
  school: School,
  assignment: string,
): Promise<NonNullable<RecordedAttempt['handIns']>> {
  const checks = await school.talk.hookupChecks([assignment]);
  return checks.map(({at, verdict, findings, wires}) => ({
    at,
    verdict,
    findings,
    wires: JSON.parse(wires) as unknown,
  }));
}

/** Every attempt's actions; a hand-in of wires and what was hidden for another are actions too. */
export function actionsCsv(attempts: readonly RecordedAttempt[]): string {
  return csv([
    ['name', 'set', 'unit', 'attempt', 'number', 'time', 'action', 'details'],
    ...attempts.flatMap((attempt) => {
      const {student, set, unit, assignment} = attempt;
      return doneIn(attempt).map(({number, at, what, details}) => [
        student.name,
        set.title,
        unit,
        assignment,
        number,
        new Date(at).toISOString(),
        what,
        Object.keys(details).length ? JSON.stringify(details) : '',
      ]);
    }),
  ]);
}

interface Done {
  readonly number: number;
  readonly at: number;
  readonly what: string;
  readonly details: object;
}

function doneIn({actions, handIns = [], hid, finishedAt}: RecordedAttempt): Done[] {
  return [
    ...actions.map(({number, action: {do: what, ...details}, at}) => ({number, at, what, details})),
    ...handIns.map(({at, ...details}, i) => ({number: i + 1, at, what: 'hand-in', details})),
    ...(hid && finishedAt !== null
      ? [{number: 1, at: finishedAt, what: 'hide', details: {faults: hid}}]
      : []),
  ];
}

/** Statements of a class, each checked against the rules of the specification before it goes anywhere. */
export function statementsOf(
  school: School,
  attempts: readonly RecordedAttempt[],
): XapiStatement[] {
  const options = {home: publicAddress(school) || 'http://rungbench.invalid/', uuidOf, isoTime};
  return attempts.flatMap((attempt) =>
    xapiStatements(attempt, options).map((statement) => xapiStatement.parse(statement)),
  );
}

const isoTime = (ms: number): string => new Date(ms).toISOString();

/** A name-based UUID (RFC 4122, version 5: SHA-1 of a name space and a name). */
export function uuidOf(text: string): string {
  // a name space of our own, drawn once
  const space = Buffer.from('6f1b7a8fd0a44f0c9d6e3b5f2c9e7a11', 'hex');
  const hash = createHash('sha1').update(space).update(text).digest().subarray(0, 16);
  hash[6] = (hash[6] & 0x0f) | 0x50;
  hash[8] = (hash[8] & 0x3f) | 0x80;
  const hex = hash.toString('hex');
  return [
    hex.slice(0, 8),
    hex.slice(8, 12),
    hex.slice(12, 16),
    hex.slice(16, 20),
    hex.slice(20),
  ].join('-');
}

export async function debriefOfSet(school: School, set: SetRow): Promise<ClassDebrief> {
  await judgeWhatIsOver(school, await school.work.ofSet(set.id));
  const [roster, rows] = await Promise.all([
    school.classes.roster(set.class),
    school.work.ofSet(set.id),
  ]);
  const nameOf = new Map(roster.map(({id, name}) => [id, name]));
  const faultNames =
    set.kind === 'hookup'
      ? new Map<string, string>()
      : new Map(catalogue(school.content.unit(set.unit)).map(({id, name}) => [id, name]));
  const calls: DebriefedCall[] = [];
  for (const row of rows) {
    if (row.kind !== 'call' || row.faults === null || row.opened_at === null) continue;
    const faults = JSON.parse(row.faults) as string[];
    calls.push({
      name: nameOf.get(row.student) ?? '',
      faults,
      faultNames: faults.map((id) => faultNames.get(id) ?? id),
      complaint: row.complaint ?? '',
      readings: row.readings,
      minutes: row.minutes,
      stage: row.stage,
      actions: await school.work.actions(row.id),
      // who has not finished may have been in danger all the same
      ...(row.judged
        ? {judged: JSON.parse(row.judged) as Judged}
        : row.danger + row.caution > 0
          ? {safety: (await school.benches.open(row)).bench.view().safety}
          : {}),
    });
  }
  return {
    set: await shownSet(school, set),
    ...classDebrief(calls),
    ...(set.kind === 'hookup' ? {hookup: await hookupDebriefOf(school, rows, nameOf)} : {}),
  };
}

async function hookupDebriefOf(
  school: School,
  rows: readonly AssignmentRow[],
  nameOf: ReadonlyMap<string, string>,
): Promise<HookupClassDebrief> {
  const checks = await school.talk.hookupChecks(rows.map(({id}) => id));
  // many hand in the same wires; each wiring is judged once
  const reports = new Map<string, Promise<HookupReport>>();
  const reportOf = (task: string, wires: string): Promise<HookupReport> => {
    let report = reports.get(wires);
    if (!report) {
      report = school.longWork.ask('hookup', {task, wires: JSON.parse(wires) as HookupWire[]});
      reports.set(wires, report);
    }
    return report;
  };
  const begun = rows.filter(({opened_at: at}) => at !== null);
  const wirings = await Promise.all(
    begun.map(async (row) => ({
      name: nameOf.get(row.student) ?? '',
      stage: row.stage,
      ...(row.points === null ? {} : {points: row.points}),
      checks: await Promise.all(
        checks
          .filter(({assignment}) => assignment === row.id)
          .map(({wires}) => reportOf(row.unit, wires)),
      ),
    })),
  );
  return {
    students: begun.length,
    right: begun.filter(({verdict}) => verdict === 'right').length,
    handIns: checks.length,
    ...hookupDebrief(wirings),
  };
}
