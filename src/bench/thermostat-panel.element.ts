import {LitElement, css, html} from 'lit';
import {customElement, property} from 'lit/decorators.js';
import type {Observation} from '../sequences/operating-unit.ts';
import type {ControlView} from './bench-view.ts';
import './control-field.element.ts';
import {controlStyles} from './controls.styles.ts';

/** The thermostat on its wall: what its display shows, and its keys. Events are those of its fields. */
@customElement('rb-thermostat-panel')
export class ThermostatPanel extends LitElement {
  static override styles = [
    controlStyles,
    css`
      :host {
        display: block;
      }
      .plate {
        display: grid;
        gap: var(--space-2);
        padding: var(--space-3);
        background: var(--part);
        border: 1.5px solid var(--rule-strong);
        border-radius: var(--radius-2);
      }
      .display {
        min-block-size: 3rem;
        padding: var(--space-2) var(--space-3);
        background: var(--meter-glass);
        color: var(--meter-digits);
        border-radius: var(--radius-1);
        font-family: var(--font-mono);
        font-weight: 700;
        font-size: var(--text-l);
        box-shadow: inset 0 1px 4px rgb(0 0 0 / 20%);
      }
      .display.dark {
        background: var(--meter-edge);
        color: var(--meter-text);
        font: 400 var(--text-s) var(--font-body);
      }
    `,
  ];

  @property({attribute: false}) controls: readonly ControlView[] = [];
  @property({attribute: false}) observations: readonly Observation[] = [];
  @property() owner = '';

  override render() {
    const blank = this.observations.some((seen) => seen.is === 'blank');
    const shown = this.observations.find((seen) => seen.display !== undefined)?.display;
    return html`<div class="plate">
      ${
        blank || shown === undefined
          ? html`<div class="display dark">
              ${blank ? 'The display is blank.' : 'The display shows nothing.'}
            </div>`
          : html`<div class="display">${shown}</div>`
      }
      ${this.controls.map((view) => html`<rb-control-field .view=${view} .owner=${this.owner}></rb-control-field>`)}
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-thermostat-panel': ThermostatPanel;
  }
}
