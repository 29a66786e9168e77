import {html, nothing} from 'lit';
import {customElement, property, query, state} from 'lit/decorators.js';
import {repeat} from 'lit/directives/repeat.js';
import type {LiveRow} from '../../classroom/protocol/instructor-messages.ts';
import type {ClassDetail} from '../../classroom/protocol/rest.ts';
import type {WorkSet} from '../../classroom/protocol/work-set.ts';
import {sheetStyles} from '../design/sheet.styles.ts';
import {api, sentenceOf} from './class-api.ts';
import {classHref} from './class-place.ts';
import {classStyles} from './class.styles.ts';
import './followed-log.element.ts';
import {InstructorLine} from './instructor-line.ts';
import {InstructorPage} from './instructor-page.ts';
import {livePageStyles} from './live-page.styles.ts';
import {stageText, stuckText} from './live-words.ts';
import './poll-desk.element.ts';

/** The class at work: a row for each student, who needs help first; one of them opened beside. */
@customElement('rb-class-live-page')
export class LivePage extends InstructorPage {
  static override styles = [sheetStyles, classStyles, livePageStyles];

  @property() classId = '';

  @state() private detail: ClassDetail | undefined;
  @state() private sets: readonly WorkSet[] = [];
  @state() private opened = '';
  @state() private said = '';
  @state() private names = false;
  @state() private polling = false;

  @query('.hint') private hintDialog!: HTMLDialogElement;

