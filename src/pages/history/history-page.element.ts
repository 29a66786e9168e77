import {LitElement, html, nothing} from 'lit';
import {customElement, query, state} from 'lit/decorators.js';
import {repeat} from 'lit/directives/repeat.js';
import {openAttempts} from '../../store/attempts.ts';
import type {AttemptHead} from '../../store/attempts.ts';
import {hrefOf} from '../app/router.ts';
import {desk} from '../desk/desk.ts';
import {sheetStyles} from '../design/sheet.styles.ts';
import {isHookupFile} from '../../hookup/hookup-attempt.ts';
import '../hookup/hookup-history.element.ts';
import {importHookup} from '../hookup/import-hookup.ts';
import {importAttempt, largestBytes} from './import-attempt.ts';
import {isUnfinished, minuteWords, resultWords, whenWords} from './attempt-words.ts';
import {historyPageStyles} from './history-page.styles.ts';
import {saveFile} from './save-file.ts';

/** Past calls on this device: go on, read the debrief, export, import, delete. */
@customElement('rb-history-page')
export class RbHistoryPage extends LitElement {
  static override styles = [sheetStyles, historyPageStyles];

  @state() private attempts: readonly AttemptHead[] | undefined;
  @state() private failed = '';
  @state() private said = '';
  /** A call that was just imported and is answered: its debrief is what one wants to see. */
  @state() private imported: AttemptHead | undefined;
  @state() private refusal = '';
  @state() private deleting: AttemptHead | undefined;

  @query('dialog') private dialog!: HTMLDialogElement;
  private stopListening: () => void = () => undefined;

  override connectedCallback(): void {
    super.connectedCallback();
    void this.listen();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.stopListening();
  }

  override render() {
    return html`
      <div class="top">
        <div>
          <h1 tabindex="-1">History</h1>
          <p class="lead">Every call taken and every task wired on this device, with its result.</p>
        </div>
        <div class="no-print">
          <input
            class="file"
            type="file"
            id="file"
            accept=".json,application/json"
            @change=${this.import}
          />
          <label class="button" for="file">Import a call…</label>
        </div>
      </div>
      <div role="status">
        ${
          this.said
            ? html`<p class="note good">
                <strong>Done.</strong>${this.said}
                ${
                  this.imported
                    ? html`<a href=${hrefOf({page: 'debrief', attempt: this.imported.id})}
                        >Open its debrief</a
                      >`
                    : nothing
                }
              </p>`
            : nothing
        }
        ${this.refusal ? html`<p class="note danger"><strong>Not imported.</strong>${this.refusal}</p>` : nothing}
      </div>
      ${this.renderCalls()}
      <rb-hookup-history></rb-hookup-history>
      ${this.renderDialog()}
    `;
  }

  private renderCalls() {
    if (this.failed) {
      return html`<p class="note danger">
          <strong>The records could not be read.</strong>${this.failed}
        </p>
        <p><button class="button" @click=${this.fetch}>Try again</button></p>`;
    }
    if (!this.attempts)
      return html`<p class="quiet" role="status">Looking through the records…</p>`;
    if (!this.attempts.length) {
      return html`<div class="empty stack">
        <h2>No calls yet</h2>
        <p class="quiet">
          When you take a call it is kept here at every step, so nothing is lost if you close the
          tab.
        </p>
        <p class="row">
          <a class="button first" href="#/">Choose a unit</a
          ><a class="button" href="#/guide">Take the first reading</a>
        </p>
      </div>`;
    }
    return html`<div class="head" aria-hidden="true">
        <span>Unit and complaint</span><span>Result</span><span>Time spent</span
        ><span>Last worked on</span><span></span>
      </div>
      <ul class="calls">
        ${repeat(
          this.attempts,
          ({id}) => id,
          (head) => this.renderCall(head),
        )}
      </ul>`;
  }

