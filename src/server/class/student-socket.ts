import type {WebSocket} from 'ws';
import {catalogueLines} from '../../bench/catalogue-lines.ts';
import type {Action} from '../../bench/actions.ts';
import {
  closeCodes,
  longestStudentMessage,
  studentRequest,
  type StudentAnswer,
  type StudentRequest,
  type Told,
} from '../../classroom/protocol/student-messages.ts';
import type {CatalogueEntry} from '../../classroom/protocol/rest.ts';
import type {HookupWire} from '../../hookup/hookup-task.ts';
import type {StudentRow} from '../data/class-records.ts';
import {rulesOf, type AssignmentRow, type SetRow} from '../data/work-records.ts';
import {NotKeptError} from './benches.ts';
import type {BusMessage} from './live-bus.ts';
import {ClassSocket} from './class-socket.ts';
import {judge} from './judging.ts';
import {Refusal} from './refusal.ts';
import type {School} from './school.ts';
import {randomId} from './secrets.ts';
import {deskOf, isDebriefReady, leftMs, pollFor, shownNote} from './student-desk.ts';
import {isFinished} from './work-sets.ts';

type Asked = Extract<StudentRequest, {ask: number}>;

const rules = {
  schema: studentRequest,
  longest: longestStudentMessage,
  // quicker than any hand; a device that comes back sends at most this many waiting actions at once
  perSecond: 20,
  atOnce: 200,
};

const notYours = 'There is no such call on your desk. Reload the page.';
const tooEarly = 'The debrief comes once everything that is hidden is named, or given up.';
const notYet = 'Your instructor tells the debrief when the set is closed.';

interface Owed {
  readonly level: 1 | 2 | 3;
  readonly text: string;
}

/** What a student has open, so that the rows need not be read for each action. */
interface Open {
  row: AssignmentRow;
  set: SetRow;
  /** What the coach has said and the log does not hold yet. */
  owed?: Owed;
}

/** One student's device. Nothing goes down this socket that tells a hidden fault before it is named. */
export class StudentSocket {
  private readonly school: School;
  private readonly line: ClassSocket<StudentRequest, StudentAnswer>;
  private readonly id = randomId();
  private readonly open = new Map<string, Open>();
  private stopHearing: () => void = () => undefined;
  private student?: StudentRow & {className: string};
  private asking = 0;
  private gone = false;

  constructor(school: School, socket: WebSocket) {
    this.school = school;
    this.line = new ClassSocket<StudentRequest, StudentAnswer>(
      socket,
      rules,
      (request) => this.handle(request),
      () => this.leave(),
    );
  }

  private leave(): void {
    this.gone = true;
    this.stopHearing();
    const {student} = this;
    if (!student) return;
    const {id, class: classId} = student;
    this.school.presence.gone(this.id);
    this.school.bus.publish({is: 'left', class: classId, student: id, socket: this.id});
  }

  private async handle(request: StudentRequest): Promise<void> {
    if (request.is === 'ping') return this.line.send({is: 'pong'});
    if (request.is === 'join') return this.join(request.token, request.takeBack);
    if (!this.student) {
      return this.line.end(closeCodes.notKnown, 'Join the class first.');
    }
    switch (request.is) {
      case 'open':
        return this.openCall(request.assignment);
      case 'act':
        return this.act(request);
      case 'vote':
        return this.vote(request.poll, request.answer);
      default:
        return this.answer(request);
    }
  }

  private async join(token: string, takeBack?: true): Promise<void> {
    const {classes} = this.school;
    if (takeBack) await classes.takeBack(token);
    const student = await classes.byToken(token);
    if (!student) {
      // a device that only comes back from a lost network takes nothing away from the newer one
      if (await classes.isTakenOver(token)) {
        return this.line.endWith(closeCodes.takenOver, {is: 'taken-over'});
      }
      return this.line.end(
        closeCodes.notKnown,
        'This device is not in the class any more. Join again with the class code.',
      );
    }
    // hung up meanwhile: nobody is here, and nobody would take the ear away again
    if (this.gone) return;
    this.stopHearing();
    this.student = student;
    this.stopHearing = this.school.bus.subscribe((message) => this.hear(message), {
      class: student.class,
      student: student.id,
    });
    this.line.welcome();
    this.school.presence.here(student.id, this.id);
    this.school.bus.publish({
      is: 'joined',
      class: student.class,
      student: student.id,
      socket: this.id,
    });
    await this.sendDesk();
  }

