import {LitElement, html, nothing} from 'lit';
import {customElement, property, state} from 'lit/decorators.js';
import type {MeterFlaw} from '../../meter/meter-condition.ts';
import type {Unit} from '../../content/unit.ts';
import {openAttempts} from '../../store/attempts.ts';
import {goTo, hrefOf} from '../app/router.ts';
import {desk, randomSeed} from '../desk/desk.ts';
import type {CatalogueEntry, UnitSource} from '../desk/desk-messages.ts';
import '../class/class-handover.element.ts';
import {sheetStyles} from '../design/sheet.styles.ts';
import './fault-list.element.ts';
import {faultLines} from './fault-shelf.ts';
import type {FaultSiteLine} from './fault-shelf.ts';
import {hidePageStyles} from './hide-page.styles.ts';
import {meterChoices} from './meter-choices.ts';
import './share-link.element.ts';

const mostFaults = 2;
const longestComplaint = 500;

/**
 * Hiding a fault for somebody: choose one or two, take the complaint that follows from them or write one, close the lid.
 * What is chosen lives in this element only: not in the address, not in storage. Leaving the page forgets it.
 */
@customElement('rb-hide-page')
export class RbHidePage extends LitElement {
  static override styles = [sheetStyles, hidePageStyles];

  @property() unitId = '';

  @state() private unit: Unit | undefined;
  @state() private catalogue: readonly CatalogueEntry[] = [];
  @state() private lines: readonly FaultSiteLine[] = [];
  @state() private chosen: readonly string[] = [];
  @state() private meter: MeterFlaw | '' = '';
  @state() private complaint = '';
  /** The complaint that follows from the chosen faults; empty while it is being worked out. */
  @state() private derived = '';
  @state() private written = false;
  @state() private way: 'list' | 'diagram' = 'list';
  @state() private site = '';
  @state() private link = '';
  @state() private failed = '';
  @state() private refusal = '';
  @state() private closing = false;

  private source: UnitSource | undefined;
  private turn = 0;

  override connectedCallback(): void {
    super.connectedCallback();
    void this.fetch();
  }

  override render() {
    if (this.failed) {
      return html`<div class="stack">
        <h1 tabindex="-1">No fault can be hidden here</h1>
        <p class="lead">${this.failed}</p>
        <p class="row"><a class="button first" href="#/">Back to the units</a></p>
      </div>`;
    }
    return html`
      <h1 tabindex="-1">Hide a fault for someone</h1>
      <p class="lead">
        ${this.unit ? html`In the <b>${this.unit.title}</b>. ` : nothing}Choose what is wrong, see
        what the customer would say, then hand over the device or a link.
      </p>
      ${this.unit ? this.renderDesk(this.unit) : html`<p class="quiet" role="status">Fetching the catalogue…</p>`}
    `;
  }

  private renderDesk(unit: Unit) {
    return html`<div class="desk">
      <section aria-label="What is wrong">
        <fieldset class="ways">
          <legend class="sr-only">How to choose</legend>
          ${(['list', 'diagram'] as const).map(
            (way) =>
              html`<label>
                <input
                  type="radio"
                  name="way"
                  .checked=${this.way === way}
                  @change=${() => this.chooseWay(way)}
                />
                ${way === 'list' ? 'From the list' : 'On the diagram'}
              </label>`,
          )}
        </fieldset>
        ${
          this.way === 'diagram'
            ? html`<rb-pick-diagram
                .unit=${unit}
                .site=${this.site}
                @site-picked=${this.pickSite}
              ></rb-pick-diagram>`
            : nothing
        }
        ${
          this.way === 'list' || this.site
            ? html`<rb-fault-list
                .unit=${unit}
                .lines=${this.lines}
                .chosen=${this.chosen}
                .site=${this.site}
                ?full=${this.chosen.length >= mostFaults}
                @fault-toggled=${this.toggle}
                @site-left=${() => this.chooseWay('list')}
              ></rb-fault-list>`
            : html`<p class="quiet">Pick a part or a wire to see how it can fail.</p>`
        }
      </section>
      <aside class="hidden" aria-labelledby="lid">
        <div>
          <h2 id="lid" tabindex="-1">Under the lid</h2>
          ${this.renderChosen()}
        </div>
        <div>${this.renderComplaint()} ${this.renderMeter()}</div>
        <div class="hand">
          ${this.renderForClass(unit)}
          ${this.link ? html`<rb-share-link .link=${this.link}></rb-share-link>` : this.renderHand()}
        </div>
      </aside>
      ${this.chosen.length ? this.renderBar() : nothing}
    </div>`;
  }

  /** On a small screen the lid lies below the list; this stays in view and leads there. */
  private renderBar() {
    return html`<div class="bar">
      <span>${this.chosen.length === 1 ? this.nameOf(this.chosen[0]) : 'Two faults chosen'}</span>
      <button class="button first" @click=${this.goToLid}>Next</button>
    </div>`;
  }

  private goToLid(): void {
    const lid = this.renderRoot.querySelector<HTMLElement>('#lid');
    lid?.scrollIntoView({block: 'start'});
    lid?.focus({preventScroll: true});
  }

  private renderChosen() {
    if (!this.chosen.length)
      return html`<p class="quiet">Nothing yet. Choose one fault, or two.</p>`;
    return html`<ol class="chosen">
      ${this.chosen.map(
        (id) =>
          html`<li>
            <span>${this.nameOf(id)}</span>
            <button
              class="plain"
              aria-label="Take back: ${this.nameOf(id)}"
              @click=${() => this.choose(id)}
            >
              Take back
            </button>
          </li>`,
      )}
    </ol>`;
  }