  private renderCall(head: AttemptHead) {
    const open = isUnfinished(head) || head.purpose !== 'call';
    const tone =
      head.verdict === 'right' || head.verdict === 'equivalent'
        ? 'good'
        : head.verdict === 'wrong'
          ? 'wrong'
          : '';
    const about = `${head.unitTitle}, ${whenWords(head.touchedAt)}`;
    const go =
      head.purpose === 'first-reading'
        ? '#/guide'
        : hrefOf({page: open ? 'call' : 'debrief', attempt: head.id});
    return html`<li>
      <div class="what">
        <b>${head.unitTitle}</b>
        <span class="complaint">${head.complaint}</span>
      </div>
      <span class="result ${tone}">${resultWords(head)}</span>
      <span class="number">${minuteWords(head.minutes)}</span>
      <span class="small quiet number">${whenWords(head.touchedAt)}</span>
      <span class="do no-print">
        <a href=${go} aria-label="${open ? 'Continue' : 'Debrief'}: ${about}"
          >${open ? 'Continue' : 'Debrief'}</a
        >
        <button class="plain" aria-label="Export: ${about}" @click=${() => this.export(head)}>
          Export
        </button>
        <button class="plain delete" aria-label="Delete: ${about}" @click=${() => this.ask(head)}>
          Delete
        </button>
      </span>
    </li>`;
  }

  private renderDialog() {
    const head = this.deleting;
    return html`<dialog aria-labelledby="sure" @close=${this.closed}>
      ${
        head
          ? html`<div class="stack">
              <h2 id="sure">Delete this call?</h2>
              <p><b>${head.unitTitle}</b>: ${head.complaint}</p>
              <p class="quiet">
                Its ${head.actionCount} ${head.actionCount === 1 ? 'action' : 'actions'} and its log
                are gone then. Export it first if you may need it.
              </p>
              <p class="row">
                <button class="button danger" @click=${this.delete}>Delete it</button>
                <button class="button" autofocus @click=${() => this.dialog.close()}>
                  Keep it
                </button>
              </p>
            </div>`
          : nothing
      }
    </dialog>`;
  }

  private async ask(head: AttemptHead): Promise<void> {
    this.deleting = head;
    await this.updateComplete;
    this.dialog.showModal();
  }

  /** The event comes after the fact: by then the dialog may stand open for another call. */
  private closed(): void {
    if (!this.dialog.open) this.deleting = undefined;
  }

  private async delete(): Promise<void> {
    const head = this.deleting;
    this.dialog.close();
    if (!head) return;
    try {
      await (await openAttempts()).remove(head.id);
      this.imported = undefined;
      this.said = 'The call is deleted.';
    } catch (error) {
      this.failed = messageOf(error);
    }
  }

  private async export(head: AttemptHead): Promise<void> {
    this.said = '';
    try {
      const record = await (await openAttempts()).get(head.id);
      if (!record) throw new Error('This call is not kept here any more.');
      saveFile(
        `${head.unit}-${head.begunAt.slice(0, 10)}-${head.id.slice(0, 6)}.json`,
        await desk().ask('exported', {record}),
      );
    } catch (error) {
      this.failed = messageOf(error);
    }
  }

  private async import(event: Event): Promise<void> {
    const input = event.target as HTMLInputElement;
    const file = input.files?.[0];
    if (!file) return;
    this.said = '';
    this.imported = undefined;
    this.refusal = '';
    try {
      const store = await openAttempts();
      if (file.size <= largestBytes && isHookupFile(await file.text())) {
        const work = await importHookup(store, await file.text());
        this.said = `Imported: ${work.taskTitle}, ${work.deedCount} deeds.`;
      } else {
        const head = await importAttempt(desk(), store, file);
        this.said = `Imported: ${head.unitTitle}, ${head.actionCount} actions.`;
        if (head.purpose === 'call' && !isUnfinished(head)) this.imported = head;
      }
    } catch (error) {
      this.refusal = `${file.name}: ${messageOf(error)}`;
    } finally {
      input.value = '';
    }
  }

  private async listen(): Promise<void> {
    const store = await openAttempts();
    if (this.isConnected)
      this.stopListening = store.onChange(({what}) => void (what === 'attempt' && this.fetch()));
    await this.fetch();
  }

  private readonly fetch = async (): Promise<void> => {
    try {
      this.attempts = await (await openAttempts()).list();
      this.failed = '';
    } catch (error) {
      this.failed = messageOf(error);
    }
  };
}

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-history-page': RbHistoryPage;
  }
}
