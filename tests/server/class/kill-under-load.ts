import {spawn} from 'node:child_process';
import {mkdirSync, mkdtempSync, rmSync, writeFileSync} from 'node:fs';
import {createInterface} from 'node:readline';
import {tmpdir} from 'node:os';
import {join, resolve} from 'node:path';
import WebSocket from 'ws';
import type {Action} from '../../../src/bench/actions.ts';
import type {
  StudentAnswer,
  StudentRequest,
} from '../../../src/classroom/protocol/student-messages.ts';
import {seededRandom} from '../../../src/parts/seeded-random.ts';
import {openSchool} from '../../../src/server/class/school.ts';
import {makeSet} from '../../../src/server/class/work-sets.ts';
import {openFileDatabase} from '../../../src/server/data/school-database.ts';

export interface KillReport {
  readonly kills: number;
  readonly students: number;
  /** Actions confirmed before a kill, over all rounds. */
  readonly confirmed: number;
  /** Confirmed actions that were not there after the kill; must be none. */
  readonly lost: number;
  /** Students whose call could not be opened after a kill; must be none. */
  readonly stuck: number;
  /** Actions that were kept but whose confirmation the kill cut off; the device sends them again and they are done once. */
  readonly keptUnconfirmed: number;
}

interface Student {
  readonly token: string;
  readonly assignment: string;
  /** What the device knows to be kept. */
  confirmed: number;
  sent: number;
}

/** The action under a number: always the same, so that what is kept can be compared with what was sent. */
const actionOf = (number: number): Action =>
  number % 7 === 0 ? {do: 'wait', seconds: 5} : {do: 'note', text: `Action ${number}`};

/**
 * Kills a class server without warning while its students work, again and again, and compares what their devices were
 * told with what is there afterwards.
 */
export async function killUnderLoad(kills: number, students = 12): Promise<KillReport> {
  const folder = mkdtempSync(join(tmpdir(), 'kill-'));
  const data = join(folder, 'data');
  const dist = join(folder, 'dist');
  mkdirSync(dist);
  writeFileSync(join(dist, 'index.html'), '<!doctype html>');
  const random = seededRandom(kills);
  const all = await enrol(data, students);
  let [confirmed, lost, stuck, keptUnconfirmed] = [0, 0, 0, 0];
  for (let round = 0; round <= kills; round++) {
    const server = spawn(
      process.execPath,
      ['--import', 'tsx', resolve(import.meta.dirname, 'kill-target.ts'), data, dist],
      {stdio: ['ignore', 'pipe', 'inherit'], cwd: resolve(import.meta.dirname, '../../..')},
    );
    const ended = new Promise((end) => server.once('exit', end));
    const port = await portOf(server.stdout);
    const sockets = await Promise.all(
      all.map(async (student) => {
        const device = await Phone.connect(port, student);
        const last = await device.open();
        if (last === undefined) stuck += 1;
        else {
          lost += Math.max(0, student.confirmed - last);
          keptUnconfirmed += Math.max(0, last - student.confirmed);
          student.confirmed = last;
          student.sent = last;
        }
        return device;
      }),
    );
    if (round < kills) {
      const before = all.reduce((sum, student) => sum + student.confirmed, 0);
      for (const device of sockets) device.work();
      // now after a few, now after many
      await new Promise((resolve) => setTimeout(resolve, 60 + random() * 500));
      server.kill('SIGKILL');
      await ended;
      await Promise.all(sockets.map((device) => device.gone));
      confirmed += all.reduce((sum, student) => sum + student.confirmed, 0) - before;
    } else {
      server.kill('SIGKILL');
      await ended;
    }
  }
  const database = await openFileDatabase(data);
  for (const {assignment} of all) {
    const rows = await database.db
      .selectFrom('actions')
      .select(['number', 'action'])
      .where('assignment', '=', assignment)
      .orderBy('number')
      .execute();
    rows.forEach((row, i) => {
      if (row.number !== i + 1 || row.action !== JSON.stringify(actionOf(i + 1))) lost += 1;
    });
  }
  await database.close();
  rmSync(folder, {recursive: true});
  return {kills, students, confirmed, lost, stuck, keptUnconfirmed};
}

/** A class with everybody at a call, straight into the records. */
async function enrol(data: string, count: number): Promise<Student[]> {
  const school = await openSchool(await openFileDatabase(data));
  await school.accounts.addFirst('Instructor', 'none');
  const {id} = (await school.accounts.byName('Instructor'))!;
  const period = await school.classes.add(id, 'Period 3');
  const roster = await school.classes.addStudents(
    period.id,
    Array.from({length: count}, (_, i) => `Student ${i}`),
  );
  await makeSet(school, period.id, {
    kind: 'same',
    unit: 'practice-panel',
    faults: ['W8:open'],
    complaint: 'Dark.',
    coach: false,
    debriefWhen: 'named',
    open: true,
  });
  const students: Student[] = [];
  for (const {id: student} of roster) {
    const [row] = await school.work.ofStudent(student);
    const token = await school.classes.join(student);
    students.push({token, assignment: row.id, confirmed: 0, sent: 0});
  }
  await school.close();
  return students;
}

async function portOf(output: NodeJS.ReadableStream): Promise<number> {
  for await (const line of createInterface({input: output})) {
    const found = /^port (\d+)$/.exec(line);
    if (found) return Number(found[1]);
  }
  throw new Error('The server ended before it listened.');
}

/** Keeps a few actions under way, as a device does on a slow network. */
const underWay = 4;

class Phone {
  readonly gone: Promise<void>;
  private readonly socket: WebSocket;
  private readonly student: Student;
  private onOpened: (last: number | undefined) => void = () => undefined;

  private constructor(socket: WebSocket, student: Student) {
    this.socket = socket;
    this.student = student;
    this.gone = new Promise((resolve) => socket.once('close', () => resolve()));
    socket.on('close', () => this.onOpened(undefined));
    socket.on('error', () => undefined);
    socket.on('message', (text: Buffer) => this.hear(JSON.parse(text.toString()) as StudentAnswer));
  }

  static connect(port: number, student: Student): Promise<Phone> {
    return new Promise((resolve, reject) => {
      const origin = `http://127.0.0.1:${port}`;
      const socket = new WebSocket(`ws://127.0.0.1:${port}/api/socket/student`, {
        headers: {origin},
      });
      socket.once('open', () => {
        const phone = new Phone(socket, student);
        phone.send({is: 'join', token: student.token});
        resolve(phone);
      });
      socket.once('error', reject);
    });
  }

  open(): Promise<number | undefined> {
    return new Promise((resolve) => {
      this.onOpened = resolve;
      this.send({is: 'open', assignment: this.student.assignment});
    });
  }

  work(): void {
    for (let i = 0; i < underWay; i++) this.next();
  }

  private next(): void {
    const {student} = this;
    student.sent += 1;
    this.send({
      is: 'act',
      assignment: student.assignment,
      number: student.sent,
      action: actionOf(student.sent),
    } as StudentRequest);
  }

  private hear(answer: StudentAnswer): void {
    if (answer.is === 'opened') this.onOpened(answer.last);
    if (answer.is !== 'done') return;
    this.student.confirmed = answer.number;
    // the server allows twenty a second for long
    if (this.student.sent < answer.number + underWay && answer.number % 150 !== 0) this.next();
  }

  private send(request: StudentRequest): void {
    if (this.socket.readyState === WebSocket.OPEN) this.socket.send(JSON.stringify(request));
  }
}
