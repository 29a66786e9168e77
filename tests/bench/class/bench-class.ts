import {spawn} from 'node:child_process';
import {mkdirSync, mkdtempSync, rmSync, writeFileSync} from 'node:fs';
import {createInterface} from 'node:readline';
import {tmpdir} from 'node:os';
import {join, resolve} from 'node:path';
import WebSocket from 'ws';
import type {
  StudentAnswer,
  StudentRequest,
} from '../../../src/classroom/protocol/student-messages.ts';
import {seededRandom} from '../../../src/parts/seeded-random.ts';
import {openSchool} from '../../../src/server/class/school.ts';
import {makeSet} from '../../../src/server/class/work-sets.ts';
import {openFileDatabase} from '../../../src/server/data/school-database.ts';
import type {ServerState} from './bench-server.ts';

/**
 * `npm run bench:class [STUDENTS] [RATES]`: a school on one process, loopback only, in under four minutes. Students connect
 * and open a call; then readings come in at a steady rate (an open loop: a slow answer does not hold back the next
 * question) and the time from sending to the confirmed, durable answer is measured. The load generator runs beside it on
 * the same machine; its own processor time is told too.
 */

const perClass = 30;
const seconds = 10;
/** What is asked of the server. */
const goal = {perSecond: 500, p99Ms: 50};
/** Readings a second, one after another; the later ones are to find where it breaks. */
const rates = (process.argv[3] ?? '100,500,1000,1500,2000,3000').split(',').map(Number);
/** Broken is where answers come later than anybody would wait for a meter. */
const brokenMs = 1000;
/** What a student lets pass at once while the others read, in simulated seconds: ten minutes. */
const longWaitSeconds = 600;
const unitId = 'split-heat-pump';

interface Seat {
  readonly token: string;
  readonly assignment: string;
}

async function enrol(data: string, count: number): Promise<Seat[]> {
  const school = await openSchool(await openFileDatabase(data));
  await school.accounts.addFirst('Instructor', 'none');
  const {id} = (await school.accounts.byName('Instructor'))!;
  const seats: Seat[] = [];
  for (let begun = 0; begun < count; begun += perClass) {
    const period = await school.classes.add(id, `Class ${begun / perClass + 1}`);
    const size = Math.min(perClass, count - begun);
    const names = Array.from({length: size}, (_, i) => `Student ${i + 1}`);
    const roster = await school.classes.addStudents(period.id, names);
    await makeSet(school, period.id, {
      kind: 'same',
      unit: unitId,
      faults: ['W8:open'],
      complaint: 'No cooling.',
      coach: false,
      debriefWhen: 'named',
      open: true,
    });
    for (const student of roster) {
      const [row] = await school.work.ofStudent(student.id);
      seats.push({token: await school.classes.join(student.id), assignment: row.id});
    }
  }
  await school.close();
  return seats;
}

/** A device that does as little as it can, for it is not what is measured. */
class Student {
  readonly ready: Promise<void>;
  /** Bytes of the last answer. */
  answerBytes = 0;
  private readonly socket: WebSocket;
  private readonly seat: Seat;
  private readonly sentAt = new Map<number, number>();
  private number = 0;
  private setReady: () => void = () => undefined;
  private onDone: (milliseconds: number) => void = () => undefined;

  constructor(port: number, seat: Seat, covers: readonly string[]) {
    this.seat = seat;
    this.ready = new Promise((resolve, reject) => {
      this.setReady = resolve;
      setTimeout(() => reject(new Error('A student was not let in.')), 120_000).unref();
    });
    this.socket = new WebSocket(`ws://127.0.0.1:${port}/api/socket/student`, {
      headers: {origin: `http://127.0.0.1:${port}`},
      perMessageDeflate: false,
      skipUTF8Validation: true,
    });
    this.socket.on('open', () => {
      this.send({is: 'join', token: seat.token});
      this.send({is: 'open', assignment: seat.assignment});
    });
    this.socket.on('message', (data: Buffer) => this.hear(data, performance.now(), covers));
  }

  read(red: string, black: string, onDone: (milliseconds: number) => void): void {
    this.onDone = onDone;
    this.act({do: 'read', red, black});
  }

  /** Lets simulated time pass; resolves with how long the answer took, milliseconds. */
  wait(seconds: number): Promise<number> {
    return new Promise((resolve) => {
      this.onDone = resolve;
      this.act({do: 'wait', seconds});
    });
  }

