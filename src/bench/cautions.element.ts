import {LitElement, css, html, nothing, type PropertyValues} from 'lit';
import {customElement, property, state} from 'lit/decorators.js';
import type {Caution} from './bench-view.ts';
import {controlStyles} from './controls.styles.ts';

/**
 * The cautions that belong to the present moment. Not a dialog: work goes on beside it. A caution once
 * acknowledged folds to its mark, and unfolds again when it comes up anew.
 *
 * @cssproperty --caution-position - On a phone: `absolute` lays it over what is at the bottom of the page.
 * @cssproperty --caution-bottom - How far above the bottom.
 */
@customElement('rb-cautions')
export class Cautions extends LitElement {
  static override styles = [
    controlStyles,
    css`
      :host {
        display: block;
      }
      .strip {
        display: grid;
        grid-template-columns: auto minmax(0, 1fr) auto;
        align-items: center;
        gap: var(--space-1) var(--space-3);
        padding: var(--space-2) var(--space-4);
        background: var(--caution-soft);
        color: var(--ink);
        border-block: 2px solid var(--caution);
        line-height: 1.35;
      }
      .strip.folded {
        padding-block: 0;
        border-block-width: 1px;
        font-size: var(--text-s);
      }
      svg {
        inline-size: 28px;
        block-size: 26px;
        color: var(--caution);
      }
      .folded svg {
        inline-size: 20px;
        block-size: 18px;
      }
      li + li {
        margin-block-start: var(--space-1);
      }
      .button {
        color: var(--ink);
        border-color: var(--caution);
        background: transparent;
      }
      .count {
        font-weight: 700;
      }
      @media (max-width: 760px) {
        .strip:not(.folded) {
          grid-template-columns: auto minmax(0, 1fr);
        }
        .strip:not(.folded) .button {
          grid-column: 1 / -1;
          justify-self: end;
        }
        ul {
          max-block-size: 11.5rem;
          overflow-y: auto;
        }
        /* where the page has room for it: over the meter, which is read after the caution */
        .strip:not(.folded) {
          position: var(--caution-position, static);
          inset: auto 0 var(--caution-bottom, auto) 0;
          z-index: 3;
        }
        .strip {
          padding-inline: var(--space-3);
          font-size: var(--text-s);
          gap: var(--space-1) var(--space-2);
        }
      }
    `,
  ];

  @property({attribute: false}) cautions: readonly Caution[] = [];
  @state() private acknowledged: ReadonlySet<string> = new Set();

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (!changed.has('cautions')) return;
    const present = new Set(this.cautions.map((caution) => caution.id));
    this.acknowledged = new Set([...this.acknowledged].filter((id) => present.has(id)));
  }

  override render() {
    const fresh = this.cautions.filter((caution) => !this.acknowledged.has(caution.id));
    const folded = this.cautions.length - fresh.length;
    return html`
      <div role="status" class="visually-hidden">
        ${fresh.map((caution) => `Caution: ${caution.text} `)}
      </div>
      ${
        fresh.length > 0
          ? html`<section class="strip" aria-label="Caution">
              ${mark}
              <ul tabindex="0" aria-label="Cautions">
                ${fresh.map((caution) => html`<li data-caution=${caution.id}>${caution.text}</li>`)}
              </ul>
              <button type="button" class="button small" @click=${this.acknowledge}>
                Understood
              </button>
            </section>`
          : folded > 0
            ? html`<section class="strip folded" aria-label="Caution">
                ${mark}
                <span class="count"
                  >${folded === 1 ? '1 caution in force' : `${folded} cautions in force`}</span
                >
                <button
                  type="button"
                  class="button quiet small"
                  @click=${() => (this.acknowledged = new Set())}
                >
                  Show
                </button>
              </section>`
            : nothing
      }
    `;
  }

  private acknowledge(): void {
    this.acknowledged = new Set(this.cautions.map((caution) => caution.id));
  }
}

const mark = html`<svg viewBox="0 0 28 26" aria-hidden="true">
  <path
    d="M14 2L26.5 24.5h-25z"
    fill="none"
    stroke="currentColor"
    stroke-width="2.5"
    stroke-linejoin="round"
  />
  <path d="M14 9.5v7M14 19.2v2" stroke="currentColor" stroke-width="2.8" />
</svg>`;

declare global {
  interface HTMLElementTagNameMap {
    'rb-cautions': Cautions;
  }
}
