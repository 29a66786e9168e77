import {css, html, nothing} from 'lit';
import {customElement, property, query, state} from 'lit/decorators.js';
import type {StudentPoll} from '../../classroom/protocol/poll.ts';
import type {Desk, DeskItem} from '../../classroom/protocol/student-messages.ts';
import type {AttemptStore} from '../../store/attempts.ts';
import '../bench/bench-page.element.ts';
import '../bench/debrief-page.element.ts';
import {SocketBenchLink} from '../bench/socket-bench-link.ts';
import {sheetStyles} from '../design/sheet.styles.ts';
import {assignmentOfAttempt, classHref} from './class-place.ts';
import {storeOfCall} from './class-store.ts';
import {classStyles} from './class.styles.ts';
import type {StudentLine} from './student-line.ts';
import {StudentPage} from './student-page.ts';
import './student-poll.element.ts';
import './time-left.element.ts';

/** Notes that this tab has shown and a person has put away. */
const seen = new Set<string>();

/**
 * A call of the class: the same bench, with the fault on the server. Above it stands what comes from the class: the
 * connection, the time left, notes and hints, a poll.
 */
@customElement('rb-class-call-page')
export class ClassCallPage extends StudentPage {
  static override styles = [
    sheetStyles,
    classStyles,
    css`
      :host(:not([debrief])) {
        display: grid;
        grid-template: auto minmax(0, 1fr) / minmax(0, 1fr);
        min-height: 0;
        height: 100%;
      }

      .strip > p,
      .strip > div {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 2px var(--space-4);
        max-width: none;
        padding: 2px var(--space-4);
        border-bottom: 1px solid var(--rule-strong);
        font-size: var(--text-s);
        line-height: 1.35;
      }

      .strip a {
        display: inline-flex;
        align-items: center;
        min-height: 32px;
      }

      .strip .who {
        flex: 1;
        min-width: 8rem;
        overflow: hidden;
        text-overflow: ellipsis;
        white-space: nowrap;
      }

      .strip .told {
        background: var(--accent-soft);
        font-size: var(--text-m);
        padding-block: 4px;
      }

      .told span {
        flex: 1 1 16rem;
        overflow-wrap: anywhere;
      }

      @media (max-width: 560px) {
        .strip .told {
          font-size: var(--text-s);
        }

        .told span {
          flex-basis: 11rem;
        }
      }

      :host([debrief]) .strip {
        margin-bottom: var(--space-5);
      }

      :host([debrief]) .strip > p {
        padding-inline: 0;
      }

      .standing {
        padding: var(--space-5) var(--space-4);
      }

      dialog {
        padding: 0;
      }

      dialog .row {
        padding: 0 var(--space-4) var(--space-4);
      }
    `,
  ];

  /** `class.` and the assignment's id. */
  @property() attemptId = '';
  /** The debrief of the call instead of its bench. */
  @property({type: Boolean, reflect: true}) debrief = false;

  @state() private shownNotes = 0;
  @query('dialog') private pollDialog?: HTMLDialogElement;

  private store: Promise<AttemptStore> | undefined;

  protected readonly joiningTitle = 'Joining your class';

  protected renderDesk(desk: Desk, line: StudentLine) {
    const item = this.itemOf(this.assignment, 'call');
    if (!item) return this.renderNotThere();
    return html`
      <div class="strip no-print">${this.renderStrip(line, desk, item)}</div>
      ${this.renderWork(line, item)} ${this.renderPoll(line, desk)}
    `;
  }

  private get assignment(): string {
    return assignmentOfAttempt(this.attemptId) ?? '';
  }

  private renderStrip(line: StudentLine, desk: Desk, item: DeskItem) {
    const note = desk.notes.filter(({id}) => !seen.has(id)).at(-1);
    const asked = desk.poll && desk.poll.state === 'open' && desk.poll.mine === undefined;
    const told = desk.poll?.state === 'shown' && !seen.has(desk.poll.id);
    return html`
      ${this.renderNotice(line)}
      <p>
        <a href=${classHref({at: 'seat'})}>Your desk</a>
        <span class="who quiet">${desk.name}, ${desk.className}</span>
        <rb-time-left .left=${line.timeLeft(item.assignment)}></rb-time-left>
        ${item.closed ? html`<b>Closed by the instructor</b>` : nothing}
      </p>
      <div role="status" ?hidden=${!note} class="told">
        ${
          note
            ? html`<span
                  ><b>${note.kind === 'hint' ? 'Hint for all:' : 'From your instructor:'}</b>
                  ${note.text}</span
                >
                <button class="button small" @click=${() => this.putAway(note.id)}>Got it</button>`
            : nothing
        }
      </div>
      <div role="status" ?hidden=${!asked && !told} class="told">
        ${
          asked || told
            ? html`<span><b>What will happen if…</b> ${desk.poll?.question}</span>
                <button class="button small" @click=${() => this.showPoll(desk.poll)}>
                  ${asked ? 'Answer' : 'See what happened'}
                </button>`
            : nothing
        }
      </div>
    `;
  }

  private renderWork(line: StudentLine, item: DeskItem) {
    const makeLink = () => new SocketBenchLink(line, item.assignment, item.coach);
    const openStore = () => (this.store ??= storeOfCall(item));
    return this.debrief
      ? html`<rb-debrief-page
          .attemptId=${this.attemptId}
          .makeLink=${makeLink}
          .openStore=${openStore}
        ></rb-debrief-page>`
      : html`<rb-bench-page
          .attemptId=${this.attemptId}
          .makeLink=${makeLink}
          .openStore=${openStore}
        ></rb-bench-page>`;
  }

  private renderPoll(line: StudentLine, desk: Desk) {
    return html`<dialog aria-label="Poll">
      ${
        desk.poll
          ? html`<rb-student-poll
              .poll=${desk.poll}
              @answer-committed=${(event: CustomEvent<{poll: string; answer: number}>) =>
                line.send({is: 'vote', ...event.detail})}
            ></rb-student-poll>`
          : nothing
      }
      <p class="row">
        <button class="button" @click=${() => this.pollDialog?.close()}>Back to the bench</button>
      </p>
    </dialog>`;
  }

  private showPoll(poll: StudentPoll | undefined): void {
    this.pollDialog?.showModal();
    // seen once, what happened gives its room back to the bench
    if (poll?.state === 'shown') this.putAway(poll.id);
  }

  private putAway(id: string): void {
    seen.add(id);
    this.shownNotes++;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-class-call-page': ClassCallPage;
  }
}
