import {LitElement, html, nothing} from 'lit';
import {customElement, property, state} from 'lit/decorators.js';
import '../../diagrams/unit-diagram.element.ts';
import {hookupAdvice} from '../../hookup/hookup-advice.ts';
import {resultOf} from '../../hookup/hookup-result.ts';
import {HookupWork} from '../../hookup/hookup-work.ts';
import {openAttempts, type KeptHookup} from '../../store/attempts.ts';
import {hrefOf} from '../app/router.ts';
import {sheetStyles} from '../design/sheet.styles.ts';
import {whenWords} from '../history/attempt-words.ts';
import './hookup-board.element.ts';
import './hookup-debrief.element.ts';
import './hookup-findings.element.ts';
import {hookupTaskPageStyles} from './hookup-task-page.styles.ts';
import {taskOfWork} from './known-tasks.ts';
import {attemptOf} from './work-keeper.ts';

/** Past work at a wiring task: the board and the ladder as they were left, the points, and what was done. */
@customElement('rb-hookup-debrief-page')
export class HookupDebriefPage extends LitElement {
  static override styles = [sheetStyles, hookupTaskPageStyles];

  @property({attribute: false}) attemptId = '';

  @state() private work?: HookupWork;
  @state() private row?: KeptHookup;
  @state() private failed = '';

  override connectedCallback(): void {
    super.connectedCallback();
    void this.open();
  }

  override render() {
    const {work, row} = this;
    if (this.failed)
      return html`<h1 tabindex="-1">This work cannot be shown</h1>
        <p class="lead">${this.failed}</p>
        <p><a class="button" href="#/history">To the history</a></p>`;
    if (!work || !row) return html`<p class="quiet" role="status">Doing it once more…</p>`;
    const result = resultOf(work);
    return html`
      <p class="small no-print"><a href="#/history">History</a></p>
      <h1 tabindex="-1">${work.task.title}</h1>
      <p class="lead">Wired on ${whenWords(row.begunAt)}.</p>
      <section class="section" aria-labelledby="went">
        <span class="no" aria-hidden="true">1</span>
        <div class="body">
          <h2 id="went">How it went</h2>
          <rb-hookup-debrief
            .result=${result}
            .lines=${work.lines}
            .advice=${hookupAdvice(result, work.firstFindings)}
            unfolded
          ></rb-hookup-debrief>
        </div>
      </section>
      <section class="section" aria-labelledby="board">
        <span class="no" aria-hidden="true">2</span>
        <div class="body">
          <h2 id="board">What was wired</h2>
          <rb-hookup-board .task=${work.task} .wires=${work.wires} still></rb-hookup-board>
          <rb-unit-diagram .unit=${work.unit} view="ladder" mode="select"></rb-unit-diagram>
        </div>
      </section>
      ${
        work.report
          ? html`<section class="section" aria-labelledby="verdict">
              <span class="no" aria-hidden="true">3</span>
              <div class="body">
                <h2 id="verdict">The last verdict</h2>
                <rb-hookup-findings .report=${work.report} plain></rb-hookup-findings>
              </div>
            </section>`
          : nothing
      }
      <p class="row no-print">
        <button type="button" class="button" @click=${() => print()}>Print what was wired</button>
        <a class="button" href=${hrefOf({page: 'hookup-task', task: work.task.id})}
          >${row.closed ? 'Wire it anew' : 'Go on with it'}</a
        >
      </p>
    `;
  }

  private async open(): Promise<void> {
    try {
      const store = await openAttempts();
      const row = await store.hookup(this.attemptId);
      if (!row) throw new Error('This work is not kept on this device any more.');
      const attempt = attemptOf(row);
      const {task} = await taskOfWork(store, attempt);
      this.row = row;
      this.work = HookupWork.replay(task, attempt.deeds);
      this.dispatchEvent(
        new CustomEvent('page-title', {detail: {title: task.title}, bubbles: true, composed: true}),
      );
    } catch (error) {
      this.failed = error instanceof Error ? error.message : String(error);
    }
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-hookup-debrief-page': HookupDebriefPage;
  }
}
