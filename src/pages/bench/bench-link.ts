import type {Action, HintLevel} from '../../bench/actions.ts';
import type {AttemptRecord} from '../../bench/attempt.ts';
import type {CatalogueLine} from '../../bench/bench-messages.ts';
import type {BenchView} from '../../bench/bench-view.ts';
import type {Debrief} from '../../bench/debrief.ts';
import type {Unit} from '../../content/unit.ts';
import type {CoachWord} from '../../diagnosis/coached-call.ts';
import type {Reasoning} from '../../diagnosis/reasoning.ts';

/** Done, with how the bench looks now; or refused, with one sentence. */
export type Answer = {readonly view: BenchView} | {readonly refused: string};

/** The coach at the call, wherever it works. It knows what the student has seen and not the fault. */
export interface CoachLink {
  /**
   * Follows what has been done since, and says unasked why the last reading told nothing.
   *
   * @param tell hears how many steps are still to follow
   */
  follow(tell?: (left: number) => void): Promise<CoachWord>;
  /** A hint's words. Who asks for it does it as an action, which keeps and costs it. */
  hint(level: HintLevel): Promise<string>;
  close(): void;
}

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
  /**
   * How the call was reasoned; takes longer than the debrief. Absent where the other side does not work it out.
   *
   * @param tell hears what share is worked out, 0 to 1
   */
  reasoning?(tell?: (share: number) => void): Promise<Reasoning>;
  /** Puts a coach at the call that is open. Absent where nobody may be asked. */
  coach?(): CoachLink;
  close(): void;
}
