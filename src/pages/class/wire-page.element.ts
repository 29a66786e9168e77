import {css, html, nothing} from 'lit';
import {customElement, property, state} from 'lit/decorators.js';
import type {Desk, DeskItem, StudentRequest} from '../../classroom/protocol/student-messages.ts';
import type {HookupWire} from '../../hookup/hookup-task.ts';
import {sheetStyles} from '../design/sheet.styles.ts';
import '../hookup/hookup-task-page.element.ts';
import {sentenceOf} from './class-api.ts';
import {classHref} from './class-place.ts';
import {classStyles} from './class.styles.ts';
import type {StudentLine} from './student-line.ts';
import {StudentPage} from './student-page.ts';
import './time-left.element.ts';

type Wires = Extract<StudentRequest, {readonly is: 'check-hookup'}>['wires'];

/** A wiring task of the class: the same board; each check is handed in, and the server's own check counts. */
@customElement('rb-class-wire-page')
export class WirePage extends StudentPage {
  static override styles = [
    sheetStyles,
    classStyles,
    css`
      :host {
        --line-notice-gap: var(--space-4);
      }

      .strip {
        display: flex;
        flex-wrap: wrap;
        gap: 0 var(--space-4);
        max-width: none;
        margin-bottom: var(--space-3);
        padding-bottom: var(--space-2);
        border-bottom: 1px solid var(--rule-strong);
      }
    `,
  ];

  @property() assignment = '';

  @state() private handed = '';
  @state() private refusal = '';
  private begun = '';

  protected readonly joiningTitle = 'Wiring task';

  protected renderDesk(_desk: Desk, line: StudentLine) {
    const item = this.itemOf(this.assignment, 'hookup');
    return html`${this.renderNotice(line)}
    ${item ? this.renderTask(item, line) : this.renderNotThere()}`;
  }

  protected override updated(): void {
    const {line} = this.watch;
    const item = this.itemOf(this.assignment, 'hookup');
    if (item?.stage !== 'new' || item.closed || this.begun === item.assignment) return;
    this.begun = item.assignment;
    // the time runs from when the task is seen, as with a call
    void line?.ask({is: 'begin', assignment: item.assignment}).catch(() => undefined);
  }

  private renderTask(item: DeskItem, line: StudentLine) {
    return html`
      <p class="strip small">
        <a href=${classHref({at: 'seat'})}>Your desk</a>
        <rb-time-left .left=${line.timeLeft(item.assignment)}></rb-time-left>
        ${item.closed ? html`<b>Closed by the instructor: checks no longer count</b>` : nothing}
        <span role="status">${this.handed}</span>
      </p>
      <div role="alert">
        ${this.refusal ? html`<p class="note danger"><strong>Not handed in.</strong>${this.refusal}</p>` : nothing}
      </div>
      <rb-hookup-task-page
        .taskId=${item.unit}
        @hookup-checked=${(event: CustomEvent<{wires: readonly HookupWire[]}>) => this.handIn(event.detail.wires)}
      ></rb-hookup-task-page>
    `;
  }

  private async handIn(wires: readonly HookupWire[]): Promise<void> {
    this.refusal = '';
    this.handed = 'Handing in…';
    const plain: Wires = wires.map(({id, from, to, gauge, colour}) => ({
      id,
      from,
      to,
      gauge,
      colour,
    }));
    try {
      await this.watch.line?.ask({is: 'check-hookup', assignment: this.assignment, wires: plain});
      this.handed = 'This check is handed in to the class.';
    } catch (error) {
      this.handed = '';
      this.refusal = sentenceOf(error);
    }
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-class-wire-page': WirePage;
  }
}
