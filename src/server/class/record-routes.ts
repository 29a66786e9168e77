import type {FastifyInstance, FastifyReply} from 'fastify';
import {recordStoreBody, type SentStatements} from '../../classroom/protocol/rest.ts';
import {classDetail, ownClass, ownSet, ownStudent} from './class-routes.ts';
import {
  actionsCsv,
  attemptsOf,
  debriefOfSet,
  gradebookCsv,
  gradebookOf,
  statementsOf,
} from './exports.ts';
import {sendStatements} from './record-store.ts';
import {read} from './requests.ts';
import type {School} from './school.ts';

/** Hands a file out under a name that a person knows again. */
const file = (reply: FastifyReply, type: string, name: string): FastifyReply =>
  reply
    .type(type)
    .header(
      'content-disposition',
      `attachment; filename="${name.replace(/[^A-Za-z0-9._-]+/g, '-')}"`,
    );

/** Class debrief, gradebook, exports, a student's records. */
export function recordRoutes(app: FastifyInstance, school: School): void {
  const {classes, work, bus} = school;

  app.get('/sets/:set/debrief', async (request) =>
    debriefOfSet(school, await ownSet(school, request)),
  );

  app.get('/classes/:class/gradebook', async (request) =>
    gradebookOf(school, (await ownClass(school, request)).id),
  );

  app.get('/classes/:class/gradebook.csv', async (request, reply) => {
    const row = await ownClass(school, request);
    file(reply, 'text/csv; charset=utf-8', `gradebook-${row.name}.csv`);
    return gradebookCsv(await gradebookOf(school, row.id));
  });

  app.get('/classes/:class/actions.csv', async (request, reply) => {
    const row = await ownClass(school, request);
    file(reply, 'text/csv; charset=utf-8', `actions-${row.name}.csv`);
    return actionsCsv(await attemptsOf(school, row));
  });

  app.get('/classes/:class/xapi.json', async (request, reply) => {
    const row = await ownClass(school, request);
    file(reply, 'application/json; charset=utf-8', `xapi-${row.name}.json`);
    return statementsOf(school, await attemptsOf(school, row));
  });

  app.post('/classes/:class/xapi', async (request): Promise<SentStatements> => {
    const row = await ownClass(school, request);
    const store = read(recordStoreBody, request.body);
    const statements = statementsOf(school, await attemptsOf(school, row));
    return sendStatements(statements, store);
  });

  app.get('/students/:student/records', async (request, reply) => {
    const student = await ownStudent(school, request);
    const row = (await classes.byId(student.class))!;
    file(reply, 'application/json; charset=utf-8', `records-${student.name}.json`);
    return {
      student: {id: student.id, name: student.name, class: row.name},
      attempts: await attemptsOf(school, row, student.id),
      ...(await work.allOf(student.id)),
    };
  });

  app.delete('/students/:student', async (request) => {
    const student = await ownStudent(school, request);
    bus.publish({is: 'send-away', class: student.class, student: student.id});
    const assignments = await work.ofStudent(student.id);
    await work.erase(student.id);
    for (const {id} of assignments) school.benches.forget(id);
    bus.publish({is: 'desk', class: student.class});
    return classDetail(school, (await classes.byId(student.class))!);
  });
}
