import {LitElement, css, html, nothing} from 'lit';
import {customElement, property, query} from 'lit/decorators.js';
import {terminalOptions, usualVolts, wireOptions} from '../../bench/bench-options.ts';
import type {BenchView} from '../../bench/bench-view.ts';
import {controlStyles} from '../../bench/controls.styles.ts';
import '../../bench/expectation-form.element.ts';
import type {ExpectationForm} from '../../bench/expectation-form.element.ts';
import '../../bench/field-log.element.ts';
import '../../bench/pick-list.element.ts';
import type {PickList} from '../../bench/pick-list.element.ts';
import {placeOf, type RefusedAction} from '../../bench/refused-action.ts';
import type {Unit} from '../../content/unit.ts';
import {isReady, type Picks} from './picks.ts';

/** Readings shown under the meter; the whole log has its own panel. */
const latestShown = 4;

/**
 * Where a reading is taken: the list to find a terminal or wire in, what is expected, and the latest readings.
 *
 * @event {{terminal: string}} terminal-found - A person chose a terminal in the list.
 * @event {{wire: string}} wire-found - A person chose a wire in the list.
 * @event {{expected?: Expectation}} reading-asked - A person pressed Read.
 */
@customElement('rb-probe-panel')
export class ProbePanel extends LitElement {
  static override styles = [
    controlStyles,
    css`
      :host {
        display: grid;
        align-content: start;
        gap: var(--space-3);
      }
      @media (max-width: 760px) {
        :host {
          display: block;
          background: var(--meter-body);
        }
        :host > * {
          padding: var(--space-2) var(--space-3);
        }
        .latest,
        .find:not(.open),
        rb-expectation-form:not([ready]) {
          display: none;
        }
        .refused,
        .find,
        rb-expectation-form {
          padding: var(--space-2) var(--space-3);
          background: var(--paper-raised);
        }
      }
    `,
  ];

  @property({attribute: false}) unit?: Unit;
  @property({attribute: false}) view?: BenchView;
  @property({attribute: false}) refusal?: RefusedAction;
  @property({attribute: false}) picks?: Picks;
  @property() probes: 'leads' | 'clamp' = 'leads';
  @property({type: Boolean}) busy = false;
  /** On a phone the list is shown only when it is asked for. */
  @property({type: Boolean}) listOpen = false;

  @query('rb-expectation-form') private form?: ExpectationForm;
  @query('.find') private finder?: PickList;

  override render() {
    const {unit, view, picks} = this;
    if (!unit || !view || !picks) return nothing;
    const clamping = this.probes === 'clamp';
    const readings = view.log.filter((entry) => entry.kind === 'reading').slice(-latestShown);
    return html`
      ${
        this.refusal && placeOf(this.refusal.action) === 'meter'
          ? html`<p class="refused" role="alert">${this.refusal.sentence}</p>`
          : nothing
      }
      <rb-pick-list
        class="find ${this.listOpen ? 'open' : ''}"
        .label=${clamping ? 'Close the clamp on' : `Put the ${picks.probing.next} lead on`}
        placeholder=${clamping ? 'Find a wire' : 'Find a terminal: K1 A1, strip …'}
        clears
        .options=${clamping ? wireOptions(unit) : terminalOptions(unit, view)}
        @picked=${(event: CustomEvent<{id: string}>) =>
          clamping
            ? this.emit('wire-found', {wire: event.detail.id})
            : this.emit('terminal-found', {terminal: event.detail.id})}
      ></rb-pick-list>
      <rb-expectation-form
        .function=${view.meter.function}
        ?ready=${isReady(picks, this.probes)}
        .again=${!picks.moved && view.meter.display !== undefined}
        .busy=${this.busy}
        .usualVolts=${usualVolts(unit)}
      ></rb-expectation-form>
      ${
        readings.length > 0
          ? html`<rb-field-log
              class="latest"
              caption="Latest readings"
              newest-first
              .entries=${readings}
              .safety=${view.safety}
            ></rb-field-log>`
          : nothing
      }
    `;
  }

  /** Put the focus on what is expected, or on the list. */
  focusOn(place: 'expectation' | 'list'): void {
    if (place === 'expectation') this.form?.focus();
    else this.finder?.focus();
  }

  /** Read as the expectation stands: what pressing Read does. */
  read(): void {
    this.form?.submit();
  }

  private emit(type: string, detail: object): void {
    this.dispatchEvent(new CustomEvent(type, {detail, bubbles: true, composed: true}));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-probe-panel': ProbePanel;
  }
}
