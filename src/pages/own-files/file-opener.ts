import {LitElement, css, html, nothing} from 'lit';
import {state} from 'lit/decorators.js';
import type {FileMistake} from '../desk/desk-messages.ts';
import {sheetStyles} from '../design/sheet.styles.ts';

/** No file that a person could want is larger, and a wrong one should not freeze the checker. */
const largestBytes = 1_000_000;

/**
 * Opens a content file from disk, chosen or dropped: lists its mistakes, each with its line and column, or keeps it
 * on this device. What is kept, and where it leads to, is the subclass's.
 */
export abstract class FileOpener extends LitElement {
  static override styles = [
    sheetStyles,
    css`
      .drop {
        margin-top: var(--space-3);
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--space-2) var(--space-4);
        padding: var(--space-3) var(--space-4);
        border: 2px dashed var(--rule-strong);
      }
      .drop.over {
        border-color: var(--highlight-edge);
        background: var(--highlight);
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
      [role='status'] > * {
        margin-top: var(--space-3);
      }
      .mistakes li {
        display: grid;
        grid-template-columns: minmax(0, 16rem) minmax(0, 1fr);
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
      @media (max-width: 480px) {
        .mistakes li {
          grid-template-columns: minmax(0, 1fr);
        }
      }
    `,
  ];

  /** `unit file`, `task file`. */
  protected abstract readonly what: string;

  @state() private fileName = '';
  @state() private mistakes: readonly FileMistake[] = [];
  @state() private refusal = '';
  @state() private checking = false;
  @state() private isOver = false;

  /** Keeps a sound file and goes where it leads; its mistakes otherwise. Throws with a sentence where it cannot. */
  protected abstract keep(fileName: string, text: string): Promise<readonly FileMistake[]>;

  override render() {
    return html`
      <div
        class="drop ${this.isOver ? 'over' : ''}"
        @dragover=${(event: DragEvent) => {
          event.preventDefault();
          this.isOver = true;
        }}
        @dragleave=${() => (this.isOver = false)}
        @drop=${this.onDrop}
      >
        <span>
          <input
            type="file"
            id="file"
            accept=".yaml,.yml,text/yaml,application/yaml"
            @change=${this.onChosen}
          />
          <label class="button" for="file"
            >${this.checking ? 'Checking…' : `Open a ${this.what}…`}</label
          >
        </span>
        <span class="small quiet">or drop it here. It stays on this device.</span>
      </div>
      <div role="status">
        ${this.refusal ? html`<p class="note danger"><strong>Not opened.</strong>${this.refusal}</p>` : nothing}
        ${this.mistakes.length > 0 ? this.renderMistakes() : nothing}
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

  private readonly onDrop = async (event: DragEvent): Promise<void> => {
    event.preventDefault();
    this.isOver = false;
    const file = event.dataTransfer?.files[0];
    if (file) await this.open(file);
  };

  private readonly onChosen = async (event: Event): Promise<void> => {
    const input = event.target as HTMLInputElement;
    const file = input.files?.[0];
    if (file) await this.open(file);
    // the same file, mended, must be able to be chosen again
    input.value = '';
  };

  private async open(file: File): Promise<void> {
    this.fileName = file.name;
    this.mistakes = [];
    this.refusal = '';
    this.checking = true;
    try {
      if (file.size > largestBytes)
        throw new Error(
          `${file.name} has ${Math.round(file.size / 1000)} kB; a ${this.what} has at most ${largestBytes / 1000} kB.`,
        );
      this.mistakes = await this.keep(file.name, await file.text());
    } catch (error) {
      this.refusal = error instanceof Error ? error.message : String(error);
    } finally {
      this.checking = false;
    }
  }
}

/** The checker's messages begin small, as they stand after a file name elsewhere. */
function sentence(text: string): string {
  const begun = text.charAt(0).toUpperCase() + text.slice(1);
  return /[.?!]$/.test(begun) ? begun : `${begun}.`;
}
