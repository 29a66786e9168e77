import {LitElement, html, nothing, type PropertyValues} from 'lit';
import {customElement, property, query, state} from 'lit/decorators.js';
import {classMap} from 'lit/directives/class-map.js';
import {statedError} from './accuracy-text.ts';
import type {Extremes, Keeping} from './extremes.ts';
import {functionNames} from './function-names.ts';
import {displayNotes} from './display-notes.ts';
import './meter-care.element.ts';
import {meterFaceStyles} from './meter-face.styles.ts';
import {functionSymbols, hazardSymbol, mutedSymbol, toneSymbol} from './meter-symbols.element.ts';
import {meterFunctions, type MeterFunction} from './meter-function.ts';
import type {MeterDisplay} from './meter.ts';

/** Keys in a row of the selector; the arrows up and down go from row to row. */
const keysInRow = 5;

export type Lead = 'red' | 'black';

/**
 * The face of the meter: its glass, its two leads (or the jaw of the clamp), the selector, and under "Care" what can
 * be done for the meter itself. It holds no reading of its own; it shows what it is given.
 *
 * @event {{function: MeterFunction}} function-chosen - A person moved the selector.
 * @event {{lead: Lead}} lead-chosen - A person picked up a lead to place it.
 * @event {{muted: boolean}} mute-changed - A person turned the tone off or on.
 * @event {{keeps: Keeping}} keeping-chosen - A person chose what the glass keeps.
 * @event {{what: MeterCare}} renewal-asked - A person renews the meter's battery, leads or fuse.
 * @event discharge-asked - A person lays the bleed resistor where the leads are.
 */
@customElement('rb-meter-face')
export class MeterFace extends LitElement {
  static override styles = meterFaceStyles;

  /** Where the selector stands. */
  @property() function: MeterFunction = 'ac-volts';
  /** What the glass shows; absent = nothing has been read with these leads yet. */
  @property({attribute: false}) display?: MeterDisplay;
  /** Terminal under each lead. */
  @property() red?: string;
  @property() black?: string;
  /** Wire in the jaw. */
  @property() clamp?: string;
  /** The lead that the next picked terminal takes. */
  @property() next: Lead = 'red';
  /** The tone is off; the glass still shows it. */
  @property({type: Boolean}) muted = false;
  /** A word or two on the glass while there is nothing to show. */
  @property() prompt = '';

  /** What the glass keeps when the unit changes. */
  @property() keeps: Keeping = 'nothing';
  /** The display is an earlier one, kept. */
  @property({type: Boolean}) held = false;
  /** The least and the most since recording began. */
  @property({attribute: false}) extremes?: Extremes;
  /** The meter of this call may itself be at fault. */
  @property({type: Boolean, attribute: 'to-prove'}) toProve = false;

  /** The keys have made way for what can be done for the meter. */
  @state() private caring = false;

