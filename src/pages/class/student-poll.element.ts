import {LitElement, css, html, nothing} from 'lit';
import {customElement, property, state} from 'lit/decorators.js';
import type {StudentPoll} from '../../classroom/protocol/poll.ts';
import {sheetStyles} from '../design/sheet.styles.ts';
import {displayText} from './display-text.ts';
import {focusSoon} from './focus-soon.ts';

/**
 * “What will happen if”, as a student answers it: one choice, before anything is changed.
 * @event {{poll: string, answer: number}} answer-committed - A person committed to an answer.
 */
@customElement('rb-student-poll')
export class StudentPollCard extends LitElement {
  static override styles = [
    sheetStyles,
    css`
      .poll {
        border: 2px solid var(--ink);
        background: var(--paper-raised);
        padding: var(--space-4);
      }

      h2:focus {
        outline: none;
      }

      h2 {
        font-size: var(--text-l);
      }

      .answers {
        display: grid;
        gap: var(--space-2);
        margin-top: var(--space-3);
      }

      .answers button,
      .answers p {
        display: flex;
        justify-content: space-between;
        gap: var(--space-3);
        width: 100%;
        max-width: none;
        min-height: 48px;
        padding: var(--space-2) var(--space-3);
        border: 1px solid var(--rule-strong);
        border-radius: var(--radius-1);
        background: none;
        color: var(--ink);
        text-align: left;
        overflow-wrap: anywhere;
      }

      .answers button[aria-pressed='true'],
      .answers .mine {
        border: 2px solid var(--accent);
        font-weight: 700;
      }

      dl {
        margin-top: var(--space-3);
        border-top: 1px solid var(--rule-strong);
      }

      dl > div {
        display: flex;
        flex-wrap: wrap;
        justify-content: space-between;
        gap: 0 var(--space-4);
        padding: 4px 0;
        border-bottom: 1px solid var(--rule);
      }

      .tag {
        display: inline-block;
        margin-left: 0.3em;
        padding: 0 6px;
        border: 1px solid currentColor;
        border-radius: var(--radius-1);
        font-size: var(--text-s);
        font-weight: 700;
        white-space: nowrap;
      }

      .right {
        color: var(--good);
      }

      .then {
        font-family: var(--font-body);
      }

      .row {
        margin-top: var(--space-3);
      }
    `,
  ];

  @property({attribute: false}) poll!: StudentPoll;

  @state() private chosen: number | undefined;

  override render() {
    const {poll} = this;
    const open = poll.state === 'open' && poll.mine === undefined;
    return html`<section class="poll" aria-labelledby="asked">
      <p class="small quiet">What will happen if…</p>
      <h2 id="asked" tabindex="-1">${poll.question}</h2>
      ${this.readings()}
      <div class="answers">
        ${poll.answers.map((answer, index) => (open ? this.choice(answer, index) : this.result(answer, index)))}
      </div>
      <div role="status">
        ${
          open
            ? html`<p class="row">
                <button
                  class="button first"
                  ?disabled=${this.chosen === undefined}
                  @click=${this.commit}
                >
                  Give this answer
                </button>
                <span class="small quiet">One answer; it cannot be changed.</span>
              </p>`
            : html`<p class="row small quiet">${this.says()}</p>`
        }
      </div>
    </section>`;
  }

  private choice(answer: string, index: number) {
    return html`<button
      aria-pressed=${this.chosen === index ? 'true' : 'false'}
      @click=${() => (this.chosen = index)}
    >
      ${answer}
    </button>`;
  }

  private result(answer: string, index: number) {
    const {mine, right, counts} = this.poll;
    return html`<p class=${mine === index ? 'mine' : ''}>
      <span
        >${answer}${mine === index ? html` <span class="tag">Your answer</span>` : nothing}${right === index ? html` <b class="tag right">Right</b>` : nothing}</span
      >
      ${counts ? html`<span>${counts[index] ?? 0}</span>` : nothing}
    </p>`;
  }

  private readings() {
    const {readings} = this.poll;
    if (!readings.length) return nothing;
    return html`<dl>
      ${readings.map(
        ({text, before, after}) =>
          html`<div>
            <dt class="small">${text}</dt>
            <dd class="mono">
              ${displayText(before)}${after ? html`<span class="then">, then</span> <b>${displayText(after)}</b>` : nothing}
            </dd>
          </div>`,
      )}
    </dl>`;
  }

  private says(): string {
    const {state, mine, changed} = this.poll;
    if (state === 'shown') return changed ?? 'The change is made: compare the readings.';
    return mine === undefined ? 'The poll is over.' : 'Answered. Now wait for the change.';
  }

  private readonly commit = (): void => {
    if (this.chosen === undefined) return;
    this.dispatchEvent(
      new CustomEvent('answer-committed', {detail: {poll: this.poll.id, answer: this.chosen}}),
    );
    // the buttons go as soon as the server has the answer
    void focusSoon(this, 'h2');
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-student-poll': StudentPollCard;
  }
}
