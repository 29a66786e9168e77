import {LitElement, css, html, nothing} from 'lit';
import {customElement, property} from 'lit/decorators.js';
import type {MeterFlaw} from '../../meter/meter-condition.ts';
import {sheetStyles} from '../design/sheet.styles.ts';
import {meterChoices} from '../hide/meter-choices.ts';
import {classStyles} from './class.styles.ts';

/** By which rules a set is worked. */
export interface SetRules {
  readonly limitMinutes?: number;
  readonly coach: boolean;
  readonly debriefWhen: 'named' | 'closed';
  readonly meterFlaw?: MeterFlaw;
}

const longestMinutes = 600;

/**
 * The rules of a set: time limit, coach, when the debrief tells.
 * @event {{rules: SetRules}} rules-changed - A person changed one.
 */
@customElement('rb-set-rules')
export class SetRulesFields extends LitElement {
  static override styles = [
    sheetStyles,
    classStyles,
    css`
      .rules {
        display: flex;
        flex-wrap: wrap;
        gap: 0 var(--space-5);
        align-items: center;
      }

      .limit {
        display: flex;
        align-items: center;
        gap: var(--space-2);
        font-weight: 400;
      }

      .limit input[type='number'] {
        width: 6rem;
      }

      .limit select {
        width: auto;
      }
    `,
  ];

  @property({attribute: false}) rules: SetRules = {coach: false, debriefWhen: 'named'};
  /** A wiring task has neither coach nor a fault to tell. */
  @property({type: Boolean}) bare = false;
  /** Also asks what is wrong with each student's own meter. */
  @property({type: Boolean}) metered = false;

  override render() {
    const {limitMinutes, coach, debriefWhen} = this.rules;
    return html`<div class="rules">
      <label class="limit"
        >Time limit, minutes
        <input
          type="number"
          inputmode="numeric"
          min="1"
          max=${longestMinutes}
          placeholder="none"
          .value=${limitMinutes === undefined ? '' : String(limitMinutes)}
          @input=${this.limit}
      /></label>
      ${
        this.bare
          ? nothing
          : html`<label class="choice"
                ><input
                  type="checkbox"
                  .checked=${coach}
                  @change=${() => this.tell({...this.rules, coach: !coach})}
                />Coach and hints allowed</label
              >
              <label class="choice"
                ><input
                  type="checkbox"
                  .checked=${debriefWhen === 'closed'}
                  @change=${() => this.tell({...this.rules, debriefWhen: debriefWhen === 'closed' ? 'named' : 'closed'})}
                />Tell students the fault only after you close it</label
              >`
      }
      ${this.metered && !this.bare ? this.renderMeter() : nothing}
    </div>`;
  }

  private renderMeter() {
    const {meterFlaw = '', ...rules} = this.rules;
    return html`<label class="limit"
      >Each student’s meter
      <select
        @change=${(event: Event) => {
          const flaw = (event.target as HTMLSelectElement).value as MeterFlaw | '';
          this.tell(flaw ? {...rules, meterFlaw: flaw} : rules);
        }}
      >
        ${meterChoices.map(
          ([flaw, text]) =>
            html`<option value=${flaw} ?selected=${flaw === meterFlaw}>${text}</option>`,
        )}
      </select></label
    >`;
  }

  private limit(event: Event): void {
    const field = event.target as HTMLInputElement;
    const minutes = field.valueAsNumber;
    const {limitMinutes: _before, ...rules} = this.rules;
    if (!field.validity.valid) return;
    this.tell(Number.isInteger(minutes) ? {...rules, limitMinutes: minutes} : rules);
  }

  private tell(rules: SetRules): void {
    this.rules = rules;
    this.dispatchEvent(new CustomEvent('rules-changed', {detail: {rules}}));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-set-rules': SetRulesFields;
  }
}
