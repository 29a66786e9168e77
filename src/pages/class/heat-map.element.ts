import {LitElement, css, html, svg} from 'lit';
import {customElement, property, state} from 'lit/decorators.js';
import type {HeatMap} from '../../classroom/protocol/wall-messages.ts';
import type {Unit} from '../../content/unit.ts';
import {drawConnections} from '../../diagrams/connection-drawing.ts';
import {drawTerminal, drawWire, inkOver, scene} from '../../diagrams/diagram-scene.element.ts';
import type {Drawing} from '../../diagrams/drawing.ts';
import {layoutLadder} from '../../diagrams/ladder-layout.ts';
import {unitDiagramStyles} from '../../diagrams/unit-diagram.styles.ts';
import {openAttempts} from '../../store/attempts.ts';
import {desk} from '../desk/desk.ts';
import {layoutOf} from '../units/layout-of.ts';
import {heatFrame, heatMarks, heatText} from './heat-marks.ts';

/** Nothing on the wall's drawing can be picked. */
const still = {chosen: false, pickable: false, current: false, name: ''};

/** A unit's drawing, still, with a disc wherever the class has put its meter: larger and numbered the more readings. */
@customElement('rb-heat-map')
export class HeatMapDrawing extends LitElement {
  static override styles = [
    unitDiagramStyles,
    css`
      :host {
        display: grid;
        grid-template-rows: minmax(0, 1fr);
        min-block-size: 0;
        background: none;
      }

      svg {
        display: block;
        width: 100%;
        height: 100%;
      }

      .quieter {
        opacity: 0.75;
      }

      .heat circle {
        fill: var(--accent);
        fill-opacity: 0.88;
        stroke: var(--paper-raised);
        stroke-width: 2;
      }

      .heat text {
        fill: var(--on-accent);
        font-weight: 700;
      }

      p {
        margin: 0;
        padding: var(--space-4);
        color: var(--ink-2);
      }
    `,
  ];

  @property({attribute: false}) heat!: HeatMap;

  @state() private drawing: Drawing | undefined;
  @state() private failed = '';
  private drawn = '';

  protected override willUpdate(): void {
    if (this.heat.unit === this.drawn) return;
    this.drawn = this.heat.unit;
    this.drawing = undefined;
    this.failed = '';
    void this.draw(this.heat.unit);
  }

  override render() {
    const {drawing, heat} = this;
    if (this.failed) return html`<p role="alert">${this.failed}</p>`;
    if (!drawing) return html`<p role="status">Unrolling the drawing…</p>`;
    const marks = heatMarks(drawing, heat);
    const words = heatText(heat);
    const {x, y, width, height} = heatFrame(drawing, marks);
    return html`<svg
      class="sheet ${drawing.view}"
      viewBox="${x} ${y} ${width} ${height}"
      role="img"
      aria-label="${heat.title}. ${words ? `Readings by the class: ${words}` : 'No readings yet'}"
    >
      <g class="quieter">
        ${scene(drawing, undefined)}
        ${drawing.wires.map((wire) => drawWire(wire, drawing.view, still))} ${inkOver(drawing)}
        ${drawing.terminals.map((mark, i) => drawTerminal(mark, i, {...still, closed: false, same: false}))}
      </g>
      <g class="heat" aria-hidden="true">
        ${marks.map(
          ({x, y, radius, count}) =>
            svg`<circle cx=${x} cy=${y} r=${radius}></circle>
              <text x=${x} y=${y} dy="0.35em" text-anchor="middle" font-size=${Math.max(11, radius * 0.95)}>${count}</text>`,
        )}
      </g>
    </svg>`;
  }

  private async draw(id: string): Promise<void> {
    try {
      const unit: Unit = await desk().unit(await openAttempts(), id);
      const drawing = await connection(unit);
      if (this.drawn === id) this.drawing = drawing;
    } catch (error) {
      if (this.drawn === id) this.failed = error instanceof Error ? error.message : String(error);
    }
  }
}

/** The connection drawing, where probes really go; the ladder where it cannot be laid out. */
async function connection(unit: Unit): Promise<Drawing> {
  try {
    return drawConnections(unit, await layoutOf(unit));
  } catch {
    return layoutLadder(unit, {aspect: 1.6});
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-heat-map': HeatMapDrawing;
  }
}
