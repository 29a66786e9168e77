import type {Action} from '../../src/bench/actions.ts';
import type {Poll, PollBody} from '../../src/classroom/protocol/poll.ts';
import type {ClassDetail, Joined, WallLink} from '../../src/classroom/protocol/rest.ts';
import type {WorkSet, WorkSetBody} from '../../src/classroom/protocol/work-set.ts';
import {ClassAtWork} from '../server/class/class-at-work.ts';
import type {ClassHarness} from './class-harness.ts';

/** Fifteen invented names: long, short, one without a gap, one that looks like a formula. */
export const names = [
  'Antonia Bartholomew-Featherstonehaugh Jr',
  'Maximilianderlangenameohnelueckevierzigz',
  'Ben',
  'Chidi O.',
  'Dana Whitfield',
  'Ezra',
  '=Fen',
  'Greta Lindqvist',
  'Hiro',
  'Ines de la Vega',
  'Jo',
  'Kwame',
  'Lupe Marchetti',
  'Mina',
  'Noor',
] as const;

/** A school in the middle of a lesson, for the pictures of its screens: a full class, empty ones, polls. */
export interface SchoolToSee {
  readonly at: ClassAtWork;
  /** The class with everybody at work. */
  readonly full: ClassDetail;
  /** The same names, none at work, and a poll that is open. */
  readonly asked: ClassDetail;
  /** The same, and the change has been made. */
  readonly answered: ClassDetail;
  /** Fewer students, with something of every kind to do. */
  readonly mixed: ClassDetail;
  readonly bare: ClassDetail;
  /** Of the full class, closed, with finished calls. */
  readonly closed: WorkSet;
  readonly wall: Readonly<Record<'full' | 'asked' | 'answered' | 'bare', string>>;
  /** Signs a second instructor in, who has no class. */
  readonly novice: string;
}

const hops = ['TB2.Y', 'HPS.1', 'HPS.2', 'LPS.1', 'K3.A1'];

/** Brings the heat pump into cooling, as far as its anti-short-cycle delay asks. */
const intoCooling: readonly Action[] = [
  {do: 'set', target: 'TS.mode', value: 'cool'},
  {do: 'set', target: 'TS.setPointDegF', value: 68},
  {do: 'wait', seconds: 600},
  {do: 'open-cover', enclosure: 'outdoor-unit'},
];

const read = (red: string): Action => ({do: 'read', red, black: 'TB2.C', expected: {value: 24}});

/** The evidence is every reading so far: filled in when it is done. */
const named = (fault: string): Action => ({do: 'name', fault, evidence: []});

/** What each student of the full class does with the call; those who are not in it have not come. */
const deeds: Readonly<Record<string, readonly Action[]>> = {
  [names[0]]: [...intoCooling, ...hops.slice(0, 3).map(read)],
  [names[1]]: [...intoCooling, ...hops.map(read), ...hops.map(read)],
  Ben: [...intoCooling, read('TB2.Y')],
  'Chidi O.': [...intoCooling, ...hops.slice(0, 2).map(read)],
  'Dana Whitfield': [...intoCooling, ...hops.slice(0, 4).map(read), named('HPS:stuck-open')],
  Ezra: [...intoCooling, {do: 'meter', function: 'ohms'}, read('TB2.Y'), read('HPS.1')],
  '=Fen': [...intoCooling, {do: 'give-up'}],
  'Greta Lindqvist': [...intoCooling, read('LPS.2'), named('LPS:stuck-open')],
  Hiro: [],
};

export async function schoolToSee(harness: ClassHarness): Promise<SchoolToSee> {
  const at = ClassAtWork.on(harness.app, harness.school, harness.address);
  await at.firstStart('Ada Field');
  const full = await at.classCalled('Controls lab, Tuesday morning', names);
  const closed = await give(at, full, {...sameCall, title: 'Warm-up'});
  await work(at, full, closed);
  await at.get('PATCH', `/sets/${closed.id}`, {state: 'closed'});
  await give(at, full, {
    kind: 'different',
    unit: 'gas-furnace',
    difficulty: 'medium',
    title: 'No heat on a cold morning, each with a fault of their own',
    limitMinutes: 45,
    coach: true,
    debriefWhen: 'closed',
    open: false,
  });
  await give(at, full, {...wiring, open: false});
  await give(at, full, {...pairs, open: false});
  const open = await give(at, full, sameCall);
  await work(at, full, open);
  await at.school.talk.addNote({
    class: full.id,
    student: full.roster.find(({name}) => name === 'Ben')!.id,
    set: null,
    kind: 'note',
    text: 'You have 24 V at the terminal board. Follow the yellow wire from there, one end at a time.',
  });

  const classes: ClassDetail[] = [];
  for (const [name, students] of [
    ['Controls lab, Tuesday afternoon', names],
    ['Controls lab, Wednesday', names],
    ['Heat pumps, second year', names.slice(-7)],
    ['Night school, open workshop for all who like', []],
  ] as const) {
    classes.push(await at.classCalled(name, students));
  }
  const [asked, answered, mixed, bare] = classes;
  for (const body of [pairs, wiring, {...sameCall, coach: true, limitMinutes: 40}])
    await give(at, mixed, body);
  for (const each of [asked, answered]) {
    const poll = await at.get<Poll>('POST', `/classes/${each.id}/polls`, question);
    for (const [index, name] of names.slice(0, 9).entries()) {
      const device = await at.join(each, name);
      await device.desk();
      if (index > 0) device.send({is: 'vote', poll: poll.id, answer: [1, 1, 0, 1, 2][index % 5]});
    }
    if (each === answered) await at.get('PATCH', `/polls/${poll.id}`, {state: 'shown'});
  }
  const wall = {
    full: await wallOf(at, full),
    asked: await wallOf(at, asked),
    answered: await wallOf(at, answered),
    bare: await wallOf(at, bare),
  };
  return {at, full, asked, answered, mixed, bare, closed, wall, novice: await novice(at)};
}

