import {LitElement, css, html, nothing} from 'lit';
import {customElement, property} from 'lit/decorators.js';
import type {ControlView} from './bench-view.ts';
import {controlStyles} from './controls.styles.ts';

/**
 * One control of the unit: positions side by side, a number with a step either way, or a button to press.
 *
 * @event {{action: Action}} action-asked - A person moved it.
 */
@customElement('rb-control-field')
export class ControlField extends LitElement {
  static override styles = [
    controlStyles,
    css`
      :host {
        display: block;
      }
      .line {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        justify-content: space-between;
        gap: var(--space-1) var(--space-3);
      }
      .stepper {
        display: inline-flex;
        align-items: stretch;
        border: 1.5px solid var(--accent);
        border-radius: var(--radius-1);
      }
      .stepper button {
        inline-size: 44px;
        min-block-size: 44px;
        background: none;
        color: var(--accent);
        border: 0;
        font-size: 1.4rem;
        line-height: 1;
        cursor: pointer;
      }
      .stepper button:hover {
        background: var(--accent-soft);
      }
      .stepper input {
        inline-size: 6ch;
        padding: 0;
        text-align: center;
        background: none;
        border: 0;
        border-inline: 1px solid var(--rule);
        font-family: var(--font-mono);
        font-weight: 700;
        appearance: textfield;
      }
      .stepper input::-webkit-inner-spin-button {
        display: none;
      }
      .stepper input:has(+ .unit) {
        border-inline-end: 0;
      }
      .unit {
        display: grid;
        align-items: center;
        padding-inline: 0 var(--space-2);
        border-inline-end: 1px solid var(--rule);
        color: var(--ink-2);
        font-size: var(--text-s);
      }
    `,
  ];

  @property({attribute: false}) view?: ControlView;
  /** Shown instead of the control's own title. */
  @property() label = '';
  /** Read out before the title: which part it is on. */
  @property() owner = '';

  override render() {
    const view = this.view;
    if (!view) return nothing;
    const title = this.label || view.control.title;
    return html`<div class="line">
      <span id="title">${title}</span>
      ${view.control.type === 'choice' ? this.choice(view) : view.control.type === 'number' ? this.number(view) : this.press(view)}
    </div>`;
  }

  private get spoken(): string {
    return [this.owner, this.label || this.view?.control.title].filter(Boolean).join(', ');
  }

  private choice(view: ControlView) {
    return html`<span class="segments" role="group" aria-label=${this.spoken}>
      ${(view.control.choices ?? []).map(
        (choice) =>
          html`<button
            type="button"
            aria-pressed=${choice.value === view.value ? 'true' : 'false'}
            data-value=${choice.value}
            @click=${() => this.set(choice.value)}
          >
            ${choice.title}
          </button>`,
      )}
    </span>`;
  }

  private number(view: ControlView) {
    const {min = -Infinity, max = Infinity, step = 1, unit = ''} = view.control;
    const value = Number(view.value);
    // the plant drifts between the steps; a dial shows tenths
    const shown = String(Number(value.toFixed(1)));
    const to = (wanted: number): void =>
      this.set(Math.min(max, Math.max(min, Number(wanted.toFixed(6)))));
    return html`<span class="stepper" role="group" aria-label=${this.spoken}>
      <button type="button" aria-label="Less" @click=${() => to(value - step)}>−</button>
      <input
        type="number"
        aria-label=${`${this.spoken}${unit ? ` in ${unit}` : ''}`}
        min=${Number.isFinite(min) ? min : nothing}
        max=${Number.isFinite(max) ? max : nothing}
        step="any"
        .value=${shown}
        @change=${(event: Event) => this.onTyped(event.target as HTMLInputElement, to)}
      />
      ${unit ? html`<span class="unit" aria-hidden="true">${unit}</span>` : nothing}
      <button type="button" aria-label="More" @click=${() => to(value + step)}>+</button>
    </span>`;
  }

  private press(view: ControlView) {
    return html`<button type="button" class="button" @click=${() => this.set('pressed')}>
      ${view.control.title}
    </button>`;
  }

  private onTyped(input: HTMLInputElement, to: (wanted: number) => void): void {
    const wanted = input.valueAsNumber;
    if (Number.isFinite(wanted)) to(wanted);
    else input.value = String(this.view?.value ?? '');
  }

  private set(value: string | number): void {
    const view = this.view;
    if (!view || (value === view.value && view.control.type !== 'press')) return;
    const action = {do: 'set', target: view.target, value} as const;
    this.dispatchEvent(
      new CustomEvent('action-asked', {detail: {action}, bubbles: true, composed: true}),
    );
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-control-field': ControlField;
  }
}
