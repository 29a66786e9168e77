import {LitElement, css, html, nothing} from 'lit';
import {customElement, property} from 'lit/decorators.js';
import type {Unit} from '../../content/unit.ts';
import {functionNames} from '../../meter/function-names.ts';
import {meterFunctions, type MeterFunction} from '../../meter/meter-function.ts';
import {sheetStyles} from '../design/sheet.styles.ts';

/** Where the wall's meter stands for one reading. */
export interface Watched {
  readonly function: MeterFunction;
  /** Red terminal, or the wire in the clamp. */
  readonly red: string;
  readonly black: string;
}

export const nothingYet: Watched = {function: 'ac-volts', red: '', black: ''};

export const isComplete = ({function: fn, red, black}: Watched): boolean =>
  red !== '' && (fn === 'clamp-amps' || black !== '');

/** The functions that a wall's meter may stand on: leads on two terminals, or the clamp's amps. */
const watchable = meterFunctions.filter(
  (each) => functionNames[each].probes === 'leads' || each === 'clamp-amps',
);
const mostWatched = 3;

/**
 * What the meter on the wall reads before and after the change: up to three readings.
 * @event {{watched: readonly Watched[]}} watched-changed - A person changed one.
 */
@customElement('rb-poll-readings')
export class PollReadings extends LitElement {
  static override styles = [
    sheetStyles,
    css`
      .watch {
        display: grid;
        grid-template-columns: minmax(0, 1.2fr) repeat(2, minmax(0, 1fr)) auto;
        gap: 4px var(--space-2);
        align-items: center;
        margin-top: 4px;
      }

      .plain.more {
        padding-inline: 0;
      }

      @media (max-width: 560px) {
        .watch {
          grid-template-columns: repeat(2, minmax(0, 1fr));
          padding-bottom: var(--space-2);
        }

        .watch select:first-child {
          grid-column: 1 / -1;
        }
      }
    `,
  ];

  @property({attribute: false}) unit!: Unit;
  @property({attribute: false}) watched: readonly Watched[] = [nothingYet];

  override render() {
    return html`
      <p class="label">The meter on the wall reads</p>
      ${this.watched.map((each, index) => this.renderWatch(each, index))}
      ${
        this.watched.length < mostWatched
          ? html`<button
              type="button"
              class="plain more"
              @click=${() => this.tell([...this.watched, nothingYet])}
            >
              One more reading
            </button>`
          : nothing
      }
    `;
  }

  private renderWatch(each: Watched, index: number) {
    const set = (change: Partial<Watched>) =>
      this.tell(this.watched.with(index, {...each, ...change}));
    const clamp = each.function === 'clamp-amps';
    const {wires, parts} = this.unit;
    const names = clamp
      ? wires.map(({id}) => id)
      : parts.flatMap(({id, terminals}) => terminals.map((name) => `${id}.${name}`));
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
        @change=${(event: Event) => set({...nothingYet, function: valueOf(event) as MeterFunction})}
      >
        ${watchable.map((name) => html`<option value=${name} ?selected=${name === each.function}>${functionNames[name].title}</option>`)}
      </select>
      ${clamp ? select('Wire in the clamp', each.red, 'red') : html`${select('Red lead', each.red, 'red')}${select('Black lead', each.black, 'black')}`}
      ${
        this.watched.length > 1
          ? html`<button
              type="button"
              class="plain"
              @click=${() => this.tell(this.watched.filter((_, at) => at !== index))}
            >
              Remove<span class="sr-only"> reading ${index + 1}</span>
            </button>`
          : nothing
      }
    </div>`;
  }

  private tell(watched: readonly Watched[]): void {
    this.watched = watched;
    this.dispatchEvent(new CustomEvent('watched-changed', {detail: {watched}}));
  }
}

const valueOf = (event: Event): string => (event.target as HTMLSelectElement).value;

declare global {
  interface HTMLElementTagNameMap {
    'rb-poll-readings': PollReadings;
  }
}
