import {LitElement, css, html, nothing} from 'lit';
import {customElement, state} from 'lit/decorators.js';
import {sheetStyles} from '../design/sheet.styles.ts';
import {api, sentenceOf} from './class-api.ts';
import {classStyles} from './class.styles.ts';

const shortest = 12;

/** Changes the passphrase of the instructor who is signed in. */
@customElement('rb-passphrase-form')
export class PassphraseForm extends LitElement {
  static override styles = [
    sheetStyles,
    classStyles,
    css`
      form {
        display: grid;
        gap: var(--space-2);
        max-width: 24rem;
        padding: var(--space-2) 0 var(--space-3);
      }

      summary {
        cursor: pointer;
        min-height: 28px;
        padding: 4px 0;
      }
    `,
  ];

  @state() private refusal = '';
  @state() private done = false;
  @state() private busy = false;

  override render() {
    return html`<details>
      <summary>Change your passphrase</summary>
      <form @submit=${this.submit}>
        <label for="current">Passphrase until now</label>
        <input id="current" type="password" autocomplete="current-password" required />
        <label for="fresh">New passphrase, ${shortest} characters or more</label>
        <input
          id="fresh"
          type="password"
          autocomplete="new-password"
          minlength=${shortest}
          maxlength="128"
          required
        />
        <p><button class="button" ?disabled=${this.busy}>Change it</button></p>
        <div role="status">
          ${this.done ? html`<p class="note good">Changed. You are signed out on every other device.</p>` : nothing}
        </div>
        <div role="alert">
          ${this.refusal ? html`<p class="note danger"><strong>Not changed.</strong>${this.refusal}</p>` : nothing}
        </div>
      </form>
    </details>`;
  }

  private readonly submit = async (event: Event): Promise<void> => {
    event.preventDefault();
    const form = event.target as HTMLFormElement;
    const value = (id: string): string => form.querySelector<HTMLInputElement>(`#${id}`)!.value;
    this.busy = true;
    this.done = false;
    this.refusal = '';
    try {
      await api('POST', 'passphrase', {current: value('current'), passphrase: value('fresh')});
      this.done = true;
      form.reset();
    } catch (error) {
      this.refusal = sentenceOf(error);
    } finally {
      this.busy = false;
    }
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-passphrase-form': PassphraseForm;
  }
}
