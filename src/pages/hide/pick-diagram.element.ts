import {LitElement, css, html, nothing} from 'lit';
import {customElement, property, state} from 'lit/decorators.js';
import type {Unit} from '../../content/unit.ts';
import '../../diagrams/unit-diagram.element.ts';
import {sheetStyles} from '../design/sheet.styles.ts';
import {layoutOf} from '../units/layout-of.ts';

/**
 * The unit's diagram to point at what shall be wrong.
 * @event {{site: string}} site-picked - A person picked a part (`part:K1`) or a wire (`wire:W12`).
 */
@customElement('rb-pick-diagram')
export class RbPickDiagram extends LitElement {
  static override styles = [
    sheetStyles,
    css`
      .views {
        display: flex;
        flex-wrap: wrap;
        gap: 0 var(--space-4);
        border: 0;
      }

      .views label {
        display: inline-flex;
        align-items: center;
        gap: 6px;
        min-height: 44px;
        font-weight: 400;
      }

      .frame {
        height: min(62vh, 34rem);
        margin: var(--space-2) 0 var(--space-4);
        border: var(--line) solid var(--ink);
        background: var(--paper);
      }

      rb-unit-diagram {
        height: 100%;
      }

      @media (max-width: 720px) {
        .frame {
          height: 22rem;
        }
      }
    `,
  ];

  @property({attribute: false}) unit!: Unit;
  /** What is picked now, to be shown on the drawing. */
  @property() site = '';

  @state() private view: 'ladder' | 'connection' = 'connection';
  @state() private layout: unknown;
  @state() private failed = '';

  override connectedCallback(): void {
    super.connectedCallback();
    void this.fetch();
  }

  override render() {
    const [kind, id] = this.site.split(':');
    const waiting = this.view === 'connection' && !this.layout;
    return html`
      <fieldset class="views">
        <legend class="sr-only">Drawing</legend>
        ${(['connection', 'ladder'] as const).map(
          (view) =>
            html`<label>
              <input
                type="radio"
                name="view"
                .checked=${this.view === view}
                @change=${() => (this.view = view)}
              />
              ${view === 'ladder' ? 'Ladder' : 'Connection diagram'}
            </label>`,
        )}
      </fieldset>
      ${this.failed && waiting ? html`<p class="note caution"><strong>No connection diagram.</strong>${this.failed}</p>` : nothing}
      <div class="frame">
        ${
          waiting
            ? html`<p class="quiet" role="status">Laying out the drawing…</p>`
            : html`<rb-unit-diagram
                mode="select"
                .unit=${this.unit}
                .view=${this.view}
                .layout=${this.layout}
                .selectedPart=${kind === 'part' ? id : undefined}
                .selectedWire=${kind === 'wire' ? id : undefined}
                @part-picked=${(event: CustomEvent<{part: string}>) => this.pick(`part:${event.detail.part}`)}
                @wire-picked=${(event: CustomEvent<{wire: string}>) => this.pick(`wire:${event.detail.wire}`)}
                @terminal-picked=${(event: CustomEvent<{terminal: string}>) => this.pick(`part:${event.detail.terminal.split('.')[0]}`)}
              ></rb-unit-diagram>`
        }
      </div>
    `;
  }

  private pick(site: string): void {
    this.dispatchEvent(new CustomEvent('site-picked', {detail: {site}}));
  }

  private async fetch(): Promise<void> {
    try {
      this.layout = await layoutOf(this.unit);
    } catch (error) {
      this.failed = error instanceof Error ? error.message : String(error);
      this.view = 'ladder';
    }
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-pick-diagram': RbPickDiagram;
  }
}
