import {LitElement, html, nothing, type PropertyValues} from 'lit';
import {customElement, property, query, state} from 'lit/decorators.js';
import type {Action, Expectation} from '../../bench/actions.ts';
import {terminalOptions, usualVolts, wireOptions} from '../../bench/bench-options.ts';
import type {BenchView} from '../../bench/bench-view.ts';
import '../../bench/control-panel.element.ts';
import {controlStyles} from '../../bench/controls.styles.ts';
import '../../bench/expectation-form.element.ts';
import type {ExpectationForm} from '../../bench/expectation-form.element.ts';
import '../../bench/field-log.element.ts';
import '../../bench/observations.element.ts';
import '../../bench/pick-list.element.ts';
import type {PickList} from '../../bench/pick-list.element.ts';
import {placeLead, probingFrom, takeLead, type Lead, type Probing} from '../../bench/probing.ts';
import {placeOf, type RefusedAction} from '../../bench/refused-action.ts';
import '../../bench/wire-work.element.ts';
import type {WireTool} from '../../bench/wire-work.element.ts';
import type {Unit} from '../../content/unit.ts';
import '../../diagrams/unit-diagram.element.ts';
import type {UnitDiagram} from '../../diagrams/unit-diagram.element.ts';
import '../../meter/meter-face.element.ts';
import {functionNames} from '../../meter/function-names.ts';
import type {MeterFunction} from '../../meter/meter-function.ts';
import {benchDeskStyles} from './bench-desk.styles.ts';
import './note-form.element.ts';
import type {BenchSettings} from './remembered.ts';

export type Panel = 'read' | 'wires' | 'unit' | 'log' | 'notes';

const panels: readonly {readonly id: Panel; readonly title: string}[] = [
  {id: 'read', title: 'Probe'},
  {id: 'wires', title: 'Wires'},
  {id: 'unit', title: 'Unit'},
  {id: 'log', title: 'Log'},
  {id: 'notes', title: 'Notes'},
];

/** Readings shown under the meter; the whole log has its own panel. */
const latestShown = 4;