  private async sendDesk(): Promise<void> {
    this.line.send({is: 'desk', desk: await deskOf(this.school, this.student!)});
  }

  /** The rows of an assignment, where it is this student's. */
  private async mine(id: string): Promise<Open> {
    const known = this.open.get(id);
    if (known) return known;
    const row = await this.school.work.assignment(id);
    const set = row && (await this.school.work.set(row.set));
    if (!row || !set || row.student !== this.student!.id || set.state === 'draft') {
      throw new Refusal(404, notYours);
    }
    const open = {row, set};
    this.open.set(id, open);
    return open;
  }

  private async openCall(id: string): Promise<void> {
    const {work, clock, benches, bus} = this.school;
    this.open.delete(id);
    const open = await this.mine(id);
    if (open.row.kind !== 'call' || open.row.stage === 'waiting') {
      throw new Refusal(409, 'There is nothing to find there yet. Go back to your desk.');
    }
    if (open.row.stage === 'new') {
      if (open.set.state !== 'open') {
        throw new Refusal(409, 'This set is closed. Ask your instructor to open it.');
      }
      await work.opened(id, clock.now());
      open.row = (await work.assignment(id))!;
      bus.publish({is: 'moved', class: open.row.class, student: open.row.student, assignment: id});
    }
    const call = await benches.open(open.row);
    open.owed = await this.owedHint(id, call.bench.actions);
    const left = leftMs(open.row, open.set, clock.now());
    this.line.send(
      call.opened({
        coach: rulesOf(open.set).coach,
        ...(left === undefined ? {} : {leftMs: left}),
        ...(open.owed ? {hintOwed: open.owed} : {}),
      }),
    );
  }

  /** The coach's last words, where they were told and the connection broke before they were in the log. */
  private async owedHint(id: string, actions: readonly Action[]): Promise<Owed | undefined> {
    const told = await this.school.talk.coachHints(id);
    const logged = actions.filter((action) => action.do === 'hint').length;
    const last = told.length > logged ? told.at(-1)! : undefined;
    return last && {level: last.level as Owed['level'], text: last.text};
  }

  private async act({
    assignment,
    number,
    action,
  }: Extract<StudentRequest, {is: 'act'}>): Promise<void> {
    const {benches, clock, bus} = this.school;
    const open = await this.mine(assignment);
    const {row} = open;
    if (row.kind !== 'call') throw new Refusal(404, notYours);
    const refused = this.barred(open, action);
    if (refused) return this.line.send({is: 'refused', assignment, number, sentence: refused});
    let kept;
    try {
      kept = await benches.act(row, number, action, clock.now());
    } catch (error) {
      benches.forget(assignment);
      if (!(error instanceof NotKeptError)) throw error;
      return this.line.end(
        closeCodes.tryLater,
        'Your last action could not be kept, so it was not done: the data folder of the server cannot be written just now. Everything confirmed before it is kept. Tell your instructor.',
      );
    }
    if (kept.is === 'apart') {
      benches.forget(assignment);
      return this.openCall(assignment);
    }
    if (kept.is === 'refused') {
      return this.line.send({is: 'refused', assignment, number, sentence: kept.sentence});
    }
    this.line.send(kept.answer);
    if (action.do === 'hint') open.owed = undefined;
    if (!kept.isNew) return;
    bus.publish({is: 'moved', class: row.class, student: row.student, assignment});
    if ((action.do === 'name' || action.do === 'give-up') && kept.stage !== 'working') {
      this.open.delete(assignment);
      // whoever asks for the debrief or the gradebook asks again
      void judge(this.school, assignment).catch(() => undefined);
      await this.sendDesk();
    }
  }

