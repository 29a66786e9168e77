import {LitElement, html, nothing} from 'lit';
import {customElement, property, state} from 'lit/decorators.js';
import type {Unit, WireColour} from '../../content/unit.ts';
import {wireColours, wireGauges} from '../../content/unit-schema.ts';
import '../../diagrams/unit-diagram.element.ts';
import {checkHookup, type HookupReport} from '../../hookup/check-hookup.ts';
import type {Finding} from '../../hookup/finding.ts';
import {hookedUnit} from '../../hookup/hooked-unit.ts';
import {
  alterWire,
  beginSession,
  checked,
  energised,
  putWire,
  readDead,
  redo,
  resumeSession,
  takeWire,
  undo,
  type HookupSession,
} from '../../hookup/hookup-session.ts';
import type {HookupTask, HookupWire} from '../../hookup/hookup-task.ts';
import {openAttempts, type AttemptStore} from '../../store/attempts.ts';
import {sheetStyles} from '../design/sheet.styles.ts';
import './hookup-bench.element.ts';
import './hookup-board.element.ts';
import './hookup-findings.element.ts';
import {hookupTaskPageStyles} from './hookup-task-page.styles.ts';
import {sessionName, shippedTask} from './shipped-tasks.ts';

/** One wiring task: board, the ladder of what was wired, power, and the verdict. */
@customElement('rb-hookup-task-page')
export class HookupTaskPage extends LitElement {
  static override styles = [sheetStyles, hookupTaskPageStyles];

  @property({attribute: false}) taskId = '';

  @state() private task?: HookupTask;
  @state() private session?: HookupSession;
  @state() private failed = '';
  @state() private colour: WireColour = 'red';
  @state() private gauge = 18;
  @state() private begun?: string;
  @state() private chosen?: string;
  @state() private from = '';
  @state() private to = '';
  @state() private report?: HookupReport;
  @state() private finding?: Finding;
  @state() private powered?: Unit;
  @state() private said = '';

