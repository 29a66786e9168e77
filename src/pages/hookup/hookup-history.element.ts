import {LitElement, css, html, nothing} from 'lit';
import {customElement, query, state} from 'lit/decorators.js';
import {repeat} from 'lit/directives/repeat.js';
import {hookupFile} from '../../hookup/hookup-attempt.ts';
import type {HookupResult} from '../../hookup/hookup-result.ts';
import {openAttempts, type KeptHookup} from '../../store/attempts.ts';
import {hrefOf} from '../app/router.ts';
import {sheetStyles} from '../design/sheet.styles.ts';
import {minuteWords, whenWords} from '../history/attempt-words.ts';
import {historyPageStyles} from '../history/history-page.styles.ts';
import {saveFile} from '../history/save-file.ts';
import {wiringWords} from './wiring-words.ts';
import {attemptOf} from './work-keeper.ts';

/** Work at wiring tasks on this device: its debrief, going on with it, export, deletion. Nothing where there is none. */
@customElement('rb-hookup-history')
export class HookupHistory extends LitElement {
  static override styles = [
    sheetStyles,
    historyPageStyles,
    css`
      h2 {
        margin-top: var(--space-6);
      }
      @media (min-width: 1001px) {
        .calls li {
          grid-template-columns: minmax(0, 1fr) 11rem 5rem 11rem 20rem;
        }
      }
    `,
  ];

  @state() private works: readonly KeptHookup[] = [];
  @state() private failed = '';
  @state() private deleting?: KeptHookup;

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
    if (this.failed)
      return html`<p class="note danger">
        <strong>The wiring tasks could not be read.</strong>${this.failed}
      </p>`;
    if (this.works.length === 0) return nothing;
    return html`<h2>Wiring tasks</h2>
      <ul class="calls">
        ${repeat(
          this.works,
          ({id}) => id,
          (work) => this.renderWork(work),
        )}
      </ul>
      <dialog aria-labelledby="sure" @close=${this.closed}>${this.renderSure()}</dialog>`;
  }

  private renderWork(work: KeptHookup) {
    const result = JSON.parse(work.result) as HookupResult;
    const about = `${work.taskTitle}, ${whenWords(work.touchedAt)}`;
    return html`<li>
      <div class="what">
        <b>${work.taskTitle}</b>
        <span class="complaint">${result.grade.points} of 100 points</span>
      </div>
      <span class="result ${result.counts.solved ? 'good' : ''}">${wiringWords(result)}</span>
      <span class="number">${minuteWords(result.counts.minutes)}</span>
      <span class="small quiet number">${whenWords(work.touchedAt)}</span>
      <span class="do no-print">
        <a href=${hrefOf({page: 'wired', attempt: work.id})} aria-label="Debrief: ${about}"
          >Debrief</a
        >
        ${
          work.closed
            ? nothing
            : html`<a
                href=${hrefOf({page: 'hookup-task', task: work.task})}
                aria-label="Continue: ${about}"
                >Continue</a
              >`
        }
        <button class="plain" aria-label="Export: ${about}" @click=${() => exportWork(work)}>
          Export
        </button>
        <button class="plain delete" aria-label="Delete: ${about}" @click=${() => this.ask(work)}>
          Delete
        </button>
      </span>
    </li>`;
  }

  private renderSure() {
    const work = this.deleting;
    if (!work) return nothing;
    return html`<div class="stack">
      <h2 id="sure">Delete this work?</h2>
      <p><b>${work.taskTitle}</b>, ${whenWords(work.touchedAt)}</p>
      <p class="quiet">
        Its ${work.deedCount} ${work.deedCount === 1 ? 'deed is' : 'deeds are'} gone then. Export it
        first if you may need it.
      </p>
      <p class="row">
        <button class="button danger" @click=${this.delete}>Delete it</button>
        <button class="button" autofocus @click=${() => this.dialog.close()}>Keep it</button>
      </p>
    </div>`;
  }

  private async ask(work: KeptHookup): Promise<void> {
    this.deleting = work;
    await this.updateComplete;
    this.dialog.showModal();
  }

  private closed(): void {
    if (!this.dialog.open) this.deleting = undefined;
  }

  private async delete(): Promise<void> {
    const work = this.deleting;
    this.dialog.close();
    try {
      if (work) await (await openAttempts()).removeHookup(work.id);
    } catch (error) {
      this.failed = error instanceof Error ? error.message : String(error);
    }
  }

  private async listen(): Promise<void> {
    const store = await openAttempts();
    if (this.isConnected)
      this.stopListening = store.onChange(({what}) => void (what === 'hookup' && this.fetch()));
    await this.fetch();
  }

  private async fetch(): Promise<void> {
    try {
      this.works = await (await openAttempts()).hookups();
      this.failed = '';
    } catch (error) {
      this.failed = error instanceof Error ? error.message : String(error);
    }
  }
}

function exportWork(work: KeptHookup): void {
  saveFile(
    `${work.task}-${work.begunAt.slice(0, 10)}-${work.id.slice(0, 6)}.json`,
    hookupFile(attemptOf(work)),
  );
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-hookup-history': HookupHistory;
  }
}
