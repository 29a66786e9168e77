import type {FastifyInstance, FastifyRequest} from 'fastify';
import {readClassCode} from '../../classroom/class-code.ts';
import {pollBody, pollChange} from '../../classroom/protocol/poll.ts';
import {
  classBody,
  classChange,
  joinBody,
  params,
  rosterBody,
  studentChange,
  type CatalogueEntry,
  type ClassDetail,
  type ClassSummary,
  type Joined,
  type JoinInfo,
  type WallLink,
} from '../../classroom/protocol/rest.ts';
import {workSetBody, workSetChange} from '../../classroom/protocol/work-set.ts';
import {mostStudents, readRoster} from '../../classroom/roster.ts';
import type {ClassRow, StudentRow} from '../data/class-records.ts';
import type {SetRow} from '../data/work-records.ts';
import {BackOff} from './back-off.ts';
import {joinUrl, publicAddress} from './join-url.ts';
import {Refusal} from './refusal.ts';
import {read, signedIn} from './requests.ts';
import type {School} from './school.ts';
import {isShippedUnit} from './shipped-content.ts';
import {pollFor} from './student-desk.ts';
import {changeSet, dealOpenSets, makeSet, shownSet} from './work-sets.ts';

/** A class of the instructor who asks; what is another's is as if it were not there. */
export async function ownClass(
  school: School,
  request: FastifyRequest,
  id?: string,
): Promise<ClassRow> {
  const {instructor} = await signedIn(school, request);
  const found = await school.classes.find(
    id ?? read(params.class, request.params).class,
    instructor,
  );
  if (!found) throw new Refusal(404, 'There is no such class of yours.');
  return found;
}

export async function ownStudent(school: School, request: FastifyRequest): Promise<StudentRow> {
  const {instructor} = await signedIn(school, request);
  const found = await school.classes.student(
    read(params.student, request.params).student,
    instructor,
  );
  if (!found) throw new Refusal(404, 'There is no such student of yours.');
  return found;
}

export async function ownSet(school: School, request: FastifyRequest): Promise<SetRow> {
  await signedIn(school, request);
  const set = await school.work.set(read(params.set, request.params).set);
  if (!set) throw new Refusal(404, 'There is no such set of yours.');
  await ownClass(school, request, set.class);
  return set;
}

const summary = (row: ClassRow, students: number): ClassSummary => ({
  id: row.id,
  name: row.name,
  code: row.code,
  open: row.open === 1,
  students,
  createdAt: row.created_at,
});

/** A class with its roster. */
export async function classDetail(school: School, row: ClassRow): Promise<ClassDetail> {
  const roster = await school.classes.roster(row.id);
  return {
    ...summary(row, roster.length),
    joinUrl: joinUrl(school, row.code),
    namesOnWall: row.names_on_wall === 1,
    roster: roster.map(({id, name, device}) => ({id, name, joined: device !== null})),
  };
}

