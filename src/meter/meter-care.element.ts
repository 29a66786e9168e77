import {LitElement, css, html} from 'lit';
import {customElement, property} from 'lit/decorators.js';
import {meterCares, type MeterCare} from './meter-condition.ts';

const titles: Readonly<Record<MeterCare, string>> = {
  battery: 'Fresh battery',
  leads: 'Other leads',
  fuse: 'New µA fuse',
};

/**
 * What can be done for the meter itself, and the bleed resistor that lies beside it in the bag.
 *
 * @event {{what: MeterCare}} renewal-asked - A person renews the battery, the leads or the fuse.
 * @event discharge-asked - A person lays the bleed resistor where the leads are.
 * @event closed - A person is done without asking for anything.
 */
@customElement('rb-meter-care')
export class RbMeterCare extends LitElement {
  static override styles = css`
    :host {
      display: block;
    }
    .choices {
      display: grid;
      grid-template-columns: repeat(3, minmax(0, 1fr));
      gap: var(--space-1);
    }
    button {
      font: inherit;
      font-size: var(--text-s);
      color: var(--meter-text);
      min-block-size: 44px;
      padding: 2px var(--space-2);
      background: var(--meter-edge);
      border: 1px solid var(--meter-text);
      border-radius: var(--radius-1);
      cursor: pointer;
    }
    button:focus-visible {
      outline: 3px solid var(--meter-glass);
      outline-offset: 2px;
    }
    button:disabled {
      opacity: 0.75;
      border-style: dashed;
      cursor: not-allowed;
    }
    .bleed {
      grid-column: span 2;
    }
    .where {
      font-family: var(--font-mono);
    }
  `;

  /** Points under the leads: where the bleed resistor goes. */
  @property() red?: string;
  @property() black?: string;

  override render() {
    const {red, black} = this;
    const placed = red !== undefined && black !== undefined && red !== black;
    return html`<div class="choices" role="group" aria-label="Care of the meter">
      ${meterCares.map(
        (what) =>
          html`<button
            type="button"
            data-renew=${what}
            @click=${() => this.emit('renewal-asked', {what})}
          >
            ${titles[what]}
          </button>`,
      )}
      <button
        type="button"
        class="bleed"
        ?disabled=${!placed}
        @click=${() => this.emit('discharge-asked', {})}
      >
        ${
          placed
            ? html`Bleed resistor across <span class="where">${red}, ${black}</span>`
            : 'Bleed resistor: put both leads down first'
        }
      </button>
      <button type="button" class="back" @click=${() => this.emit('closed', {})}>Back</button>
    </div>`;
  }

  private emit(type: string, detail: object): void {
    this.dispatchEvent(new CustomEvent(type, {detail, bubbles: true, composed: true}));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-meter-care': RbMeterCare;
  }
}
