import {LitElement, css, html, nothing, svg} from 'lit';
import {customElement, property} from 'lit/decorators.js';
import type {Unit} from '../../content/unit.ts';
import {glyphOf} from './part-glyphs.ts';
import {drawElevation} from './unit-elevation.ts';

/** The elevation of a unit, drawn from its own parts and wires. A picture only: it says nothing that the text beside it does not. */
@customElement('rb-unit-picture')
export class RbUnitPicture extends LitElement {
  static override styles = css`
    :host {
      display: block;
    }

    svg {
      display: block;
      width: 100%;
      max-height: var(--picture-height, 19rem);
    }

    .box {
      fill: var(--enclosure);
      stroke: var(--ink);
      stroke-width: 1.5;
    }

    .glyph {
      fill: none;
      stroke: var(--ink);
      stroke-width: 1.5;
      stroke-linejoin: round;
      stroke-linecap: round;
    }

    .casing {
      fill: none;
      stroke: var(--wire-casing);
      stroke-width: 2.4;
    }

    .wire {
      fill: none;
      stroke-width: 1.6;
    }
  `;

  @property({attribute: false}) unit: Unit | undefined;

  override render() {
    if (!this.unit) return nothing;
    const {width, height, boxes, glyphs, wires} = drawElevation(this.unit);
    return html`<svg
      viewBox="0 0 ${width} ${height}"
      aria-hidden="true"
      preserveAspectRatio="xMidYMax meet"
    >
      ${boxes.map((box) => svg`<rect class="box" x=${box.x} y=${box.y} width=${box.width} height=${box.height} rx="2" />`)}
      ${wires.map(({colour, points}) => {
        const path = `M${points.map((point) => point.join(' ')).join('L')}`;
        // a pale wire on pale paper needs an edge, and a black one on dark paper
        const casing = ['white', 'yellow', 'tan', 'black'].includes(colour)
          ? svg`<path class="casing" d=${path} />`
          : nothing;
        return svg`${casing}<path class="wire" d=${path} stroke="var(--wire-${colour})" />`;
      })}
      ${glyphs.map(({kind, x, y}) => svg`<path class="glyph" transform="translate(${x} ${y})" d=${glyphOf(kind)} />`)}
    </svg>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-unit-picture': RbUnitPicture;
  }
}