  /** The student's own meter may be at fault too: the call then says that it is to be proved, and not what it is. */
  private renderMeter() {
    return html`<label for="meter">The student’s meter</label>
      <select
        id="meter"
        @change=${(event: Event) => {
          this.meter = (event.target as HTMLSelectElement).value as MeterFlaw | '';
          this.link = '';
        }}
      >
        ${meterChoices.map(
          ([flaw, text]) =>
            html`<option value=${flaw} ?selected=${this.meter === flaw}>${text}</option>`,
        )}
      </select>`;
  }

  private renderComplaint() {
    const working = this.chosen.length > 0 && !this.derived;
    return html`
      <label for="complaint">The customer says</label>
      <textarea
        id="complaint"
        rows="4"
        maxlength=${longestComplaint}
        ?disabled=${!this.chosen.length}
        .value=${this.complaint}
        @input=${this.write}
      ></textarea>
      <p class="small quiet" role="status">
        ${working ? 'Working out what the customer would notice…' : nothing}
        ${!working && this.chosen.length && !this.written ? 'This follows from what stops working. Write your own if you like.' : nothing}
        ${this.written ? 'In your words. Do not name the part.' : nothing}
      </p>
      ${
        this.written && this.derived
          ? html`<button class="plain" @click=${this.takeDerived}>
              Take what follows from the fault
            </button>`
          : nothing
      }
    `;
  }

  /** A class's server has our own units only. */
  private renderForClass(unit: Unit) {
    if (!this.source || !('shipped' in this.source)) return nothing;
    return html`<rb-class-handover
      .unitId=${unit.id}
      .faults=${this.chosen}
      .complaint=${this.complaint}
      .meter=${this.meter}
      ?waiting=${!this.chosen.length}
    ></rb-class-handover>`;
  }

  private renderHand() {
    const ready = this.chosen.length > 0 && this.complaint.trim().length > 0 && !this.closing;
    return html`
      <button class="button first" ?disabled=${!ready} @click=${this.handOver}>
        Hand over this device
      </button>
      <button class="button" ?disabled=${!ready} @click=${this.makeLink}>Make a link</button>
      <p class="small quiet">
        Handing over closes the lid: this page is forgotten, and going back does not show it.
      </p>
      <div role="status">
        ${this.refusal ? html`<p class="note danger"><strong>Not hidden.</strong>${this.refusal}</p>` : nothing}
      </div>
    `;
  }

  private nameOf(fault: string): string {
    return this.catalogue.find(({id}) => id === fault)?.name ?? fault;
  }

  private readonly toggle = (event: CustomEvent<{fault: string}>): void =>
    this.choose(event.detail.fault);

  private choose(fault: string): void {
    this.chosen = this.chosen.includes(fault)
      ? this.chosen.filter((id) => id !== fault)
      : [...this.chosen, fault].slice(0, mostFaults);
    this.link = '';
    void this.derive();
  }

  /** Works out the complaint in the worker; only the last choice's answer counts. */
  private async derive(): Promise<void> {
    const turn = ++this.turn;
    this.derived = '';
    if (!this.written) this.complaint = '';
    if (!this.chosen.length || !this.source) return;
    try {
      const complaint = await desk().complaint(this.source, this.chosen);
      if (turn !== this.turn) return;
      this.derived = complaint;
      if (!this.written) this.complaint = complaint;
      this.refusal = '';
    } catch (error) {
      if (turn === this.turn) this.refusal = messageOf(error);
    }
  }

  private write(event: Event): void {
    this.complaint = (event.target as HTMLTextAreaElement).value;
    this.written = true;
    this.link = '';
  }

  private takeDerived(): void {
    this.complaint = this.derived;
    this.written = false;
    this.link = '';
  }

  private async chooseWay(way: 'list' | 'diagram'): Promise<void> {
    if (way === 'diagram') await import('./pick-diagram.element.ts');
    this.way = way;
    this.site = '';
  }

  private pickSite(event: CustomEvent<{site: string}>): void {
    this.site = event.detail.site;
  }

  private async handOver(): Promise<void> {
    await this.close(async (unit, hidden) => {
      const store = await openAttempts();
      const {id} = await store.begin({
        ...hidden,
        unit: unit.id,
        unitTitle: unit.title,
        seed: randomSeed(),
        purpose: 'call',
      });
      this.forget();
      goTo({page: 'handed', attempt: id}, {replace: true});
    });
  }

  private async makeLink(): Promise<void> {
    await this.close(async (_unit, {sealed}) => {
      this.link = new URL(hrefOf({page: 'open', sealed}), location.href).href;
    });
  }

  private async close(
    then: (unit: Unit, hidden: {sealed: string; complaint: string}) => Promise<void>,
  ): Promise<void> {
    if (!this.unit || !this.source) return;
    this.closing = true;
    try {
      await then(
        this.unit,
        await desk().seal(this.source, this.chosen, this.complaint.trim(), this.meter || undefined),
      );
    } catch (error) {
      this.refusal = messageOf(error);
    } finally {
      this.closing = false;
    }
  }

  private forget(): void {
    this.chosen = [];
    this.meter = '';
    this.complaint = '';
    this.derived = '';
    this.site = '';
  }

  private async fetch(): Promise<void> {
    try {
      const store = await openAttempts();
      this.source = await desk().source(store, this.unitId);
      const [unit, catalogue] = await Promise.all([
        desk().unit(store, this.unitId),
        desk().catalogue(this.source),
      ]);
      this.catalogue = catalogue;
      this.lines = faultLines(unit, catalogue);
      this.unit = unit;
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
    'rb-hide-page': RbHidePage;
  }
}
