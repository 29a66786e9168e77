import type {WebSocket} from 'ws';
import {
  instructorRequest,
  type InstructorAnswer,
  type InstructorRequest,
} from '../../classroom/protocol/instructor-messages.ts';
import {closeCodes} from '../../classroom/protocol/student-messages.ts';
import type {Session} from '../data/accounts.ts';
import type {BusMessage} from './live-bus.ts';
import {ClassSocket} from './class-socket.ts';
import {liveRowsOf, refreshSuspects} from './live-view.ts';
import type {School} from './school.ts';
import {pollFor} from './student-desk.ts';

const rules = {schema: instructorRequest, longest: 8192, perSecond: 10, atOnce: 60};

/** A class of thirty moves all the time; its instructor looks a few times a second at most. */
const sendEveryMs = 500;
/** Minutes tick on in the list even where nobody does anything. */
const atLeastEveryMs = 10_000;

/** An instructor's live view. The sign-in was checked when the socket was opened. */
export class InstructorSocket {
  private readonly school: School;
  private readonly session: Session;
  private readonly line: ClassSocket<InstructorRequest, InstructorAnswer>;
  private readonly stopHearing: () => void;
  private readonly ticking: NodeJS.Timeout;
  private readonly moved = new Set<string>();
  private classId?: string;
  private following?: string;
  private due?: NodeJS.Timeout;

  constructor(school: School, socket: WebSocket, session: Session) {
    this.school = school;
    this.session = session;
    this.line = new ClassSocket<InstructorRequest, InstructorAnswer>(
      socket,
      rules,
      (request) => this.handle(request),
      () => this.leave(),
    );
    this.line.welcome();
    this.stopHearing = school.bus.subscribe((message) => this.hear(message));
    this.ticking = setInterval(() => this.soon(), atLeastEveryMs);
    this.ticking.unref();
  }

  private leave(): void {
    this.stopHearing();
    clearInterval(this.ticking);
    clearTimeout(this.due);
  }

  private async handle(request: InstructorRequest): Promise<void> {
    const {classes, work, talk, bus} = this.school;
    switch (request.is) {
      case 'ping':
        return this.line.send({is: 'pong'});
      case 'watch': {
        const found = await classes.find(request.class, this.session.instructor);
        if (!found) return this.refuse('There is no such class of yours.');
        this.classId = found.id;
        this.following = undefined;
        await this.sendRows();
        const poll = await talk.currentPoll(found.id);
        if (poll) this.line.send({is: 'poll', poll: await pollFor(this.school, poll)});
        const rows = await work.ofClass(found.id);
        for (const {id, stage, suspects} of rows) {
          if (stage === 'working' && suspects === null) this.moved.add(id);
        }
        return this.soon();
      }
      case 'follow': {
        this.following = undefined;
        if (request.assignment === undefined) return;
        const row = await work.assignment(request.assignment);
        if (!row || row.class !== this.classId)
          return this.refuse('There is no such call in this class.');
        this.following = row.id;
        return this.sendLog();
      }
      case 'note': {
        const student = await classes.student(request.student, this.session.instructor);
        if (!student) return this.refuse('There is no such student of yours.');
        const note = await talk.addNote({
          class: student.class,
          student: student.id,
          set: null,
          kind: 'note',
          text: request.text,
        });
        bus.publish({is: 'note', class: student.class, student: student.id, id: note.id});
        return this.line.send({is: 'sent', to: 1});
      }
      case 'hint': {
        const set = await work.set(request.set);
        const found = set && (await classes.find(set.class, this.session.instructor));
        if (!set || !found) return this.refuse('There is no such set of yours.');
        const note = await talk.addNote({
          class: set.class,
          student: null,
          set: set.id,
          kind: 'hint',
          text: request.text,
        });
        bus.publish({is: 'note', class: set.class, id: note.id});
        return this.line.send({is: 'sent', to: (await work.ofSet(set.id)).length});
      }
      case 'wall-names': {
        const found = await classes.find(request.class, this.session.instructor);
        if (!found) return this.refuse('There is no such class of yours.');
        await classes.namesOnWall(found.id, request.names);
        bus.publish({is: 'wall', class: found.id});
      }
    }
  }

  private refuse(sentence: string): void {
    this.line.send({is: 'refused', sentence});
  }

  private hear(message: BusMessage): void {
    if (message.class !== this.classId) return;
    if (message.is === 'moved') this.moved.add(message.assignment);
    if (message.is === 'poll') {
      void this.school.talk.poll(message.id).then(async (row) => {
        if (row) this.line.send({is: 'poll', poll: await pollFor(this.school, row)});
      }, this.lost);
      return;
    }
    this.soon();
  }

  /** Collects what moves meanwhile. */
  private soon(): void {
    if (!this.classId) return;
    this.due ??= setTimeout(() => {
      this.due = undefined;
      const moved = [...this.moved];
      this.moved.clear();
      void this.sendRows().catch(this.lost);
      if (this.following && moved.includes(this.following)) void this.sendLog().catch(this.lost);
      for (const id of moved) void refreshSuspects(this.school, id).catch(() => undefined);
    }, sendEveryMs);
    this.due.unref();
  }

  private readonly lost = (): void =>
    this.line.end(closeCodes.tryLater, 'The server could not read its records. Try again.');

  private async sendRows(): Promise<void> {
    const {classId} = this;
    if (!classId) return;
    this.line.send({is: 'live', class: classId, rows: await liveRowsOf(this.school, classId)});
  }

  private async sendLog(): Promise<void> {
    const row = this.following && (await this.school.work.assignment(this.following));
    if (!row || row.kind !== 'call' || row.faults === null) return;
    const call = await this.school.benches.open(row);
    const student = (await this.school.classes.roster(row.class)).find(
      ({id}) => id === row.student,
    );
    this.line.send({
      is: 'log',
      assignment: row.id,
      name: student?.name ?? '',
      view: call.bench.view(),
    });
  }
}
