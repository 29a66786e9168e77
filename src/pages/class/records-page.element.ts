import {css, html, nothing} from 'lit';
import {customElement, property, state} from 'lit/decorators.js';
import type {
  ClassDetail,
  Gradebook,
  GradebookCell,
  SentStatements,
} from '../../classroom/protocol/rest.ts';
import {sheetStyles} from '../design/sheet.styles.ts';
import {api} from './class-api.ts';
import {classHref} from './class-place.ts';
import {classStyles} from './class.styles.ts';
import {focusSoon} from './focus-soon.ts';
import {InstructorPage} from './instructor-page.ts';

/** The records of a class: gradebook, files to take along, statements to a record store, one student's records. */
@customElement('rb-class-records-page')
export class RecordsPage extends InstructorPage {
  static override styles = [
    sheetStyles,
    classStyles,
    css`
      .grades {
        min-width: 40rem;
      }

      .grades thead th {
        max-width: 14rem;
        overflow-wrap: anywhere;
      }

      .grades tbody th {
        min-width: 10rem;
      }

      .cell b {
        font-variant-numeric: tabular-nums;
      }

      .cell .small {
        display: block;
        color: var(--ink-2);
      }

      .files {
        margin-top: var(--space-3);
      }

      .one {
        display: grid;
        grid-template-columns: minmax(0, 20rem) auto auto;
        justify-content: start;
        gap: var(--space-3);
        align-items: end;
        margin-top: var(--space-3);
      }

      @media (max-width: 720px) {
        .one {
          grid-template-columns: minmax(0, 1fr);
          justify-content: stretch;
        }
      }
    `,
  ];

  @property() classId = '';

  @state() private detail: ClassDetail | undefined;
  @state() private book: Gradebook | undefined;
  @state() private student = '';
  @state() private erasing = false;
  @state() private refusal = '';
  @state() private said = '';
  @state() private busy = false;

  protected async load(): Promise<void> {
    const path = `classes/${encodeURIComponent(this.classId)}`;
    [this.detail, this.book] = await Promise.all([
      api<ClassDetail>('GET', path),
      api<Gradebook>('GET', `${path}/gradebook`),
    ]);
    this.retitle(`${this.detail.name}, records`);
  }

  protected renderPage() {
    const {detail, book} = this;
    if (!detail || !book) return html``;
    const files = `api/classes/${encodeURIComponent(this.classId)}`;
    return html`
      <p class="crumbs no-print">
        <a href=${classHref({at: 'class', classId: this.classId})}>${detail.name}</a>
      </p>
      <h1 tabindex="-1">Records</h1>
      <p class="lead">Every attempt with its actions, on this server.</p>
      <div role="alert">
        ${this.refusal ? html`<p class="note danger"><strong>Not done.</strong>${this.refusal}</p>` : nothing}
      </div>
      <div role="status">
        ${this.said ? html`<p class="note good"><strong>Done.</strong>${this.said}</p>` : nothing}
      </div>
      <section class="section" aria-labelledby="grades">
        <span class="no" aria-hidden="true">1</span>
        <div class="body">
          <h2 id="grades">Gradebook</h2>
          ${this.renderBook(book)}
          <p class="row files no-print">
            <a class="button" href="${files}/gradebook.csv" download>Gradebook as CSV</a>
            <a class="button" href="${files}/actions.csv" download>Every action as CSV</a>
            <button class="button" @click=${() => print()}>Print</button>
          </p>
        </div>
      </section>
      <section class="section no-print" aria-labelledby="xapi">
        <span class="no" aria-hidden="true">2</span>
        <div class="body">${this.renderStatements(files)}</div>
      </section>
      <section class="section no-print" aria-labelledby="one">
        <span class="no" aria-hidden="true">3</span>
        <div class="body">${this.renderOne(detail)}</div>
      </section>
    `;
  }

  private renderBook({sets, rows}: Gradebook) {
    if (!sets.length || !rows.length)
      return html`<p class="quiet">Nothing yet: it fills as the class works.</p>`;
    return html`<div class="table" tabindex="0" role="region" aria-label="Table of grades">
      <table class="grades">
        <thead>
          <tr>
            <th scope="col">Student</th>
            ${sets.map(({title}) => html`<th scope="col">${title}</th>`)}
          </tr>
        </thead>
        <tbody>
          ${rows.map(
            ({name, cells}) =>
              html`<tr>
                <th scope="row">${name}</th>
                ${sets.map(({id}) => html`<td class="cell">${cells.filter(({set}) => set === id).map(cell)}</td>`)}
              </tr>`,
          )}
        </tbody>
      </table>
    </div>`;
  }

