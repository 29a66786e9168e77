import {LitElement, css, html, nothing} from 'lit';
import {customElement, property} from 'lit/decorators.js';
import {sheetStyles} from '../design/sheet.styles.ts';
import type {LineState} from './student-line.ts';

/** Says when the line to the class is lost and when it stands again. Takes no room while all is well. */
@customElement('rb-line-notice')
export class LineNotice extends LitElement {
  static override styles = [
    sheetStyles,
    css`
      p {
        max-width: none;
        margin-bottom: var(--line-notice-gap, 0);
        padding: 6px var(--space-4);
        border-bottom: 2px solid var(--caution);
        background: var(--caution-soft);
        line-height: 1.35;
      }

      b {
        color: var(--caution);
      }
    `,
  ];

  @property({attribute: false}) state: LineState | undefined;

  override render() {
    return html`<div role="status">${this.says()}</div>`;
  }

  private says() {
    const {state} = this;
    if (state?.is !== 'lost') return nothing;
    return html`<p>
      <b>No connection to the class.</b>
      ${state.sentence || 'Trying again by itself. What is done is kept, and what you do now is sent as soon as it stands.'}
    </p>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-line-notice': LineNotice;
  }
}
