import {LitElement, css, html, nothing} from 'lit';
import {customElement, property, state} from 'lit/decorators.js';
import {keepQuantities} from '../../content/no-break.ts';
import type {Unit} from '../../content/unit.ts';
import {openAttempts} from '../../store/attempts.ts';
import {goTo, hrefOf} from '../app/router.ts';
import {desk} from '../desk/desk.ts';
import type {ListedUnit} from '../desk/desk.ts';
import {sheetStyles} from '../design/sheet.styles.ts';
import '../units/unit-picture.element.ts';
import './call-starter.element.ts';

/** One unit: what it is, its nameplate, how it should run, and what can be done with it. */
@customElement('rb-unit-page')
export class RbUnitPage extends LitElement {
  static override styles = [
    sheetStyles,
    css`
      .top {
        display: grid;
        grid-template-columns: minmax(0, 1fr) minmax(0, 20rem);
        gap: var(--space-5) var(--space-7);
      }

      .top .lead {
        margin-top: var(--space-3);
      }

      rb-unit-picture {
        margin-top: var(--space-5);
        --picture-height: 20rem;
      }

      .also {
        margin-top: var(--space-3);
        display: grid;
        gap: var(--space-2);
      }

      .nameplate {
        border: var(--line) solid var(--ink);
        max-width: 44rem;
      }

      .nameplate > div {
        display: grid;
        grid-template-columns: minmax(0, 14rem) minmax(0, 1fr);
        gap: var(--space-4);
        padding: 6px var(--space-3);
      }

      .nameplate > div + div {
        border-top: 1px solid var(--rule);
      }

      .nameplate dt {
        color: var(--ink-2);
      }

      .sequences {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(min(100%, 26rem), 1fr));
        gap: var(--space-5) var(--space-6);
        align-items: start;
      }

      .sequences ol {
        margin-top: var(--space-1);
        border-top: 1px solid var(--rule-strong);
        counter-reset: step;
      }

      .sequences li {
        display: grid;
        grid-template-columns: 2rem minmax(0, 1fr);
        padding: 5px 0;
        border-bottom: 1px solid var(--rule);
        counter-increment: step;
        line-height: 1.4;
      }

      .sequences li::before {
        content: counter(step);
        font-family: var(--font-mono);
        color: var(--ink-2);
      }

      @media (max-width: 860px) {
        .top {
          grid-template-columns: minmax(0, 1fr);
        }
      }

      @media (max-width: 480px) {
        .nameplate > div {
          grid-template-columns: minmax(0, 1fr);
          gap: 0;
        }
      }
    `,
  ];

  @property() unitId = '';

  @state() private listed: ListedUnit | undefined;
  @state() private failed = '';
  @state() private removing = false;

  override connectedCallback(): void {
    super.connectedCallback();
    void this.fetch();
  }

  override render() {
    if (this.failed) {
      return html`<div class="stack">
        <h1 tabindex="-1">This unit cannot be shown</h1>
        <p class="lead">${this.failed}</p>
        <p class="row"><a class="button first" href="#/">Back to the units</a></p>
      </div>`;
    }
    if (!this.listed?.unit)
      return html`<h1 tabindex="-1" class="sr-only">Unit</h1>
        <p class="quiet" role="status">Unrolling the drawing…</p>`;
    return this.renderUnit(this.listed, this.listed.unit);
  }

  private renderUnit(listed: ListedUnit, unit: Unit) {
    return html`
      <div class="top">
        <div>
          <h1 tabindex="-1">${keepQuantities(unit.title)}</h1>
          <p class="lead">${keepQuantities(unit.about)}</p>
          <rb-unit-picture .unit=${unit}></rb-unit-picture>
        </div>
        <div class="no-print">
          <rb-call-starter .unit=${listed}></rb-call-starter>
          <p class="also">
            <button class="button" @click=${this.freeRun}>Explore it healthy</button>
            <a class="button" href=${hrefOf({page: 'hide', unit: unit.id})}
              >Hide a fault for someone</a
            >
          </p>
          ${listed.shipped ? nothing : this.renderOwn(listed)}
        </div>
      </div>
      <section class="section" aria-labelledby="nameplate">
        <span class="no" aria-hidden="true">1</span>
        <div class="body">
          <h2 id="nameplate">Nameplate</h2>
          <dl class="nameplate">
            ${unit.nameplate.map(
              ({label, value}) =>
                html`<div>
                  <dt>${label}</dt>
                  <dd>${keepQuantities(value)}</dd>
                </div>`,
            )}
          </dl>
        </div>
      </section>
      <section class="section" aria-labelledby="sequences">
        <span class="no" aria-hidden="true">2</span>
        <div class="body">
          <h2 id="sequences">Sequence of operation</h2>
          <div class="sequences">
            ${unit.sequences.map(
              ({title, steps}) =>
                html`<div>
                  <h3>${title}</h3>
                  <ol>
                    ${steps.map((step) => html`<li>${step.title}</li>`)}
                  </ol>
                </div>`,
            )}
          </div>
        </div>
      </section>
    `;
  }

  private renderOwn({fileName, title}: ListedUnit) {
    return html`<p class="small quiet">From ${fileName}, kept on this device.</p>
      ${
        this.removing
          ? html`<p class="note">
              <strong>Remove ${title}?</strong>Calls on it stay in the history but cannot be opened
              without the file.
              <span class="row">
                <button class="button danger" @click=${this.removeUnit}>Remove</button>
                <button class="button" @click=${() => (this.removing = false)}>Keep</button>
              </span>
            </p>`
          : html`<button class="plain" @click=${() => (this.removing = true)}>
              Remove it from this device
            </button>`
      }`;
  }

  private async freeRun(): Promise<void> {
    if (!this.listed) return;
    try {
      const head = await desk().beginHealthy(await openAttempts(), this.listed, 'free-run');
      goTo({page: 'call', attempt: head.id});
    } catch (error) {
      this.failed = messageOf(error);
    }
  }

  private async removeUnit(): Promise<void> {
    try {
      await (await openAttempts()).removeUnit(this.unitId);
      goTo({page: 'home'}, {replace: true});
    } catch (error) {
      this.failed = messageOf(error);
    }
  }

  private async fetch(): Promise<void> {
    try {
      const store = await openAttempts();
      const unit = await desk().unit(store, this.unitId);
      const kept = (await store.units()).find(({id}) => id === unit.id);
      this.listed = {
        id: unit.id,
        title: unit.title,
        shipped: !kept,
        fileName: kept?.fileName,
        unit,
        mistakes: [],
      };
      this.dispatchEvent(
        new CustomEvent('page-title', {detail: {title: unit.title}, bubbles: true, composed: true}),
      );
    } catch (error) {
      this.failed = messageOf(error);
    }
  }
}

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-unit-page': RbUnitPage;
  }
}