const sameCall = {
  kind: 'same',
  unit: 'split-heat-pump',
  faults: ['HPS:stuck-open'],
  complaint:
    'The air conditioning is on, but the house does not cool down. The outdoor unit is silent.',
  coach: false,
  debriefWhen: 'named',
  open: true,
} satisfies WorkSetBody;

const wiring = {
  kind: 'hookup',
  task: 'three-safeties',
  limitMinutes: 30,
  coach: false,
  debriefWhen: 'named',
  open: true,
} satisfies WorkSetBody;

const pairs = {
  kind: 'in-pairs',
  unit: 'practice-panel',
  allowed: ['easy', 'medium'],
  coach: false,
  debriefWhen: 'named',
  open: true,
} satisfies WorkSetBody;

const question: PollBody = {
  question: 'the wire from the high-pressure switch to the low-pressure switch comes off?',
  answers: [
    'The compressor goes on, for the contactor is held in by the thermostat.',
    'The contactor drops out and the compressor stops; the indoor blower goes on.',
    'Everything stops.',
  ],
  right: 1,
  unit: 'split-heat-pump',
  actions: intoCooling.slice(0, 3) as PollBody['actions'],
  change: {fault: 'W55:open'},
  watch: [
    {function: 'ac-volts', red: 'K3.A1', black: 'K3.A2'},
    {function: 'ac-volts', red: 'HPS.2', black: 'TB2.C'},
  ],
};

function give(at: ClassAtWork, of: ClassDetail, body: WorkSetBody): Promise<WorkSet> {
  return at.get<WorkSet>('POST', `/classes/${of.id}/sets`, body);
}

async function wallOf(at: ClassAtWork, of: ClassDetail): Promise<string> {
  return (await at.get<WallLink>('POST', `/classes/${of.id}/wall`, {})).token;
}

/** Everybody does what they do with the call of a set. */
async function work(at: ClassAtWork, of: ClassDetail, set: WorkSet): Promise<void> {
  for (const [name, actions] of Object.entries(deeds)) {
    const device = await at.join(of, name);
    await device.desk();
    const row = (await at.school.work.ofSet(set.id)).find(
      ({student}) => student === of.roster.find((each) => each.name === name)?.id,
    )!;
    await device.open(row.id);
    const evidence: number[] = [];
    for (const [index, action] of actions.entries()) {
      const proved = action.do === 'name' ? {...action, evidence} : action;
      const answer = await device.act(row.id, index + 1, proved);
      if (answer.is !== 'done') throw new Error(`${name}: ${JSON.stringify(answer)}`);
      for (const {kind, index} of answer.log) if (kind === 'reading') evidence.push(index);
    }
  }
}

/** A second instructor, signed in: the cookie. */
async function novice(at: ClassAtWork): Promise<string> {
  const account = {name: 'Bo Novice', passphrase: 'quiet brass valve twelve'};
  await at.get('POST', '/instructors', account);
  const response = await at.ask('POST', '/sign-in', account);
  return response.headers.get('set-cookie')!.split(';')[0];
}

/** Joins under a name: what the device keeps. */
export function joinAs(at: ClassAtWork, of: ClassDetail, name: string): Promise<Joined> {
  const student = of.roster.find((each) => each.name === name)!;
  return at.get<Joined>('POST', '/join', {code: of.code, student: student.id});
}

/** The student's assignment of a set's kind in one of the classes. */
export async function assignmentOf(
  at: ClassAtWork,
  of: ClassDetail,
  name: string,
  kind: 'call' | 'hide' | 'hookup',
): Promise<string> {
  const student = of.roster.find((each) => each.name === name)!.id;
  const sets = await at.get<readonly WorkSet[]>('GET', `/classes/${of.id}/sets`);
  for (const {id} of sets.filter((set) => set.state === 'open')) {
    const rows = await at.school.work.ofSet(id);
    const found = rows.find((row) => row.student === student && row.kind === kind);
    if (found) return found.id;
  }
  throw new Error(`${name} has no ${kind} to do.`);
}
