import {LitElement, css, html, nothing} from 'lit';
import {customElement, property, query} from 'lit/decorators.js';
import {keepQuantities} from '../content/no-break.ts';
import type {Unit} from '../content/unit.ts';
import {clockText, minutesText} from './clock-text.ts';
import {controlStyles} from './controls.styles.ts';

/**
 * The head of a service call: the unit, what the customer says, the nameplate, the clock.
 * Its slot takes the page's buttons.
 *
 * @event help-asked - A person wants to know how the bench is worked.
 */
@customElement('rb-call-strip')
export class CallStrip extends LitElement {
  static override styles = [
    controlStyles,
    css`
      :host {
        display: block;
      }
      header {
        display: grid;
        grid-template:
          'title complaint clock slot' auto
          'links complaint clock slot' auto / auto minmax(0, 1fr) auto auto;
        align-items: center;
        gap: 0 var(--space-5);
        min-block-size: 56px;
        padding: var(--space-1) var(--space-4);
        border-block-end: 2px solid var(--ink);
        background: var(--paper);
      }
      h1 {
        grid-area: title;
        margin: 0;
        font-size: var(--text-l);
        line-height: 1.15;
      }
      .plate + .plate {
        margin-inline-start: var(--space-2);
      }
      .plate {
        min-block-size: 26px;
        padding: 0;
        background: none;
        border: 0;
        color: var(--accent);
        text-decoration: underline;
        text-underline-offset: 3px;
        font-size: var(--text-s);
        cursor: pointer;
      }
      .links {
        grid-area: links;
        white-space: nowrap;
      }
      .complaint {
        grid-area: complaint;
        align-self: center;
        padding-inline-start: var(--space-4);
        border-inline-start: 1px solid var(--rule-strong);
        line-height: 1.35;
      }
      .complaint q {
        font-size: var(--text-m);
      }
      .who {
        display: block;
        font-size: var(--text-xs);
        color: var(--ink-2);
      }
      dl {
        grid-area: clock;
        display: flex;
        gap: var(--space-4);
        text-align: end;
      }
      dt {
        font-size: var(--text-xs);
        color: var(--ink-2);
      }
      dd {
        font-family: var(--font-mono);
        font-weight: 700;
        font-variant-numeric: tabular-nums;
        line-height: 1.2;
        white-space: nowrap;
      }
      dialog {
        max-inline-size: min(32rem, calc(100vw - 2rem));
        padding: var(--space-5);
        background: var(--paper-raised);
        border: 2px solid var(--ink);
        border-radius: var(--radius-1);
      }
      dialog::backdrop {
        background: rgb(10 14 18 / 45%);
      }
      dialog h2 {
        font-size: var(--text-l);
      }
      .nameplate {
        inline-size: 100%;
        margin-block: var(--space-3);
        border-collapse: collapse;
        border: 2px solid var(--ink);
      }
      .nameplate th,
      .nameplate td {
        padding: var(--space-1) var(--space-3);
        border-block-end: 1px solid var(--rule-strong);
        text-align: start;
        vertical-align: baseline;
      }
      .nameplate th {
        font-weight: 400;
        color: var(--ink-2);
      }
      .nameplate td {
        font-family: var(--font-mono);
        font-weight: 700;
      }
      ::slotted(*) {
        grid-area: slot;
      }
      @media print {
        .links {
          display: none;
        }
      }
      @media (max-width: 1000px) {
        header {
          grid-template:
            'title clock slot' auto
            'complaint links links' auto / minmax(0, 1fr) auto auto;
          gap: 0 var(--space-3);
        }
        .complaint {
          padding: 0;
          border: 0;
        }
        .who {
          position: absolute;
          inline-size: 1px;
          block-size: 1px;
          overflow: hidden;
          clip-path: inset(50%);
        }
      }
      @media (max-width: 760px) {
        header {
          padding-inline: var(--space-3);
          min-block-size: 0;
        }
        h1 {
          overflow: hidden;
          text-overflow: ellipsis;
          white-space: nowrap;
          font-size: var(--text-m);
          line-height: 1.5;
        }
        .complaint q,
        .complaint .said {
          display: block;
          max-block-size: 2.7em;
          overflow-y: auto;
          font-size: var(--text-s);
        }
        dl {
          gap: var(--space-3);
        }
        dt {
          position: absolute;
          inline-size: 1px;
          block-size: 1px;
          overflow: hidden;
          clip-path: inset(50%);
        }
        dd {
          font-size: var(--text-s);
        }
      }
    `,
  ];

  @property({attribute: false}) unit?: Unit;
  @property() complaint = '';
  /** The complaint is a customer's, not the tutor's own words. */
  @property({type: Boolean}) quoted = false;
  @property({type: Number}) timeMs = 0;
  @property({type: Number}) minutes = 0;
  @query('dialog') private dialog!: HTMLDialogElement;

  /** Show the nameplate. */
  showNameplate(): void {
    this.dialog.showModal();
  }

  private askHelp(): void {
    this.dispatchEvent(new CustomEvent('help-asked', {bubbles: true, composed: true}));
  }

  override render() {
    if (!this.unit) return nothing;
    return html`
      <header>
        <h1>${keepQuantities(this.unit.title)}</h1>
        <p class="links">
          <button type="button" class="plate" @click=${this.showNameplate}>Nameplate</button>
          <button type="button" class="plate" @click=${this.askHelp}>How to</button>
        </p>
        <p class="complaint">
          ${
            this.quoted
              ? html`<span class="who">The customer says</span
                  ><q tabindex="0">${this.complaint}</q>`
              : html`<span class="said">${this.complaint}</span>`
          }
        </p>
        <dl>
          <div>
            <dt>Clock at the unit</dt>
            <dd>${clockText(this.timeMs)}</dd>
          </div>
          <div>
            <dt>Work spent</dt>
            <dd>${minutesText(this.minutes)}</dd>
          </div>
        </dl>
        <slot></slot>
      </header>
      <dialog aria-labelledby="plate-title">
        <h2 id="plate-title">Nameplate</h2>
        <table class="nameplate">
          <tbody>
            ${this.unit.nameplate.map(
              (line) =>
                html`<tr>
                  <th scope="row">${line.label}</th>
                  <td>${keepQuantities(line.value)}</td>
                </tr>`,
            )}
          </tbody>
        </table>
        <p class="quiet-text">${this.unit.about}</p>
        <form method="dialog"><button class="button">Close</button></form>
      </dialog>
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-call-strip': CallStrip;
  }
}
