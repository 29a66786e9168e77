import {LitElement, css, html, nothing} from 'lit';
import {customElement, property, state} from 'lit/decorators.js';
import {controlsOf, type PlacedControl} from '../../bench/bench-controls.ts';
import type {Poll, PollBody} from '../../classroom/protocol/poll.ts';
import type {Unit} from '../../content/unit.ts';
import {openAttempts} from '../../store/attempts.ts';
import {desk} from '../desk/desk.ts';
import type {CatalogueEntry} from '../desk/desk-messages.ts';
import {sheetStyles} from '../design/sheet.styles.ts';
import {api, sentenceOf} from './class-api.ts';
import {classStyles} from './class.styles.ts';
import {actionsBefore, type PollAction} from './poll-actions.ts';
import {isComplete, nothingYet, type Watched} from './poll-readings.element.ts';
import './poll-readings.element.ts';

const mostAnswers = 4;

/**
 * A new “what will happen if”: question, answers, the unit as it stands, the change, where the meter stands.
 * @event {{poll: Poll}} poll-made - A person asked it, and the server has it.
 * @event poll-left - A person would rather not.
 */
@customElement('rb-poll-form')
export class PollForm extends LitElement {
  static override styles = [
    sheetStyles,
    classStyles,
    css`
      form {
        display: grid;
        gap: var(--space-3);
      }

      .pair {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 16rem), 1fr));
        gap: var(--space-3);
      }

      .answers {
        margin: 0;
        padding: 0;
        display: grid;
        grid-template-columns: auto minmax(0, 1fr);
        gap: 4px var(--space-2);
        align-items: center;
        border: 0;
      }

      .plain.more {
        padding-inline: 0;
      }

      .answers legend {
        padding: 0;
        font-weight: 700;
      }
    `,
  ];

  @property() classId = '';

  @state() private units: readonly Unit[] | undefined;
  @state() private unit: Unit | undefined;
  @state() private sequence = '';
  @state() private question = '';
  @state() private answers: readonly string[] = ['', ''];
  @state() private right: number | undefined;
  @state() private change: 'fault' | 'control' = 'fault';
  @state() private catalogue: readonly CatalogueEntry[] = [];
  @state() private fault = '';
  @state() private target = '';
  @state() private value = '';
  @state() private watched: readonly Watched[] = [nothingYet];
  @state() private refusal = '';
  @state() private busy = false;

  override connectedCallback(): void {
    super.connectedCallback();
    void this.fetch();
  }

  override render() {
    const {units, unit} = this;
    if (!units || !unit)
      return html`<p class="quiet" role="status">${this.refusal || 'Fetching the units…'}</p>`;
    return html`<form @submit=${this.submit}>
      <div>
        <label for="question">Finish the question</label>
        <input
          id="question"
          type="text"
          required
          maxlength="300"
          autocomplete="off"
          placeholder="the wire from the high-pressure switch comes off?"
          .value=${this.question}
          @input=${(event: Event) => (this.question = valueOf(event))}
        />
      </div>
      ${this.renderAnswers()}
      <div class="pair">
        <div>
          <label for="unit">Unit</label>
          <select id="unit" @change=${(event: Event) => this.chooseUnit(valueOf(event))}>
            ${units.map(({id, title}) => html`<option value=${id} ?selected=${id === unit.id}>${title}</option>`)}
          </select>
        </div>
        <div>
          <label for="sequence">The unit before the change</label>
          <select id="sequence" @change=${(event: Event) => (this.sequence = valueOf(event))}>
            ${unit.sequences.map(({id, title}) => html`<option value=${id} ?selected=${id === this.sequence}>${title}</option>`)}
          </select>
        </div>
      </div>
      ${this.renderChange(unit)}
      <rb-poll-readings
        .unit=${unit}
        .watched=${this.watched}
        @watched-changed=${(event: CustomEvent<{watched: readonly Watched[]}>) => (this.watched = event.detail.watched)}
      ></rb-poll-readings>
      <div role="alert">
        ${this.refusal ? html`<p class="note danger"><strong>Not asked.</strong>${this.refusal}</p>` : nothing}
      </div>
      <p class="row">
        <button class="button first" ?disabled=${this.busy || !this.ready}>Ask the class</button>
        <button
          type="button"
          class="button"
          @click=${() => this.dispatchEvent(new CustomEvent('poll-left'))}
        >
          Not now
        </button>
      </p>
    </form>`;
  }

  private renderAnswers() {
    return html`<fieldset class="answers">
        <legend>
          Answers to choose from
          <span class="quiet">(mark the right one, or leave it to the readings)</span>
        </legend>
        ${this.answers.map(
          (answer, index) =>
            html`<input
                type="radio"
                name="right"
                aria-label="Answer ${index + 1} is right"
                .checked=${this.right === index}
                @change=${() => (this.right = index)}
              />
              <input
                type="text"
                maxlength="200"
                aria-label="Answer ${index + 1}"
                .value=${answer}
                @input=${(event: Event) => (this.answers = this.answers.with(index, valueOf(event)))}
              />`,
        )}
      </fieldset>
      ${
        this.answers.length < mostAnswers
          ? html`<p>
              <button
                type="button"
                class="plain more"
                @click=${() => (this.answers = [...this.answers, ''])}
              >
                One more answer
              </button>
            </p>`
          : nothing
      }`;
  }

