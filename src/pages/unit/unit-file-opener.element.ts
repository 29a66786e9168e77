import {LitElement, css, html, nothing} from 'lit';
import {customElement, state} from 'lit/decorators.js';
import {openAttempts} from '../../store/attempts.ts';
import {goTo} from '../app/router.ts';
import {desk} from '../desk/desk.ts';
import type {FileMistake} from '../desk/desk-messages.ts';
import {sheetStyles} from '../design/sheet.styles.ts';

/** No unit that a person could want is larger, and a wrong file should not freeze the checker. */
const largestBytes = 1_000_000;

/**
 * Opens a unit file from disk, lists its mistakes or keeps it on this device.
 * @event unit-kept - A file without mistakes was kept.
 */
@customElement('rb-unit-file-opener')
export class RbUnitFileOpener extends LitElement {
  static override styles = [
    sheetStyles,
    css`
      :host {
        margin-top: var(--space-3);
      }

      input {
        position: absolute;
        width: 1px;
        height: 1px;
        opacity: 0;
      }

      input:focus-visible + label {
        outline: 3px solid var(--focus);
        outline-offset: 2px;
      }

      .mistakes {
        margin-top: var(--space-2);
        border-top: 1.5px solid var(--ink);
      }

      .mistakes li {
        display: grid;
        grid-template-columns: minmax(0, 14rem) minmax(0, 1fr);
        gap: 0 var(--space-3);
        max-width: none;
        padding: var(--space-2) 0;
        border-bottom: 1px solid var(--rule);
        overflow-wrap: anywhere;
      }

      .mend {
        display: block;
        color: var(--ink-2);
      }

      [role='status'] > * {
        margin-top: var(--space-3);
      }

      @media (max-width: 480px) {
        .mistakes li {
          grid-template-columns: minmax(0, 1fr);
        }
      }
    `,
  ];

  @state() private fileName = '';
  @state() private mistakes: readonly FileMistake[] = [];
  @state() private refusal = '';
  @state() private checking = false;

  override render() {
    return html`
      <input
        type="file"
        id="file"
        accept=".yaml,.yml,text/yaml,application/yaml"
        @change=${this.open}
      />
      <label class="button" for="file">${this.checking ? 'Checking…' : 'Open a file…'}</label>
      <div role="status">
        ${this.refusal ? html`<p class="note danger"><strong>Not opened.</strong>${this.refusal}</p>` : nothing}
        ${this.mistakes.length ? this.renderMistakes() : nothing}
      </div>
    `;
  }

  private renderMistakes() {
    const count = this.mistakes.length;
    return html`<p>
        <b>${this.fileName}</b> was not kept: ${count} ${count === 1 ? 'mistake' : 'mistakes'}. Mend
        ${count === 1 ? 'it' : 'them'} and open the file again.
      </p>
      <ol class="mistakes">
        ${this.mistakes.map(
          ({line, column, message, mend}) =>
            html`<li>
              <span class="mono">${this.shortName}:${line}:${column}</span>
              <span>${sentence(message)} <span class="mend">${sentence(mend)}</span></span>
            </li>`,
        )}
      </ol>`;
  }

  private get shortName(): string {
    return this.fileName.length > 24 ? `…${this.fileName.slice(-20)}` : this.fileName;
  }

  private async open(event: Event): Promise<void> {
    const input = event.target as HTMLInputElement;
    const file = input.files?.[0];
    if (!file) return;
    this.fileName = file.name;
    this.mistakes = [];
    this.refusal = '';
    this.checking = true;
    try {
      if (file.size > largestBytes)
        throw new Error(
          `${file.name} has ${Math.round(file.size / 1000)} kB; a unit file has at most ${largestBytes / 1000} kB.`,
        );
      await this.keep(file.name, await file.text());
    } catch (error) {
      this.refusal = error instanceof Error ? error.message : String(error);
    } finally {
      this.checking = false;
      // the same file, mended, must be able to be chosen again
      input.value = '';
    }
  }

  private async keep(fileName: string, text: string): Promise<void> {
    const {unit, mistakes} = await desk().load({text, fileName});
    this.mistakes = mistakes;
    if (!unit) return;
    const shipped = await desk().ask('shippedIds', {});
    if (shipped.includes(unit.id)) {
      throw new Error(
        `The unit's id "${unit.id}" is one that comes with Rungbench. Give yours another id in its first lines.`,
      );
    }
    const store = await openAttempts();
    await store.putUnit({
      id: unit.id,
      title: unit.title,
      fileName,
      text,
      keptAt: new Date().toISOString(),
    });
    this.dispatchEvent(new CustomEvent('unit-kept', {detail: {id: unit.id}}));
    goTo({page: 'unit', unit: unit.id});
  }
}

/** The checker's messages begin small, as they stand after a file name elsewhere. */
function sentence(text: string): string {
  const begun = text.charAt(0).toUpperCase() + text.slice(1);
  return /[.?!]$/.test(begun) ? begun : `${begun}.`;
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-unit-file-opener': RbUnitFileOpener;
  }
}