  close(): void {
    this.socket.terminate();
  }

  private hear(data: Buffer, now: number, covers: readonly string[]): void {
    // an answer begins with what it is: reading all of it would cost more than the server's part
    const begins = data.toString('latin1', 0, 160);
    const done = /^\{"is":"done","assignment":"[^"]*","number":(\d+),/.exec(begins);
    if (done) {
      const number = Number(done[1]);
      const sent = this.sentAt.get(number)!;
      this.sentAt.delete(number);
      this.answerBytes = data.length;
      if (this.sentAt.size === 0) this.setReady();
      this.onDone(now - sent);
      return;
    }
    if (begins.startsWith('{"is":"desk"')) return;
    const answer = JSON.parse(data.toString()) as StudentAnswer;
    if (answer.is === 'opened') {
      this.number = answer.last;
      if (this.number > 0) return this.setReady();
      for (const enclosure of covers) this.act({do: 'open-cover', enclosure});
      this.act({do: 'note', text: 'Begun.'});
    } else throw new Error(`Unforeseen: ${data.toString()}`);
  }

  private act(action: Extract<StudentRequest, {is: 'act'}>['action']): void {
    this.number += 1;
    this.sentAt.set(this.number, performance.now());
    this.send({is: 'act', assignment: this.seat.assignment, number: this.number, action});
  }

  get actionsDone(): number {
    return this.number;
  }

  private send(request: StudentRequest): void {
    if (this.socket.readyState === WebSocket.OPEN) this.socket.send(JSON.stringify(request));
  }
}

const percentile = (sorted: readonly number[], share: number): number =>
  sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN;
interface Load {
  /** Milliseconds, ascending. */
  readonly times: readonly number[];
  readonly sent: number;
  readonly before: ServerState;
  readonly after: ServerState;
  /** Processor time of the load generator, microseconds. */
  readonly cpu: number;
}
const megabytes = (bytes: number): string => (bytes / 2 ** 20).toFixed(0);