  @query('.key[aria-checked="true"]') private chosenKey?: HTMLElement;
  private spoken = '';

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('display')) this.spoken = this.display ? this.inWords(this.display) : '';
  }

  override render() {
    const shown = this.display;
    const name = functionNames[this.function];
    return html`
      <section class="body" aria-label="Meter">
        <div class="glass">
          <div class="flags">
            <span>${name.title}</span>
            ${this.function === 'continuity' ? this.muteButton() : nothing}
            ${this.keeper('last', 'Hold', 'Keep the last reading on the glass')}
            ${this.keeper('extremes', 'Min Max', 'Record the least and the most')}
            ${this.careButton()}
          </div>
          <div class="remarks">${this.remarks(shown)}</div>
          <div class=${classMap({digits: true, blank: !shown})} aria-hidden="true">
            ${shown?.text || '– – –'}
          </div>
          <div class="unit" aria-hidden="true">${shown?.unit ?? ''}</div>
          ${this.extremes ? this.recorded(this.extremes) : nothing}
        </div>
        ${
          this.caring
            ? html`<rb-meter-care
                .red=${this.red}
                .black=${this.black}
                @closed=${this.endCare}
                @renewal-asked=${this.endCare}
                @discharge-asked=${this.endCare}
              ></rb-meter-care>`
            : html`${name.probes === 'clamp' ? this.jaw() : this.leads()}
                <div
                  class="keys"
                  role="radiogroup"
                  aria-label="Meter function"
                  @keydown=${this.onKeysKeydown}
                >
                  ${meterFunctions.map((fn) => this.key(fn))}
                </div>`
        }
        <div class="spoken" role="status">${this.spoken}</div>
      </section>
    `;
  }

  /** Whatever the glass says in words beside its digits; what a reading is worth where it says nothing else. */
  private remarks(shown: MeterDisplay | undefined) {
    const worth = shown && statedError(this.function, shown);
    const notes = shown ? displayNotes(shown, this.held) : [];
    const toProve = this.toProve && !shown;
    return html`
      ${shown?.hazard ? html`<span class="flag hazard">${hazardSymbol}${notes[0]}</span>` : nothing}
      ${shown?.tone ? html`<span class="flag tone">${toneSymbol}Tone</span>` : nothing}
      ${notes.slice(shown?.hazard ? 1 : 0).map((note) => html`<span class="flag">${note}</span>`)}
      ${!shown && this.prompt ? html`<span class="prompt">${this.prompt}</span>` : nothing}
      ${toProve ? html`<span class="prompt">Prove this meter</span>` : nothing}
      ${worth && notes.length === 0 ? html`<span class="prompt" title=${worth.arithmetic}>${worth.limit}</span>` : nothing}
    `;
  }

  private recorded({least, most}: Extremes) {
    return html`<dl class="extremes">
      <div>
        <dt>Min</dt>
        <dd>${least.text} ${least.unit}</dd>
      </div>
      <div>
        <dt>Max</dt>
        <dd>${most.text} ${most.unit}</dd>
      </div>
    </dl>`;
  }

  private keeper(what: Keeping, label: string, title: string) {
    const on = this.keeps === what;
    return html`<button
      type="button"
      class="soft"
      aria-pressed=${on ? 'true' : 'false'}
      title=${title}
      data-keeps=${what}
      @click=${() => this.emit('keeping-chosen', {keeps: on ? 'nothing' : what})}
    >
      ${label}
    </button>`;
  }

  private careButton() {
    return html`<button
      type="button"
      class="soft care"
      aria-expanded=${this.caring ? 'true' : 'false'}
      title="Battery, leads, fuse, bleed resistor"
      @click=${() => (this.caring = !this.caring)}
    >
      Care
    </button>`;
  }

  private endCare(): void {
    this.caring = false;
    void this.updateComplete.then(() =>
      this.renderRoot.querySelector<HTMLElement>('.care')?.focus(),
    );
  }

  private key(fn: MeterFunction) {
    const chosen = fn === this.function;
    const name = functionNames[fn];
    return html`<button
      type="button"
      class="key"
      role="radio"
      aria-checked=${chosen ? 'true' : 'false'}
      aria-label=${name.title}
      title=${name.title}
      tabindex=${chosen ? 0 : -1}
      data-function=${fn}
      @click=${() => this.choose(fn)}
    >
      <span class="symbol" aria-hidden="true">${functionSymbols[fn]}</span>
      <span class="caption" aria-hidden="true">${name.short}</span>
    </button>`;
  }

  private leads() {
    return html`<div class="leads" role="group" aria-label="Leads">
      ${this.lead('red', this.red)} ${this.lead('black', this.black)}
    </div>`;
  }

  private lead(lead: Lead, terminal: string | undefined) {
    const next = this.next === lead;
    const title = lead === 'red' ? 'Red' : 'Black';
    return html`<button
      type="button"
      class="lead"
      aria-pressed=${next ? 'true' : 'false'}
      data-lead=${lead}
      @click=${() => this.emit('lead-chosen', {lead})}
    >
      <span class="tip ${lead}" aria-hidden="true">${lead === 'red' ? 'R' : 'B'}</span>
      <span>
        <span class="what">${next ? `${title} · in hand` : `${title} lead`}</span>
        <span class="where">${terminal ?? 'not placed'}</span>
      </span>
    </button>`;
  }

  private jaw() {
    return html`<div class="leads one">
      <div class="lead">
        <span class="tip clamp" aria-hidden="true">C</span>
        <span>
          <span class="what">Clamp</span>
          <span class="where">${this.clamp ?? 'around no wire'}</span>
        </span>
      </div>
    </div>`;
  }

  private muteButton() {
    return html`<button
      type="button"
      class="mute"
      aria-pressed=${this.muted ? 'true' : 'false'}
      aria-label="Mute the tone"
      title=${this.muted ? 'Tone off' : 'Tone on'}
      @click=${() => this.emit('mute-changed', {muted: !this.muted})}
    >
      ${this.muted ? mutedSymbol : toneSymbol}
    </button>`;
  }

  private onKeysKeydown(event: KeyboardEvent): void {
    const at = meterFunctions.indexOf(this.function);
    const step = {ArrowRight: 1, ArrowDown: keysInRow, ArrowLeft: -1, ArrowUp: -keysInRow}[
      event.key
    ];
    if (step === undefined) return;
    event.preventDefault();
    const next = meterFunctions[(at + step + meterFunctions.length) % meterFunctions.length]!;
    this.choose(next);
    // the selector moves at once; focus follows it when the owner has set the function
    void this.updateComplete.then(() => this.chosenKey?.focus());
  }

  private choose(fn: MeterFunction): void {
    if (fn === this.function) return;
    this.function = fn;
    this.emit('function-chosen', {function: fn});
  }

  private inWords(display: MeterDisplay): string {
    const where =
      functionNames[this.function].probes === 'clamp'
        ? `clamp on ${this.clamp ?? 'no wire'}`
        : `red on ${this.red ?? 'nothing'}, black on ${this.black ?? 'nothing'}`;
    const value = display.overload
      ? 'OL, over limit'
      : display.text === ''
        ? 'the glass is dark'
        : `${display.text} ${display.unit}`;
    const flags = [...displayNotes(display, this.held), ...(display.tone ? ['tone'] : [])];
    return [value, ...flags, where].join('. ');
  }

  private emit(type: string, detail: object): void {
    this.dispatchEvent(new CustomEvent(type, {detail, bubbles: true, composed: true}));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-meter-face': MeterFace;
  }
}
