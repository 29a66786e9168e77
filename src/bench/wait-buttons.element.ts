import {LitElement, css, html} from 'lit';
import {customElement, query, state} from 'lit/decorators.js';
import {controlStyles} from './controls.styles.ts';

const usual = [
  {seconds: 10, title: '10 s'},
  {seconds: 60, title: '1 min'},
  {seconds: 600, title: '10 min'},
] as const;

/** The longest that one wait may be: a working day. */
const longestMinutes = 480;

/**
 * Lets simulated time go by.
 *
 * @event {{action: Action}} action-asked - A person chose to wait.
 */
@customElement('rb-wait-buttons')
export class WaitButtons extends LitElement {
  static override styles = [
    controlStyles,
    css`
      .line {
        display: flex;
        flex-wrap: wrap;
        gap: 6px;
      }
      form {
        display: inline-flex;
        align-items: center;
        gap: 6px;
      }
      input {
        inline-size: 4rem;
      }
    `,
  ];

  @state() private wrong = '';
  @query('input') private input!: HTMLInputElement;

  override render() {
    return html`
      <div class="line">
        ${usual.map(
          ({seconds, title}) =>
            html`<button type="button" class="button" @click=${() => this.wait(seconds)}>
              ${title}
            </button>`,
        )}
        <form @submit=${this.onSubmit} novalidate>
          <input
            class="field"
            type="number"
            inputmode="decimal"
            min="0.1"
            max=${longestMinutes}
            step="any"
            aria-label="Minutes to wait"
            placeholder="min"
          />
          <button class="button" type="submit">Wait</button>
        </form>
      </div>
      ${this.wrong ? html`<p class="refused" role="alert">${this.wrong}</p>` : ''}
    `;
  }

  private onSubmit(event: Event): void {
    event.preventDefault();
    const minutes = this.input.valueAsNumber;
    if (!(minutes > 0 && minutes <= longestMinutes)) {
      this.wrong = `Write how many minutes to wait, up to ${longestMinutes}.`;
      return;
    }
    this.wait(Math.max(1, Math.round(minutes * 60)));
    this.input.value = '';
  }

  private wait(seconds: number): void {
    this.wrong = '';
    const action = {do: 'wait', seconds} as const;
    this.dispatchEvent(
      new CustomEvent('action-asked', {detail: {action}, bubbles: true, composed: true}),
    );
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-wait-buttons': WaitButtons;
  }
}
