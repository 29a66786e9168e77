import {LitElement, html} from 'lit';
import {customElement, property} from 'lit/decorators.js';
import {sheetStyles} from '../design/sheet.styles.ts';

/** Shown for an address that leads nowhere. */
@customElement('rb-unknown-page')
export class RbUnknownPage extends LitElement {
  static override styles = sheetStyles;

  @property() hash = '';

  override render() {
    const shown = this.hash.length > 60 ? `${this.hash.slice(0, 60)}…` : this.hash;
    return html`<div class="stack">
      <h1 tabindex="-1">There is no such sheet</h1>
      <p class="lead">The address <span class="mono">${shown}</span> leads nowhere here.</p>
      <p>
        If it is a link that somebody sent you, it may have been cut short. Ask for it again, or
        copy all of it.
      </p>
      <p class="row"><a class="button first" href="#/">Back to the units</a></p>
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-unknown-page': RbUnknownPage;
  }
}
