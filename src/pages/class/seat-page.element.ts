import {css, html, nothing} from 'lit';
import {customElement} from 'lit/decorators.js';
import type {Desk, DeskItem} from '../../classroom/protocol/student-messages.ts';
import {goTo, hrefOf} from '../app/router.ts';
import {sheetStyles} from '../design/sheet.styles.ts';
import {attemptOfAssignment, classHref} from './class-place.ts';
import {classStyles} from './class.styles.ts';
import {leaveSeat} from './kept-seat.ts';
import {hangUp, type StudentLine} from './student-line.ts';
import {StudentPage} from './student-page.ts';
import './student-poll.element.ts';
import './time-left.element.ts';

const stageWords: Readonly<Record<DeskItem['stage'], string>> = {
  waiting: 'Waiting',
  new: 'New',
  working: 'Begun',
  named: 'Answered',
  cleared: 'Cleared',
  'given-up': 'Given up',
  done: 'Done',
};

/** A student's desk in the class: what there is to do, what the instructor said, the poll on the wall. */
@customElement('rb-class-seat-page')
export class SeatPage extends StudentPage {
  static override styles = [
    sheetStyles,
    classStyles,
    css`
      :host {
        --line-notice-gap: var(--space-4);
      }

      .items > li {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        gap: var(--space-2) var(--space-5);
        align-items: center;
      }

      .what > * {
        display: block;
        overflow-wrap: anywhere;
      }

      .what b {
        font-size: var(--text-l);
      }

      rb-line-notice {
        display: block;
      }

      rb-student-poll {
        display: block;
        margin: var(--space-4) 0;
      }

      .told {
        margin-top: var(--space-5);
      }

      .told li {
        padding: var(--space-2) 0;
        max-width: var(--measure);
      }

      .leave {
        margin-top: var(--space-6);
        border-top: 1px solid var(--rule-strong);
        padding-top: var(--space-2);
      }

      @media (max-width: 560px) {
        .items > li {
          grid-template-columns: minmax(0, 1fr);
        }

        .items .button {
          width: 100%;
        }
      }
    `,
  ];

  protected readonly joiningTitle = 'Your class';

  protected renderDesk(desk: Desk, line: StudentLine) {
    const {name, className, items, poll, notes} = desk;
    return html`
      ${this.renderNotice(line)}
      <h1 tabindex="-1">${name}</h1>
      <p class="lead">${className}</p>
      ${
        poll && poll.state !== 'over'
          ? html`<rb-student-poll
              .poll=${poll}
              @answer-committed=${(event: CustomEvent<{poll: string; answer: number}>) =>
                this.watch.line?.send({is: 'vote', ...event.detail})}
            ></rb-student-poll>`
          : nothing
      }
      ${
        items.length
          ? html`<ul class="lines items" aria-label="What there is to do">
              ${items.map((item) => this.renderItem(item, line))}
            </ul>`
          : html`<p class="note" role="status">
              <strong>Nothing to do yet.</strong>It appears here as soon as your instructor gives
              it. You need not reload.
            </p>`
      }
      ${
        notes.length
          ? html`<section class="told" aria-labelledby="told">
              <h2 id="told">From your instructor</h2>
              <ul>
                ${[...notes]
                  .reverse()
                  .map(
                    ({kind, text}) =>
                      html`<li>
                        ${kind === 'hint' ? html`<b>Hint for all:</b> ` : nothing}${text}
                      </li>`,
                  )}
              </ul>
            </section>`
          : nothing
      }
      <p class="leave">
        <button class="plain" @click=${this.leave}>Leave the class on this device</button>
      </p>
    `;
  }

  private renderItem(item: DeskItem, line: StudentLine) {
    const left = line.timeLeft(item.assignment);
    const {title, complaint, stage, closed, limitMinutes, forName, kind} = item;
    return html`<li>
      <div class="what">
        <b>${kind === 'hide' && forName ? `Hide a fault for ${forName}` : title}</b>
        ${complaint && kind === 'call' ? html`<q>${complaint}</q>` : nothing}
        <span class="small quiet">
          ${[
            kind === 'hide' ? title : '',
            closed && stage !== 'done' ? 'Closed' : stageWords[stage],
            limitMinutes && !left ? `${limitMinutes} min` : '',
            item.coach ? 'coach allowed' : '',
          ]
            .filter(Boolean)
            .join(' · ')}
          ${left ? html`· <rb-time-left .left=${left}></rb-time-left>` : nothing}
        </span>
      </div>
      ${this.renderAction(item)}
    </li>`;
  }

  private renderAction(item: DeskItem) {
    const {assignment, kind, stage, closed, debriefReady, title} = item;
    const named = html`<span class="sr-only">: ${title}</span>`;
    if (kind === 'hide') {
      return stage === 'done' || closed
        ? nothing
        : html`<a class="button first" href=${classHref({at: 'hide', assignment})}
            >Hide one${named}</a
          >`;
    }
    if (kind === 'hookup') {
      return closed && stage === 'new'
        ? nothing
        : html`<a class="button first" href=${classHref({at: 'wire', assignment})}
            >${stage === 'new' ? 'Wire it' : 'Go on wiring'}${named}</a
          >`;
    }
    if (stage === 'waiting')
      return html`<span class="quiet">Another student is hiding your fault</span>`;
    const attempt = attemptOfAssignment(assignment);
    if (debriefReady)
      return html`<a class="button" href=${hrefOf({page: 'debrief', attempt})}>Debrief${named}</a>`;
    if (closed && stage === 'new') return nothing;
    return html`<a class="button first" href=${hrefOf({page: 'call', attempt})}
      >${stage === 'new' ? 'Take the call' : stage === 'working' && !closed ? 'Go on' : 'Look at it'}${named}</a
    >`;
  }

  private readonly leave = (): void => {
    hangUp();
    leaveSeat();
    goTo({page: 'class', place: {at: 'join', code: ''}});
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-class-seat-page': SeatPage;
  }
}
