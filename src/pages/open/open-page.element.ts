import {LitElement, html, nothing} from 'lit';
import {customElement, property, state} from 'lit/decorators.js';
import type {Unit} from '../../content/unit.ts';
import {openAttempts} from '../../store/attempts.ts';
import type {AttemptHead} from '../../store/attempts.ts';
import {goTo, hrefOf} from '../app/router.ts';
import {desk, randomSeed} from '../desk/desk.ts';
import {sheetStyles} from '../design/sheet.styles.ts';
import {minuteWords, resultWords} from '../history/attempt-words.ts';
import './call-card.element.ts';
import {fetchBench} from './fetch-bench.ts';

/** What a link with a sealed fault opens: the call, to be taken. Nothing of the fault is on this page. */
@customElement('rb-open-page')
export class RbOpenPage extends LitElement {
  static override styles = sheetStyles;

  @property() sealed = '';

  @state() private call: {readonly unit: Unit; readonly complaint: string} | undefined;
  /** The attempt that was begun on this same link before. */
  @state() private earlier: AttemptHead | undefined;
  @state() private failed = '';
  @state() private beginning = false;

  override connectedCallback(): void {
    super.connectedCallback();
    void this.fetch();
  }

  override render() {
    if (this.failed) {
      return html`<div class="stack">
        <h1 tabindex="-1">This link does not open</h1>
        <p class="lead">${this.failed}</p>
        <p class="row">
          <a class="button first" href="#/">Back to the units</a>
          <button class="button" @click=${this.fetch}>Try again</button>
        </p>
      </div>`;
    }
    return html`
      <h1 tabindex="-1">A service call for you</h1>
      <p class="lead">
        Somebody has hidden one fault in this unit, or two. Find what is wrong, and prove it with
        readings.
      </p>
      ${
        this.call
          ? html`<rb-call-card
              .complaint=${this.call.complaint}
              .unitTitle=${this.call.unit.title}
              .unit=${this.call.unit}
            >
              ${this.earlier ? this.renderEarlier(this.earlier) : nothing}
              <p class="row">
                <button
                  class="button ${this.earlier ? '' : 'first'}"
                  ?disabled=${this.beginning}
                  @click=${this.begin}
                >
                  ${this.earlier ? 'Begin it anew' : 'Take the call'}
                </button>
              </p>
            </rb-call-card>`
          : html`<p class="quiet" role="status">Opening the call…</p>`
      }
    `;
  }

  private renderEarlier(head: AttemptHead) {
    return html`<p>
        You have begun this call on this device: ${resultWords(head).toLowerCase()},
        ${minuteWords(head.minutes)} spent.
      </p>
      <p class="row">
        <a class="button first" href=${hrefOf({page: 'call', attempt: head.id})}>Go on with it</a>
      </p>`;
  }

  private readonly fetch = async (): Promise<void> => {
    this.failed = '';
    try {
      const store = await openAttempts();
      const {unit, complaint} = await desk().ask('opened', {sealed: this.sealed});
      this.earlier = (await store.list()).find(({sealed}) => sealed === this.sealed);
      this.call = {unit: await desk().unit(store, unit), complaint};
      fetchBench();
    } catch (error) {
      this.failed = error instanceof Error ? error.message : String(error);
    }
  };

  private async begin(): Promise<void> {
    if (!this.call) return;
    this.beginning = true;
    const {unit, complaint} = this.call;
    try {
      const store = await openAttempts();
      const {id} = await store.begin({
        unit: unit.id,
        unitTitle: unit.title,
        complaint,
        sealed: this.sealed,
        seed: randomSeed(),
        purpose: 'call',
      });
      goTo({page: 'call', attempt: id}, {replace: true});
    } catch (error) {
      this.failed = error instanceof Error ? error.message : String(error);
    } finally {
      this.beginning = false;
    }
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-open-page': RbOpenPage;
  }
}