  private unit?: Unit;
  private drawnFor?: readonly HookupWire[];
  private store?: AttemptStore;
  private writing: Promise<void> = Promise.resolve();

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
    const {task, session} = this;
    if (this.failed)
      return html`<h1 tabindex="-1">This task cannot be opened</h1>
        <p class="lead">${this.failed}</p>
        <p><a class="button" href="#/hookup">To the wiring tasks</a></p>`;
    if (!task || !session) return html`<p class="quiet" role="status">Unrolling the task…</p>`;
    if (this.drawnFor !== session.wires) {
      this.drawnFor = session.wires;
      this.unit = hookedUnit(task, session.wires);
    }
    return html`
      <p class="small no-print"><a href="#/hookup">All wiring tasks</a></p>
      <h1 tabindex="-1">${task.title}</h1>
      <p class="lead">${task.about}</p>
      ${this.renderRules(task)}
      <section class="section" aria-labelledby="board">
        <span class="no" aria-hidden="true">1</span>
        <div class="body">
          <h2 id="board">Wire it</h2>
          ${this.renderTools(session)}
          <p class="hint" role="status">${this.said || this.hint()}</p>
          <rb-hookup-board
            .task=${task}
            .wires=${session.wires}
            .chosen=${this.chosen}
            .begun=${this.begun}
            .concerned=${this.finding?.wires ?? []}
            @begun=${(event: CustomEvent<{terminal: string | undefined}>) => {
              this.begun = event.detail.terminal;
              // what was just done stays said until something new begins
              if (this.begun) this.said = '';
            }}
            @wire-drawn=${(event: CustomEvent<{from: string; to: string}>) =>
              this.put(event.detail.from, event.detail.to)}
            @wire-chosen=${(event: CustomEvent<{wire: string | undefined}>) =>
              (this.chosen = event.detail.wire)}
          ></rb-hookup-board>
          ${this.renderList(task, session)}
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
            .unit=${this.unit}
            view="ladder"
            mode="select"
            .selectedWire=${this.chosen}
            @wire-picked=${(event: CustomEvent<{wire: string}>) => this.chooseOnLadder(event.detail.wire)}
          ></rb-unit-diagram>
        </div>
      </section>
      <section class="section" aria-labelledby="power">
        <span class="no" aria-hidden="true">3</span>
        <div class="body">${this.renderPower(session)}</div>
      </section>
      <section class="section" aria-labelledby="verdict">
        <span class="no" aria-hidden="true">4</span>
        <div class="body">
          <h2 id="verdict">Have it checked</h2>
          <p class="quiet small">Every combination of the switches is run on your wires.</p>
          <p class="row no-print">
            <button type="button" class="button first check" @click=${this.check}>
              Check my wiring
            </button>
          </p>
          <rb-hookup-findings
            .report=${this.report}
            .shown=${this.finding}
            @finding-shown=${(event: CustomEvent<{finding: Finding | undefined}>) =>
              this.showFinding(event.detail.finding)}
          ></rb-hookup-findings>
          ${this.renderGrade(task, session)}
        </div>
      </section>
    `;
  }

  private renderRules(task: HookupTask) {
    return html`<ul class="rules small" aria-label="What must hold">
      ${task.rules.map(({statement}) => html`<li>${statement}</li>`)}
      ${task.trials.map(({title}) => html`<li>${title}</li>`)}
      ${task.forbidden.map((entry) =>
        entry.is === 'joined'
          ? html`<li>${entry.between[0]} and ${entry.between[1]} stay apart</li>`
          : html`<li>On the common side there is no switch: ${entry.switches.join(', ')}</li>`,
      )}
      ${task.bonded.map((lug) => html`<li>${lug} has a path of its own to the service ground</li>`)}
    </ul>`;
  }

  private renderTools(session: HookupSession) {
    const chosen = session.wires.find(({id}) => id === this.chosen);
    return html`<div class="bar no-print">
      <label
        >Colour
        <select
          class="colour"
          @change=${(event: Event) => this.setColour((event.target as HTMLSelectElement).value as WireColour)}
        >
          ${wireColours.map(
            (each) =>
              html`<option value=${each} ?selected=${(chosen?.colour ?? this.colour) === each}>
                ${each}
              </option>`,
          )}
        </select>
      </label>
      <label
        >Gauge
        <select
          class="gauge"
          @change=${(event: Event) => this.setGauge(Number((event.target as HTMLSelectElement).value))}
        >
          ${wireGauges.map(
            (each) =>
              html`<option value=${each} ?selected=${(chosen?.gauge ?? this.gauge) === each}>
                ${each} AWG
              </option>`,
          )}
        </select>
      </label>
      <button
        type="button"
        class="button undo"
        ?disabled=${session.past.length === 0}
        @click=${this.undo}
      >
        Undo
      </button>
      <button
        type="button"
        class="button redo"
        ?disabled=${session.future.length === 0}
        @click=${this.redo}
      >
        Redo
      </button>
      <button
        type="button"
        class="button"
        ?disabled=${!chosen}
        @click=${() => chosen && this.take(chosen.id)}
      >
        ${chosen ? `Take ${chosen.id} off` : 'Take wire off'}
      </button>
    </div>`;
  }

  private hint(): string {
    if (this.begun) return `From ${this.begun}: pick the other terminal, or Escape to let go.`;
    if (this.chosen) return `${this.chosen} is picked: change its colour or gauge, or take it off.`;
    return 'Drag from terminal to terminal, or pick one and then the other.';
  }

  private renderList(task: HookupTask, session: HookupSession) {
    const terminals = task.parts.flatMap(({id, terminals: names}) =>
      names.map((name) => `${id}.${name}`),
    );
    const select = (label: string, value: string, set: (value: string) => void) =>
      html`<label
        >${label}
        <select @change=${(event: Event) => set((event.target as HTMLSelectElement).value)}>
          <option value="" ?selected=${value === ''}>choose…</option>
          ${terminals.map((each) => html`<option value=${each} ?selected=${value === each}>${each}</option>`)}
        </select>
      </label>`;
    return html`<details>
      <summary>Wires as a list (${session.wires.length})</summary>
      <div class="bar no-print">
        ${select('From', this.from, (value) => (this.from = value))}
        ${select('To', this.to, (value) => (this.to = value))}
        <button
          type="button"
          class="button add"
          ?disabled=${!this.from || !this.to || this.from === this.to}
          @click=${() => this.put(this.from, this.to)}
        >
          Add the wire
        </button>
      </div>
      <div class="wide" tabindex="0" role="region" aria-label="Wires">
        <table>
          <thead>
            <tr>
              <th scope="col">Wire</th>
              <th scope="col">From</th>
              <th scope="col">To</th>
              <th scope="col">Size and colour</th>
              <th scope="col"><span class="sr-only">Deeds</span></th>
            </tr>
          </thead>
          <tbody>
            ${session.wires.map(
              (wire) =>
                html`<tr class=${this.chosen === wire.id ? 'chosen' : ''}>
                  <th scope="row">${wire.id}</th>
                  <td>${wire.from}</td>
                  <td>${wire.to}</td>
                  <td>${wire.gauge} AWG ${wire.colour}</td>
                  <td>
                    <button
                      type="button"
                      class="plain"
                      aria-label="Take off ${wire.id}"
                      @click=${() => this.take(wire.id)}
                    >
                      Take off
                    </button>
                  </td>
                </tr>`,
            )}
          </tbody>
        </table>
      </div>
    </details>`;
  }

  private renderPower(session: HookupSession) {
    return html`<h2 id="power">Meter it dead, then energise</h2>
      <p class="note caution">
        <strong>Caution.</strong>Practice only. On a real board: read the dead circuit first, prove
        your meter before and after, keep hands and metal away, close the breaker standing aside.
        The local code, the manufacturer and a licensed person decide.
      </p>
      ${
        this.powered
          ? html`<p class="small quiet">
                The breaker is open: read ohms now, then close it under Unit. Changing a wire takes
                the board off the bench.
              </p>
              <rb-hookup-bench
                .unit=${this.powered}
                @circuit-read=${(event: CustomEvent<{dead: boolean}>) => {
                  if (event.detail.dead) this.keep(readDead(this.session!));
                }}
                @power-on=${this.countPower}
              ></rb-hookup-bench>`
          : html`<p class="row">
              <button
                type="button"
                class="button energise"
                ?disabled=${session.wires.length === 0}
                @click=${() => (this.powered = this.unit)}
              >
                Put it on the bench
              </button>
            </p>`
      }`;
  }

  private renderGrade(task: HookupTask, session: HookupSession) {
    if (session.checks === 0 && session.energisings === 0) return nothing;
    const facts: [string, string | number][] = [
      [
        'Right the first time',
        session.solved ? (session.corrections === 0 ? 'yes' : 'no') : 'not right yet',
      ],
      ['Corrections', session.corrections],
      ['Times energised', session.energisings],
      ['Of these unsafe', session.unsafeEnergisings],
      ['Readings before power', session.deadReadings],
      ['Wires used', `${session.wires.length}, ${task.answer.length} in one answer`],
      ['Minutes', Math.round(session.minutes)],
    ];
    return html`<dl class="grade">
        ${facts.map(
          ([term, value]) =>
            html`<div>
              <dt>${term}</dt>
              <dd>${value}</dd>
            </div>`,
        )}
      </dl>
      <p class="row no-print">
        <button type="button" class="button" @click=${() => print()}>Print what was wired</button>
        <button type="button" class="plain" @click=${this.startOver}>Begin this task again</button>
      </p>`;
  }

  // ── deeds ──

  private put(from: string, to: string): void {
    const before = this.session!;
    const after = putWire(before, {from, to, gauge: this.gauge, colour: this.colour});
    this.begun = undefined;
    this.said =
      after === before
        ? `There is a wire from ${from} to ${to} already.`
        : `Wire ${after.wires.at(-1)!.id} from ${from} to ${to}.`;
    if (after !== before) this.change(after);
  }

  private take(id: string): void {
    this.chosen = undefined;
    this.said = `Wire ${id} is off.`;
    this.change(takeWire(this.session!, id));
  }

  private setColour(colour: WireColour): void {
    this.colour = colour;
    if (this.chosen) this.change(alterWire(this.session!, this.chosen, {colour}));
  }

  private setGauge(gauge: number): void {
    this.gauge = gauge;
    if (this.chosen) this.change(alterWire(this.session!, this.chosen, {gauge}));
  }

  private readonly undo = (): void => {
    if (this.session!.past.length === 0) return;
    this.said = 'Undone.';
    this.change(undo(this.session!));
  };

  private readonly redo = (): void => {
    if (this.session!.future.length === 0) return;
    this.said = 'Done again.';
    this.change(redo(this.session!));
  };

  private readonly check = (): void => {
    this.report = checkHookup(this.task!, this.session!.wires);
    this.finding = undefined;
    this.keep(checked(this.session!, this.report));
  };

  private readonly countPower = (): void => {
    this.keep(energised(this.session!, checkHookup(this.task!, this.session!.wires)));
  };

  private showFinding(finding: Finding | undefined): void {
    this.finding = finding;
    if (finding)
      this.renderRoot.querySelector('rb-hookup-board')?.scrollIntoView({block: 'nearest'});
  }

  private chooseOnLadder(wire: string): void {
    if (this.session!.wires.some(({id}) => id === wire))
      this.chosen = this.chosen === wire ? undefined : wire;
  }

  private readonly startOver = (): void => {
    this.report = undefined;
    this.change(beginSession(this.task!));
  };

  /** The wires are others now: verdict and power belong to the ones before. */
  private change(session: HookupSession): void {
    this.powered = undefined;
    this.report = undefined;
    this.finding = undefined;
    if (!session.wires.some(({id}) => id === this.chosen)) this.chosen = undefined;
    this.keep(session);
  }

  /** Kept at each deed, in order. */
  private keep(session: HookupSession): void {
    const now = Date.now();
    // longer pauses are not work
    const minutes = session.minutes + Math.min(5, (now - this.lastDeedAt) / 60_000);
    this.lastDeedAt = now;
    const kept = {...session, minutes};
    this.session = kept;
    const {store} = this;
    if (!store) return;
    this.writing = this.writing
      .then(() => store.putSetting(sessionName(kept.task), JSON.stringify(kept)))
      .catch(() => {
        this.said =
          'This could not be kept on this device. You can go on; it is lost when the tab closes.';
      });
  }

  private lastDeedAt = Date.now();

  private async open(): Promise<void> {
    try {
      const [task, store] = await Promise.all([shippedTask(this.taskId), openAttempts()]);
      this.store = store;
      const kept = await store.setting(sessionName(task.id)).catch(() => undefined);
      this.task = task;
      this.session = resumeSession(task, kept);
      this.gauge =
        task.protection.some(({thinnest}) => thinnest === 14) && task.level === 1 ? 14 : 18;
      this.dispatchEvent(
        new CustomEvent('page-title', {detail: {title: task.title}, bubbles: true, composed: true}),
      );
    } catch (error) {
      this.failed = error instanceof Error ? error.message : String(error);
    }
  }

  private readonly onKey = (event: KeyboardEvent): void => {
    if (!this.session || !(event.ctrlKey || event.metaKey)) {
      const at = event.composedPath()[0];
      const inField =
        at instanceof HTMLInputElement ||
        at instanceof HTMLSelectElement ||
        at instanceof HTMLTextAreaElement;
      if (event.key === 'Delete' && this.chosen && !inField) this.take(this.chosen);
      if (event.key === 'Escape') this.begun = undefined;
      return;
    }
    const key = event.key.toLowerCase();
    if (key === 'z' && !event.shiftKey) this.undo();
    else if (key === 'y' || (key === 'z' && event.shiftKey)) this.redo();
    else return;
    event.preventDefault();
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-hookup-task-page': HookupTaskPage;
  }
}
