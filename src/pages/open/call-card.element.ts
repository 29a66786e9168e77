import {LitElement, css, html, nothing} from 'lit';
import {customElement, property} from 'lit/decorators.js';
import {keepQuantities} from '../../content/no-break.ts';
import type {Unit} from '../../content/unit.ts';
import {sheetStyles} from '../design/sheet.styles.ts';
import '../units/unit-picture.element.ts';

/** A service call before it is taken: the complaint, the unit and its nameplate. What to press goes into the slot. */
@customElement('rb-call-card')
export class RbCallCard extends LitElement {
  static override styles = [
    sheetStyles,
    css`
      .card {
        display: grid;
        grid-template-columns: minmax(0, 3fr) minmax(0, 2fr);
        border: var(--line) solid var(--ink);
        outline: var(--line) solid var(--ink);
        outline-offset: 3px;
        margin: var(--space-5) 3px;
      }

      .call {
        display: flex;
        flex-direction: column;
        gap: var(--space-4);
        padding: var(--space-5);
      }

      blockquote {
        margin: 0;
        font-size: clamp(1.25rem, 1.1rem + 0.9vw, 1.75rem);
        font-weight: 700;
        line-height: 1.3;
        letter-spacing: -0.01em;
        text-wrap: pretty;
        overflow-wrap: anywhere;
      }

      .unit {
        border-left: var(--line) solid var(--ink);
      }

      .unit > p {
        padding: var(--space-3) var(--space-4);
      }

      rb-unit-picture {
        margin-top: auto;
        padding-top: var(--space-4);
        --picture-height: 20rem;
      }

      dl {
        border-top: var(--line) solid var(--ink);
        font-size: var(--text-s);
      }

      dl > div {
        display: grid;
        grid-template-columns: minmax(0, 1fr) minmax(0, 1.2fr);
        gap: var(--space-3);
        padding: 5px var(--space-4);
      }

      dl > div + div {
        border-top: 1px solid var(--rule);
      }

      dt {
        color: var(--ink-2);
      }

      dd {
        overflow-wrap: anywhere;
      }

      @media (max-width: 720px) {
        .card {
          grid-template-columns: minmax(0, 1fr);
        }

        .call {
          padding: var(--space-4);
        }

        .unit {
          border-left: 0;
          border-top: var(--line) solid var(--ink);
        }
      }
    `,
  ];

  @property() complaint = '';
  @property() unitTitle = '';
  @property({attribute: false}) unit: Unit | undefined;

  override render() {
    return html`<div class="card">
      <div class="call">
        <div>
          <p class="small quiet">The complaint</p>
          <blockquote>${this.complaint}</blockquote>
        </div>
        <slot></slot>
        ${this.unit ? html`<rb-unit-picture .unit=${this.unit}></rb-unit-picture>` : nothing}
      </div>
      <div class="unit">
        <p><b>${keepQuantities(this.unitTitle)}</b></p>
        ${
          this.unit
            ? html`<dl aria-label="Nameplate">
                ${this.unit.nameplate.map(
                  ({label, value}) =>
                    html`<div>
                      <dt>${label}</dt>
                      <dd>${keepQuantities(value)}</dd>
                    </div>`,
                )}
              </dl>`
            : nothing
        }
      </div>
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-call-card': RbCallCard;
  }
}
