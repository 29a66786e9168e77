import {LitElement, html, nothing, type PropertyValues} from 'lit';
import {customElement, property, query, state} from 'lit/decorators.js';
import type {Action, Expectation} from '../../bench/actions.ts';
import {terminalOptions, wireOptions} from '../../bench/bench-options.ts';
import type {BenchView} from '../../bench/bench-view.ts';
import '../../bench/control-panel.element.ts';
import {controlStyles} from '../../bench/controls.styles.ts';
import '../../bench/field-log.element.ts';
import type {Lead} from '../../bench/probing.ts';
import type {RefusedAction} from '../../bench/refused-action.ts';
import '../../bench/wire-work.element.ts';
import type {WireTool} from '../../bench/wire-work.element.ts';
import type {Unit} from '../../content/unit.ts';
import '../../diagnosis/coach-panel.element.ts';
import type {CoachState} from '../../diagnosis/coach-panel.element.ts';
import '../../meter/meter-face.element.ts';
import {functionNames} from '../../meter/function-names.ts';
import type {Keeping} from '../../meter/extremes.ts';
import type {MeterCare} from '../../meter/meter-condition.ts';
import type {MeterFunction} from '../../meter/meter-function.ts';
import {benchDeskStyles} from './bench-desk.styles.ts';
import './drawing-board.element.ts';
import type {DrawingBoard} from './drawing-board.element.ts';
import './note-form.element.ts';
import {panelBeside, panelTabs, type Panel} from './panel-tabs.ts';
import {
  afterJumper,
  isReady,
  pickPart,
  picksFrom,
  pickTerminal,
  pickWire,
  purposeOf,
  readingOf,
  takeInHand,
  type PickPurpose,
  type Picks,
} from './picks.ts';
import './probe-panel.element.ts';
import type {ProbePanel} from './probe-panel.element.ts';
import type {BenchSettings} from './remembered.ts';

/**
 * The working surface of the bench: the unit's drawing, the meter, and what hands can do. It keeps where the
 * leads are held; everything else it is given, and every deed it asks for.
 *
 * @event {{action: Action}} action-asked - A person wants it done.
 * @event {{settings: BenchSettings}} settings-changed - A person turned the drawing or the tone.
 * @event {{site: string}} site-pointed-out - A person pointed at a part or wire while {@link pointing}.
 * @event coach-called - A person looks for the coach.
 * @event naming-asked - A person wants to name the fault.
 */
@customElement('rb-bench-desk')
export class BenchDesk extends LitElement {
  static override styles = [controlStyles, benchDeskStyles];

  @property({attribute: false}) unit?: Unit;
  /** The committed or computed layout of the connection drawing. */
  @property({attribute: false}) layout: unknown;
  /** Why there is no connection drawing, in a sentence. */
  @property() layoutProblem = '';
  @property({attribute: false}) view?: BenchView;
  @property({attribute: false}) refusal?: RefusedAction;
  @property({attribute: false}) settings: BenchSettings = {
    muted: false,
    shortcuts: true,
    view: 'ladder',
  };
  /** The bench is at work on an action. */
  @property({type: Boolean}) busy = false;
  /** How the coach stands; absent where there is none to ask. */
  @property({attribute: false}) coach?: CoachState;
  /** There is a fault to name. */
  @property({type: Boolean}) nameable = false;
  /** The next part or wire picked is being pointed out, not worked on. */
  @property({type: Boolean}) pointing = false;

  @state() private picks: Picks = {probing: {next: 'red'}, moved: false};
  @state() private panel: Panel = 'read';
  @state() private tool: WireTool = 'lift';
  @state() private listOpen = false;
  /** The log lies over the drawing as a table. */
  @state() private tableOpen = false;

  @query('rb-drawing-board') private board?: DrawingBoard;
  @query('rb-probe-panel') private probe?: ProbePanel;

  /** Where the last pick came from; focus goes back there after a reading by keyboard. */
  private pickedFrom: 'diagram' | 'list' | undefined;
  private keyboard = false;

  override connectedCallback(): void {
    super.connectedCallback();
    this.addEventListener('keydown', this.notice, {capture: true});
    this.addEventListener('pointerdown', this.notice, {capture: true});
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (!changed.has('view') || !this.view) return;
    const before = changed.get('view');
    this.picks = before ? afterJumper(this.picks, before, this.view) : picksFrom(this.view.meter);
  }

  override render() {
    const {unit, view} = this;
    if (!unit || !view) return nothing;
    const sheet =
      this.panel === 'unit' ||
      this.panel === 'log' ||
      this.panel === 'notes' ||
      this.panel === 'coach';
    return html`<div class="desk ${sheet ? 'sheet' : 'probing'} ${this.panel}">
      ${this.drawing(unit, view)}
      <div class="meter">${this.meter(view)}</div>
      <div class="tabs" role="tablist" aria-label="At hand" @keydown=${this.onTabsKeydown}>
        ${panelTabs(this.panel, this.coach !== undefined, {log: view.log.length}, (panel) => this.showPanel(panel))}
      </div>
      ${
        this.nameable
          ? html`<button type="button" class="naming" @click=${() => this.emit('naming-asked')}>
              Name it
            </button>`
          : nothing
      }
      <div
        class="panel"
        role="tabpanel"
        id="panel"
        aria-labelledby="tab-${this.panel}"
        tabindex=${this.panel === 'log' ? 0 : nothing}
      >
        ${this.panelContent(unit, view)}
      </div>
    </div>`;
  }