  /** Why nothing can be done on this call now. */
  private barred({row, set, owed}: Open, action: Action): string | undefined {
    const {do: what} = action;
    if (what === 'hint') {
      return action.text === owed?.text && action.level === owed.level
        ? undefined
        : 'The coach has not said that. Ask the coach.';
    }
    if (owed !== undefined) return "The coach's hint goes into the log first. Reload the page.";
    if (what === 'name' || what === 'give-up' || what === 'clear' || what === 'note')
      return undefined;
    if (set.state !== 'open') {
      return 'This set is closed: you can still name the fault, or give up.';
    }
    if (leftMs(row, set, this.school.clock.now()) === 0) {
      return 'Time is up: you can still name the fault, or give up.';
    }
    return undefined;
  }

  private async vote(poll: string, answer: number): Promise<void> {
    const {talk, bus} = this.school;
    const student = this.student!;
    const row = await talk.poll(poll);
    if (!row || row.class !== student.class) throw new Refusal(404, 'There is no such question.');
    const {answers} = JSON.parse(row.body) as {answers: string[]};
    if (row.state === 'open' && answer < answers.length) {
      await talk.vote(poll, student.id, answer);
      bus.publish({is: 'poll', class: student.class, id: poll});
    }
    this.line.send({is: 'poll', poll: await pollFor(this.school, row, student.id)});
  }

  /** Questions that take long are answered when they are, and meanwhile actions go on. */
  private answer(request: Asked): void {
    if (this.asking >= 4) {
      return this.line.send({
        is: 'not-told',
        ask: request.ask,
        sentence: 'One thing after another: wait for the last answer.',
      });
    }
    this.asking += 1;
    void this.tell(request)
      .then(
        (told) => this.line.send({is: 'told', ask: request.ask, told}),
        (error: unknown) =>
          this.line.send({
            is: 'not-told',
            ask: request.ask,
            sentence:
              error instanceof Refusal
                ? error.message
                : 'The server could not work this out. Try again in a minute.',
          }),
      )
      .finally(() => (this.asking -= 1));
  }

  private async tell(request: Asked): Promise<Told> {
    const {school} = this;
    const {row: known, set} = await this.mine(request.assignment);
    const row = (await school.work.assignment(known.id)) ?? known;
    const unit = (): ReturnType<School['content']['unit']> => school.content.unit(row.unit);
    switch (request.is) {
      case 'catalogue':
        if (row.kind !== 'call') throw new Refusal(404, notYours);
        return {what: 'catalogue', lines: catalogueLines(unit())};
      case 'debrief':
      case 'reasoning': {
        if (!isFinished(row)) throw new Refusal(409, tooEarly);
        if (!isDebriefReady(row, set)) {
          const fresh = await school.work.set(row.set);
          if (!fresh || !isDebriefReady(row, fresh)) throw new Refusal(409, notYet);
        }
        const {debrief, reasoning} = await judge(school, row.id);
        return request.is === 'debrief'
          ? {what: 'debrief', debrief}
          : {what: 'reasoning', reasoning};
      }
      case 'coach':
        return this.coach(row, set, request.level);
      case 'choices':
        return {what: 'choices', lines: await this.choices(row, set)};
      case 'hide':
        return this.hide(row, set, request.fault);
      case 'begin': {
        if (row.kind !== 'hookup') throw new Refusal(404, notYours);
        this.isStillOn(row, set);
        if (row.opened_at === null) {
          const {id: assignment, class: classId, student} = row;
          await school.work.opened(assignment, school.clock.now());
          school.bus.publish({is: 'moved', class: classId, student, assignment});
          this.open.delete(assignment);
          await this.sendDesk();
        }
        return {what: 'begun'};
      }
      case 'check-hookup': {
        if (row.kind !== 'hookup') throw new Refusal(404, notYours);
        this.isStillOn(row, set);
        const wires = request.wires as readonly HookupWire[];
        const report = await school.longWork.ask('hookup', {task: row.unit, wires});
        await school.work.opened(row.id, school.clock.now());
        await school.talk.addHookupCheck({
          assignment: row.id,
          wires: JSON.stringify(wires),
          verdict: report.verdict,
          findings: report.findings.length,
        });
        school.bus.publish({
          is: 'moved',
          class: row.class,
          student: row.student,
          assignment: row.id,
        });
        return {what: 'hookup', report};
      }
    }
  }