  private renderStatements(files: string) {
    return html`<h2 id="xapi">Experience statements (xAPI 1.0.3)</h2>
      <p>
        For schools with a learning record store: take them as a file, or send them to the store’s
        address. Others need nothing here.
      </p>
      <p class="row files">
        <a class="button" href="${files}/xapi.json" download>Statements as a file</a>
      </p>
      <form class="form" @submit=${this.sendStatements}>
        <div class="field">
          <label for="url">Address of the record store</label>
          <input
            id="url"
            type="url"
            required
            maxlength="500"
            placeholder="https://records.example/xapi"
          />
        </div>
        <div class="field">
          <label for="user">Its user name <span class="quiet">(if it asks for one)</span></label>
          <input id="user" type="text" maxlength="200" autocomplete="off" />
        </div>
        <div class="field">
          <label for="password">Its password</label>
          <input id="password" type="password" maxlength="200" autocomplete="off" />
        </div>
        <p class="row"><button class="button" ?disabled=${this.busy}>Send them</button></p>
      </form>`;
  }

  private renderOne({roster}: ClassDetail) {
    const chosen = roster.find(({id}) => id === this.student);
    return html`<h2 id="one">One student’s records</h2>
      <p>On a student’s request: everything kept of them in one file, or all of it erased.</p>
      <div class="one">
        <div>
          <label for="student">Student</label>
          <select
            id="student"
            @change=${(event: Event) => {
              this.student = (event.target as HTMLSelectElement).value;
              this.erasing = false;
            }}
          >
            <option value="">choose…</option>
            ${roster.map(({id, name}) => html`<option value=${id} ?selected=${id === this.student}>${name}</option>`)}
          </select>
        </div>
        ${
          chosen
            ? html`<a
                  class="button"
                  href="api/students/${encodeURIComponent(chosen.id)}/records"
                  download
                  >Export everything</a
                >
                <button class="button danger" @click=${() => (this.erasing = true)}>Erase…</button>`
            : nothing
        }
      </div>
      ${
        chosen && this.erasing
          ? html`<p class="note danger">
                <strong>Erase ${chosen.name}?</strong>The name, every attempt, note and grade go.
                This cannot be taken back, except from a backup.
              </p>
              <p class="row">
                <button class="button danger" @click=${() => this.erase(chosen.id, chosen.name)}>
                  Erase ${chosen.name}
                </button>
                <button class="button" @click=${() => (this.erasing = false)}>Keep</button>
              </p>`
          : nothing
      }`;
  }

  private readonly sendStatements = async (event: Event): Promise<void> => {
    event.preventDefault();
    const value = (id: string) =>
      this.renderRoot.querySelector<HTMLInputElement>(`#${id}`)?.value.trim() ?? '';
    const [url, user, password] = [value('url'), value('user'), value('password')];
    this.busy = true;
    this.said = '';
    this.refusal = await this.attempt(async () => {
      const {sent} = await api<SentStatements>('POST', `classes/${this.classId}/xapi`, {
        url,
        ...(user ? {user} : {}),
        ...(password ? {password} : {}),
      });
      this.said = `${sent} statements are in the record store.`;
    });
    this.busy = false;
  };

  private async erase(id: string, name: string): Promise<void> {
    this.said = '';
    this.refusal = await this.attempt(async () => {
      this.detail = await api<ClassDetail>('DELETE', `students/${id}`);
      this.book = await api<Gradebook>('GET', `classes/${this.classId}/gradebook`);
      this.student = '';
      this.erasing = false;
      this.said = `Everything kept of ${name} is erased.`;
      void focusSoon(this, '#student');
    });
  }
}

const stageWords: Readonly<Record<string, string>> = {
  new: 'not begun',
  working: 'at work',
  'given-up': 'gave up',
};

function cell({kind, stage, verdict, points, readings, minutes, danger, caution}: GradebookCell) {
  const words = {call: '', hide: 'hid: ', hookup: ''}[kind];
  const safety = [danger ? `${danger} danger` : '', caution ? `${caution} caution` : ''].filter(
    Boolean,
  );
  return html`<span
    >${words}<b>${points === undefined ? (stageWords[verdict ?? stage] ?? verdict ?? stage) : Math.round(points)}</b>${points !== undefined && verdict ? html` ${stageWords[verdict] ?? verdict}` : nothing}${
      kind === 'call' && stage !== 'new' && stage !== 'waiting'
        ? html`<span class="small"
            >${readings === 1 ? 'one reading' : `${readings} readings`}, ${Math.round(minutes)}
            min${safety.length ? `, ${safety.join(', ')}` : ''}</span
          >`
        : nothing
    }</span
  >`;
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-class-records-page': RecordsPage;
  }
}
