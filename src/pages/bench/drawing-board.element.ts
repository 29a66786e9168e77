import {LitElement, html, nothing} from 'lit';
import {customElement, property, query} from 'lit/decorators.js';
import type {BenchView} from '../../bench/bench-view.ts';
import {controlStyles} from '../../bench/controls.styles.ts';
import '../../bench/field-log.element.ts';
import '../../bench/observations.element.ts';
import type {Unit} from '../../content/unit.ts';
import type {DiagramMode} from '../../diagrams/diagram-targets.ts';
import '../../diagrams/unit-diagram.element.ts';
import type {UnitDiagram} from '../../diagrams/unit-diagram.element.ts';
import {drawingBoardStyles} from './drawing-board.styles.ts';
import {markedBy, type PickPurpose, type Picks} from './picks.ts';

/**
 * The unit's drawing with its leads, what is seen and heard below it, and above it which drawing is shown and what
 * the next pick is for. The log lies over it as a table when it is asked for.
 *
 * @event {{view: 'ladder' | 'connection'}} drawing-chosen - A person wants the other drawing.
 * @event {{open: boolean}} table-toggled - A person wants the log as a table, or the drawing back.
 * @event list-toggled - A person wants to find a terminal or wire by its name.
 *
 * Picks are the drawing's own events: terminal-picked, wire-picked, part-picked.
 */
@customElement('rb-drawing-board')
export class DrawingBoard extends LitElement {
  static override styles = [controlStyles, drawingBoardStyles];

  @property({attribute: false}) unit?: Unit;
  /** The committed or computed layout of the connection drawing. */
  @property({attribute: false}) layout: unknown;
  /** Why there is no connection drawing, in a sentence. */
  @property() layoutProblem = '';
  @property({attribute: false}) view?: BenchView;
  @property() shown: 'ladder' | 'connection' = 'ladder';
  @property({attribute: false}) picks?: Picks;
  @property() purpose: PickPurpose = 'lead';
  /** The next part or wire picked is being pointed out, not worked on. */
  @property({type: Boolean}) pointing = false;
  @property({type: Boolean}) tableOpen = false;
  @property({type: Boolean}) listOpen = false;

  @query('rb-unit-diagram') private diagram?: UnitDiagram;

  /** Wires of the unit that is shown, so that a pick is told from a part. */
  private wireIds: ReadonlySet<string> = new Set();

  protected override willUpdate(changed: Map<PropertyKey, unknown>): void {
    if (changed.has('unit')) this.wireIds = new Set(this.unit?.wires.map(({id}) => id));
  }

  override render() {
    const {unit, view, picks} = this;
    if (!unit || !view || !picks) return nothing;
    const {red, black, clamp} = picks.probing;
    const clamping = this.clamping;
    const marked = markedBy(picks, this.wireIds);
    return html`
      <div class="bar">
        <div class="segments" role="group" aria-label="Drawing">
          ${this.drawingChoice('ladder', 'Ladder')}
          ${this.drawingChoice('connection', 'Connection')}
          <button
            type="button"
            class="wide"
            aria-pressed=${this.tableOpen ? 'true' : 'false'}
            @click=${() => this.emit('table-toggled', {open: true})}
          >
            Log table
          </button>
        </div>
        <span class="hint" role="status">${this.hint(picks)}</span>
        <button
          type="button"
          class="button small list"
          aria-expanded=${this.listOpen ? 'true' : 'false'}
          @click=${() => this.emit('list-toggled')}
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
        this.shown === 'connection' && this.layoutProblem
          ? html`<p class="refused" role="alert">${this.layoutProblem}</p>`
          : nothing
      }
      <rb-unit-diagram
        ?hidden=${this.tableOpen}
        .unit=${unit}
        .view=${this.shown}
        .layout=${this.layout}
        ?layout-failed=${this.layoutProblem !== ''}
        .mode=${this.mode(picks)}
        .red=${clamping ? undefined : red}
        .black=${clamping ? undefined : black}
        .clamp=${clamping ? clamp : undefined}
        .lifted=${view.lifted}
        .jumpers=${view.jumpers}
        .openEnclosures=${view.enclosures.filter((each) => each.open).map((each) => each.id)}
        .observations=${view.observations}
        .selectedPart=${marked.part}
        .selectedWire=${marked.wire}
        .follow=${picks.last}
      ></rb-unit-diagram>
      <rb-observations .observations=${view.observations}></rb-observations>
    `;
  }

  /** Bring a terminal, wire or part into view, large enough to probe. */
  reveal(id: string): void {
    this.diagram?.reveal(id);
  }

  /** By keyboard the way on begins at the lead in hand. */
  override focus(): void {
    const {next, red, black, clamp} = this.picks?.probing ?? {next: 'red' as const};
    const at = this.clamping ? clamp : ((next === 'red' ? red : black) ?? red ?? black);
    const kind = this.clamping ? 'wire' : 'terminal';
    const mark =
      at && this.diagram?.renderRoot.querySelector<SVGElement>(`[data-${kind}="${at}"][tabindex]`);
    if (mark) mark.focus();
    else this.diagram?.focus();
  }

  private drawingChoice(drawing: 'ladder' | 'connection', title: string) {
    const chosen = !this.tableOpen && this.shown === drawing;
    return html`<button
      type="button"
      aria-pressed=${chosen ? 'true' : 'false'}
      @click=${() => this.emit('drawing-chosen', {view: drawing})}
    >
      ${title}
    </button>`;
  }

  private get clamping(): boolean {
    return this.view?.meter.function === 'clamp-amps';
  }

  private mode({probing, jumperFrom}: Picks): DiagramMode {
    if (this.pointing) return 'select';
    switch (this.purpose) {
      case 'lift':
        return 'lift';
      case 'jumper':
        return jumperFrom ? 'black' : 'red';
      case 'lead':
        return probing.next;
      case 'clamp':
      case 'mark':
        return 'clamp';
    }
  }

  private hint({probing: {next}, jumperFrom, jumperTo}: Picks) {
    if (this.pointing) return html`Pick the part or wire`;
    switch (this.purpose) {
      case 'lift':
      case 'clamp':
      case 'mark':
        return html`Pick a wire`;
      case 'jumper':
        return jumperFrom && !jumperTo
          ? html`Pick the other end`
          : html`Pick the jumper’s first end`;
      case 'lead':
        return html`<span class="tip ${next}" aria-hidden="true"
            >${next === 'red' ? 'R' : 'B'}</span
          >
          <span class="wide">Pick a terminal for the ${next} lead</span
          ><span class="narrow">Place ${next}</span>`;
    }
  }

  private emit(type: string, detail: object = {}): void {
    this.dispatchEvent(new CustomEvent(type, {detail, bubbles: true, composed: true}));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-drawing-board': DrawingBoard;
  }
}