  /** Take up a lead; the probing panel comes with it. */
  takeLead(lead: Lead): void {
    this.picks = takeInHand(this.picks, lead);
    this.showPanel('read');
  }

  showPanel(panel: Panel): void {
    if (panel === 'coach' && !this.coach) return;
    this.panel = panel;
    if (panel === 'coach') this.emit('coach-called');
    if (panel !== 'read') this.listOpen = false;
  }

  /** Show a panel and put the focus on its tab: the next Tab key goes into it. */
  async goToPanel(panel: Panel): Promise<void> {
    this.showPanel(panel);
    await this.updateComplete;
    this.renderRoot.querySelector<HTMLElement>(`#tab-${panel}`)?.focus();
  }

  private showDrawing(view: BenchSettings['view']): void {
    this.tableOpen = false;
    if (view !== this.settings.view)
      this.emit('settings-changed', {settings: {...this.settings, view}});
  }

  chooseFunction(fn: MeterFunction): void {
    if (fn !== this.view?.meter.function) this.ask({do: 'meter', function: fn});
  }

  async focusOn(place: 'diagram' | 'list' | 'expectation'): Promise<void> {
    if (place !== 'diagram' && this.panel !== 'read') this.showPanel('read');
    if (place === 'list') this.listOpen = true;
    if (place === 'diagram') this.tableOpen = false;
    await this.updateComplete;
    if (place === 'diagram') this.board?.focus();
    else this.probe?.focusOn(place);
  }

  /** Read as the expectation stands: what pressing Read does. */
  read(): void {
    this.probe?.read();
  }

  private drawing(unit: Unit, view: BenchView) {
    return html`<rb-drawing-board
      role="region"
      aria-label="Drawing of the unit"
      .unit=${unit}
      .layout=${this.layout}
      .layoutProblem=${this.layoutProblem}
      .view=${view}
      .shown=${this.settings.view}
      .picks=${this.picks}
      .purpose=${this.purpose}
      .pointing=${this.pointing}
      .tableOpen=${this.tableOpen}
      .listOpen=${this.listOpen}
      @drawing-chosen=${(event: CustomEvent<{view: BenchSettings['view']}>) => this.showDrawing(event.detail.view)}
      @table-toggled=${(event: CustomEvent<{open: boolean}>) => (this.tableOpen = event.detail.open)}
      @list-toggled=${() => (this.listOpen ? (this.listOpen = false) : this.focusOn('list'))}
      @terminal-picked=${(event: CustomEvent<{terminal: string}>) =>
        this.onTerminal(event.detail.terminal, 'diagram')}
      @wire-picked=${(event: CustomEvent<{wire: string}>) => this.onWire(event.detail.wire, 'diagram')}
      @part-picked=${(event: CustomEvent<{part: string}>) => this.onPart(event.detail.part)}
    ></rb-drawing-board>`;
  }

  private meter(view: BenchView) {
    const {red, black, clamp, next} = this.picks.probing;
    return html`<rb-meter-face
      .function=${view.meter.function}
      .display=${this.picks.moved ? undefined : view.meter.display}
      .red=${red}
      .black=${black}
      .clamp=${clamp}
      .next=${next}
      .muted=${this.settings.muted}
      .keeps=${view.meter.keeps ?? 'nothing'}
      .held=${view.meter.held ?? false}
      .extremes=${view.meter.extremes}
      .toProve=${view.meter.toProve ?? false}
      .prompt=${isReady(this.picks, this.probes) ? 'Ready to read' : ''}
      @function-chosen=${(event: CustomEvent<{function: MeterFunction}>) => this.chooseFunction(event.detail.function)}
      @lead-chosen=${(event: CustomEvent<{lead: Lead}>) => this.takeLead(event.detail.lead)}
      @keeping-chosen=${(event: CustomEvent<{keeps: Keeping}>) => this.ask({do: 'keep', what: event.detail.keeps})}
      @renewal-asked=${(event: CustomEvent<{what: MeterCare}>) => this.ask({do: 'renew', what: event.detail.what})}
      @discharge-asked=${() => red && black && this.ask({do: 'discharge', from: red, to: black})}
      @mute-changed=${(event: CustomEvent<{muted: boolean}>) =>
        this.emit('settings-changed', {settings: {...this.settings, muted: event.detail.muted}})}
    ></rb-meter-face>`;
  }

