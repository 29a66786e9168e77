import {LitElement, css, html, nothing} from 'lit';
import {customElement, property, state} from 'lit/decorators.js';
import {controlsOf, type PlacedControl} from '../../bench/bench-controls.ts';
import type {Poll, PollBody} from '../../classroom/protocol/poll.ts';
import type {Unit} from '../../content/unit.ts';
import {functionNames} from '../../meter/function-names.ts';
import {meterFunctions, type MeterFunction} from '../../meter/meter-function.ts';
import {openAttempts} from '../../store/attempts.ts';
import {desk} from '../desk/desk.ts';
import type {CatalogueEntry} from '../desk/desk-messages.ts';
import {sheetStyles} from '../design/sheet.styles.ts';
import {api, sentenceOf} from './class-api.ts';
import {classStyles} from './class.styles.ts';
import {actionsBefore, type PollAction} from './poll-actions.ts';

interface Watched {
  readonly function: MeterFunction;
  /** Red terminal, or the wire in the clamp. */
  readonly red: string;
  readonly black: string;
}

/** The functions that a wall's meter may stand on: leads on two terminals, or the clamp's amps. */
const watchable = meterFunctions.filter(
  (each) => functionNames[each].probes === 'leads' || each === 'clamp-amps',
);
const mostAnswers = 4;
const mostWatched = 3;

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
        display: grid;
        grid-template-columns: auto minmax(0, 1fr);
        gap: 4px var(--space-2);
        align-items: center;
        border: 0;
      }

      .answers legend {
        font-weight: 700;
      }

      .watch {
        display: grid;
        grid-template-columns: minmax(0, 1.2fr) repeat(2, minmax(0, 1fr)) auto;
        gap: 4px var(--space-2);
        align-items: center;
        margin-top: 4px;
      }

      @media (max-width: 560px) {
        .watch {
          grid-template-columns: repeat(2, minmax(0, 1fr));
          padding-bottom: var(--space-2);
        }
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
  @state() private watched: readonly Watched[] = [{function: 'ac-volts', red: '', black: ''}];
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
          <label for="sequence">As it stands before</label>
          <select id="sequence" @change=${(event: Event) => (this.sequence = valueOf(event))}>
            ${unit.sequences.map(({id, title}) => html`<option value=${id} ?selected=${id === this.sequence}>${title}</option>`)}
          </select>
        </div>
      </div>
      ${this.renderChange(unit)} ${this.renderWatched(unit)}
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
                class="plain"
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

  private renderWatched(unit: Unit) {
    return html`<div>
      <p class="label">The meter on the wall stands at</p>
      ${this.watched.map((each, index) => this.renderWatch(unit, each, index))}
      ${
        this.watched.length < mostWatched
          ? html`<button
              type="button"
              class="plain"
              @click=${() => (this.watched = [...this.watched, {function: 'ac-volts', red: '', black: ''}])}
            >
              One more reading
            </button>`
          : nothing
      }
    </div>`;
  }

  private renderWatch(unit: Unit, each: Watched, index: number) {
    const set = (change: Partial<Watched>) =>
      (this.watched = this.watched.with(index, {...each, ...change}));
    const clamp = each.function === 'clamp-amps';
    const names = clamp
      ? unit.wires.map(({id}) => id)
      : unit.parts.flatMap(({id, terminals}) => terminals.map((name) => `${id}.${name}`));
    const select = (label: string, value: string, key: 'red' | 'black') =>
      html`<select
        aria-label="${label}, reading ${index + 1}"
        @change=${(event: Event) => set({[key]: valueOf(event)})}
      >
        <option value="">${label}…</option>
        ${names.map((name) => html`<option value=${name} ?selected=${name === value}>${name}</option>`)}
      </select>`;
    return html`<div class="watch">
      <select
        aria-label="Function, reading ${index + 1}"
        @change=${(event: Event) => set({function: valueOf(event) as MeterFunction, red: '', black: ''})}
      >
        ${watchable.map((name) => html`<option value=${name} ?selected=${name === each.function}>${functionNames[name].title}</option>`)}
      </select>
      ${clamp ? select('Wire', each.red, 'red') : html`${select('Red', each.red, 'red')}${select('Black', each.black, 'black')}`}
      ${
        this.watched.length > 1
          ? html`<button
              type="button"
              class="plain"
              @click=${() => (this.watched = this.watched.filter((_, at) => at !== index))}
            >
              Drop<span class="sr-only"> reading ${index + 1}</span>
            </button>`
          : nothing
      }
    </div>`;
  }

  private get ready(): boolean {
    const answers = this.answers.filter((answer) => answer.trim());
    const changed = this.change === 'fault' ? this.fault : this.target;
    return Boolean(
      this.question.trim() &&
      answers.length >= 2 &&
      changed &&
      this.watched.every(({function: fn, red, black}) => red && (fn === 'clamp-amps' || black)),
    );
  }

  private chooseUnit(id: string): void {
    this.unit = this.units?.find((unit) => unit.id === id);
    // a unit at work says more than one that is off
    const sequences = this.unit?.sequences ?? [];
    this.sequence = (sequences.find(({id}) => id !== 'off') ?? sequences[0])?.id ?? '';
    this.fault = this.target = '';
    this.watched = [{function: 'ac-volts', red: '', black: ''}];
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
