import {LitElement, css, html} from 'lit';
import {customElement, property, state} from 'lit/decorators.js';
import '../../bench/field-log.element.ts';
import type {LiveRow} from '../../classroom/protocol/instructor-messages.ts';
import {sheetStyles} from '../design/sheet.styles.ts';
import {sentenceOf} from './class-api.ts';
import {classStyles} from './class.styles.ts';
import type {FollowedLog} from './instructor-line.ts';

/**
 * One student's call as it goes on, and a note to them.
 * @event log-left - A person has seen enough.
 */
@customElement('rb-followed-log')
export class FollowedLogPanel extends LitElement {
  static override styles = [
    sheetStyles,
    classStyles,
    css`
      :host {
        display: grid;
        grid-template-rows: auto minmax(0, 1fr) auto;
        min-height: 0;
        border-left: 2px solid var(--ink);
        background: var(--paper);
      }

      .head,
      form {
        padding: var(--space-3) var(--space-4);
      }

      .head {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        gap: 0 var(--space-3);
        align-items: start;
        border-bottom: 1px solid var(--rule-strong);
      }

      .head h2:focus {
        outline: none;
      }

      .head p {
        grid-column: 1 / -1;
        overflow-wrap: anywhere;
      }

      .log {
        overflow: auto;
        padding: var(--space-2) var(--space-4);
      }

      .log:focus-visible {
        outline-offset: -3px;
      }

      .log > p {
        padding: var(--space-3) 0;
      }

      form {
        border-top: 1px solid var(--rule-strong);
      }

      form .row {
        margin-top: var(--space-2);
      }

      textarea {
        display: block;
        min-height: 3.25rem;
      }

      @media (max-width: 860px) {
        :host {
          border-left: 0;
          border-top: 2px solid var(--ink);
        }
      }
    `,
  ];

  @property({attribute: false}) row!: LiveRow;
  @property({attribute: false}) log: FollowedLog | undefined;
  /** Sends a note; gives how many devices it reached. */
  @property({attribute: false}) send: (text: string) => Promise<number> | undefined = () =>
    undefined;

  @state() private said = '';
  private shown = '';

  protected override willUpdate(): void {
    if (this.row.student !== this.shown) this.said = '';
  }

  protected override updated(): void {
    if (this.row.student === this.shown) return;
    this.shown = this.row.student;
    this.renderRoot.querySelector<HTMLElement>('h2')?.focus();
  }

  override render() {
    const {row, log} = this;
    return html`
      <div class="head">
        <h2 tabindex="-1">${row.name}</h2>
        <button
          class="button small"
          @click=${() => this.dispatchEvent(new CustomEvent('log-left'))}
        >
          Close<span class="sr-only"> the log of ${row.name}</span>
        </button>
        <p class="small quiet">
          ${row.title ?? 'Nothing in hand'}${log ? `: “${log.view.complaint}”` : ''}
        </p>
      </div>
      <div class="log" tabindex="0" role="region" aria-label="Field log of ${row.name}">
        ${this.renderLog()}
      </div>
      <form @submit=${this.submit}>
        <label for="note">A note to ${row.name}</label>
        <textarea id="note" rows="2" maxlength="1000" required></textarea>
        <p class="row">
          <button class="button first small">Send</button>
          <span class="small" role="status">${this.said}</span>
        </p>
      </form>
    `;
  }

  private renderLog() {
    const {row, log} = this;
    if (log)
      return html`<rb-field-log
        caption=""
        newest-first
        .entries=${log.view.log}
        .safety=${log.view.safety}
        empty="Nothing in the log yet."
      ></rb-field-log>`;
    if (!row.assignment) return html`<p class="quiet">Nothing in hand: there is no log.</p>`;
    if (row.kind !== 'call') return html`<p class="quiet">This work keeps no field log.</p>`;
    return html`<p class="quiet" role="status">Fetching the log…</p>`;
  }

  private readonly submit = async (event: Event): Promise<void> => {
    event.preventDefault();
    const field = this.renderRoot.querySelector<HTMLTextAreaElement>('#note');
    const text = field?.value.trim();
    if (!text) return;
    try {
      const to = await this.send(text);
      this.said = to ? 'Sent.' : 'Kept: it is shown when the student is here.';
      if (field) field.value = '';
    } catch (error) {
      this.said = sentenceOf(error);
    }
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-followed-log': FollowedLogPanel;
  }
}