  private panelContent(unit: Unit, view: BenchView) {
    switch (this.panel) {
      case 'read':
        return html`<rb-probe-panel
          .unit=${unit}
          .view=${view}
          .refusal=${this.refusal}
          .picks=${this.picks}
          .probes=${this.probes}
          .busy=${this.busy}
          .listOpen=${this.listOpen}
          @terminal-found=${(event: CustomEvent<{terminal: string}>) => this.onTerminal(event.detail.terminal, 'list')}
          @wire-found=${(event: CustomEvent<{wire: string}>) => this.onWire(event.detail.wire, 'list')}
          @reading-asked=${(event: CustomEvent<{expected?: Expectation}>) => this.onReadingAsked(event.detail.expected)}
        ></rb-probe-panel>`;
      case 'wires':
        return html`<rb-wire-work
          .unit=${unit}
          .view=${view}
          .refusal=${this.refusal}
          .tool=${this.tool}
          .wire=${this.picks.wire}
          .from=${this.picks.jumperFrom}
          .to=${this.picks.jumperTo}
          .wireOptions=${wireOptions(unit)}
          .terminalOptions=${terminalOptions(unit, view)}
          @tool-chosen=${(event: CustomEvent<{tool: WireTool}>) => (this.tool = event.detail.tool)}
          @wire-chosen=${(event: CustomEvent<{wire: string}>) => this.onWire(event.detail.wire, 'list')}
          @jumper-end-chosen=${(event: CustomEvent<{terminal: string}>) => this.onTerminal(event.detail.terminal, 'list')}
        ></rb-wire-work>`;
      case 'unit':
        return html`<rb-control-panel
          .unit=${unit}
          .view=${view}
          .refusal=${this.refusal}
        ></rb-control-panel>`;
      case 'log':
        return html`<rb-field-log
          newest-first
          .entries=${view.log}
          .safety=${view.safety}
        ></rb-field-log>`;
      case 'notes':
        return html`<rb-note-form></rb-note-form>
          <rb-field-log
            caption="Notes so far"
            newest-first
            .entries=${view.log.filter((entry) => entry.kind === 'note')}
            .safety=${view.safety}
            empty="No notes yet. A note is written into the field log with its time."
          ></rb-field-log>`;
      case 'coach':
        return html`<rb-coach-panel
          .state=${this.coach ?? {is: 'following'}}
          .log=${view.log}
          ?over=${view.stage !== 'working'}
        ></rb-coach-panel>`;
    }
  }

  private get probes(): 'leads' | 'clamp' {
    return functionNames[this.view?.meter.function ?? 'ac-volts'].probes;
  }

  private get purpose(): PickPurpose {
    return purposeOf(this.panel, this.tool, this.probes);
  }

  private onTerminal(terminal: string, from: 'diagram' | 'list'): void {
    this.pickedFrom = from;
    if (this.pointing) return this.pointOut(terminal.split('.')[0]);
    const {purpose} = this;
    this.picks = pickTerminal(this.picks, terminal, purpose);
    if (purpose !== 'lead') return;
    this.showPanel('read');
    // by keyboard the list is where the next lead is placed, too
    if (!this.keyboard) this.listOpen = false;
    const ready = isReady(this.picks, this.probes);
    // what a list gave may be anywhere, and on a phone the form has just taken a part of the drawing
    if (from === 'list' || (ready && matchMedia('(max-width: 760px)').matches)) {
      this.reveal(terminal);
    }
    if (!ready) return;
    // by keyboard the next thing is to say what is expected
    if (this.keyboard) void this.focusOn('expectation');
  }

  private onWire(wire: string, from: 'diagram' | 'list'): void {
    this.pickedFrom = from;
    if (this.pointing) return this.pointOut(wire);
    const {purpose} = this;
    this.picks = pickWire(this.picks, wire, purpose);
    if (from === 'list') this.reveal(wire);
    if (purpose !== 'clamp') return;
    if (this.keyboard) void this.focusOn('expectation');
    else this.listOpen = false;
  }

  private reveal(id: string): void {
    void this.updateComplete.then(() => requestAnimationFrame(() => this.board?.reveal(id)));
  }

  private onPart(part: string): void {
    if (this.pointing) return this.pointOut(part);
    this.picks = pickPart(this.picks, part);
  }

  private pointOut(site: string): void {
    this.emit('site-pointed-out', {site});
  }

  private onReadingAsked(expected: Expectation | undefined): void {
    const action = readingOf(this.picks, this.probes, expected);
    if (action) this.ask(action);
    if (this.keyboard && this.pickedFrom) void this.focusOn(this.pickedFrom);
  }

  /** The page has shown what the last reading gave. */
  readingShown(): void {
    this.picks = {...this.picks, moved: false};
  }

  private onTabsKeydown(event: KeyboardEvent): void {
    const panel = panelBeside(this.panel, this.coach !== undefined, event.key);
    if (!panel) return;
    event.preventDefault();
    void this.goToPanel(panel);
  }

  private readonly notice = (event: Event): void => {
    this.keyboard = event.type === 'keydown';
  };

  private ask(action: Action): void {
    this.emit('action-asked', {action});
  }

  private emit(type: string, detail: object = {}): void {
    this.dispatchEvent(new CustomEvent(type, {detail, bubbles: true, composed: true}));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-bench-desk': BenchDesk;
  }
}
