import type {Action, HintLevel} from '../../bench/actions.ts';
import type {CatalogueLine} from '../../bench/bench-messages.ts';
import type {BenchView} from '../../bench/bench-view.ts';
import type {Debrief} from '../../bench/debrief.ts';
import {applyAnswer} from '../../classroom/protocol/apply-answer.ts';
import type {
  StudentAnswer,
  StudentRequest,
  Told,
} from '../../classroom/protocol/student-messages.ts';
import type {Reasoning} from '../../diagnosis/reasoning.ts';
import type {Asked, StudentLine} from '../class/student-line.ts';
import type {Answer, BenchLink, CoachLink} from './bench-link.ts';

interface Pending {
  readonly action: Action;
  resolve(answer: Answer): void;
  reject(reason: Error): void;
}

/** How long an action may stay unanswered on a line that seems to stand. */
const overdueMs = 12_000;

const gone = 'This device is no longer at work in the class.';

/**
 * The bench on the class's server. Every action carries the next number and counts as done once the server says that it
 * is on disk; what was not answered when the line broke is said again with the same number, and the server does it once.
 */
export class SocketBenchLink implements BenchLink {
  /** Absent where the instructor has not allowed the coach. */
  readonly coach?: () => CoachLink;
  private readonly line: StudentLine;
  private readonly assignment: string;
  private readonly stopListening: () => void;
  private readonly pending = new Map<number, Pending>();
  private opening: {resolve(view: BenchView): void; reject(reason: Error): void} | undefined;
  private view: BenchView | undefined;
  private last = 0;
  private overdue: ReturnType<typeof setTimeout> | undefined;
  /** What the coach said last: the server takes no other words into the log, and these at their own level. */
  private hint: {readonly level: HintLevel; readonly text: string} | undefined;

  constructor(line: StudentLine, assignment: string, coached = false) {
    if (coached) this.coach = () => this.coachOverThere();
    this.line = line;
    this.assignment = assignment;
    this.stopListening = line.listen((heard) => this.hear(heard));
  }

  /** Whether the call is at its beginning or goes on, and what is done stands on the server: the record here is empty. */
  open(): Promise<BenchView> {
    return new Promise((resolve, reject) => {
      this.opening = {resolve, reject};
      if (this.hasEnded()) this.fail();
      else this.line.send({is: 'open', assignment: this.assignment});
    });
  }

  act(action: Action): Promise<Answer> {
    return new Promise((resolve, reject) => {
      if (this.hasEnded()) {
        reject(new Error(gone));
        return;
      }
      const number = this.last + this.pending.size + 1;
      const said = this.asTheCoachSaid(action);
      this.pending.set(number, {action: said, resolve, reject});
      this.say(number, said);
    });
  }

  async catalogue(): Promise<readonly CatalogueLine[]> {
    return (await this.ask('catalogue', {is: 'catalogue', assignment: this.assignment})).lines;
  }

  async debrief(): Promise<Debrief> {
    return (await this.ask('debrief', {is: 'debrief', assignment: this.assignment})).debrief;
  }

  async reasoning(): Promise<Reasoning> {
    return (await this.ask('reasoning', {is: 'reasoning', assignment: this.assignment})).reasoning;
  }

  /** The coach works on the server, which follows the log by itself. */
  private coachOverThere(): CoachLink {
    return {
      follow: async () => ({followed: this.last}),
      hint: async (level) => {
        const told = await this.ask('coach', {is: 'coach', assignment: this.assignment, level});
        this.hint = {level: told.level, text: told.text};
        return told.text;
      },
      close: () => undefined,
    };
  }

  close(): void {
    clearTimeout(this.overdue);
    this.stopListening();
    this.pending.clear();
    this.opening = undefined;
  }

  private asTheCoachSaid(action: Action): Action {
    return action.do === 'hint' && action.text === this.hint?.text
      ? {...action, level: this.hint.level}
      : action;
  }

  private async ask<What extends Told['what']>(
    what: What,
    asked: Asked,
  ): Promise<Extract<Told, {readonly what: What}>> {
    const told = await this.line.ask(asked);
    if (told.what !== what)
      throw new Error(`The class answered "${told.what}" where "${what}" was due.`);
    return told as Extract<Told, {readonly what: What}>;
  }

  private hear(heard: StudentAnswer | {readonly is: 'state'}): void {
    if (heard.is === 'state') {
      clearTimeout(this.overdue);
      // whatever was said before the line broke may or may not have arrived: how it stands tells
      if (this.line.state.is === 'joined' && (this.view || this.opening))
        this.line.send({is: 'open', assignment: this.assignment});
      else if (this.hasEnded()) this.fail();
      return;
    }
    if (heard.is === 'not-told' || !('assignment' in heard)) return;
    if (heard.assignment !== this.assignment) return;
    if (heard.is === 'opened') this.resume(heard);
    else if (heard.is === 'done') this.done(heard);
    else this.refused(heard.number, heard.sentence);
  }

  private resume({last, view, hintOwed}: Extract<StudentAnswer, {is: 'opened'}>): void {
    this.last = last;
    this.view = view;
    const {opening} = this;
    this.opening = undefined;
    if (hintOwed && this.pending.size === 0) {
      // the coach had spoken when the line broke: the server takes nothing before these words are in the log
      this.hint = hintOwed;
      void this.act({do: 'hint', ...hintOwed}).then(
        (answer) => opening?.resolve('view' in answer ? answer.view : view),
        (error: unknown) => opening?.reject(error instanceof Error ? error : new Error(gone)),
      );
      return;
    }
    opening?.resolve(view);
    for (const [number, {action, resolve}] of this.pending) {
      if (number <= last) {
        this.pending.delete(number);
        resolve({view});
      } else this.say(number, action);
    }
  }

  private done(answer: Extract<StudentAnswer, {is: 'done'}>): void {
    if (!this.view) return;
    this.view = applyAnswer(this.view, answer);
    this.last = Math.max(this.last, answer.number);
    this.settle(answer.number)?.resolve({view: this.view});
  }

  private refused(number: number, sentence: string): void {
    // a sentence without a call: it cannot be opened (closed, not begun, time is up)
    if (this.opening) {
      const {opening} = this;
      this.opening = undefined;
      opening.reject(new Error(sentence));
      return;
    }
    this.settle(number)?.resolve({refused: sentence});
  }

  private settle(number: number): Pending | undefined {
    const pending = this.pending.get(number);
    this.pending.delete(number);
    clearTimeout(this.overdue);
    return pending;
  }

  private say(number: number, action: Action): void {
    const said = action as Extract<StudentRequest, {is: 'act'}>['action'];
    if (!this.line.send({is: 'act', assignment: this.assignment, number, action: said})) return;
    clearTimeout(this.overdue);
    this.overdue = setTimeout(() => this.line.renew(), overdueMs);
  }

  private hasEnded(): boolean {
    return this.line.state.is === 'taken-over' || this.line.state.is === 'not-known';
  }

  private fail(): void {
    const waiting = [...this.pending.values(), ...(this.opening ? [this.opening] : [])];
    this.pending.clear();
    this.opening = undefined;
    for (const {reject} of waiting) reject(new Error(gone));
  }
}
