import {LitElement, css, html, nothing} from 'lit';
import {customElement, property} from 'lit/decorators.js';
import type {Unit, Wire} from '../content/unit.ts';
import type {Action} from './actions.ts';
import type {BenchView} from './bench-view.ts';
import {controlStyles} from './controls.styles.ts';
import './pick-list.element.ts';
import type {PickOption} from './pick-option.ts';
import {placeOf, type RefusedAction} from './refused-action.ts';

export type WireTool = 'lift' | 'jumper';

/**
 * Work on the wiring: lift a wire's end off its terminal and land it again, put a jumper between two terminals.
 *
 * @event {{action: Action}} action-asked - A person wants it done.
 * @event {{tool: WireTool}} tool-chosen - A person took up the other tool.
 * @event {{wire: string}} wire-chosen - A person chose a wire from the list.
 * @event {{terminal: string}} jumper-end-chosen - A person chose the jumper's next end from the list.
 */
@customElement('rb-wire-work')
export class WireWork extends LitElement {
  static override styles = [
    controlStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-3);
      }
      .segments {
        justify-self: start;
      }
      .ends {
        display: grid;
        grid-template-columns: 1fr 1fr;
        gap: var(--space-2);
      }
      .ends .button {
        flex-direction: column;
        gap: 0;
        padding-block: var(--space-2);
      }
      .ends b {
        font-family: var(--font-mono);
      }
      .list {
        display: grid;
        gap: var(--space-1);
      }
      .list li {
        display: flex;
        align-items: center;
        justify-content: space-between;
        gap: var(--space-2);
        padding-inline-start: var(--space-3);
        border-inline-start: 4px solid var(--highlight-edge);
      }
    `,
  ];

  @property({attribute: false}) unit?: Unit;
  @property({attribute: false}) view?: BenchView;
  @property({attribute: false}) refusal?: RefusedAction;
  @property() tool: WireTool = 'lift';
  /** Wire picked, whose end is to be chosen. */
  @property() wire?: string;
  /** Terminals picked for a jumper. */
  @property() from?: string;
  @property() to?: string;
  @property({attribute: false}) wireOptions: readonly PickOption[] = [];
  @property({attribute: false}) terminalOptions: readonly PickOption[] = [];

  override render() {
    if (!this.unit || !this.view) return nothing;
    return html`
      <div class="segments" role="group" aria-label="Wire work">
        <button
          type="button"
          aria-pressed=${this.tool === 'lift' ? 'true' : 'false'}
          @click=${() => this.choose('lift')}
        >
          Lift a wire
        </button>
        <button
          type="button"
          aria-pressed=${this.tool === 'jumper' ? 'true' : 'false'}
          @click=${() => this.choose('jumper')}
        >
          Jumper
        </button>
      </div>
      ${this.tool === 'lift' ? this.lifting(this.unit, this.view) : this.jumping(this.view)}
    `;
  }

  private lifting(unit: Unit, view: BenchView) {
    const wire = unit.wires.find((each) => each.id === this.wire);
    return html`
      <rb-pick-list
        label="Pick a wire on the diagram, or find it here"
        placeholder="W12, yellow, K1 …"
        .options=${this.wireOptions}
        .value=${this.wire ?? ''}
        @picked=${(event: CustomEvent<{id: string}>) => this.emit('wire-chosen', {wire: event.detail.id})}
      ></rb-pick-list>
      ${
        wire
          ? html`<div class="ends" role="group" aria-label="Which end of ${wire.id}">
              ${this.end(wire, 'from', view)} ${this.end(wire, 'to', view)}
            </div>`
          : nothing
      }
      ${this.refused('wires')}
      ${
        view.lifted.length > 0
          ? html`<ul class="list" aria-label="Wires lifted">
              ${view.lifted.map(
                (end) =>
                  html`<li>
                    <span
                      ><b class="mono">${end.split('.')[0]}</b> off ${terminalOf(unit, end)}</span
                    >
                    <button
                      type="button"
                      class="button small"
                      @click=${() => this.ask({do: 'land', end})}
                    >
                      Land it<span class="visually-hidden">
                        ${end.split('.')[0]} on ${terminalOf(unit, end)}</span
                      >
                    </button>
                  </li>`,
              )}
            </ul>`
          : nothing
      }
    `;
  }

  private end(wire: Wire, side: 'from' | 'to', view: BenchView) {
    const end = `${wire.id}.${side}`;
    const lifted = view.lifted.includes(end);
    return html`<button
      type="button"
      class="button"
      data-end=${end}
      @click=${() => this.ask({do: lifted ? 'land' : 'lift', end})}
    >
      <span>${lifted ? 'Land on' : 'Lift off'}</span><b>${wire[side]}</b>
    </button>`;
  }

  private jumping(view: BenchView) {
    const {from, to} = this;
    return html`
      <rb-pick-list
        label=${from ? 'Its other end on' : 'Pick two terminals on the diagram, or find them here'}
        placeholder="K1.A1 …"
        .options=${this.terminalOptions}
        clears
        @picked=${(event: CustomEvent<{id: string}>) => this.emit('jumper-end-chosen', {terminal: event.detail.id})}
      ></rb-pick-list>
      ${
        from
          ? html`<p>
              From <b class="mono">${from}</b> to
              ${to ? html`<b class="mono">${to}</b>` : 'the next terminal you pick'}.
            </p>`
          : nothing
      }
      ${
        from && to
          ? html`<button
              type="button"
              class="button primary"
              @click=${() => this.ask({do: 'jumper', from, to})}
            >
              Clip the jumper on
            </button>`
          : nothing
      }
      ${this.refused('jumpers')}
      ${
        view.jumpers.length > 0
          ? html`<ul class="list" aria-label="Jumpers on the unit">
              ${view.jumpers.map(
                ([a, b]) =>
                  html`<li>
                    <span class="mono">${a} – ${b}</span>
                    <button
                      type="button"
                      class="button small"
                      @click=${() => this.ask({do: 'remove-jumper', from: a, to: b})}
                    >
                      Take it off<span class="visually-hidden"> ${a} to ${b}</span>
                    </button>
                  </li>`,
              )}
            </ul>`
          : nothing
      }
    `;
  }

  private refused(place: string) {
    if (!this.refusal || placeOf(this.refusal.action) !== place) return nothing;
    return html`<p class="refused" role="alert">${this.refusal.sentence}</p>`;
  }

  private choose(tool: WireTool): void {
    if (tool !== this.tool) this.emit('tool-chosen', {tool});
  }

  private ask(action: Action): void {
    this.emit('action-asked', {action});
  }

  private emit(type: string, detail: object): void {
    this.dispatchEvent(new CustomEvent(type, {detail, bubbles: true, composed: true}));
  }
}

function terminalOf(unit: Unit, end: string): string {
  const [id, side] = end.split('.');
  const wire = unit.wires.find((each) => each.id === id);
  return wire ? wire[side === 'to' ? 'to' : 'from'] : end;
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-wire-work': WireWork;
  }
}