  private line: InstructorLine | undefined;
  private doubting = false;

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.line?.close();
    this.line = undefined;
  }

  protected async load(): Promise<void> {
    const path = `classes/${encodeURIComponent(this.classId)}`;
    [this.detail, this.sets] = await Promise.all([
      api<ClassDetail>('GET', path),
      api<readonly WorkSet[]>('GET', `${path}/sets`),
    ]);
    this.retitle(`${this.detail.name}, live`);
    this.names = this.detail.namesOnWall;
    this.line?.close();
    if (this.isConnected) this.line = new InstructorLine(this.classId, () => this.heard());
  }

  protected renderPage() {
    const {detail, line} = this;
    if (!detail || !line) return html``;
    const {rows} = line;
    const row = rows?.find(({student}) => student === this.opened);
    return html`
      <header>
        <div>
          <p class="crumbs">
            <a href=${classHref({at: 'class', classId: this.classId})}>${detail.name}</a>
          </p>
          <h1 tabindex="-1">Live</h1>
        </div>
        <p class="sum" role="status">${rows ? summary(rows) : nothing}</p>
        <p class="row tools">
          <button class="button small" @click=${() => this.hintDialog.showModal()}>
            Hint for all
          </button>
          <button
            class="button small"
            aria-expanded=${this.polling ? 'true' : 'false'}
            @click=${() => (this.polling = !this.polling)}
          >
            What will happen if…${line.poll && line.poll.state !== 'over' ? ' (asked)' : ''}
          </button>
          <label class="choice small"
            ><input type="checkbox" .checked=${this.names} @change=${this.toggleNames} />Names on
            the wall</label
          >
          <span class="small">Code <b class="code">${detail.code}</b></span>
        </p>
      </header>
      <div role="alert">
        ${line.lost ? html`<p class="note caution lost"><strong>Not live.</strong>${line.lost}</p>` : nothing}
      </div>
      <p class="said small" role="status">${this.said}</p>
      <div class="desk ${row ? 'two' : ''}">
        <div class="rows" tabindex="0" role="region" aria-label="Students">
          ${
            this.polling
              ? html`<rb-poll-desk
                  .classId=${this.classId}
                  .poll=${line.poll}
                  @poll-left=${() => (this.polling = false)}
                ></rb-poll-desk>`
              : nothing
          }
          ${rows ? this.renderRows(rows) : html`<p class="quiet" role="status">Waiting for the first rows…</p>`}
        </div>
        ${
          row
            ? html`<rb-followed-log
                .row=${row}
                .log=${line.log}
                .send=${(text: string) => this.line?.note(row.student, text)}
                @log-left=${() => this.open(undefined)}
              ></rb-followed-log>`
            : nothing
        }
      </div>
      ${this.renderHintDialog()}
    `;
  }

  private renderRows(rows: readonly LiveRow[]) {
    if (!rows.length) {
      return html`<p class="note">
        <strong>The roster is empty.</strong>
        <a href=${classHref({at: 'class', classId: this.classId})}
          >Paste the names of your students</a
        >; they appear here as soon as they are on it.
      </p>`;
    }
    // explicit roles: a table that is stacked on a phone would else lose them
    return html`<table role="table">
      <thead role="rowgroup">
        <tr role="row">
          <th role="columnheader" scope="col">Student</th>
          <th role="columnheader" scope="col">State</th>
          <th role="columnheader" scope="col" class="doing">At work on</th>
          <th role="columnheader" scope="col" class="number">Suspects</th>
          <th role="columnheader" scope="col" class="number">Readings</th>
          <th role="columnheader" scope="col" class="number">Minutes</th>
          <th role="columnheader" scope="col" class="number">Stuck for</th>
          <th role="columnheader" scope="col" class="number">Hints</th>
          <th role="columnheader" scope="col">Safety</th>
        </tr>
      </thead>
      <tbody role="rowgroup">
        ${repeat(
          rows,
          ({student}) => student,
          (row) => this.renderRow(row),
        )}
      </tbody>
    </table>`;
  }

  private renderRow(row: LiveRow) {
    const {name, needs, doing, suspects, suspectsAtStart, readings, minutes, hints, safety} = row;
    const at = (label: string, value: unknown, kind = 'number') =>
      html`<td role="cell" class=${kind} data-label=${label}>${value}</td>`;
    const begun = row.stage !== undefined && row.stage !== 'new' && row.stage !== 'waiting';
    return html`<tr
      role="row"
      class="${needs ? 'needs' : ''} ${row.online ? '' : 'away'} ${this.opened === row.student ? 'opened' : ''}"
    >
      <th role="rowheader" scope="row">
        <button
          class="plain name"
          aria-expanded=${this.opened === row.student ? 'true' : 'false'}
          @click=${() => this.open(this.opened === row.student ? undefined : row)}
        >
          ${name}
        </button>
        ${needs ? html`<span class="why"><b aria-hidden="true">!</b> ${needs}</span>` : nothing}
      </th>
      ${at('State', stageText(row), '')}
      ${at('At work on', html`${doing ?? row.title ?? ''}`, 'doing')}
      ${at('Suspects', suspects === undefined ? (begun && !row.verdict ? '…' : '') : html`${suspects}<span class="quiet"> of ${suspectsAtStart}</span>`)}
      ${at('Readings', begun ? readings : '')} ${at('Minutes', begun ? Math.round(minutes) : '')}
      ${at('Stuck for', row.stage === 'working' ? stuckText(row.stuckMs) : '')}
      ${at('Hints', begun ? hints : '')}
      ${at(
        'Safety',
        safety.danger + safety.caution === 0
          ? ''
          : html`${safety.danger ? html`<b class="danger">${safety.danger} danger</b> ` : nothing}${safety.caution ? html`<span class="caution">${safety.caution} caution</span>` : nothing}`,
        'safety',
      )}
    </tr>`;
  }

  private renderHintDialog() {
    const open = this.sets.filter(({state, kind}) => state === 'open' && kind !== 'hookup');
    return html`<dialog class="hint" aria-labelledby="hint-title">
      <h2 id="hint-title">A hint for everybody at work</h2>
      ${
        open.length
          ? html`<form class="form" @submit=${this.releaseHint}>
              <div class="field">
                <label for="set">Who works on</label>
                <select id="set">
                  ${open.map(({id, title}) => html`<option value=${id}>${title}</option>`)}
                </select>
              </div>
              <div class="field">
                <label for="hint">The hint</label>
                <textarea
                  id="hint"
                  rows="3"
                  maxlength="1000"
                  required
                  placeholder="Is there control voltage where it should end?"
                ></textarea>
              </div>
              <p class="row">
                <button class="button first">Give the hint</button>
                <button type="button" class="button" @click=${() => this.hintDialog.close()}>
                  Not now
                </button>
              </p>
            </form>`
          : html`<p>Nothing is open that a hint could be for.</p>
              <p class="row">
                <button class="button" @click=${() => this.hintDialog.close()}>Close</button>
              </p>`
      }
    </dialog>`;
  }

  private open(row: LiveRow | undefined): void {
    // back to the row that the log was opened from
    if (!row) this.renderRoot.querySelector<HTMLElement>('tr.opened .name')?.focus();
    this.opened = row?.student ?? '';
    this.line?.follow(row?.assignment);
  }

  private heard(): void {
    // a line that cannot be had back may be a sign-in that has run out
    if (this.line?.lost && !this.doubting) {
      this.doubting = true;
      void this.attempt(() => api('GET', 'signed-in')).then(() => (this.doubting = false));
    }
    // a student who has gone on to another call is followed there
    const row = this.line?.rows?.find(({student}) => student === this.opened);
    if (row?.assignment && this.line?.log && this.line.log.assignment !== row.assignment)
      this.line.follow(row.assignment);
    this.requestUpdate();
  }

  private readonly releaseHint = async (event: Event): Promise<void> => {
    event.preventDefault();
    const set = this.renderRoot.querySelector<HTMLSelectElement>('#set')?.value ?? '';
    const field = this.renderRoot.querySelector<HTMLTextAreaElement>('#hint');
    const text = field?.value.trim();
    if (!text || !this.line) return;
    this.hintDialog.close();
    try {
      const to = await this.line.hint(set, text);
      this.said = `The hint went to ${to === 1 ? 'one student' : `${to} students`}.`;
      if (field) field.value = '';
    } catch (error) {
      this.said = `The hint did not go out: ${sentenceOf(error)}`;
    }
  };

  private readonly toggleNames = (): void => {
    this.names = !this.names;
    this.line?.showNames(this.classId, this.names);
  };
}

function summary(rows: readonly LiveRow[]): string {
  const here = rows.filter(({online}) => online).length;
  const need = rows.filter(({needs}) => needs).length;
  return `${here} of ${rows.length} here${need ? `, ${need} need${need === 1 ? 's' : ''} help` : ''}`;
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-class-live-page': LivePage;
  }
}
