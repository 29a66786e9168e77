import {LitElement, html, nothing} from 'lit';
import {customElement, property, state} from 'lit/decorators.js';
import type {Action} from '../../bench/actions.ts';
import type {RefusedAction} from '../../bench/refused-action.ts';
import type {WireColour} from '../../content/unit.ts';
import '../../diagrams/unit-diagram.element.ts';
import type {Finding} from '../../hookup/finding.ts';
import {hookupAdvice} from '../../hookup/hookup-advice.ts';
import type {Deed} from '../../hookup/hookup-deed.ts';
import {resultOf} from '../../hookup/hookup-result.ts';
import type {HookupTask} from '../../hookup/hookup-task.ts';
import type {HookupWork, Outcome} from '../../hookup/hookup-work.ts';
import {openAttempts, type AttemptStore} from '../../store/attempts.ts';
import {sheetStyles} from '../design/sheet.styles.ts';
import './hookup-bench.element.ts';
import './hookup-board.element.ts';
import type {WireEnd} from './hookup-board.element.ts';
import './hookup-debrief.element.ts';
import './hookup-findings.element.ts';
import {hookupTaskPageStyles} from './hookup-task-page.styles.ts';
import './hookup-tools.element.ts';
import './hookup-wire-list.element.ts';
import {knownTask, type KnownTask} from './known-tasks.ts';
import {renderRules} from './task-rules.ts';
import {WorkKeeper} from './work-keeper.ts';

/** What passes between closing a breaker and looking up. */
const handSeconds = 2;

/**
 * One wiring task: board, the ladder of what was wired, power, and the verdict. Has the attribute `kept` while
 * everything that was done is written down.
 */
@customElement('rb-hookup-task-page')
export class HookupTaskPage extends LitElement {
  static override styles = [sheetStyles, hookupTaskPageStyles];

  @property({attribute: false}) taskId = '';

  @state() private keeper?: WorkKeeper;
  @state() private failed = '';
  @state() private colour: WireColour = 'red';
  @state() private gauge = 18;
  @state() private begun?: string;
  @state() private chosen?: string;
  @state() private taken?: WireEnd;
  @state() private finding?: Finding;
  @state() private refusal?: RefusedAction;
  @state() private said = '';
  @state() private unkept = '';

  private known?: KnownTask;
  private store?: AttemptStore;

  override connectedCallback(): void {
    super.connectedCallback();
    addEventListener('keydown', this.onKey);
    void this.open();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener('keydown', this.onKey);
  }

  override render() {
    const {keeper} = this;
    if (this.failed)
      return html`<h1 tabindex="-1">This task cannot be opened</h1>
        <p class="lead">${this.failed}</p>
        <p><a class="button" href="#/hookup">To the wiring tasks</a></p>`;
    if (!keeper) return html`<p class="quiet" role="status">Unrolling the task…</p>`;
    const {work} = keeper;
    return html`
      <p class="small no-print"><a href="#/hookup">All wiring tasks</a></p>
      <h1 tabindex="-1">${work.task.title}</h1>
      <p class="lead">${work.task.about}</p>
      ${this.unkept ? html`<p class="note danger" role="alert"><strong>Not kept.</strong>${this.unkept}</p>` : nothing}
      ${renderRules(work.task)}
      <section class="section" aria-labelledby="board">
        <span class="no" aria-hidden="true">1</span>
        <div class="body">
          <h2 id="board">Wire it</h2>
          ${this.renderWiring(work)}
        </div>
      </section>
      <section class="section" aria-labelledby="ladder">
        <span class="no" aria-hidden="true">2</span>
        <div class="body">
          <h2 id="ladder">The ladder of what you have wired</h2>
          <p class="quiet small">
            Drawn from your wires alone, so it shows what you have really built.
          </p>
          <rb-unit-diagram
            .unit=${work.unit}
            view="ladder"
            mode="select"
            .selectedWire=${this.chosen}
            @wire-picked=${(event: CustomEvent<{wire: string}>) => this.chooseOnLadder(event.detail.wire)}
          ></rb-unit-diagram>
        </div>
      </section>
      <section class="section no-print" aria-labelledby="power">
        <span class="no" aria-hidden="true">3</span>
        <div class="body">${this.renderPower(work)}</div>
      </section>
      <section class="section" aria-labelledby="verdict">
        <span class="no" aria-hidden="true">4</span>
        <div class="body">
          <h2 id="verdict">Have it checked</h2>
          <p class="quiet small">Every combination of the switches is run on your wires.</p>
          <p class="row no-print">
            <button type="button" class="button first check" @click=${() => this.do({do: 'check'})}>
              Check my wiring
            </button>
          </p>
          <rb-hookup-findings
            .report=${work.report}
            .shown=${this.finding}
            @finding-shown=${(event: CustomEvent<{finding: Finding | undefined}>) =>
              this.showFinding(event.detail.finding)}
          ></rb-hookup-findings>
          ${this.renderDebrief(work)}
        </div>
      </section>
    `;
  }

