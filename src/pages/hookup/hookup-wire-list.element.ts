import {LitElement, css, html, nothing} from 'lit';
import {customElement, property, state} from 'lit/decorators.js';
import type {HookupTask, HookupWire} from '../../hookup/hookup-task.ts';
import {sheetStyles} from '../design/sheet.styles.ts';

/**
 * The wires as a list, and wiring by lists alone: two terminals chosen, or an end of a wire sent to another.
 *
 * @event {{from: string, to: string}} wire-drawn - A wire shall be put in.
 * @event {{wire: string}} take-asked - A wire shall come off.
 * @event {{wire: string, end: 'from' | 'to', terminal: string}} end-moved - An end shall go to another terminal.
 */
@customElement('rb-hookup-wire-list')
export class HookupWireList extends LitElement {
  static override styles = [
    sheetStyles,
    css`
      summary {
        min-height: 32px;
        padding: var(--space-1) 0;
        cursor: pointer;
      }
      .bar {
        display: flex;
        flex-wrap: wrap;
        align-items: end;
        gap: var(--space-2) var(--space-3);
        margin: var(--space-3) 0;
      }
      .bar label {
        display: grid;
        gap: 2px;
        font-size: var(--text-s);
      }
      select {
        width: auto;
        max-width: 11rem;
      }
      @media print {
        td select {
          appearance: none;
          border: 0;
          padding: 0;
          background: none;
        }
      }
      .wide {
        overflow-x: auto;
      }
      table {
        width: 100%;
        border-collapse: collapse;
        font-size: var(--text-s);
      }
      th,
      td {
        padding: var(--space-1) var(--space-2);
        text-align: left;
        border-bottom: 1px solid var(--rule);
      }
      tr.chosen td {
        background: var(--highlight);
      }
    `,
  ];

  @property({attribute: false}) task?: HookupTask;
  @property({attribute: false}) wires: readonly HookupWire[] = [];
  @property() chosen?: string;

  @state() private from = '';
  @state() private to = '';

  override connectedCallback(): void {
    super.connectedCallback();
    addEventListener('beforeprint', this.unfold);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener('beforeprint', this.unfold);
  }

  override render() {
    return html`<details>
      <summary>Wires as a list (${this.wires.length})</summary>
      <div class="bar no-print">
        <label>From ${this.select(this.from, '', (value) => (this.from = value))}</label>
        <label>To ${this.select(this.to, '', (value) => (this.to = value))}</label>
        <button
          type="button"
          class="button add"
          ?disabled=${!this.from || !this.to || this.from === this.to}
          @click=${() => this.emit('wire-drawn', {from: this.from, to: this.to})}
        >
          Add the wire
        </button>
      </div>
      <div class="wide" tabindex="0" role="region" aria-label="Wires">
        <table>
          <thead>
            <tr>
              <th scope="col">Wire</th>
              <th scope="col">From</th>
              <th scope="col">To</th>
              <th scope="col">Size and colour</th>
              <th scope="col" class="no-print"><span class="sr-only">Deeds</span></th>
            </tr>
          </thead>
          <tbody>
            ${this.wires.map(
              (wire) =>
                html`<tr class=${this.chosen === wire.id ? 'chosen' : ''}>
                  <th scope="row">${wire.id}</th>
                  <td>${this.end(wire, 'from')}</td>
                  <td>${this.end(wire, 'to')}</td>
                  <td>${wire.gauge} AWG ${wire.colour}</td>
                  <td class="no-print">
                    <button
                      type="button"
                      class="plain"
                      aria-label="Take off ${wire.id}"
                      @click=${() => this.emit('take-asked', {wire: wire.id})}
                    >
                      Take off
                    </button>
                  </td>
                </tr>`,
            )}
          </tbody>
        </table>
      </div>
    </details>`;
  }

  /** On paper the list cannot be opened. */
  private readonly unfold = (): void => {
    const details = this.renderRoot.querySelector('details');
    if (details) details.open = true;
  };

  private end(wire: HookupWire, end: 'from' | 'to') {
    return this.select(
      wire[end],
      `${wire.id} ${end}`,
      (terminal) => terminal && this.emit('end-moved', {wire: wire.id, end, terminal}),
    );
  }

  private select(value: string, label: string, set: (value: string) => void) {
    const terminals = (this.task?.parts ?? []).flatMap(({id, terminals: names}) =>
      names.map((name) => `${id}.${name}`),
    );
    return html`<select
      aria-label=${label || nothing}
      @change=${(event: Event) => {
        const field = event.target as HTMLSelectElement;
        set(field.value);
        // shown as asked for only once it is so
        if (label) field.value = value;
      }}
    >
      ${label ? '' : html`<option value="" .selected=${value === ''}>choose…</option>`}
      ${terminals.map((each) => html`<option value=${each} .selected=${value === each}>${each}</option>`)}
    </select>`;
  }

  private emit(name: string, detail: object): void {
    this.dispatchEvent(new CustomEvent(name, {detail}));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-hookup-wire-list': HookupWireList;
  }
}