/**
 * The working surface of the bench: the unit's drawing, the meter, and what hands can do. It keeps where the
 * leads are held; everything else it is given, and every deed it asks for.
 *
 * @event {{action: Action}} action-asked - A person wants it done.
 * @event {{settings: BenchSettings}} settings-changed - A person turned the drawing or the tone.
 * @event {{site: string}} site-pointed-out - A person pointed at a part or wire while {@link pointing}.
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
  /** There is a fault to name. */
  @property({type: Boolean}) nameable = false;
  /** The next part or wire picked is being pointed out, not worked on. */
  @property({type: Boolean}) pointing = false;

  @state() private probing: Probing = {next: 'red'};
  /** Leads or jaw have moved since the last reading: the glass goes blank. */
  @state() private moved = false;
  @state() private panel: Panel = 'read';
  @state() private tool: WireTool = 'lift';
  @state() private wire?: string;
  @state() private jumperFrom?: string;
  @state() private jumperTo?: string;
  @state() private selectedPart?: string;
  @state() private selectedWire?: string;
  @state() private listOpen = false;
  /** The log lies over the drawing as a table. */
  @state() private tableOpen = false;

  @query('rb-unit-diagram') private diagram?: UnitDiagram;
  @query('rb-expectation-form') private form?: ExpectationForm;
  @query('.find') private finder?: PickList;

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
    if (!changed.get('view')) this.probing = probingFrom(this.view.meter);
    // the jumper hangs: its two ends are free for the next one
    if (this.view.jumpers.length > (changed.get('view')?.jumpers.length ?? 0)) {
      this.jumperFrom = undefined;
      this.jumperTo = undefined;
    }
  }

  override render() {
    const {unit, view} = this;
    if (!unit || !view) return nothing;
    const sheet = this.panel === 'unit' || this.panel === 'log' || this.panel === 'notes';
    return html`<div class="desk ${sheet ? 'sheet' : 'probing'} ${this.panel}">
      ${this.drawing(unit, view)}
      <div class="meter">${this.meter(view)}</div>
      <div class="tabs" role="tablist" aria-label="At hand" @keydown=${this.onTabsKeydown}>
        ${panels.map(({id, title}) => this.tab(id, title, view))}
      </div>
      ${
        this.nameable
          ? html`<button type="button" class="naming" @click=${() => this.emit('naming-asked')}>
              Name it
            </button>`
          : nothing
      }
      <div class="panel" role="tabpanel" id="panel" aria-labelledby="tab-${this.panel}">
        ${this.panelContent(unit, view)}
      </div>
    </div>`;
  }

  /** Take up a lead; the probing panel comes with it. */
  takeLead(lead: Lead): void {
    this.probing = takeLead(this.probing, lead);
    this.showPanel('read');
  }

  showPanel(panel: Panel): void {
    this.panel = panel;
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
    if (place === 'diagram') this.focusDiagram();
    else if (place === 'expectation') this.form?.focus();
    else this.finder?.focus();
  }

  /** By keyboard the way on begins at the lead in hand. */
  private focusDiagram(): void {
    const {next, red, black, clamp} = this.probing;
    const at = this.probes === 'clamp' ? clamp : ((next === 'red' ? red : black) ?? red ?? black);
    const kind = this.probes === 'clamp' ? 'wire' : 'terminal';
    const mark =
      at && this.diagram?.renderRoot.querySelector<SVGElement>(`[data-${kind}="${at}"][tabindex]`);
    if (mark) mark.focus();
    else this.diagram?.focus();
  }

  /** Read as the expectation stands: what pressing Read does. */
  read(): void {
    this.form?.submit();
  }

  private drawing(unit: Unit, view: BenchView) {
    const {red, black, clamp} = this.probing;
    const clamping = this.probes === 'clamp';
    return html`<section class="drawing" aria-label="Drawing of the unit">
      <div class="bar">
        <div class="segments" role="group" aria-label="Drawing">
          ${(['ladder', 'connection'] as const).map(
            (kind) =>
              html`<button
                type="button"
                aria-pressed=${!this.tableOpen && this.settings.view === kind ? 'true' : 'false'}
                @click=${() => this.showDrawing(kind)}
              >
                ${kind === 'ladder' ? 'Ladder' : 'Connection'}
              </button>`,
          )}
          <button
            type="button"
            class="wide"
            aria-pressed=${this.tableOpen ? 'true' : 'false'}
            @click=${() => (this.tableOpen = true)}
          >
            Log table
          </button>
        </div>
        <span class="hint" role="status">${this.hint()}</span>
        <button
          type="button"
          class="button small list"
          aria-expanded=${this.listOpen ? 'true' : 'false'}
          @click=${() => (this.listOpen ? (this.listOpen = false) : this.focusOn('list'))}
        >
          List
        </button>
      </div>
      ${
        this.tableOpen
          ? html`<div class="table" tabindex="0" role="region" aria-label="Field log as a table">
              <rb-field-log .entries=${view.log} .safety=${view.safety}></rb-field-log>
            </div>`
          : nothing
      }
      ${
        this.settings.view === 'connection' && this.layoutProblem
          ? html`<p class="refused" role="alert">${this.layoutProblem}</p>`
          : nothing
      }
      <rb-unit-diagram
        ?hidden=${this.tableOpen}
        .unit=${unit}
        .view=${this.settings.view}
        .layout=${this.layout}
        .mode=${this.mode}
        .red=${clamping ? undefined : red}
        .black=${clamping ? undefined : black}
        .clamp=${clamping ? clamp : undefined}
        .lifted=${view.lifted}
        .jumpers=${view.jumpers}
        .openEnclosures=${view.enclosures.filter((each) => each.open).map((each) => each.id)}
        .observations=${view.observations}
        .selectedPart=${this.selectedPart}
        .selectedWire=${this.selectedWire}
        @terminal-picked=${(event: CustomEvent<{terminal: string}>) =>
          this.onTerminal(event.detail.terminal, 'diagram')}
        @wire-picked=${(event: CustomEvent<{wire: string}>) => this.onWire(event.detail.wire, 'diagram')}
        @part-picked=${(event: CustomEvent<{part: string}>) => this.onPart(event.detail.part)}
      ></rb-unit-diagram>
      <rb-observations .observations=${view.observations}></rb-observations>
    </section>`;
  }

  private hint() {
    if (this.pointing) return html`Pick the part or wire`;
    if (this.panel === 'wires') {
      if (this.tool === 'lift') return html`Pick a wire`;
      return this.jumperFrom && !this.jumperTo
        ? html`Pick the other end`
        : html`Pick the jumper’s first end`;
    }
    if (this.probes === 'clamp') return html`Pick a wire`;
    const {next} = this.probing;
    return html`<span class="tip ${next}" aria-hidden="true">${next === 'red' ? 'R' : 'B'}</span>
      <span class="wide">Pick a terminal for the ${next} lead</span
      ><span class="narrow">Place ${next}</span>`;
  }

  private meter(view: BenchView) {
    const {red, black, clamp, next} = this.probing;
    return html`<rb-meter-face
      .function=${view.meter.function}
      .display=${this.moved ? undefined : view.meter.display}
      .red=${red}
      .black=${black}
      .clamp=${clamp}
      .next=${next}
      .muted=${this.settings.muted}
      .prompt=${this.ready ? 'Ready to read' : ''}
      @function-chosen=${(event: CustomEvent<{function: MeterFunction}>) => this.chooseFunction(event.detail.function)}
      @lead-chosen=${(event: CustomEvent<{lead: Lead}>) => this.takeLead(event.detail.lead)}
      @mute-changed=${(event: CustomEvent<{muted: boolean}>) =>
        this.emit('settings-changed', {settings: {...this.settings, muted: event.detail.muted}})}
    ></rb-meter-face>`;
  }

  private tab(id: Panel, title: string, view: BenchView) {
    const chosen = this.panel === id;
    return html`<button
      type="button"
      role="tab"
      id="tab-${id}"
      aria-selected=${chosen ? 'true' : 'false'}
      aria-controls="panel"
      tabindex=${chosen ? 0 : -1}
      @click=${() => this.showPanel(id)}
    >
      ${title}${id === 'log' && view.log.length > 0 ? html` <span class="count">${view.log.length}</span>` : nothing}
    </button>`;
  }

  private panelContent(unit: Unit, view: BenchView) {
    switch (this.panel) {
      case 'read':
        return this.readPanel(unit, view);
      case 'wires':
        return html`<rb-wire-work
          .unit=${unit}
          .view=${view}
          .refusal=${this.refusal}
          .tool=${this.tool}
          .wire=${this.wire}
          .from=${this.jumperFrom}
          .to=${this.jumperTo}
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
    }
  }

  private readPanel(unit: Unit, view: BenchView) {
    const clamping = this.probes === 'clamp';
    const readings = view.log.filter((entry) => entry.kind === 'reading').slice(-latestShown);
    return html`
      ${
        this.refusal && placeOf(this.refusal.action) === 'meter'
          ? html`<p class="refused" role="alert">${this.refusal.sentence}</p>`
          : nothing
      }
      <rb-pick-list
        class="find ${this.listOpen ? 'open' : ''}"
        .label=${clamping ? 'Close the clamp on' : `Put the ${this.probing.next} lead on`}
        placeholder=${clamping ? 'Find a wire' : 'Find a terminal: K1 A1, strip …'}
        clears
        .options=${clamping ? wireOptions(unit) : terminalOptions(unit, view)}
        @picked=${(event: CustomEvent<{id: string}>) =>
          clamping
            ? this.onWire(event.detail.id, 'list')
            : this.onTerminal(event.detail.id, 'list')}
      ></rb-pick-list>
      <rb-expectation-form
        .function=${view.meter.function}
        ?ready=${this.ready}
        .again=${!this.moved && view.meter.display !== undefined}
        .busy=${this.busy}
        .usualVolts=${usualVolts(unit)}
        @reading-asked=${(event: CustomEvent<{expected?: Expectation}>) => this.onReadingAsked(event.detail.expected)}
      ></rb-expectation-form>
      ${
        readings.length > 0
          ? html`<rb-field-log
              class="latest"
              caption="Latest readings"
              newest-first
              .entries=${readings}
              .safety=${view.safety}
            ></rb-field-log>`
          : nothing
      }
    `;
  }

  private get probes(): 'leads' | 'clamp' {
    return functionNames[this.view?.meter.function ?? 'ac-volts'].probes;
  }

  private get ready(): boolean {
    const {red, black, clamp} = this.probing;
    return this.probes === 'clamp' ? clamp !== undefined : red !== undefined && black !== undefined;
  }

  private get mode(): 'red' | 'black' | 'clamp' | 'lift' | 'select' {
    if (this.pointing) return 'select';
    if (this.panel === 'wires')
      return this.tool === 'lift' ? 'lift' : this.jumperFrom ? 'black' : 'red';
    return this.probes === 'clamp' ? 'clamp' : this.probing.next;
  }

  private onTerminal(terminal: string, from: 'diagram' | 'list'): void {
    this.pickedFrom = from;
    if (this.pointing) return this.pointOut(terminal.split('.')[0]);
    if (this.panel === 'wires' && this.tool === 'jumper') {
      if (this.jumperFrom === undefined || this.jumperTo !== undefined) {
        this.jumperFrom = terminal;
        this.jumperTo = undefined;
      } else if (terminal !== this.jumperFrom) this.jumperTo = terminal;
      return;
    }
    if (this.probes === 'clamp') return;
    this.showPanel('read');
    this.probing = placeLead(this.probing, terminal);
    this.moved = true;
    // the part that is being worked at is marked, in whichever drawing is shown
    const id = terminal.slice(0, terminal.indexOf('.'));
    const wire = this.unit?.wires.some((each) => each.id === id);
    this.selectedPart = wire ? undefined : id;
    this.selectedWire = wire ? id : undefined;
    // by keyboard the list is where the next lead is placed, too
    if (!this.keyboard) this.listOpen = false;
    // on a phone the form has just taken a part of the drawing
    if (this.ready && matchMedia('(max-width: 760px)').matches) {
      void this.updateComplete.then(() =>
        requestAnimationFrame(() => this.diagram?.reveal(terminal)),
      );
    }
    // by keyboard the next thing is to say what is expected
    if (this.ready && this.keyboard) void this.focusOn('expectation');
  }

  private onWire(wire: string, from: 'diagram' | 'list'): void {
    this.pickedFrom = from;
    if (this.pointing) return this.pointOut(wire);
    if (this.panel === 'wires' && this.tool === 'lift') {
      this.wire = wire;
      this.selectedWire = wire;
      return;
    }
    if (this.panel === 'read' && this.probes === 'clamp') {
      this.probing = {...this.probing, clamp: wire};
      this.moved = true;
      if (!this.keyboard) this.listOpen = false;
      if (this.keyboard) void this.focusOn('expectation');
      return;
    }
    this.selectedWire = this.selectedWire === wire ? undefined : wire;
    this.selectedPart = undefined;
  }

  private onPart(part: string): void {
    if (this.pointing) return this.pointOut(part);
    this.selectedPart = this.selectedPart === part ? undefined : part;
    this.selectedWire = undefined;
  }

  private pointOut(site: string): void {
    this.emit('site-pointed-out', {site});
  }

  private onReadingAsked(expected: Expectation | undefined): void {
    const {red, black, clamp} = this.probing;
    const said = expected ? {expected} : {};
    if (this.probes === 'clamp') {
      if (clamp) this.ask({do: 'clamp', wire: clamp, ...said});
    } else if (red && black) this.ask({do: 'read', red, black, ...said});
    if (this.keyboard && this.pickedFrom) void this.focusOn(this.pickedFrom);
  }

  /** The page has shown what the last reading gave. */
  readingShown(): void {
    this.moved = false;
  }

  private onTabsKeydown(event: KeyboardEvent): void {
    const step = {ArrowRight: 1, ArrowLeft: -1}[event.key];
    if (step === undefined) return;
    event.preventDefault();
    const at = panels.findIndex(({id}) => id === this.panel);
    const next = panels[(at + step + panels.length) % panels.length];
    this.showPanel(next.id);
    void this.updateComplete.then(() =>
      this.renderRoot.querySelector<HTMLElement>(`#tab-${next.id}`)?.focus(),
    );
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
