import {LitElement, css, html, nothing} from 'lit';
import {customElement, property} from 'lit/decorators.js';
import type {TimeLeft as Left} from './student-line.ts';

/** From here on the time left is set in the colour of cautions, with a word. */
const shortMs = 2 * 60_000;

/** Counts down what is left of a time limit. The server decides when it is up; this only shows it. */
@customElement('rb-time-left')
export class TimeLeft extends LitElement {
  static override styles = css`
    :host {
      white-space: nowrap;
      font-variant-numeric: tabular-nums;
    }

    b {
      font-family: var(--font-mono);
    }

    .short b {
      color: var(--caution);
    }
  `;

  @property({attribute: false}) left: Left | undefined;

  private ticking: ReturnType<typeof setInterval> | undefined;

  override connectedCallback(): void {
    super.connectedCallback();
    this.ticking = setInterval(() => this.requestUpdate(), 1000);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    clearInterval(this.ticking);
  }

  override render() {
    if (!this.left) return nothing;
    const left = Math.max(0, this.left.leftMs - (performance.now() - this.left.since));
    if (left === 0) return html`<span class="short"><b>Time is up</b></span>`;
    const seconds = Math.ceil(left / 1000);
    const text = `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
    return html`<span class=${left < shortMs ? 'short' : ''}><b>${text}</b> left</span>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-time-left': TimeLeft;
  }
}