  private renderWiring(work: HookupWork) {
    return html`<rb-hookup-tools
        .colour=${this.colour}
        .gauge=${this.gauge}
        .chosen=${work.wires.find(({id}) => id === this.chosen)}
        .canUndo=${work.canUndo}
        .canRedo=${work.canRedo}
        @colour-picked=${({detail: {colour}}: CustomEvent<{colour: WireColour}>) => {
          this.colour = colour;
          this.alterChosen({colour});
        }}
        @gauge-picked=${({detail: {gauge}}: CustomEvent<{gauge: number}>) => {
          this.gauge = gauge;
          this.alterChosen({gauge});
        }}
        @undo-asked=${this.undo}
        @redo-asked=${this.redo}
        @take-asked=${() => this.chosen && this.take(this.chosen)}
      ></rb-hookup-tools>
      <p class="hint no-print" role="status">${this.said || this.hint()}</p>
      <rb-hookup-board
        .task=${work.task}
        .wires=${work.wires}
        .chosen=${this.chosen}
        .begun=${this.begun}
        .taken=${this.taken}
        .concerned=${this.finding?.wires ?? []}
        .probed=${probedBy(this.finding)}
        @begun=${({detail: {terminal}}: CustomEvent<{terminal: string | undefined}>) => {
          this.begun = terminal;
          // what was just done stays said until something new begins
          if (terminal) this.said = '';
        }}
        @end-taken=${({detail: {end}}: CustomEvent<{end: WireEnd | undefined}>) => {
          this.taken = end;
          if (end) this.said = '';
        }}
        @wire-drawn=${this.onDrawn}
        @end-moved=${this.onMoved}
        @wire-chosen=${({detail: {wire}}: CustomEvent<{wire: string | undefined}>) => {
          this.chosen = wire;
          this.said = '';
        }}
      ></rb-hookup-board>
      <rb-hookup-wire-list
        .task=${work.task}
        .wires=${work.wires}
        .chosen=${this.chosen}
        @wire-drawn=${this.onDrawn}
        @end-moved=${this.onMoved}
        @take-asked=${({detail: {wire}}: CustomEvent<{wire: string}>) => this.take(wire)}
      ></rb-hookup-wire-list>`;
  }

  private hint(): string {
    if (this.taken)
      return `${this.taken.wire} is in hand: pick the terminal for this end, or Escape to let go.`;
    if (this.begun) return `From ${this.begun}: pick the other terminal, or Escape to let go.`;
    if (this.chosen)
      return `${this.chosen} is picked: move an end by its handle, or change it above.`;
    return 'Drag from terminal to terminal, or pick one and then the other.';
  }

  private renderPower(work: HookupWork) {
    const {bench} = work;
    return html`<h2 id="power">Meter it dead, then energise</h2>
      <p class="note caution">
        <strong>Caution.</strong>Practice only. On a real board: read the dead circuit first, prove
        your meter before and after, keep hands and metal away, close the breaker standing aside.
        The local code, the manufacturer and a licensed person decide.
      </p>
      ${
        bench
          ? html`<p class="small quiet">
                The breaker is open: read ohms now, then close it under Unit. Changing a wire takes
                the board off the bench.
              </p>
              <rb-hookup-bench
                .unit=${work.unit}
                .view=${bench.view()}
                .refusal=${this.refusal}
                @action-asked=${({detail: {action}}: CustomEvent<{action: Action}>) =>
                  this.act(action)}
              ></rb-hookup-bench>`
          : html`<p class="row">
              <button
                type="button"
                class="button energise"
                ?disabled=${work.wires.length === 0}
                @click=${() => this.do({do: 'bench'})}
              >
                Put it on the bench
              </button>
            </p>`
      }`;
  }

  private renderDebrief(work: HookupWork) {
    const {checks, energisings, deadReadings} = work.counts;
    if (checks + energisings + deadReadings === 0) return nothing;
    const result = resultOf(work);
    return html`<h3>How it went</h3>
      <rb-hookup-debrief
        .result=${result}
        .lines=${work.lines}
        .advice=${hookupAdvice(result, work.firstFindings)}
      ></rb-hookup-debrief>
      <p class="row no-print">
        <button type="button" class="button" @click=${() => print()}>Print what was wired</button>
        <button type="button" class="plain" @click=${this.startOver}>Begin this task again</button>
      </p>`;
  }

  // ── deeds ──

  /** Does a deed and keeps it; a refusal is said. */
  private do(deed: Deed): Outcome {
    const outcome = this.keeper!.do(deed);
    if (outcome.refused !== undefined) return outcome;
    this.refusal = undefined;
    if (deed.do !== 'act' && deed.do !== 'bench') this.finding = undefined;
    // in a class each check is handed in as well
    if (deed.do === 'check') {
      const {wires} = this.keeper!.work;
      this.dispatchEvent(new CustomEvent('hookup-checked', {detail: {wires}}));
    }
    if (!this.keeper!.work.wires.some(({id}) => id === this.chosen)) this.chosen = undefined;
    this.requestUpdate();
    const {keeper} = this;
    this.toggleAttribute('kept', false);
    outcome.kept.then(
      () => this.toggleAttribute('kept', keeper === this.keeper && keeper!.isKept),
      (error: unknown) => {
        this.unkept = error instanceof Error ? error.message : String(error);
      },
    );
    return outcome;
  }

