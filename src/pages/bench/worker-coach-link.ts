import type {HintLevel} from '../../bench/actions.ts';
import type {Unit} from '../../content/unit.ts';
import type {CoachWord, SeenStep} from '../../diagnosis/coached-call.ts';
import type {CoachLink} from './bench-link.ts';
import type {CoachAnswer, CoachRequest} from './coach-messages.ts';

interface Waiting {
  resolve(answer: CoachAnswer): void;
  reject(reason: Error): void;
}

/** The coach in a worker of its own. It hears from the bench what the student saw, and nothing else. */
export class WorkerCoachLink implements CoachLink {
  private readonly worker: Worker;
  private readonly trail: (from: number) => Promise<readonly SeenStep[]>;
  private readonly waiting = new Map<number, Waiting>();
  private asked = 0;
  private told = 0;
  private tell: (left: number) => void = () => undefined;
  private queue: Promise<unknown> = Promise.resolve();

  /** @param trail gives what the student has seen from a step on */
  constructor(unit: Unit, trail: (from: number) => Promise<readonly SeenStep[]>) {
    this.trail = trail;
    this.worker = new Worker(new URL('./coach.worker.ts', import.meta.url), {type: 'module'});
    this.worker.addEventListener('message', ({data}: MessageEvent<CoachAnswer>) => this.hear(data));
    this.worker.addEventListener('error', () => this.lose());
    this.say({ask: 'begin', unit});
  }

  /** One after the other: steps must arrive in order. */
  follow(tell: (left: number) => void = () => undefined): Promise<CoachWord> {
    const turn = this.queue.then(async () => {
      const steps = await this.trail(this.told);
      this.told += steps.length;
      this.tell = tell;
      const answer = await this.ask((number) => ({ask: 'follow', number, steps}));
      if (answer.is !== 'followed') throw new Error('The coach did not follow.');
      return answer.word;
    });
    this.queue = turn.catch(() => undefined);
    return turn;
  }

  async hint(level: HintLevel): Promise<string> {
    await this.follow();
    const answer = await this.ask((number) => ({ask: 'hint', number, level}));
    if (answer.is !== 'hint') throw new Error('The coach has nothing to say.');
    return answer.text;
  }

  close(): void {
    this.worker.terminate();
    this.waiting.clear();
  }

  private ask(question: (number: number) => CoachRequest): Promise<CoachAnswer> {
    const number = this.asked++;
    return new Promise((resolve, reject) => {
      this.waiting.set(number, {resolve, reject});
      this.say(question(number));
    });
  }

  private say(request: CoachRequest): void {
    this.worker.postMessage(request);
  }

  private hear(answer: CoachAnswer): void {
    if (answer.is === 'following') return this.tell(answer.left);
    const waiting = this.waiting.get(answer.number);
    this.waiting.delete(answer.number);
    if (answer.is === 'error') waiting?.reject(new Error(answer.sentence));
    else waiting?.resolve(answer);
  }

  private lose(): void {
    const waiting = [...this.waiting.values()];
    this.waiting.clear();
    for (const {reject} of waiting)
      reject(new Error('The coach did not load. Reload the page to ask; your log is kept.'));
  }
}
