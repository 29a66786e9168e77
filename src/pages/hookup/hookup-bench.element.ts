import {LitElement, css, html, nothing} from 'lit';
import {customElement, property, state} from 'lit/decorators.js';
import type {BenchView} from '../../bench/bench-view.ts';
import '../../bench/cautions.element.ts';
import type {RefusedAction} from '../../bench/refused-action.ts';
import type {Unit} from '../../content/unit.ts';
import '../bench/bench-desk.element.ts';
import type {BenchSettings} from '../bench/remembered.ts';

/**
 * The bench on wires that a student has made. Nothing is hidden in it, so it runs in the page itself; what is asked of
 * it goes up as `action-asked` and comes back as a view.
 *
 * @event {{action: Action}} action-asked - A person wants it done.
 */
@customElement('rb-hookup-bench')
export class HookupBench extends LitElement {
  static override styles = css`
    :host {
      display: block;
    }
    rb-bench-desk {
      display: block;
      block-size: min(46rem, 84vh);
      margin-block-start: var(--space-3);
      border: 1px solid var(--rule-strong);
    }
    @media (max-width: 900px) {
      rb-bench-desk {
        block-size: 56rem;
      }
    }
  `;

  @property({attribute: false}) unit?: Unit;
  @property({attribute: false}) view?: BenchView;
  @property({attribute: false}) refusal?: RefusedAction;

  @state() private settings: BenchSettings = {muted: true, shortcuts: false, view: 'ladder'};

  override render() {
    if (!this.view || !this.unit) return nothing;
    return html`<rb-cautions .cautions=${this.view.cautions}></rb-cautions>
      <rb-bench-desk
        .unit=${this.unit}
        layoutProblem="The board above is the connection drawing of your wires."
        .view=${this.view}
        .refusal=${this.refusal}
        .settings=${this.settings}
        @action-asked=${(event: CustomEvent<object>) =>
          this.dispatchEvent(new CustomEvent('action-asked', {detail: event.detail}))}
        @settings-changed=${(event: CustomEvent<{settings: BenchSettings}>) =>
          (this.settings = event.detail.settings)}
      ></rb-bench-desk>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-hookup-bench': HookupBench;
  }
}
