import type {Action} from '../../bench/actions.ts';
import type {AttemptRecord} from '../../bench/attempt.ts';
import type {BenchView} from '../../bench/bench-view.ts';
import type {Unit} from '../../content/unit.ts';
import type {AttemptProgress, AttemptStage, AttemptStore} from '../../store/attempts.ts';
import type {BenchLink} from './bench-link.ts';

/** Done, or refused with one sentence. */
export type Outcome = {readonly done: true} | {readonly refused: string};

/**
 * One attempt at work: each action is first done by the bench, then written to the store, and only then shown.
 * What is shown is therefore always what a reload brings back. Actions wait for one another.
 */
export class BenchSession {
  readonly record: AttemptRecord;
  readonly unit: Unit;
  private readonly link: BenchLink;
  private readonly store: AttemptStore;
  private readonly tell: (view: BenchView) => void;
  private count: number;
  private gaveUp: boolean;
  private queue: Promise<unknown> = Promise.resolve();

  private constructor(
    record: AttemptRecord,
    unit: Unit,
    link: BenchLink,
    store: AttemptStore,
    tell: (view: BenchView) => void,
  ) {
    this.record = record;
    this.unit = unit;
    this.link = link;
    this.store = store;
    this.tell = tell;
    this.count = record.actions.length;
    this.gaveUp = record.actions.some((action) => action.do === 'give-up');
  }

  /** Takes the attempt over from any other tab and brings the bench to where its actions left it. */
  static async open(
    record: AttemptRecord,
    unit: Unit,
    link: BenchLink,
    store: AttemptStore,
    tell: (view: BenchView) => void,
  ): Promise<BenchSession> {
    await store.claim(record.id);
    const session = new BenchSession(record, unit, link, store, tell);
    tell(await link.open(unit, record));
    return session;
  }

  /** Rejects with the store's error where the action could not be kept; it is not shown then. */
  act(action: Action): Promise<Outcome> {
    const turn = this.queue.then(() => this.actNow(action));
    this.queue = turn.catch(() => undefined);
    return turn;
  }

  private async actNow(action: Action): Promise<Outcome> {
    const answer = await this.link.act(action);
    if ('refused' in answer) return answer;
    if (action.do === 'give-up') this.gaveUp = true;
    await this.store.append(this.record.id, this.count, action, this.progress(answer.view));
    this.count++;
    this.tell(answer.view);
    return {done: true};
  }

  private progress(view: BenchView): AttemptProgress {
    // one of two faults named: the search is still on
    const stage: AttemptStage = view.more
      ? 'working'
      : this.gaveUp && view.stage === 'named'
        ? 'given-up'
        : view.stage;
    return {minutes: view.minutes, stage};
  }
}