  private renderChange(unit: Unit) {
    const controls = controlsOf(unit);
    const placed = controls.find(({target}) => target === this.target);
    return html`<div class="pair">
      <div>
        <label for="change">The change</label>
        <select
          id="change"
          @change=${(event: Event) => (this.change = valueOf(event) as 'fault' | 'control')}
        >
          <option value="fault" ?selected=${this.change === 'fault'}>Something fails</option>
          <option value="control" ?selected=${this.change === 'control'}>A control is moved</option>
        </select>
      </div>
      ${
        this.change === 'fault'
          ? html`<div>
              <label for="fault">What fails</label>
              <select id="fault" @change=${(event: Event) => (this.fault = valueOf(event))}>
                <option value="">choose…</option>
                ${this.catalogue.map(({id, name}) => html`<option value=${id} ?selected=${id === this.fault}>${name}</option>`)}
              </select>
            </div>`
          : html`<div>
                <label for="target">Control</label>
                <select
                  id="target"
                  @change=${(event: Event) => this.chooseControl(valueOf(event), controls)}
                >
                  <option value="">choose…</option>
                  ${controls.map(({target, part, control}) => html`<option value=${target} ?selected=${target === this.target}>${part} ${control.title}</option>`)}
                </select>
              </div>
              ${placed ? this.renderValue(placed) : nothing}`
      }
    </div>`;
  }

  private renderValue({control}: PlacedControl) {
    if (control.type === 'press') return nothing;
    return html`<div>
      <label for="value">To</label>
      ${
        control.type === 'choice'
          ? html`<select id="value" @change=${(event: Event) => (this.value = valueOf(event))}>
              ${(control.choices ?? []).map(({value, title}) => html`<option value=${value} ?selected=${value === this.value}>${title}</option>`)}
            </select>`
          : html`<input
              id="value"
              type="number"
              step="any"
              .value=${this.value}
              @input=${(event: Event) => (this.value = valueOf(event))}
            />`
      }
    </div>`;
  }

  private get ready(): boolean {
    const answers = this.answers.filter((answer) => answer.trim());
    const changed = this.change === 'fault' ? this.fault : this.target;
    return Boolean(
      this.question.trim() && answers.length >= 2 && changed && this.watched.every(isComplete),
    );
  }

  private chooseUnit(id: string): void {
    this.unit = this.units?.find((unit) => unit.id === id);
    // a unit at work says more than one that is off
    const sequences = this.unit?.sequences ?? [];
    this.sequence = (sequences.find(({id}) => id !== 'off') ?? sequences[0])?.id ?? '';
    this.fault = this.target = '';
    this.watched = [nothingYet];
    void this.fetchCatalogue(id);
  }

  private chooseControl(target: string, controls: readonly PlacedControl[]): void {
    this.target = target;
    const control = controls.find((each) => each.target === target)?.control;
    this.value = control?.choices?.[0]?.value ?? String(control?.min ?? '');
  }

  private readonly submit = async (event: Event): Promise<void> => {
    event.preventDefault();
    if (!this.unit || !this.ready) return;
    this.busy = true;
    this.refusal = '';
    try {
      const poll = await api<Poll>('POST', `classes/${this.classId}/polls`, this.body(this.unit));
      this.dispatchEvent(new CustomEvent('poll-made', {detail: {poll}}));
    } catch (error) {
      this.refusal = sentenceOf(error);
    } finally {
      this.busy = false;
    }
  };

  private body(unit: Unit): PollBody {
    const kept = this.answers
      .map((answer, index) => ({answer: answer.trim(), index}))
      .filter(({answer}) => answer);
    const right = kept.findIndex(({index}) => index === this.right);
    return {
      question: this.question.trim(),
      answers: kept.map(({answer}) => answer),
      ...(right < 0 ? {} : {right}),
      unit: unit.id,
      actions: actionsBefore(unit, this.sequence),
      change: this.change === 'fault' ? {fault: this.fault} : {actions: this.moved(unit)},
      watch: this.watched.map(({function: fn, red, black}) =>
        fn === 'clamp-amps' ? {function: 'clamp-amps', wire: red} : {function: fn, red, black},
      ),
    };
  }

  /** The control is moved, then the unit has a minute to follow. */
  private moved(unit: Unit): PollAction[] {
    const control = controlsOf(unit).find(({target}) => target === this.target)?.control;
    const value = control?.type === 'number' ? Number(this.value) : this.value || 'press';
    return [
      {do: 'set', target: this.target, value},
      {do: 'wait', seconds: 60},
    ];
  }

  private async fetch(): Promise<void> {
    try {
      const listed = await desk().units(await openAttempts());
      this.units = listed.flatMap(({shipped, unit}) => (shipped && unit ? [unit] : []));
      this.chooseUnit(
        this.units.find(({id}) => id === 'split-heat-pump')?.id ?? this.units[0]?.id ?? '',
      );
    } catch (error) {
      this.refusal = sentenceOf(error);
    }
  }

  private async fetchCatalogue(id: string): Promise<void> {
    try {
      const catalogue = await desk().catalogue({shipped: id});
      if (this.unit?.id === id) this.catalogue = catalogue;
    } catch (error) {
      this.refusal = sentenceOf(error);
    }
  }
}

const valueOf = (event: Event): string =>
  (event.target as HTMLInputElement | HTMLSelectElement).value;

declare global {
  interface HTMLElementTagNameMap {
    'rb-poll-form': PollForm;
  }
}
