import {LitElement, css, html, nothing} from 'lit';
import {customElement, property, state} from 'lit/decorators.js';
import type {Poll} from '../../classroom/protocol/poll.ts';
import {sheetStyles} from '../design/sheet.styles.ts';
import {api, sentenceOf} from './class-api.ts';
import {classStyles} from './class.styles.ts';
import {displayText} from './display-text.ts';
import {focusSoon} from './focus-soon.ts';
import './poll-form.element.ts';

/**
 * “What will happen if”, as the instructor runs it: ask, wait until the class has committed, make the change, put it away.
 * @event poll-left - A person wants it out of the way.
 */
@customElement('rb-poll-desk')
export class PollDesk extends LitElement {
  static override styles = [
    sheetStyles,
    classStyles,
    css`
      .box {
        margin: var(--space-3) 0 var(--space-4);
        border: 2px solid var(--ink);
        padding: var(--space-4);
        background: var(--paper);
      }

      h2:focus {
        outline: none;
      }

      h2 {
        margin-bottom: var(--space-3);
      }

      ol {
        margin-top: var(--space-2);
      }

      ol li {
        display: flex;
        justify-content: space-between;
        gap: var(--space-3);
        padding: 3px 0;
        border-bottom: 1px solid var(--rule);
        overflow-wrap: anywhere;
      }

      .row {
        margin-top: var(--space-3);
      }
    `,
  ];

  @property() classId = '';
  /** As the class's line last told it. */
  @property({attribute: false}) poll: Poll | undefined;

  /** As the server answered the last press, which may come before the line tells it. */
  @state() private own: Poll | undefined;
  @state() private refusal = '';

  override render() {
    const poll = this.current;
    return html`<section class="box" aria-labelledby="poll">
      <h2 id="poll" tabindex="-1">What will happen if…</h2>
      ${poll && poll.state !== 'over' ? this.running(poll) : this.asking()}
      <div role="alert">
        ${this.refusal ? html`<p class="note danger"><strong>Not done.</strong>${this.refusal}</p>` : nothing}
      </div>
    </section>`;
  }

  private get current(): Poll | undefined {
    const {own, poll} = this;
    if (!own || !poll || own.id !== poll.id) return own ?? poll;
    const order = ['open', 'shown', 'over'];
    return order.indexOf(poll.state) >= order.indexOf(own.state) ? poll : own;
  }

  private asking() {
    return html`<rb-poll-form
      .classId=${this.classId}
      @poll-made=${(event: CustomEvent<{poll: Poll}>) => this.goOn(event.detail.poll)}
      @poll-left=${() => this.dispatchEvent(new CustomEvent('poll-left'))}
    ></rb-poll-form>`;
  }

  private running(poll: Poll) {
    const shown = poll.state === 'shown';
    return html`
      <p><b>${poll.question}</b></p>
      <p role="status">
        ${shown ? poll.changed : html`${poll.committed} answered. The readings move when you make the change.`}
      </p>
      <ol>
        ${poll.answers.map(
          (answer, index) =>
            html`<li>
              <span>${answer}${poll.right === index ? ' (right)' : ''}</span>
              ${poll.counts ? html`<b>${poll.counts[index] ?? 0}</b>` : nothing}
            </li>`,
        )}
      </ol>
      <p class="small">
        ${poll.readings.map(
          ({text, before, after}) =>
            html`${text}:
              <span class="mono"
                >${displayText(before)}${after ? `, then ${displayText(after)}` : ''}</span
              ><br />`,
        )}
      </p>
      <p class="row">
        ${
          shown
            ? html`<button class="button first" @click=${() => this.move(poll, 'over')}>
                Take it off the wall
              </button>`
            : html`<button class="button first" @click=${() => this.move(poll, 'shown')}>
                Make the change
              </button>`
        }
        <button class="button" @click=${() => this.dispatchEvent(new CustomEvent('poll-left'))}>
          Put this away
        </button>
      </p>
    `;
  }

  /** What was pressed is gone: the keyboard goes on from the heading. */
  private goOn(poll: Poll): void {
    this.own = poll;
    void focusSoon(this, 'h2');
  }

  private async move(poll: Poll, state: 'shown' | 'over'): Promise<void> {
    this.refusal = '';
    try {
      this.goOn(await api<Poll>('PATCH', `polls/${poll.id}`, {state}));
    } catch (error) {
      this.refusal = sentenceOf(error);
    }
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-poll-desk': PollDesk;
  }
}
