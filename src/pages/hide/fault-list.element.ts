import {LitElement, css, html, nothing} from 'lit';
import {customElement, property, state} from 'lit/decorators.js';
import {repeat} from 'lit/directives/repeat.js';
import type {Unit} from '../../content/unit.ts';
import {sheetStyles} from '../design/sheet.styles.ts';
import {findLines, sections} from './fault-shelf.ts';
import type {FaultSection, FaultSiteLine} from './fault-shelf.ts';

/**
 * The catalogue of a unit's faults to choose from: search, sections, one line for each part or wire.
 * @event {{fault: string}} fault-toggled - A person chose a fault or took it back.
 * @event site-left - A person left the part or wire that was picked on the diagram.
 */
@customElement('rb-fault-list')
export class RbFaultList extends LitElement {
  static override styles = [
    sheetStyles,
    css`
      .tools {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        gap: var(--space-3);
        align-items: end;
      }

      .tools label {
        display: block;
        font-size: var(--text-s);
      }

      .filters {
        display: flex;
        flex-wrap: wrap;
        gap: 0 var(--space-4);
        border: 0;
        margin-top: var(--space-2);
      }

      .filters label {
        display: inline-flex;
        align-items: center;
        gap: 6px;
        min-height: 44px;
        font-weight: 400;
      }

      .filters label:has(:checked) {
        font-weight: 700;
      }

      .count {
        margin-top: var(--space-1);
        min-height: 1.5em;
      }

      .lines {
        border-top: 1.5px solid var(--ink);
      }

      .lines > li {
        display: grid;
        grid-template-columns: minmax(0, 15rem) minmax(0, 1fr);
        gap: 2px var(--space-4);
        max-width: none;
        padding: 6px 0;
        border-bottom: 1px solid var(--rule);
      }

      .site {
        display: flex;
        gap: var(--space-2);
        align-items: baseline;
        padding-top: 9px;
        line-height: 1.3;
        overflow-wrap: anywhere;
      }

      .site b {
        font-family: var(--font-mono);
      }

      .swatch {
        align-self: center;
        width: 14px;
        height: 14px;
        flex: none;
        border: 1px solid var(--wire-casing);
      }

      .modes {
        display: flex;
        flex-wrap: wrap;
        gap: 4px 6px;
        align-items: flex-start;
      }

      .modes button {
        min-height: 40px;
        padding: 4px 12px;
        border: 1px solid var(--rule-strong);
        border-radius: var(--radius-1);
        background: var(--paper-raised);
        color: var(--accent);
        text-align: left;
        line-height: 1.25;
      }

      .modes button:hover {
        border-color: var(--accent);
        background: var(--accent-soft);
      }

      .modes button[aria-pressed='true'] {
        background: var(--accent);
        border-color: var(--accent);
        color: var(--on-accent);
        font-weight: 700;
      }

      .modes button[aria-pressed='true']::before {
        content: '';
        display: inline-block;
        width: 0.42em;
        height: 0.78em;
        margin-right: 0.6em;
        border: solid currentColor;
        border-width: 0 2.5px 2.5px 0;
        transform: translateY(-0.08em) rotate(42deg);
      }

      .modes button[aria-disabled='true'] {
        color: var(--ink-3);
        border-style: dashed;
        cursor: not-allowed;
      }

      .picked {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        justify-content: space-between;
        gap: var(--space-2);
        margin-bottom: var(--space-2);
      }

      @media (max-width: 720px) {
        .lines > li {
          grid-template-columns: minmax(0, 1fr);
        }

        .site {
          padding-top: 2px;
        }

        .modes button {
          min-height: 44px;
        }

        .tools {
          grid-template-columns: minmax(0, 1fr);
        }
      }
    `,
  ];

  @property({attribute: false}) unit!: Unit;
  @property({attribute: false}) lines: readonly FaultSiteLine[] = [];
  @property({attribute: false}) chosen: readonly string[] = [];
  /** No more can be chosen. */
  @property({type: Boolean}) full = false;
  /** `part:K1` or `wire:W12` when one was picked on the diagram: only its faults are listed. */
  @property() site = '';

