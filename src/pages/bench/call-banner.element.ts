import {LitElement, css, html, nothing} from 'lit';
import {customElement, property} from 'lit/decorators.js';
import type {BenchView} from '../../bench/bench-view.ts';
import {controlStyles} from '../../bench/controls.styles.ts';
import {hrefOf} from '../app/router.ts';
import {isOn} from './call-on.ts';

/**
 * How the call stands, in one line above the bench: one of two faults named, the fault cleared, something to be pointed
 * out, a call picked up again. Nothing while a call takes its usual course.
 *
 * @event clearing-asked - A person wants the fault cleared.
 * @event naming-asked - A person goes back to naming.
 * @event put-away - A person has read that the call was picked up again.
 */
@customElement('rb-call-banner')
export class CallBanner extends LitElement {
  static override styles = [
    controlStyles,
    css`
      .banner {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--space-2) var(--space-3);
        padding: var(--space-2) var(--space-4);
        background: var(--good-soft);
        border-block-end: 1px solid var(--good);
      }
      .banner .button {
        margin-inline-start: auto;
        text-decoration: none;
      }
      .banner .button + .button {
        margin-inline-start: 0;
      }
      .resumed {
        background: var(--paper-sunken);
        border-color: var(--rule-strong);
      }
      @media (max-width: 760px) {
        .banner {
          padding-inline: var(--space-3);
          font-size: var(--text-s);
        }
      }
      @media print {
        .banner {
          display: none;
        }
      }
    `,
  ];

  @property() attemptId = '';
  @property({attribute: false}) view?: BenchView;
  /** The next pick is pointed out instead of worked on. */
  @property({type: Boolean}) pointing = false;
  /** Actions that were done again when the call was picked up. */
  @property({type: Number}) resumed = 0;

  override render() {
    const {view} = this;
    if (!view) return nothing;
    if (view.more && !this.pointing) {
      return html`<div class="banner" role="status">
        <span>
          <b>Right: that is one of the faults.</b> Another is still in the unit. Find it, and name
          it too.
        </span>
      </div>`;
    }
    if (!isOn(view)) return this.answered(view);
    if (this.pointing) {
      return html`<div class="banner resumed">
        <span><b>Point it out:</b> pick the part or wire on the drawing.</span>
        <button type="button" class="button small" @click=${() => this.emit('naming-asked')}>
          Back to naming
        </button>
      </div>`;
    }
    if (this.resumed > 0) {
      return html`<div class="banner resumed" role="status">
        <span
          ><b>Picking up where you left off:</b>
          ${this.resumed === 1 ? 'one action' : `${this.resumed} actions`} done again.</span
        >
        <button type="button" class="button small" @click=${() => this.emit('put-away')}>
          Go on
        </button>
      </div>`;
    }
    return nothing;
  }

  private answered({stage}: BenchView) {
    const cleared = stage === 'cleared';
    return html`<div class="banner">
      <span>
        ${
          cleared
            ? html`<b>The fault is cleared.</b> Run the unit and read what proves it.`
            : html`<b>The call is answered.</b> The bench stays open for more readings.`
        }
      </span>
      ${
        cleared
          ? nothing
          : html`<button
              type="button"
              class="button small"
              @click=${() => this.emit('clearing-asked')}
            >
              Clear the fault
            </button>`
      }
      <a class="button small" href=${hrefOf({page: 'debrief', attempt: this.attemptId})}
        >To the debrief</a
      >
    </div>`;
  }

  private emit(type: string): void {
    this.dispatchEvent(new CustomEvent(type, {bubbles: true, composed: true}));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-call-banner': CallBanner;
  }
}
