import {LitElement, css, html} from 'lit';
import {customElement, query, state} from 'lit/decorators.js';
import {controlStyles} from '../../bench/controls.styles.ts';

/**
 * Writes a note into the field log.
 *
 * @event {{action: Action}} action-asked - A person wrote one.
 */
@customElement('rb-note-form')
export class NoteForm extends LitElement {
  static override styles = [
    controlStyles,
    css`
      form {
        display: grid;
        gap: var(--space-2);
        justify-items: start;
      }
      label {
        font-weight: 700;
      }
      textarea {
        inline-size: 100%;
        min-block-size: 6rem;
        resize: vertical;
      }
    `,
  ];

  @state() private empty = true;
  @query('textarea') private text!: HTMLTextAreaElement;

  override render() {
    return html`<form @submit=${this.onSubmit}>
      <label for="note">Write a note into the log</label>
      <textarea
        id="note"
        class="field"
        maxlength="500"
        placeholder="What you think, and why"
        @input=${() => (this.empty = this.text.value.trim() === '')}
      ></textarea>
      <button type="submit" class="button" ?disabled=${this.empty}>Write it down</button>
    </form>`;
  }

  private onSubmit(event: Event): void {
    event.preventDefault();
    const text = this.text.value.trim();
    if (text === '') return;
    this.text.value = '';
    this.empty = true;
    const action = {do: 'note', text} as const;
    this.dispatchEvent(
      new CustomEvent('action-asked', {detail: {action}, bubbles: true, composed: true}),
    );
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-note-form': NoteForm;
  }
}
