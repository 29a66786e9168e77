import {LitElement, css, html} from 'lit';
import {customElement, property} from 'lit/decorators.js';
import type {WireColour} from '../../content/unit.ts';
import {wireColours, wireGauges} from '../../content/unit-schema.ts';
import type {HookupWire} from '../../hookup/hookup-task.ts';
import {sheetStyles} from '../design/sheet.styles.ts';

/**
 * What is at hand for wiring: colour and gauge of the next wire or of the chosen one, undo, redo, taking off.
 *
 * @event {{colour: WireColour}} colour-picked
 * @event {{gauge: number}} gauge-picked
 * @event undo-asked
 * @event redo-asked
 * @event take-asked - The chosen wire shall come off.
 */
@customElement('rb-hookup-tools')
export class HookupTools extends LitElement {
  static override styles = [
    sheetStyles,
    css`
      .bar {
        display: flex;
        flex-wrap: wrap;
        align-items: end;
        gap: var(--space-2) var(--space-3);
        margin: var(--space-4) 0 var(--space-2);
      }
      .bar label {
        display: grid;
        gap: 2px;
        font-size: var(--text-s);
      }
      .bar select {
        width: auto;
        max-width: 13rem;
      }
    `,
  ];

  @property() colour: WireColour = 'red';
  @property({type: Number}) gauge = 18;
  @property({attribute: false}) chosen?: HookupWire;
  @property({type: Boolean}) canUndo = false;
  @property({type: Boolean}) canRedo = false;

  override render() {
    const {chosen} = this;
    const colour = chosen?.colour ?? this.colour;
    const gauge = chosen?.gauge ?? this.gauge;
    return html`<div class="bar no-print">
      <label
        >Colour
        <select
          class="colour"
          @change=${(event: Event) => this.emit('colour-picked', {colour: valueOf(event)})}
        >
          ${wireColours.map(
            (each) => html`<option value=${each} .selected=${colour === each}>${each}</option>`,
          )}
        </select>
      </label>
      <label
        >Gauge
        <select
          class="gauge"
          @change=${(event: Event) => this.emit('gauge-picked', {gauge: Number(valueOf(event))})}
        >
          ${wireGauges.map(
            (each) => html`<option value=${each} .selected=${gauge === each}>${each} AWG</option>`,
          )}
        </select>
      </label>
      <button
        type="button"
        class="button undo"
        ?disabled=${!this.canUndo}
        @click=${() => this.emit('undo-asked')}
      >
        Undo
      </button>
      <button
        type="button"
        class="button redo"
        ?disabled=${!this.canRedo}
        @click=${() => this.emit('redo-asked')}
      >
        Redo
      </button>
      <button
        type="button"
        class="button"
        ?disabled=${!chosen}
        @click=${() => this.emit('take-asked')}
      >
        ${chosen ? `Take ${chosen.id} off` : 'Take wire off'}
      </button>
    </div>`;
  }

  private emit(name: string, detail: object = {}): void {
    this.dispatchEvent(new CustomEvent(name, {detail}));
  }
}

const valueOf = (event: Event): string => (event.target as HTMLSelectElement).value;

declare global {
  interface HTMLElementTagNameMap {
    'rb-hookup-tools': HookupTools;
  }
}
