import {LitElement, css, html, nothing} from 'lit';
import {customElement, property, state} from 'lit/decorators.js';
import {sheetStyles} from '../design/sheet.styles.ts';

/** A link to hand over: copied, shared by the device's own means, or taken by hand. */
@customElement('rb-share-link')
export class RbShareLink extends LitElement {
  static override styles = [
    sheetStyles,
    css`
      textarea {
        min-height: 5.5rem;
        margin-top: var(--space-2);
        font: var(--text-xs) / 1.4 var(--font-mono);
        word-break: break-all;
      }
    `,
  ];

  @property() link = '';

  @state() private said = '';

  override render() {
    return html`<div class="stack">
      <label for="link">The link</label>
      <textarea id="link" readonly rows="3" .value=${this.link} @focus=${this.select}></textarea>
      <p class="row">
        <button class="button first" @click=${this.copy}>Copy the link</button>
        ${'share' in navigator ? html`<button class="button" @click=${this.share}>Share…</button>` : nothing}
        <span role="status">${this.said}</span>
      </p>
      <p class="small quiet">
        Whoever opens it gets the complaint and the unit. The fault itself cannot be read in it. It
        works on any device that reaches this tutor at the same address.
      </p>
    </div>`;
  }

  private select(event: Event): void {
    (event.target as HTMLTextAreaElement).select();
  }

  private async copy(): Promise<void> {
    try {
      await navigator.clipboard.writeText(this.link);
      this.said = 'Copied.';
    } catch {
      // no clipboard without a secure context: the older way still works there
      this.renderRoot.querySelector('textarea')?.select();
      this.said = document.execCommand('copy')
        ? 'Copied.'
        : 'Not copied: the link is selected, copy it by hand.';
    }
  }

  private async share(): Promise<void> {
    try {
      await navigator.share({title: 'A service call for you', url: this.link});
    } catch {
      // the person closed the share sheet
    }
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-share-link': RbShareLink;
  }
}
