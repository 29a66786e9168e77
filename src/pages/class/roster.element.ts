import {LitElement, css, html, nothing} from 'lit';
import {customElement, property, state} from 'lit/decorators.js';
import {repeat} from 'lit/directives/repeat.js';
import type {ClassDetail, RosterEntry} from '../../classroom/protocol/rest.ts';
import {sheetStyles} from '../design/sheet.styles.ts';
import {api, sentenceOf} from './class-api.ts';
import {classStyles} from './class.styles.ts';
import {focusSoon} from './focus-soon.ts';

/**
 * The names of a class: pasted or from a CSV file, changed, sent away from a device, erased.
 * @event {{detail: ClassDetail}} roster-changed - A person changed it, and the server has it.
 */
@customElement('rb-roster')
export class Roster extends LitElement {
  static override styles = [
    sheetStyles,
    classStyles,
    css`
      .names {
        columns: 2 20rem;
        column-gap: var(--space-6);
        border-top: 0;
      }

      .names > li {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto auto;
        align-items: center;
        gap: var(--space-2);
        padding: 2px 0;
        break-inside: avoid;
      }

      .names .name {
        overflow-wrap: anywhere;
        line-height: 1.3;
      }

      .names .change {
        grid-column: 1 / -1;
        padding-bottom: var(--space-3);
      }

      .add {
        margin-top: var(--space-4);
        max-width: 36rem;
      }

      .add textarea {
        margin: var(--space-1) 0 var(--space-2);
      }

      .file {
        position: relative;
        overflow: hidden;
      }

      .file input {
        position: absolute;
        inset: 0;
        opacity: 0;
        cursor: pointer;
        font-size: 4rem;
      }

      .file:focus-within {
        outline: 3px solid var(--focus);
        outline-offset: 2px;
      }
    `,
  ];

  @property({attribute: false}) detail!: ClassDetail;

  @state() private text = '';
  @state() private refusal = '';
  @state() private said = '';
  @state() private busy = false;
  /** The student being changed, and whether erasing was pressed once. */
  @state() private changing = '';
  @state() private erasing = false;

  override render() {
    const {roster} = this.detail;
    return html`
      ${
        roster.length
          ? html`<ul class="names lines">
              ${repeat(
                roster,
                ({id}) => id,
                (entry) => this.renderEntry(entry),
              )}
            </ul>`
          : html`<p class="quiet">Nobody yet. Nicknames are fine; no e-mail is needed.</p>`
      }
      <form class="add" @submit=${this.add}>
        <label for="names">${roster.length ? 'Add names' : 'Names of the students'}</label>
        <textarea
          id="names"
          rows="4"
          maxlength="100000"
          placeholder="One name a line, or a table with a column “name”"
          .value=${this.text}
          @input=${(event: Event) => (this.text = (event.target as HTMLTextAreaElement).value)}
        ></textarea>
        <p class="row">
          <button class="button first" ?disabled=${this.busy || !this.text.trim()}>
            Add to the roster
          </button>
          <span class="button file"
            >From a CSV file…<input
              type="file"
              accept=".csv,.txt,text/csv,text/plain"
              aria-label="Names from a CSV file"
              @change=${this.readFile}
          /></span>
        </p>
        <div role="status">
          ${this.said ? html`<p class="small">${this.said}</p>` : nothing}
          ${this.refusal ? html`<p class="note danger"><strong>Not done.</strong>${this.refusal}</p>` : nothing}
        </div>
      </form>
    `;
  }

  private renderEntry({id, name, joined}: RosterEntry) {
    const open = this.changing === id;
    return html`<li id=${`s-${id}`}>
      <span class="name">${name}</span>
      <span class="small quiet">${joined ? 'joined' : 'not here yet'}</span>
      <button
        class="plain small"
        aria-expanded=${open ? 'true' : 'false'}
        @click=${() => this.openChange(open ? '' : id)}
      >
        ${open ? 'Done' : 'Change'}<span class="sr-only"> ${name}</span>
      </button>
      ${open ? this.renderChange(id, name, joined) : nothing}
    </li>`;
  }

  private renderChange(id: string, name: string, joined: boolean) {
    if (this.erasing) {
      return html`<div class="change stack">
        <p class="note danger">
          <strong>Erase ${name}?</strong>Everything kept of this student goes: attempts, notes,
          grades. Export it first under Records if it is wanted.
        </p>
        <p class="row">
          <button class="button danger small" @click=${() => this.erase(id)}>Erase</button>
          <button class="button small keep" @click=${() => this.askErasure(false)}>Keep</button>
        </p>
      </div>`;
    }
    return html`<form class="change stack" @submit=${(event: Event) => this.rename(event, id)}>
      <label class="sr-only" for="rename">Name of the student</label>
      <input id="rename" type="text" maxlength="80" required .value=${name} />
      <p class="row">
        <button class="button small">Keep this name</button>
        ${
          joined
            ? html`<button type="button" class="button small" @click=${() => this.sendAway(id)}>
                Send the device away
              </button>`
            : nothing
        }
        <button
          type="button"
          class="button danger small erase"
          @click=${() => this.askErasure(true)}
        >
          Erase…
        </button>
      </p>
    </form>`;
  }

  private openChange(id: string): void {
    const before = this.changing;
    this.changing = id;
    this.erasing = false;
    if (!id) void focusSoon(this, `#s-${CSS.escape(before)} > button`);
  }

  private askErasure(asked: boolean): void {
    this.erasing = asked;
    void focusSoon(this, asked ? '.keep' : '.erase');
  }

  private readonly add = async (event: Event): Promise<void> => {
    event.preventDefault();
    const before = this.detail.roster.length;
    const done = await this.send('POST', `classes/${this.detail.id}/students`, {text: this.text});
    if (!done) return;
    const added = this.detail.roster.length - before;
    this.text = '';
    this.said =
      added === 0
        ? 'These names are there already.'
        : added === 1
          ? 'One name added.'
          : `${added} names added.`;
  };

  private readonly readFile = async (event: Event): Promise<void> => {
    const input = event.target as HTMLInputElement;
    const file = input.files?.[0];
    if (!file) return;
    this.text = await file.text();
    this.said = `Read ${file.name}. Look it over, then add it.`;
    input.value = '';
  };

  private async rename(event: Event, id: string): Promise<void> {
    event.preventDefault();
    const name = this.renderRoot.querySelector<HTMLInputElement>('#rename')?.value.trim();
    if (name && (await this.send('PATCH', `students/${id}`, {name}))) this.openChange('');
  }

  private async sendAway(id: string): Promise<void> {
    if (await this.send('PATCH', `students/${id}`, {sendAway: true})) this.openChange('');
  }

  private async erase(id: string): Promise<void> {
    if (!(await this.send('DELETE', `students/${id}`))) return;
    this.openChange('');
    await focusSoon(this, '#names');
  }

  private async send(
    method: 'POST' | 'PATCH' | 'DELETE',
    path: string,
    body?: object,
  ): Promise<boolean> {
    this.busy = true;
    this.refusal = this.said = '';
    try {
      this.detail = await api<ClassDetail>(method, path, body);
      this.dispatchEvent(new CustomEvent('roster-changed', {detail: {detail: this.detail}}));
      return true;
    } catch (error) {
      this.refusal = sentenceOf(error);
      return false;
    } finally {
      this.busy = false;
    }
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-roster': Roster;
  }
}
