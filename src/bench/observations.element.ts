import {LitElement, css, html} from 'lit';
import {customElement, property} from 'lit/decorators.js';
import type {Observation} from '../sequences/operating-unit.ts';
import {controlStyles} from './controls.styles.ts';

/** What a person standing at the unit sees and hears just now, in sentences. */
@customElement('rb-observations')
export class Observations extends LitElement {
  static override styles = [
    controlStyles,
    css`
      :host {
        display: block;
        font-size: var(--text-s);
        line-height: 1.4;
      }
      div {
        display: grid;
        grid-template-columns: auto minmax(0, 1fr);
        gap: var(--space-1) var(--space-3);
        padding: var(--space-2) var(--space-4);
        border-block-start: 1px solid var(--rule);
        background: var(--paper);
      }
      h2 {
        font-size: inherit;
      }
      ul {
        display: flex;
        flex-wrap: wrap;
        gap: 0 var(--space-4);
      }
      li {
        position: relative;
        padding-inline-start: 1.1em;
      }
      li::before {
        content: '';
        position: absolute;
        inset-inline-start: 0;
        inset-block-start: 0.5em;
        inline-size: 0.45em;
        block-size: 0.45em;
        border: 1.5px solid var(--ink-2);
        border-radius: 50%;
      }
      li.heard::before {
        border-radius: 0;
        border-width: 0 1.5px;
      }
      @media (max-width: 760px) {
        div {
          grid-template-columns: minmax(0, 1fr);
          padding: var(--space-1) var(--space-3);
          /* two whole lines; the rest is scrolled to */
          max-block-size: calc(2 * 1.4em + 2 * var(--space-1));
          overflow-y: auto;
          font-size: var(--text-xs);
        }
        ul {
          display: block;
        }
        li {
          display: inline;
          margin-inline-end: var(--space-2);
        }
        h2 {
          position: absolute;
          inline-size: 1px;
          block-size: 1px;
          overflow: hidden;
          clip-path: inset(50%);
        }
      }
    `,
  ];

  @property({attribute: false}) observations: readonly Observation[] = [];

  override render() {
    const texts = this.observations.filter(
      (seen, at, all) => all.findIndex((other) => other.text === seen.text) === at,
    );
    return html`<div>
      <h2>You see and hear</h2>
      <ul tabindex="0" aria-label="At the unit you see and hear">
        ${
          texts.length === 0
            ? html`<li>Nothing moves, nothing sounds, no lamp is lit.</li>`
            : texts.map((seen) => html`<li class=${seen.sense}>${seen.text}</li>`)
        }
      </ul>
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-observations': Observations;
  }
}
