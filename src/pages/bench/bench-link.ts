import type {Action} from '../../bench/actions.ts';
import type {AttemptRecord} from '../../bench/attempt.ts';
import type {CatalogueLine} from '../../bench/bench-messages.ts';
import type {BenchView} from '../../bench/bench-view.ts';
import type {Debrief} from '../../bench/debrief.ts';
import type {Unit} from '../../content/unit.ts';
import type {Reasoning} from '../../diagnosis/reasoning.ts';

/** Done, with how the bench looks now; or refused, with one sentence. */
export type Answer = {readonly view: BenchView} | {readonly refused: string};

/**
 * The side that holds the fault, as the page sees it: a worker now, a class's server later. Nothing that comes
 * back tells the fault before it is named.
 */
export interface BenchLink {
  /** Opens the sealed fault over there and does the record's actions again. Rejects with a sentence for people. */
  open(unit: Unit, record: AttemptRecord): Promise<BenchView>;
  act(action: Action): Promise<Answer>;
  /** Every fault that this unit can have, by name: the same list whatever is hidden. */
  catalogue(): Promise<readonly CatalogueLine[]>;
  /** Rejects while nothing has been named or given up. */
  debrief(): Promise<Debrief>;
  /** How the call was reasoned; takes longer than the debrief. Absent where the other side does not work it out. */
  reasoning?(): Promise<Reasoning>;
  close(): void;
}