  private readonly onDrawn = ({detail}: CustomEvent<{from: string; to: string}>): void => {
    const {from, to} = detail;
    const {wire, refused} = this.do({
      do: 'put',
      wire: {from, to, gauge: this.gauge, colour: this.colour},
    });
    this.begun = undefined;
    this.said = refused ?? `Wire ${wire} from ${from} to ${to}.`;
  };

  private readonly onMoved = ({detail}: CustomEvent<WireEnd & {terminal: string}>): void => {
    const {wire, end, terminal} = detail;
    const {refused} = this.do({do: 'alter', wire, change: {[end]: terminal}});
    const now = this.keeper!.work.wires.find(({id}) => id === wire);
    this.said = refused ?? `Wire ${wire} now from ${now?.from} to ${now?.to}.`;
  };

  private take(id: string): void {
    const {refused} = this.do({do: 'take', wire: id});
    this.said = refused ?? `Wire ${id} is off.`;
  }

  private alterChosen(change: {colour?: WireColour; gauge?: number}): void {
    if (this.chosen) this.do({do: 'alter', wire: this.chosen, change});
  }

  private readonly undo = (): void => {
    this.said = this.do({do: 'undo'}).refused ?? 'Undone.';
  };

  private readonly redo = (): void => {
    this.said = this.do({do: 'redo'}).refused ?? 'Done again.';
  };

  private act(action: Action): void {
    const {refused} = this.do({do: 'act', action});
    if (refused !== undefined) this.refusal = {action, sentence: refused};
    // the clock stands while a person works, but what a short blows it blows before they can take the hand away
    else if (this.keeper!.work.closesPower(action))
      this.do({do: 'act', action: {do: 'wait', seconds: handSeconds}});
  }

  private showFinding(finding: Finding | undefined): void {
    this.finding = finding;
    if (finding)
      this.renderRoot.querySelector('rb-hookup-board')?.scrollIntoView({block: 'nearest'});
  }

  private chooseOnLadder(wire: string): void {
    if (this.keeper!.work.wires.some(({id}) => id === wire))
      this.chosen = this.chosen === wire ? undefined : wire;
  }

  private readonly startOver = async (): Promise<void> => {
    try {
      await this.keeper!.close();
    } catch (error) {
      this.unkept = error instanceof Error ? error.message : String(error);
    }
    this.keeper = WorkKeeper.begin(this.store!, this.known!);
    this.finding = this.chosen = this.begun = this.taken = undefined;
    this.said = 'A new beginning. What you did before is in the history.';
    scrollTo({top: 0});
  };

  private async open(): Promise<void> {
    try {
      this.store = await openAttempts();
      this.known = await knownTask(this.store, this.taskId);
      this.keeper = await WorkKeeper.resume(this.store, this.known);
      const {task} = this.known;
      this.gauge = gaugeFor(task);
      this.dispatchEvent(
        new CustomEvent('page-title', {detail: {title: task.title}, bubbles: true, composed: true}),
      );
    } catch (error) {
      this.failed = error instanceof Error ? error.message : String(error);
    }
  }

  private readonly onKey = (event: KeyboardEvent): void => {
    if (!this.keeper || isInField(event)) return;
    if (!event.ctrlKey && !event.metaKey) {
      if (event.key === 'Delete' && this.chosen) this.take(this.chosen);
      if (event.key === 'Escape') this.begun = this.taken = undefined;
      return;
    }
    const key = event.key.toLowerCase();
    if (key === 'z' && !event.shiftKey) this.undo();
    else if (key === 'y' || (key === 'z' && event.shiftKey)) this.redo();
    else return;
    event.preventDefault();
  };
}

/** Terminals that the leads go on to find it; a clamp goes on its wire. */
function probedBy(finding: Finding | undefined): string[] {
  if (!finding || finding.reading.meter === 'clamp-amps') return [];
  const {red, black} = finding.reading;
  return black === undefined ? [red] : [red, black];
}

function isInField(event: Event): boolean {
  const at = event.composedPath()[0];
  return (
    at instanceof HTMLInputElement ||
    at instanceof HTMLSelectElement ||
    at instanceof HTMLTextAreaElement
  );
}

/** A first circuit is wired in 14 AWG; control wiring in 18. */
const gaugeFor = ({protection, level}: HookupTask): number =>
  level === 1 && protection.some(({thinnest}) => thinnest === 14) ? 14 : 18;

declare global {
  interface HTMLElementTagNameMap {
    'rb-hookup-task-page': HookupTaskPage;
  }
}
