import {LitElement, css, html, nothing, type PropertyValues} from 'lit';
import {customElement, property} from 'lit/decorators.js';
import {hintMinutes} from '../bench/action-costs.ts';
import type {HintLevel} from '../bench/actions.ts';
import type {LogEntry} from '../bench/bench-view.ts';
import {controlStyles} from '../bench/controls.styles.ts';
import {hintPoints} from './hint-points.ts';

/** How the coach stands. `steps` are those of the log that are still to be gone through. */
export type CoachState =
  | {readonly is: 'following'; readonly steps?: number}
  | {readonly is: 'ready'; readonly useless?: string}
  | {readonly is: 'thinking'; readonly level: HintLevel}
  | {readonly is: 'lost'; readonly reason: string};

const levels: readonly {
  readonly level: HintLevel;
  readonly title: string;
  readonly about: string;
}[] = [
  {level: 1, title: 'The question', about: 'to ask next'},
  {level: 2, title: 'The place', about: 'to look'},
  {level: 3, title: 'The reading', about: 'to take'},
];

/**
 * The coach at the bench: three hints to ask for, each with its price, what was said so far, and why the last reading
 * told nothing.
 *
 * @event {{level: HintLevel}} hint-asked - A person wants this hint and knows what it costs.
 */
@customElement('rb-coach-panel')
export class CoachPanel extends LitElement {
  static override styles = [
    controlStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-3);
        align-content: start;
      }
      h2 {
        font-size: var(--text-l);
      }
      .levels {
        border-block-start: 1.5px solid var(--ink);
      }
      .levels li {
        border-block-end: 1px solid var(--rule);
      }
      .levels li:last-child {
        border-block-end: 1.5px solid var(--ink);
      }
      .levels button {
        display: flex;
        gap: 0 var(--space-2);
        align-items: baseline;
        inline-size: 100%;
        min-block-size: 44px;
        padding: var(--space-2) 0;
        border: 0;
        background: none;
        text-align: start;
        cursor: pointer;
      }
      .levels button:hover {
        background: var(--accent-soft);
      }
      .levels b {
        color: var(--accent);
      }
      .levels button[aria-disabled='true'] {
        cursor: not-allowed;
        background: none;
      }
      .levels button[aria-disabled='true'] b {
        color: var(--ink-3);
      }
      .levels b {
        white-space: nowrap;
      }
      .levels .quiet-text {
        flex: 1 1 auto;
        line-height: 1.3;
      }
      .price {
        font: var(--text-s) / 1.3 var(--font-mono);
        white-space: nowrap;
      }
      .useless {
        padding: var(--space-2) var(--space-3);
        background: var(--caution-soft);
        border-inline-start: 4px solid var(--caution);
      }
      .said {
        display: grid;
        gap: var(--space-2);
      }
      .said li {
        padding: var(--space-2) var(--space-3);
        background: var(--paper);
        border-inline-start: 4px solid var(--accent);
        overflow-wrap: anywhere;
      }
      .said small {
        display: block;
        color: var(--ink-2);
        font-size: var(--text-s);
      }
      @media (max-width: 760px) {
        :host {
          padding-block: var(--space-2);
        }
      }
    `,
  ];

  @property({attribute: false}) state: CoachState = {is: 'following'};
  /** The whole field log; the hints in it are shown, the latest first. */
  @property({attribute: false}) log: readonly LogEntry[] = [];
  /** The search is over: nothing more to ask. */
  @property({type: Boolean}) over = false;

  override render() {
    const {state} = this;
    const hints = this.log.filter(({hint}) => hint !== undefined);
    const minutes = hints.reduce((sum, {hint}) => sum + hintMinutes[hint!], 0);
    const points = hints.reduce((sum, {hint}) => sum + hintPoints[hint!], 0);
    return html`
      <h2 class="visually-hidden">Ask the coach for</h2>
      ${
        state.is === 'lost'
          ? html`<p class="refused" role="alert">${state.reason}</p>`
          : html`<ul class="levels" aria-label="Hints">
              ${levels.map((each) => this.choice(each))}
            </ul>`
      }
      <div role="status">
        ${state.is === 'following' ? html`<p class="quiet-text">${following(state.steps)}</p>` : nothing}
        ${state.is === 'thinking' ? html`<p class="quiet-text">Weighing every reading there is…</p>` : nothing}
        ${state.is === 'ready' && state.useless ? html`<p class="useless"><b>Your last reading.</b> ${state.useless}</p>` : nothing}
      </div>
      ${
        hints.length
          ? html`<section aria-labelledby="said" aria-live="polite">
              <h2 id="said">Asked so far</h2>
              <p class="quiet-text">
                ${hints.length} ${hints.length === 1 ? 'hint' : 'hints'}: ${minutes} min of work,
                ${points} of 30 points for method.
              </p>
              <ol class="said" reversed>
                ${[...hints].reverse().map(
                  ({hint, text, index}) =>
                    html`<li>
                      <small
                        >${levels.find(({level}) => level === hint)!.title}, log line
                        ${index + 1}</small
                      >
                      ${text}
                    </li>`,
                )}
              </ol>
            </section>`
          : nothing
      }
      <p class="quiet-text">
        The coach has your field log and nothing else: what is hidden is not known here. Every hint
        goes into your log, and the debrief counts it.
      </p>
    `;
  }

  protected override updated(changed: PropertyValues<this>): void {
    const before = changed.get('log');
    if (!before || before.length === this.log.length || !this.log.at(-1)?.hint) return;
    this.renderRoot.querySelector('.said li')?.scrollIntoView({block: 'nearest'});
  }

  private choice({level, title, about}: (typeof levels)[number]) {
    const barred = this.over || this.state.is === 'thinking';
    return html`<li>
      <button
        type="button"
        aria-disabled=${barred ? 'true' : 'false'}
        @click=${() => this.ask(level, barred)}
      >
        <b>${title}</b>
        <span class="quiet-text">${about}</span>
        <span class="price">${hintMinutes[level]} min, ${count(hintPoints[level], 'point')}</span>
      </button>
    </li>`;
  }

  private ask(level: HintLevel, barred: boolean): void {
    if (barred) return;
    this.dispatchEvent(
      new CustomEvent('hint-asked', {detail: {level}, bubbles: true, composed: true}),
    );
  }
}

function following(steps: number | undefined): string {
  return steps
    ? `Going through your log: ${count(steps, 'step')} to go. You can ask already.`
    : 'Going through your log. You can ask already.';
}

const count = (n: number, noun: string): string => `${n} ${noun}${n === 1 ? '' : 's'}`;

declare global {
  interface HTMLElementTagNameMap {
    'rb-coach-panel': CoachPanel;
  }
}
