import type {ReactiveController, ReactiveControllerHost} from 'lit';
import type {HintLevel} from '../../bench/actions.ts';
import type {CoachState} from '../../diagnosis/coach-panel.element.ts';
import type {BenchLink, CoachLink} from './bench-link.ts';

/**
 * The coach beside a bench: put there when a person first looks for them, told of everything done from then on, and
 * asked. A call on which nobody asks costs no work.
 */
export class CoachAtWork implements ReactiveController {
  state: CoachState = {is: 'following'};
  private readonly host: ReactiveControllerHost;
  private link?: CoachLink;
  private turn = 0;

  constructor(host: ReactiveControllerHost) {
    this.host = host;
    host.addController(this);
  }

  hostDisconnected(): void {
    this.leave();
  }

  /** Puts the coach at the call. Does nothing where there is one already, or nobody to be asked. */
  begin(bench: BenchLink | undefined): void {
    if (this.link || !bench?.coach) return;
    this.link = bench.coach();
    void this.follow();
  }

  /** Something was done: the coach goes through it too. */
  async follow(): Promise<void> {
    const {link} = this;
    if (!link) return;
    const turn = ++this.turn;
    this.show({is: 'following'}, turn);
    try {
      const {useless} = await link.follow((steps) => this.show({is: 'following', steps}, turn));
      this.show({is: 'ready', ...(useless ? {useless} : {})}, turn);
    } catch (error) {
      this.show({is: 'lost', reason: sentenceOf(error)}, turn);
    }
  }

  /** A hint's words; undefined where the coach could not be asked, which {@link state} then says. */
  async hint(level: HintLevel): Promise<string | undefined> {
    const {link} = this;
    if (!link) return undefined;
    const turn = ++this.turn;
    this.show({is: 'thinking', level}, turn);
    try {
      return await link.hint(level);
    } catch (error) {
      this.show({is: 'lost', reason: sentenceOf(error)}, turn);
      return undefined;
    }
  }

  leave(): void {
    this.link?.close();
    this.link = undefined;
    this.turn += 1;
    this.state = {is: 'following'};
  }

  /** Only the last thing begun is shown. */
  private show(state: CoachState, turn: number): void {
    if (turn !== this.turn) return;
    this.state = state;
    this.host.requestUpdate();
  }
}

function sentenceOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