async function run(): Promise<void> {
  const count = Number(process.argv[2] ?? 1000);
  const folder = mkdtempSync(join(tmpdir(), 'bench-class-'));
  const [data, dist] = [join(folder, 'data'), join(folder, 'dist')];
  mkdirSync(dist);
  writeFileSync(join(dist, 'index.html'), '<!doctype html>');
  const seats = await enrol(data, count);
  const server = spawn(
    process.execPath,
    ['--expose-gc', '--import', 'tsx', resolve(import.meta.dirname, 'bench-server.ts'), data, dist],
    {stdio: ['pipe', 'pipe', 'inherit'], cwd: resolve(import.meta.dirname, '../../..')},
  );
  const lines = createInterface({input: server.stdout})[Symbol.asyncIterator]();
  const told = async (): Promise<unknown> => JSON.parse((await lines.next()).value as string);
  const state = async (): Promise<ServerState> => {
    server.stdin.write('\n');
    return (await told()) as ServerState;
  };
  try {
    const {port} = (await told()) as {port: number};
    const {shippedContent} = await import('../../../src/server/class/shipped-content.ts');
    const unit = shippedContent.unit(unitId);
    const covers = unit.enclosures.filter(({cover}) => cover).map(({id}) => id);
    const terminals = unit.parts.flatMap(({id, terminals}) =>
      terminals.map((name) => `${id}.${name}`),
    );
    const empty = await state();
    console.log(
      `An empty school: resident ${megabytes(empty.rss)} MB, heap ${megabytes(empty.heapUsed)} MB.`,
    );
    const students: Student[] = [];
    // in quarters, to see how memory grows with students
    for (const share of [0.25, 0.5, 1]) {
      const startedAt = performance.now();
      const before = students.length;
      for (let i = before; i < count * share; i += 50) {
        const some = seats
          .slice(i, Math.min(i + 50, count * share))
          .map((seat) => new Student(port, seat, covers));
        await Promise.all(some.map(({ready}) => ready));
        students.push(...some);
      }
      const full = await state();
      const n = students.length;
      console.log(
        `${n} connected, each with a bench of ${unitId}: resident ${megabytes(full.rss)} MB, ${((full.rss - empty.rss) / 1024 / n).toFixed(0)} kB a student (heap ${((full.heapUsed - empty.heapUsed) / 1024 / n).toFixed(0)} kB); the last ${n - before} came in ${((performance.now() - startedAt) / 1000).toFixed(1)} s.`,
      );
    }
    const random = seededRandom(1);
    const pick = <T>(from: readonly T[]): T => from[Math.floor(random() * from.length)];
    let next = 0;
    const load = async (rate: number, from: readonly Student[]): Promise<Load> => {
      const before = await state();
      const own = process.cpuUsage();
      const times: number[] = [];
      let sent = 0;
      const began = performance.now();
      await new Promise<void>((done) => {
        const timer = setInterval(() => {
          const due = Math.min(
            rate * seconds,
            Math.floor(((performance.now() - began) / 1000) * rate),
          );
          for (; sent < due; sent++) {
            // one after another round the school, so that nobody is asked faster than a socket may
            const student = from[next++ % from.length];
            student.read(pick(terminals), pick(terminals), (ms) => times.push(ms));
          }
          if (sent >= rate * seconds) {
            clearInterval(timer);
            done();
          }
        }, 2);
      });
      const lateAt = performance.now() + 10_000;
      while (times.length < sent && performance.now() < lateAt) {
        await new Promise((resolve) => setTimeout(resolve, 50));
      }
      const {user, system} = process.cpuUsage(own);
      return {
        times: times.sort((a, b) => a - b),
        sent,
        before,
        after: await state(),
        cpu: user + system,
      };
    };
    const tell = ({times, sent, before, after, cpu}: Load): string =>
      `${times.length} of ${sent} answered; p50 ${percentile(times, 0.5).toFixed(1)} ms, p95 ${percentile(times, 0.95).toFixed(1)} ms, p99 ${percentile(times, 0.99).toFixed(1)} ms, most ${percentile(times, 1).toFixed(0)} ms; server ${(after.cpuMicroseconds / times.length).toFixed(0)} µs of processor a reading (${(after.cpuMicroseconds / 10 / after.elapsedMs).toFixed(0)} % of a core), load generator ${(cpu / sent).toFixed(0)} µs; ${((after.actions - before.actions) / Math.max(1, after.commits - before.commits)).toFixed(1)} actions a commit; longest block of the server ${after.longestBlockMs.toFixed(0)} ms; resident ${megabytes(after.rss)} MB`;
    const first = await state();
    const bytesAtFirst = students[0].answerBytes;
    let broken: string | undefined;
    for (const rate of rates) {
      const result = await load(rate, students);
      console.log(`${rate} readings/s for ${seconds} s: ${tell(result)}`);
      const p99 = percentile(result.times, 0.99);
      if (rate === goal.perSecond) {
        console.log(
          `  The goal is a p99 of at most ${goal.p99Ms} ms at ${rate}/s: ${p99 <= goal.p99Ms ? 'met' : 'MISSED'} in this run.`,
        );
      }
      if (result.times.length < result.sent || p99 > brokenMs) {
        broken = `${rate} readings/s: p99 ${p99.toFixed(0)} ms, ${result.sent - result.times.length} not answered 10 s later`;
        break;
      }
    }
    console.log(
      broken
        ? `It breaks at ${broken}.`
        : `It did not break up to ${rates.at(-1)} readings/s (broken: p99 above ${brokenMs} ms).`,
    );
    const last = await state();
    const actions = last.actions - first.actions;
    console.log(
      `Growth with actions: ${actions} readings were kept; heap ${((last.heapUsed - first.heapUsed) / actions).toFixed(0)} bytes a reading; an answer has ${students[0].answerBytes} bytes after ${students[0].actionsDone} actions (${bytesAtFirst} at first).`,
    );
    const [waiter, ...others] = students;
    const alone = await load(100, others);
    let waiting = true;
    const waits: number[] = [];
    const waitOn = (async () => {
      while (waiting) {
        waits.push(await waiter.wait(longWaitSeconds));
        await new Promise((resolve) => setTimeout(resolve, 200));
      }
    })();
    const beside = await load(100, others);
    waiting = false;
    await waitOn;
    console.log(`100 readings/s, nobody waiting: ${tell(alone)}`);
    console.log(
      `100 readings/s while another student lets ${longWaitSeconds} s pass, ${waits.length} times (${(waits.reduce((a, b) => a + b, 0) / waits.length).toFixed(0)} ms each): ${tell(beside)}`,
    );
    for (const student of students) student.close();
  } finally {
    server.kill('SIGKILL');
    rmSync(folder, {recursive: true, force: true});
  }
}

await run();