  @state() private words = '';
  @state() private section: FaultSection | undefined;
  @state() private enclosure = '';

  override render() {
    const {words, section, enclosure, site} = this;
    const found = findLines(this.lines, {
      words,
      section,
      enclosure: enclosure || undefined,
      site: site || undefined,
    });
    const faults = found.reduce((sum, {modes}) => sum + modes.length, 0);
    const here = sections.filter(({id}) => this.lines.some((line) => line.section === id));
    return html`
      ${
        site
          ? html`<p class="picked">
              <span
                >Picked on the diagram:
                <b>${site.split(':')[1] ?? site}</b
                >${found.length ? '' : '. Nothing is known to fail on it.'}</span
              >
              <button
                class="plain"
                @click=${() => this.dispatchEvent(new CustomEvent('site-left'))}
              >
                List all faults
              </button>
            </p>`
          : html`<div class="tools">
                <div>
                  <label for="words">Search</label>
                  <input
                    id="words"
                    type="search"
                    placeholder="K1, yellow, capacitor, open…"
                    .value=${words}
                    @input=${this.search}
                  />
                </div>
                <div>
                  <label for="enclosure">Where</label>
                  <select id="enclosure" @change=${this.chooseEnclosure}>
                    <option value="">Everywhere</option>
                    ${this.unit.enclosures.map(({id, title}) => html`<option value=${id} ?selected=${id === enclosure}>${title}</option>`)}
                  </select>
                </div>
              </div>
              <fieldset class="filters">
                <legend class="sr-only">What</legend>
                ${this.renderSection(undefined, 'All')}
                ${here.map(({id, title}) => this.renderSection(id, title))}
              </fieldset>`
      }
      <p class="count small quiet" role="status">
        ${found.length ? `${faults} ${faults === 1 ? 'fault' : 'faults'} on ${found.length} ${found.length === 1 ? 'line' : 'lines'}` : 'Nothing by these words here. Search for less, or everywhere.'}
      </p>
      <ul class="lines" aria-label="Faults">
        ${repeat(
          found,
          ({id}) => id,
          (line) => this.renderLine(line),
        )}
      </ul>
    `;
  }

  private renderSection(section: FaultSection | undefined, title: string) {
    return html`<label>
      <input
        type="radio"
        name="section"
        .checked=${this.section === section}
        @change=${() => (this.section = section)}
      />
      ${title}
    </label>`;
  }

  private renderLine({title, about, colour, section, modes}: FaultSiteLine) {
    const site = section === 'air' ? '' : `${title}, ${colour ? `${colour} wire, ` : ''}${about}: `;
    return html`<li>
      <span class="site">
        ${colour ? html`<svg class="swatch" viewBox="0 0 1 1" aria-hidden="true"><rect width="1" height="1" fill="var(--wire-${colour})" /></svg>` : nothing}
        <span>
          ${section === 'air' ? html`<b>${title}</b>` : html`<b>${title}</b> ${colour ?? ''}`}
          <span class="quiet small">${about}</span>
        </span>
      </span>
      <span class="modes">
        ${modes.map(({fault, label}) => {
          const pressed = this.chosen.includes(fault);
          const blocked = this.full && !pressed;
          return html`<button
            aria-pressed=${pressed}
            aria-label="${site}${label}"
            aria-disabled=${blocked ? 'true' : nothing}
            @click=${() => this.toggle(fault, blocked)}
          >
            ${label}
          </button>`;
        })}
      </span>
    </li>`;
  }

  private toggle(fault: string, blocked: boolean): void {
    if (!blocked) this.dispatchEvent(new CustomEvent('fault-toggled', {detail: {fault}}));
  }

  private search(event: Event): void {
    this.words = (event.target as HTMLInputElement).value;
  }

  private chooseEnclosure(event: Event): void {
    this.enclosure = (event.target as HTMLSelectElement).value;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-fault-list': RbFaultList;
  }
}
