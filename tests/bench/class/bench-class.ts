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

/**
 * `npm run bench:class [STUDENTS]`: a school on one process, loopback only. Students connect and open a call; then
 * readings come in at a steady rate (an open loop: a slow answer does not hold back the next question) and the time from
 * sending to the confirmed, durable answer is measured. The load generator runs beside it on the same machine.
 */

const perClass = 30;
const seconds = 10;
/** Readings a second, one after another; the later ones are to find where it breaks. */
const rates = [100, 500, 1000, 2000];
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

class Student {
  readonly ready: Promise<void>;
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
    });
    this.socket.on('open', () => {
      this.send({is: 'join', token: seat.token});
      this.send({is: 'open', assignment: seat.assignment});
    });
    this.socket.on('message', (data: Buffer) => {
      const now = performance.now();
      const answer = JSON.parse(data.toString()) as StudentAnswer;
      if (answer.is === 'opened') {
        this.number = answer.last;
        if (this.number > 0) return this.setReady();
        for (const enclosure of covers) this.act({do: 'open-cover', enclosure});
        this.act({do: 'note', text: 'Begun.'});
      } else if (answer.is === 'done') {
        const sent = this.sentAt.get(answer.number)!;
        this.sentAt.delete(answer.number);
        if (this.sentAt.size === 0) this.setReady();
        this.onDone(now - sent);
      } else if (answer.is === 'refused') throw new Error(answer.sentence);
    });
  }

  read(red: string, black: string, onDone: (milliseconds: number) => void): void {
    this.onDone = onDone;
    this.act({do: 'read', red, black});
  }

  close(): void {
    this.socket.terminate();
  }

  private act(action: Extract<StudentRequest, {is: 'act'}>['action']): void {
    this.number += 1;
    this.sentAt.set(this.number, performance.now());
    this.send({is: 'act', assignment: this.seat.assignment, number: this.number, action});
  }

  private send(request: StudentRequest): void {
    if (this.socket.readyState === WebSocket.OPEN) this.socket.send(JSON.stringify(request));
  }
}

const percentile = (sorted: readonly number[], share: number): number =>
  sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN;
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
  const told = async (): Promise<Record<string, number>> =>
    JSON.parse((await lines.next()).value as string) as Record<string, number>;
  const state = async (): Promise<Record<string, number>> => {
    server.stdin.write('\n');
    return told();
  };
  try {
    const {port} = await told();
    const {shippedContent} = await import('../../../src/server/class/shipped-content.ts');
    const unit = shippedContent.unit(unitId);
    const covers = unit.enclosures.filter(({cover}) => cover).map(({id}) => id);
    const terminals = unit.parts.flatMap(({id, terminals}) =>
      terminals.map((name) => `${id}.${name}`),
    );
    const empty = await state();
    const startedAt = performance.now();
    const students: Student[] = [];
    for (let i = 0; i < count; i += 50) {
      const some = seats.slice(i, i + 50).map((seat) => new Student(port, seat, covers));
      await Promise.all(some.map(({ready}) => ready));
      students.push(...some);
    }
    const full = await state();
    console.log(
      `${count} students in, each with a bench of ${unitId}: ${((performance.now() - startedAt) / 1000).toFixed(1)} s. Resident ${megabytes(empty.rss)} MB empty, ${megabytes(full.rss)} MB full: ${((full.rss - empty.rss) / 1024 / count).toFixed(0)} kB a student (heap ${((full.heapUsed - empty.heapUsed) / 1024 / count).toFixed(0)} kB).`,
    );
    const random = seededRandom(1);
    const pick = <T>(from: readonly T[]): T => from[Math.floor(random() * from.length)];
    for (const rate of rates) {
      const before = await state();
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
            students[sent % students.length].read(pick(terminals), pick(terminals), (ms) =>
              times.push(ms),
            );
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
      const after = await state();
      times.sort((a, b) => a - b);
      console.log(
        `${rate} readings/s for ${seconds} s: ${times.length} of ${sent} answered; p50 ${percentile(times, 0.5).toFixed(1)} ms, p95 ${percentile(times, 0.95).toFixed(1)} ms, p99 ${percentile(times, 0.99).toFixed(1)} ms, most ${percentile(times, 1).toFixed(0)} ms; server ${(after.cpu * 100).toFixed(0)} % of a core; ${((after.actions - before.actions) / Math.max(1, after.commits - before.commits)).toFixed(1)} actions a commit; resident ${megabytes(after.rss)} MB`,
      );
      if (times.length < sent) break;
    }
    for (const student of students) student.close();
  } finally {
    server.kill('SIGKILL');
    rmSync(folder, {recursive: true, force: true});
  }
}

await run();
