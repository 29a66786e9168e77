import {LitElement, html, nothing} from 'lit';
import {customElement, property, state} from 'lit/decorators.js';
import type {Unit} from '../../content/unit.ts';
import {openAttempts} from '../../store/attempts.ts';
import type {AttemptHead} from '../../store/attempts.ts';
import {hrefOf} from '../app/router.ts';
import {desk} from '../desk/desk.ts';
import {sheetStyles} from '../design/sheet.styles.ts';
import './call-card.element.ts';
import {fetchBench} from './fetch-bench.ts';

/**
 * The closed lid: a fault has been hidden on this device and the next person takes it from here. The page that hid it
 * was replaced, so going back does not show it.
 */
@customElement('rb-handed-page')
export class RbHandedPage extends LitElement {
  static override styles = sheetStyles;

  @property() attemptId = '';

  @state() private head: AttemptHead | undefined;
  @state() private unit: Unit | undefined;
  @state() private failed = '';

  override connectedCallback(): void {
    super.connectedCallback();
    void this.fetch();
  }

  override render() {
    if (this.failed) {
      return html`<div class="stack">
        <h1 tabindex="-1">This call is not here</h1>
        <p class="lead">${this.failed}</p>
        <p class="row">
          <a class="button first" href="#/">Back to the units</a
          ><a class="button" href="#/history">History</a>
        </p>
      </div>`;
    }
    return html`
      <h1 tabindex="-1">A service call for you</h1>
      <p class="lead">
        The lid is closed. Something has been done to this unit; what, is for you to find.
      </p>
      ${
        this.head
          ? html`<rb-call-card
              .complaint=${this.head.complaint}
              .unitTitle=${this.head.unitTitle}
              .unit=${this.unit}
            >
              <p class="row">
                <a class="button first" href=${hrefOf({page: 'call', attempt: this.head.id})}
                  >Take the call</a
                >
              </p>
              <p class="small quiet">
                You who hid it: hand the device over now. Going back does not open the lid.
              </p>
            </rb-call-card>`
          : nothing
      }
    `;
  }

  private async fetch(): Promise<void> {
    try {
      const store = await openAttempts();
      this.head = await store.head(this.attemptId);
      if (!this.head)
        this.failed = 'No call of this address is kept on this device. It may have been deleted.';
      else {
        this.unit = await desk().unit(store, this.head.unit);
        fetchBench();
      }
    } catch (error) {
      this.failed = error instanceof Error ? error.message : String(error);
    }
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-handed-page': RbHandedPage;
  }
}