  /** @throws Refusal where the set is closed or the time is up. */
  private isStillOn(row: AssignmentRow, set: SetRow): void {
    if (set.state !== 'open') throw new Refusal(409, 'This set is closed.');
    if (leftMs(row, set, this.school.clock.now()) === 0) throw new Refusal(409, 'Time is up.');
  }

  private async coach(row: AssignmentRow, set: SetRow, level: 1 | 2 | 3): Promise<Told> {
    const {longWork, work, talk, bus} = this.school;
    if (!rulesOf(set).coach) {
      throw new Refusal(409, 'Your instructor has not allowed the coach for this set.');
    }
    if (row.kind !== 'call' || isFinished(row)) throw new Refusal(409, 'The search is over.');
    this.isStillOn(row, set);
    const owed = this.open.get(row.id)?.owed;
    if (owed) return {what: 'coach', ...owed};
    const call = await work.call(row);
    const {text, minutes} = await longWork.ask('coach', {assignment: row.id, call, level});
    await talk.addCoachHint({
      assignment: row.id,
      after_number: call.actions.length,
      level,
      minutes,
      text,
    });
    bus.publish({is: 'moved', class: row.class, student: row.student, assignment: row.id});
    const open = this.open.get(row.id);
    if (open) open.owed = {level, text};
    return {what: 'coach', level, text};
  }

  /** What a student may hide within the instructor's limits. */
  private async choices(row: AssignmentRow, set: SetRow): Promise<CatalogueEntry[]> {
    if (row.kind !== 'hide') throw new Refusal(404, notYours);
    const allowed = new Set<string>(rulesOf(set).allowed ?? []);
    const all = await this.school.longWork.ask('catalogue', {unit: row.unit});
    return all.filter(({difficulty}) => difficulty !== undefined && allowed.has(difficulty));
  }

  private async hide(row: AssignmentRow, set: SetRow, fault: string): Promise<Told> {
    const {longWork, work, clock, bus} = this.school;
    if (set.state !== 'open') throw new Refusal(409, 'This set is closed.');
    if (!(await this.choices(row, set)).some(({id}) => id === fault)) {
      throw new Refusal(
        409,
        'Your instructor has not allowed this fault. Choose another from the list.',
      );
    }
    const {text, silent} = await longWork.ask('complaint', {unit: row.unit, faults: [fault]});
    if (silent) {
      throw new Refusal(
        409,
        'A customer would notice nothing of this fault, so nobody would be called. Choose another.',
      );
    }
    const hidden = {faults: [fault], complaint: text};
    if (!(await work.hide(row.id, row.hides_for!, hidden, clock.now()))) {
      throw new Refusal(409, 'You have hidden a fault here already.');
    }
    bus.publish({is: 'desk', class: row.class});
    return {what: 'hidden'};
  }

  private hear(message: BusMessage): void {
    const {student} = this;
    if (!student || message.is === 'moved') return;
    void this.react(message, student).catch(() =>
      this.line.end(closeCodes.tryLater, 'The server could not read its records. Try again.'),
    );
  }

  private async react(message: BusMessage, student: StudentRow): Promise<void> {
    const {talk, benches} = this.school;
    switch (message.is) {
      case 'joined':
        if (message.socket === this.id) return;
        // the newer device may stand on another process: what is kept there counts
        for (const id of this.open.keys()) benches.forget(id);
        return this.line.endWith(closeCodes.takenOver, {is: 'taken-over'});
      case 'send-away':
        return this.line.end(
          closeCodes.notKnown,
          'Your instructor has sent this device away. Join again with the class code.',
        );
      case 'desk':
        this.open.clear();
        return this.sendDesk();
      case 'note': {
        const note = await talk.note(message.id);
        if (note) this.line.send({is: 'note', note: shownNote(note)});
        return;
      }
      case 'poll': {
        const poll = await talk.poll(message.id);
        if (poll) {
          this.line.send({is: 'poll', poll: await pollFor(this.school, poll, student.id)});
        }
      }
    }
  }
}
