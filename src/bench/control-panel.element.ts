import {LitElement, css, html, nothing, type PropertyValues, type TemplateResult} from 'lit';
import {customElement, property} from 'lit/decorators.js';
import type {Unit} from '../content/unit.ts';
import type {Action} from './actions.ts';
import type {BenchView, ControlView} from './bench-view.ts';
import './control-field.element.ts';
import {controlStyles} from './controls.styles.ts';
import './isolation.element.ts';
import {placeOf, type RefusedAction} from './refused-action.ts';
import './thermostat-panel.element.ts';
import './wait-buttons.element.ts';

/**
 * Everything that a person at the unit can set by hand: thermostat, switches, disconnects and their locks,
 * covers, the conditions around it, and time.
 *
 * @event {{action: Action}} action-asked - A person wants it done.
 */
@customElement('rb-control-panel')
export class ControlPanel extends LitElement {
  static override styles = [
    controlStyles,
    css`
      :host {
        display: block;
      }
      section {
        display: grid;
        gap: var(--space-3);
        padding-block: var(--space-3);
        border-block-start: 1px solid var(--rule);
      }
      section:first-of-type {
        border: 0;
        padding-block-start: 0;
      }
      h2 {
        font-size: var(--text-m);
        line-height: 1.3;
      }
      .cover {
        display: flex;
        align-items: center;
        justify-content: space-between;
        gap: var(--space-3);
      }
      .cover b {
        display: block;
      }
    `,
  ];

  @property({attribute: false}) unit?: Unit;
  @property({attribute: false}) view?: BenchView;
  @property({attribute: false}) refusal?: RefusedAction;

  protected override updated(changed: PropertyValues<this>): void {
    if (changed.has('refusal') && this.refusal) {
      this.renderRoot.querySelector('.refused')?.scrollIntoView({block: 'nearest'});
    }
  }

  override render() {
    const {unit, view} = this;
    if (!unit || !view) return nothing;
    const thermostats = unit.parts.filter((part) => part.kind === 'thermostat');
    const onThermostat = new Set(thermostats.map((part) => part.id));
    const isolating = view.controls.filter((each) => each.control.isolates);
    const conditions = view.controls.filter((each) => each.part === 'plant');
    const taps = view.controls.filter((each) => each.control.id === 'tap');
    const others = view.controls.filter(
      (each) =>
        each.control.id !== 'tap' &&
        !each.control.isolates &&
        each.part !== 'plant' &&
        !onThermostat.has(each.part),
    );
    return html`
      ${thermostats.map((part) => {
        const controls = view.controls.filter((each) => each.part === part.id);
        return this.section(
          `${part.title} ${part.id}`,
          html`<rb-thermostat-panel
              .controls=${controls}
              .observations=${view.observations.filter((seen) => seen.part === part.id)}
              .owner=${part.title}
            ></rb-thermostat-panel>
            ${controls.map((each) => this.refusedAt(each.target))}`,
        );
      })}
      ${
        others.length > 0
          ? this.section('Switches', html`${others.map((each) => this.field(each, unit))}`)
          : nothing
      }
      ${
        taps.length > 0
          ? this.section('Tap a panel', html`${taps.map((each) => this.field(each, unit))}`)
          : nothing
      }
      ${this.section(
        'Let time go by',
        html`<rb-wait-buttons></rb-wait-buttons>${this.refusedAt('wait')}`,
      )}
      ${this.covers(unit, view)}
      ${
        isolating.length > 0
          ? this.section(
              'Isolate and lock out',
              html`${isolating.map(
                (each) =>
                  html`<rb-isolation
                    .view=${view}
                    .partId=${each.part}
                    .label=${titleOf(unit, each)}
                    >${this.refusedAt(each.target)}${this.refusedAt(each.part)}</rb-isolation
                  >`,
              )}`,
            )
          : nothing
      }
      ${
        conditions.length > 0
          ? this.section('Conditions', html`${conditions.map((each) => this.field(each, unit))}`)
          : nothing
      }
    `;
  }

  private section(title: string, content: TemplateResult) {
    return html`<section aria-label=${title}>
      <h2>${title}</h2>
      ${content}
    </section>`;
  }

  private field(view: ControlView, unit: Unit) {
    const title = view.part === 'plant' ? view.control.title : titleOf(unit, view);
    return html`<rb-control-field .view=${view} .label=${title}></rb-control-field
      >${this.refusedAt(view.target)}`;
  }

  private covers(unit: Unit, view: BenchView) {
    const covered = unit.enclosures.filter((enclosure) => enclosure.cover);
    if (covered.length === 0) return nothing;
    return this.section(
      'Covers',
      html`${covered.map((enclosure) => {
        const open = view.enclosures.find((each) => each.id === enclosure.id)?.open === true;
        return html`<div class="cover">
            <span
              ><b>${enclosure.title}</b
              ><span class="quiet-text">${open ? 'Cover is off' : 'Cover is on'}</span></span
            >
            <button
              type="button"
              class="button"
              data-enclosure=${enclosure.id}
              @click=${() => this.ask({do: open ? 'close-cover' : 'open-cover', enclosure: enclosure.id})}
            >
              ${open ? 'Put cover on' : 'Take cover off'}<span class="visually-hidden"
                >: ${enclosure.title}</span
              >
            </button>
          </div>
          ${this.refusedAt(enclosure.id)}`;
      })}`,
    );
  }

  private refusedAt(place: string) {
    if (!this.refusal || placeOf(this.refusal.action) !== place) return nothing;
    return html`<p class="refused" role="alert">${this.refusal.sentence}</p>`;
  }

  private ask(action: Action): void {
    this.dispatchEvent(
      new CustomEvent('action-asked', {detail: {action}, bubbles: true, composed: true}),
    );
  }
}

/** `K4 call switch`: the part's name, and the control's own where a part has several. */
function titleOf(unit: Unit, view: ControlView): string {
  const part = unit.parts.find((each) => each.id === view.part);
  const several = (part?.controls.length ?? 0) > 1;
  if (!part) return view.control.title;
  return `${part.title} ${view.part}${several ? `: ${view.control.title}` : ''}`;
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-control-panel': ControlPanel;
  }
}
