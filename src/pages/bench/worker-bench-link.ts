import type {Action} from '../../bench/actions.ts';
import type {AttemptRecord} from '../../bench/attempt.ts';
import type {BenchAnswer, BenchRequest, CatalogueLine} from '../../bench/bench-messages.ts';
import type {BenchView} from '../../bench/bench-view.ts';
import type {Debrief} from '../../bench/debrief.ts';
import type {Unit} from '../../content/unit.ts';
import type {Reasoning} from '../../diagnosis/reasoning.ts';
import type {TrailAnswer, TrailRequest} from './coach-messages.ts';
import type {ReasoningAnswer, ReasoningProgress, ReasoningRequest} from './reasoning-messages.ts';
import type {Answer, BenchLink, CoachLink} from './bench-link.ts';
import {WorkerCoachLink} from './worker-coach-link.ts';

type Request = BenchRequest | ReasoningRequest | TrailRequest;
type Heard = BenchAnswer | ReasoningAnswer | TrailAnswer;
type Question = Request extends infer R ? (R extends Request ? Omit<R, 'number'> : never) : never;
type Reply<Is extends Heard['is']> = Extract<Heard, {readonly is: Is}>;

interface Waiting {
  resolve(answer: Heard): void;
  /** Hears what share is done of what takes long. */
  readonly tell?: (share: number) => void;
  reject(reason: Error): void;
}

/** The bench in a worker of its own: the sealed text goes there and is opened only there. */
export class WorkerBenchLink implements BenchLink {
  private readonly worker: Worker;
  private readonly waiting = new Map<number, Waiting>();
  private asked = 0;
  /** What a second worker needs to stand where this one does. */
  private opened?: {readonly unit: Unit; readonly record: AttemptRecord};
  private readonly done: Action[] = [];
  private second?: WorkerBenchLink;

  constructor() {
    this.worker = new Worker(new URL('./bench.worker.ts', import.meta.url), {type: 'module'});
    this.worker.addEventListener('message', (event: MessageEvent<Heard | ReasoningProgress>) =>
      this.hear(event.data),
    );
    this.worker.addEventListener('error', () => this.lose());
  }

  async open(unit: Unit, record: AttemptRecord): Promise<BenchView> {
    const {sealed, complaint, seed, actions} = record;
    this.opened = {unit, record};
    const answer = await this.ask({ask: 'init', unit, sealed, complaint, seed, actions});
    return expecting(answer, 'view').view;
  }

  async act(action: Action): Promise<Answer> {
    const answer = await this.ask({ask: 'act', action});
    if (answer.is === 'refused') return {refused: answer.sentence};
    const {view} = expecting(answer, 'view');
    this.done.push(action);
    return {view};
  }

  async catalogue(): Promise<readonly CatalogueLine[]> {
    return expecting(await this.ask({ask: 'catalogue'}), 'catalogue').lines;
  }

  async debrief(): Promise<Debrief> {
    return expecting(await this.ask({ask: 'debrief'}), 'debrief').debrief;
  }

  /** Takes seconds, so a worker of its own does it: the bench goes on answering. */
  async reasoning(tell?: (share: number) => void): Promise<Reasoning> {
    if (!this.opened) throw new Error('The bench has no call yet.');
    const {unit, record} = this.opened;
    this.second?.close();
    const second = new WorkerBenchLink();
    this.second = second;
    try {
      await second.open(unit, {...record, actions: [...record.actions, ...this.done]});
      return expecting(await second.ask({ask: 'reasoning'}, tell), 'reasoning').reasoning;
    } finally {
      second.close();
    }
  }

  coach(): CoachLink {
    if (!this.opened) throw new Error('The bench has no call yet.');
    return new WorkerCoachLink(
      this.opened.unit,
      async (from) => expecting(await this.ask({ask: 'trail', from}), 'trail').steps,
    );
  }

  close(): void {
    this.second?.close();
    this.worker.terminate();
    this.waiting.clear();
  }

  private ask(question: Question, tell?: (share: number) => void): Promise<Heard> {
    const number = this.asked++;
    return new Promise((resolve, reject) => {
      this.waiting.set(number, {resolve, reject, tell});
      this.worker.postMessage({...question, number});
    });
  }

  private hear(answer: Heard | ReasoningProgress): void {
    const waiting = this.waiting.get(answer.number);
    if (answer.is === 'progress') {
      waiting?.tell?.(answer.share);
      return;
    }
    this.waiting.delete(answer.number);
    if (answer.is === 'error') waiting?.reject(new Error(answer.sentence));
    else waiting?.resolve(answer);
  }

  /** The worker's file did not load, or it broke down: everyone who waits is told. */
  private lose(): void {
    const waiting = [...this.waiting.values()];
    this.waiting.clear();
    for (const {reject} of waiting) {
      reject(
        new Error(
          'The bench stopped working. Reload the page; everything up to your last action is kept.',
        ),
      );
    }
  }
}

function expecting<Is extends Heard['is']>(answer: Heard, is: Is): Reply<Is> {
  if (answer.is === is) return answer as Reply<Is>;
  throw new Error(
    answer.is === 'refused'
      ? answer.sentence
      : `The bench answered "${answer.is}" where "${is}" was due.`,
  );
}