/** Classes, rosters, sets, polls and the wall: the instructor's side. */
export function classRoutes(app: FastifyInstance, school: School): void {
  const {classes, work, talk, bus} = school;
  const detail = (row: ClassRow): Promise<ClassDetail> => classDetail(school, row);

  app.get('/classes', async (request) => {
    const {instructor} = await signedIn(school, request);
    return (await classes.all(instructor)).map((row) => summary(row, row.students));
  });

  app.post('/classes', async (request) => {
    const {instructor} = await signedIn(school, request);
    const {name} = read(classBody, request.body);
    return detail(await classes.add(instructor, name));
  });

  app.get('/classes/:class', async (request) => detail(await ownClass(school, request)));

  app.patch('/classes/:class', async (request) => {
    const row = await ownClass(school, request);
    await classes.change(row.id, read(classChange, request.body));
    bus.publish({is: 'wall', class: row.id});
    return detail((await classes.byId(row.id))!);
  });

  app.delete('/classes/:class', async (request) => {
    const row = await ownClass(school, request);
    for (const {id} of await classes.roster(row.id)) {
      bus.publish({is: 'send-away', class: row.id, student: id});
    }
    await classes.remove(row.id);
    return {};
  });

  app.post('/classes/:class/students', async (request) => {
    const row = await ownClass(school, request);
    const {names, problems} = readRoster(read(rosterBody, request.body).text);
    if (problems.length > 0) throw new Refusal(400, problems.slice(0, 5).join(' '));
    const before = (await classes.roster(row.id)).length;
    if (before + names.length > mostStudents) {
      throw new Refusal(400, `A class has ${mostStudents} students at most. Make a second class.`);
    }
    const added = await classes.addStudents(row.id, names);
    await dealOpenSets(school, row.id, added);
    bus.publish({is: 'wall', class: row.id});
    return detail(row);
  });

  app.patch('/students/:student', async (request) => {
    const student = await ownStudent(school, request);
    const {name, sendAway} = read(studentChange, request.body);
    if (name !== undefined) await classes.rename(student.id, name);
    if (sendAway) {
      await classes.sendAway(student.id);
      bus.publish({is: 'send-away', class: student.class, student: student.id});
    }
    return detail((await classes.byId(student.class))!);
  });

  app.get('/units/:unit/catalogue', async (request): Promise<readonly CatalogueEntry[]> => {
    await signedIn(school, request);
    const {unit} = read(params.unit, request.params);
    if (!isShippedUnit(unit)) throw new Refusal(404, `There is no unit "${unit}".`);
    return school.longWork.ask('catalogue', {unit});
  });

  app.get('/classes/:class/sets', async (request) => {
    const row = await ownClass(school, request);
    return Promise.all((await work.sets(row.id)).map((set) => shownSet(school, set)));
  });

  app.post('/classes/:class/sets', async (request) => {
    const row = await ownClass(school, request);
    return makeSet(school, row.id, read(workSetBody, request.body));
  });

  app.patch('/sets/:set', async (request) => {
    const set = await ownSet(school, request);
    return changeSet(school, set, read(workSetChange, request.body));
  });

  app.delete('/sets/:set', async (request) => {
    const set = await ownSet(school, request);
    const {counts} = await shownSet(school, set);
    if (counts.begun > 0) {
      throw new Refusal(409, 'Somebody has begun this set, so it is kept. Close it instead.');
    }
    await work.removeSet(set.id);
    bus.publish({is: 'desk', class: set.class});
    return {};
  });

  app.post('/classes/:class/polls', async (request) => {
    const row = await ownClass(school, request);
    const body = read(pollBody, request.body);
    if (!isShippedUnit(body.unit)) throw new Refusal(404, `There is no unit "${body.unit}".`);
    if (body.right !== undefined && body.right >= body.answers.length) {
      throw new Refusal(400, 'The right answer is none of the answers.');
    }
    const outcome = await school.longWork.ask('poll', {poll: body}).catch((error: Error) => {
      throw new Refusal(400, error.message);
    });
    const poll = await talk.addPoll(row.id, body, outcome);
    bus.publish({is: 'poll', class: row.id, id: poll.id});
    return pollFor(school, poll);
  });

  app.patch('/polls/:poll', async (request) => {
    await signedIn(school, request);
    const poll = await talk.poll(read(params.poll, request.params).poll);
    if (!poll) throw new Refusal(404, 'There is no such question of yours.');
    await ownClass(school, request, poll.class);
    const {state} = read(pollChange, request.body);
    if (state === 'open' && poll.state !== 'open') {
      throw new Refusal(409, 'The change has been shown: ask anew instead.');
    }
    await talk.pollState(poll.id, state);
    bus.publish({is: 'poll', class: poll.class, id: poll.id});
    return pollFor(school, {...poll, state});
  });

  app.post('/classes/:class/wall', async (request): Promise<WallLink> => {
    const row = await ownClass(school, request);
    const token = await classes.newWall(row.id);
    return {token, url: `${publicAddress(school)}#/wall?token=${token}`};
  });

  const wrongCodes = new BackOff();

  const openClass = async (request: FastifyRequest, typed: string): Promise<ClassRow> => {
    const code = readClassCode(typed);
    if (wrongCodes.waitMs(request.ip) > 0) {
      throw new Refusal(429, 'Too many wrong codes from here. Wait a minute and try again.');
    }
    const found = code && (await classes.byCode(code));
    if (!found) {
      wrongCodes.fail(request.ip);
      throw new Refusal(
        404,
        'No open class has this code. Compare it with the wall, letter by letter.',
      );
    }
    return found;
  };

  app.get('/join/:code', async (request): Promise<JoinInfo> => {
    const row = await openClass(request, read(params.code, request.params).code);
    const roster = await classes.roster(row.id);
    return {
      className: row.name,
      roster: roster.map(({id, name, device}) => ({id, name, joined: device !== null})),
    };
  });

  app.post('/join', async (request): Promise<Joined> => {
    const {code, student: id} = read(joinBody, request.body);
    const row = await openClass(request, code);
    const student = (await classes.roster(row.id)).find((each) => each.id === id);
    if (!student) throw new Refusal(404, 'This name is not on the roster any more.');
    const token = await classes.join(student.id);
    bus.publish({is: 'joined', class: row.id, student: id, socket: ''});
    return {token, student: id, name: student.name, className: row.name};
  });
}
