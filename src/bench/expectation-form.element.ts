import {LitElement, css, html, nothing} from 'lit';
import {customElement, property, query, state} from 'lit/decorators.js';
import {functionNames} from '../meter/function-names.ts';
import type {MeterFunction} from '../meter/meter-function.ts';
import type {Expectation} from './actions.ts';
import {controlStyles} from './controls.styles.ts';
import {parseExpectation} from './expectation-text.ts';

/**
 * Asks what the student expects before the meter shows anything, and reads. Leaving it empty skips it.
 *
 * @event {{expected?: Expectation}} reading-asked - A person pressed Read.
 */
@customElement('rb-expectation-form')
export class ExpectationForm extends LitElement {
  static override styles = [
    controlStyles,
    css`
      :host {
        display: block;
      }
      form {
        display: grid;
        gap: var(--space-2);
      }
      .ask {
        display: flex;
        justify-content: space-between;
        align-items: baseline;
        gap: var(--space-2);
        font-weight: 700;
      }
      .row {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        gap: var(--space-2);
      }
      .with-unit {
        display: flex;
        align-items: center;
        background: var(--paper-raised);
        border: 1.5px solid var(--rule-strong);
        border-radius: var(--radius-1);
      }
      .with-unit:focus-within {
        outline: 3px solid var(--focus);
        outline-offset: 2px;
      }
      .with-unit input {
        flex: 1;
        min-inline-size: 0;
        min-block-size: 42px;
        padding: 0 var(--space-2);
        border: 0;
        background: none;
        outline: none;
        font-family: var(--font-mono);
        font-weight: 700;
      }
      .with-unit input::placeholder {
        font-family: var(--font-body);
        font-weight: 400;
        color: var(--ink-3);
      }
      .with-unit span {
        padding-inline: var(--space-2);
        font-family: var(--font-mono);
        color: var(--ink-2);
      }
      .button.primary {
        min-inline-size: 7.5rem;
      }
      .chips {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-1);
      }
      .chip {
        min-block-size: 36px;
        min-inline-size: 44px;
        padding: 0 var(--space-2);
        background: none;
        color: var(--accent);
        border: 1px solid var(--rule-strong);
        border-radius: 999px;
        font-family: var(--font-mono);
        font-weight: 700;
        font-size: var(--text-s);
        cursor: pointer;
      }
      .chip[aria-pressed='true'] {
        background: var(--accent);
        border-color: var(--accent);
        color: var(--on-accent);
      }
      .chip:disabled {
        color: var(--ink-3);
        cursor: not-allowed;
      }
      .wrong {
        color: var(--danger);
        font-size: var(--text-s);
      }
      @media (max-width: 760px) {
        .ask {
          position: absolute;
          inline-size: 1px;
          block-size: 1px;
          overflow: hidden;
          clip-path: inset(50%);
        }
        form {
          gap: 6px;
        }
        .chips {
          flex-wrap: nowrap;
        }
        .chip {
          flex: 1;
          min-block-size: 40px;
          padding: 0;
        }
      }
    `,
  ];

  @property() function: MeterFunction = 'ac-volts';
  /** Both leads are down, or the jaw is closed: there is something to read. */
  @property({type: Boolean}) ready = false;
  /** The glass shows this very reading already. */
  @property({type: Boolean}) again = false;
  /** The bench is at work on the last action. */
  @property({type: Boolean}) busy = false;
  /** Volts of the unit's circuits, offered as quick choices. */
  @property({attribute: false}) usualVolts: readonly number[] = [];

  @state() private typed = '';
  @state() private wrong = '';
  @query('input') private input!: HTMLInputElement;

  override focus(): void {
    this.input.focus();
  }

  /** Read as it stands, as pressing the button would. */
  submit(): void {
    this.renderRoot.querySelector('form')?.requestSubmit();
  }

  override render() {
    const unit = functionNames[this.function].written.unit;
    const skips = this.typed.trim() === '';
    return html`
      <form @submit=${this.onSubmit} @keydown=${this.onKeydown} novalidate>
        <div class="ask">
          <label for="expected">What do you expect?</label>
          ${this.ready ? nothing : html`<span class="quiet-text">${this.missing}</span>`}
        </div>
        <div class="chips" role="group" aria-label="Usual answers">
          ${this.usualAnswers.map(
            (answer) =>
              html`<button
                type="button"
                class="chip"
                aria-pressed=${this.typed === answer ? 'true' : 'false'}
                @click=${() => this.take(answer)}
              >
                ${answer === 'OL' ? answer : `${answer} ${unit}`}
              </button>`,
          )}
        </div>
        <div class="row">
          <div class="with-unit">
            <input
              id="expected"
              inputmode="text"
              autocomplete="off"
              autocapitalize="off"
              spellcheck="false"
              maxlength="24"
              placeholder="number, or skip"
              aria-invalid=${this.wrong ? 'true' : 'false'}
              aria-describedby=${this.wrong ? 'wrong' : nothing}
              .value=${this.typed}
              @input=${() => this.take(this.input.value)}
            />
            <span aria-hidden="true">${unit}</span>
          </div>
          <button type="submit" class="button primary" ?disabled=${!this.ready || this.busy}>
            ${skips ? (this.again ? 'Read again' : 'Skip and read') : 'Read'}
          </button>
        </div>
        ${this.wrong ? html`<p id="wrong" class="wrong" role="alert">${this.wrong}</p>` : nothing}
      </form>
    `;
  }

  private get missing(): string {
    return functionNames[this.function].probes === 'clamp'
      ? 'Close the clamp on a wire'
      : 'Put both leads down';
  }

  private get usualAnswers(): readonly string[] {
    if (functionNames[this.function].baseUnit === 'V') {
      return ['0', ...this.usualVolts.map(String)];
    }
    return functionNames[this.function].baseUnit === 'Ω' ? ['0', 'OL'] : ['0'];
  }

  private take(text: string): void {
    this.typed = text;
    this.wrong = '';
  }

  /** A key held down reads once. */
  private onKeydown(event: KeyboardEvent): void {
    if (event.key === 'Enter' && event.repeat) event.preventDefault();
  }

  private onSubmit(event: Event): void {
    event.preventDefault();
    if (!this.ready || this.busy) return;
    const expected: Expectation | string | undefined = parseExpectation(this.typed, this.function);
    if (typeof expected === 'string') {
      this.wrong = expected;
      return;
    }
    this.take('');
    this.dispatchEvent(
      new CustomEvent('reading-asked', {detail: {expected}, bubbles: true, composed: true}),
    );
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-expectation-form': ExpectationForm;
  }
}
