import {LitElement, css, html, nothing} from 'lit';
import {customElement, property, state} from 'lit/decorators.js';
import type {DeskItem, StudentRequest} from '../../classroom/protocol/student-messages.ts';
import type {HookupWire} from '../../hookup/hookup-task.ts';
import {sheetStyles} from '../design/sheet.styles.ts';
import '../hookup/hookup-task-page.element.ts';
import {sentenceOf} from './class-api.ts';
import {classHref} from './class-place.ts';
import {classStyles} from './class.styles.ts';
import './ended-line.element.ts';
import './line-notice.element.ts';
import {LineWatch} from './line-watch.ts';
import type {StudentLine} from './student-line.ts';
import './time-left.element.ts';

type Wires = Extract<StudentRequest, {readonly is: 'check-hookup'}>['wires'];

/** A wiring task of the class: the same board; each check is handed in, and the server's own check counts. */
@customElement('rb-class-wire-page')
export class WirePage extends LitElement {
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

  private readonly watch = new LineWatch(this);

  override render() {
    const {line} = this.watch;
    const ended = line?.state.is === 'taken-over' || line?.state.is === 'not-known';
    if (!line || ended) {
      return html`<rb-ended-line
        .state=${line?.state}
        @taken-back=${() => this.watch.takeBack()}
      ></rb-ended-line>`;
    }
    const item = line.desk?.items.find(
      ({assignment, kind}) => assignment === this.assignment && kind === 'hookup',
    );
    return html`
      <rb-line-notice .state=${line.state}></rb-line-notice>
      ${item ? this.renderTask(item, line) : this.renderWaiting(Boolean(line.desk))}
    `;
  }

  private renderWaiting(joined: boolean) {
    return joined
      ? html`<h1 tabindex="-1">This is not on your desk</h1>
          <p><a class="button first" href=${classHref({at: 'seat'})}>To your desk</a></p>`
      : html`<h1 tabindex="-1">Wiring task</h1>
          <p class="quiet" role="status">Joining your class…</p>`;
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
