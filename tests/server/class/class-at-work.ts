import {mkdirSync, mkdtempSync, rmSync, writeFileSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import type {FastifyInstance} from 'fastify';
import WebSocket from 'ws';
import type {Action} from '../../../src/bench/actions.ts';
import type {ClassDetail, Joined, SignedIn} from '../../../src/classroom/protocol/rest.ts';
import type {
  StudentAnswer,
  StudentRequest,
} from '../../../src/classroom/protocol/student-messages.ts';
import type {LiveBus} from '../../../src/server/class/live-bus.ts';
import {createApp} from '../../../src/server/app.ts';
import {openSchool, type School} from '../../../src/server/class/school.ts';
import {openFileDatabase, type SchoolDatabase} from '../../../src/server/data/school-database.ts';

/** A class server on a port of its own, with what a test does as instructor and as student. */
export class ClassAtWork {
  readonly folder: string;
  readonly app: FastifyInstance;
  readonly school: School;
  readonly url: string;
  /** Everything that any student's socket has received, as text. */
  readonly sentDown: string[] = [];
  cookie = '';
  csrf = '';
  private readonly devices: Device[] = [];

  private constructor(folder: string, app: FastifyInstance, school: School, url: string) {
    this.folder = folder;
    this.app = app;
    this.school = school;
    this.url = url;
  }

  static async open(
    folder = mkdtempSync(join(tmpdir(), 'class-')),
    database?: SchoolDatabase,
    options: Parameters<typeof openSchool>[2] = {},
    bus?: LiveBus,
  ): Promise<ClassAtWork> {
    const dist = join(folder, 'dist');
    mkdirSync(dist, {recursive: true});
    writeFileSync(join(dist, 'index.html'), '<!doctype html><title>Tutor</title>');
    const school = await openSchool(
      database ?? (await openFileDatabase(join(folder, 'data'))),
      bus,
      options,
    );
    const app = await createApp(dist, school);
    const address = await app.listen({port: 0, host: '127.0.0.1'});
    school.addresses.push(`${address}/`);
    return new ClassAtWork(folder, app, school, address);
  }

  /** On a server that somebody else has started, and closes. */
  static on(app: FastifyInstance, school: School, address: string): ClassAtWork {
    return new ClassAtWork('', app, school, address.replace(/\/$/, ''));
  }

  dropAll(): void {
    for (const device of this.devices) device.drop();
  }

  async close(keepFolder = false): Promise<void> {
    this.dropAll();
    await this.app.close();
    await this.school.close();
    if (!keepFolder) rmSync(this.folder, {recursive: true});
  }

  async ask(method: string, path: string, body?: unknown): Promise<Response> {
    return fetch(`${this.url}/api${path}`, {
      method,
      headers: {
        ...(body === undefined ? {} : {'content-type': 'application/json'}),
        cookie: this.cookie,
        'x-csrf': this.csrf,
        origin: this.url,
      },
      ...(body === undefined ? {} : {body: JSON.stringify(body)}),
    });
  }

  /** Asks and gives the answer; a refusal fails the test with its sentence. */
  async get<T>(method: string, path: string, body?: unknown): Promise<T> {
    const response = await this.ask(method, path, body);
    const text = await response.text();
    if (!response.ok) throw new Error(`${method} ${path}: ${response.status} ${text}`);
    return JSON.parse(text) as T;
  }

  async firstStart(name = 'Instructor'): Promise<void> {
    const response = await this.ask('POST', '/first-start', {
      key: this.school.firstStartKey,
      name,
      passphrase: 'lamp relay ladder seven',
    });
    if (!response.ok) throw new Error(await response.text());
    this.cookie = response.headers.get('set-cookie')!.split(';')[0];
    this.csrf = ((await response.json()) as SignedIn).csrf;
  }

  async classOf(...names: string[]): Promise<ClassDetail> {
    return this.classCalled('Period 3', names);
  }

  async classCalled(name: string, names: readonly string[]): Promise<ClassDetail> {
    const {id} = await this.get<ClassDetail>('POST', '/classes', {name});
    if (names.length === 0) return this.get('GET', `/classes/${id}`);
    return this.get('POST', `/classes/${id}/students`, {text: names.join('\n')});
  }

  async join(of: ClassDetail, name: string): Promise<Device> {
    const student = of.roster.find((each) => each.name === name)!;
    const joined = await this.get<Joined>('POST', '/join', {code: of.code, student: student.id});
    return this.connect(joined.token);
  }

  async connect(token: string, takeBack = false): Promise<Device> {
    const device = new Device(this, token);
    this.devices.push(device);
    await device.opened;
    device.send({is: 'join', token, ...(takeBack ? {takeBack} : {})});
    return device;
  }
}

/** A student's phone. */
export class Device {
  readonly token: string;
  readonly socket: WebSocket;
  readonly opened: Promise<void>;
  readonly heard: StudentAnswer[] = [];
  readonly texts: string[] = [];
  closedWith?: number;
  private readonly waiting: {
    fits: (answer: StudentAnswer) => boolean;
    resolve: (answer: StudentAnswer) => void;
    reject: (error: Error) => void;
  }[] = [];
  private asked = 0;

  constructor(at: ClassAtWork, token: string) {
    this.token = token;
    this.socket = new WebSocket(`${at.url.replace('http', 'ws')}/api/socket/student`, {
      headers: {origin: at.url},
    });
    this.opened = new Promise((resolve, reject) => {
      this.socket.on('open', resolve);
      this.socket.on('error', reject);
    });
    this.socket.on('message', (data: Buffer) => {
      const text = data.toString();
      at.sentDown.push(text);
      this.texts.push(text);
      const answer = JSON.parse(text) as StudentAnswer;
      this.heard.push(answer);
      const at0 = this.waiting.findIndex(({fits}) => fits(answer));
      if (at0 >= 0) this.waiting.splice(at0, 1)[0].resolve(answer);
    });
    this.socket.on('close', (code) => {
      this.closedWith = code;
      for (const {reject} of this.waiting.splice(0)) {
        reject(new Error(`closed (${code}): ${JSON.stringify(this.heard.at(-1))}`));
      }
    });
  }

  send(request: StudentRequest): void {
    this.socket.send(JSON.stringify(request));
  }

  /** The next answer that fits, from now on. */
  next<T extends StudentAnswer>(fits: (answer: StudentAnswer) => boolean): Promise<T> {
    return new Promise((resolve, reject) =>
      this.waiting.push({fits, resolve: resolve as (answer: StudentAnswer) => void, reject}),
    );
  }

  /** The latest desk, waiting for the first one. */
  async desk() {
    const found = this.heard.findLast((answer) => answer.is === 'desk');
    const answer = found ?? (await this.next((each) => each.is === 'desk'));
    return (answer as Extract<StudentAnswer, {is: 'desk'}>).desk;
  }

  async open(assignment: string): Promise<Extract<StudentAnswer, {is: 'opened'}>> {
    const answer = this.next<Extract<StudentAnswer, {is: 'opened'}>>(({is}) => is === 'opened');
    this.send({is: 'open', assignment});
    return answer;
  }

  act(
    assignment: string,
    number: number,
    action: Action,
  ): Promise<Extract<StudentAnswer, {is: 'done' | 'refused' | 'opened'}>> {
    const answer = this.next<Extract<StudentAnswer, {is: 'done' | 'refused' | 'opened'}>>(
      (each) =>
        ((each.is === 'done' || each.is === 'refused') && each.number === number) ||
        each.is === 'opened',
    );
    this.send({is: 'act', assignment, number, action} as StudentRequest);
    return answer;
  }

  /** Asks a question and gives what is told, or the sentence why not. */
  async question(request: Record<string, unknown>): Promise<unknown> {
    const ask = this.asked++;
    const answer = this.next<Extract<StudentAnswer, {is: 'told' | 'not-told'}>>(
      (each) => (each.is === 'told' || each.is === 'not-told') && each.ask === ask,
    );
    this.send({...request, ask} as StudentRequest);
    const heard = await answer;
    return heard.is === 'told' ? heard.told : {refused: heard.sentence};
  }

  /** The network goes, without a word. */
  drop(): void {
    this.socket.terminate();
  }
}
