import {LitElement, css, html, nothing, type PropertyValues} from 'lit';
import {customElement, property, query, state} from 'lit/decorators.js';
import type {Unit} from '../content/unit.ts';
import type {CatalogueLine} from './bench-messages.ts';
import type {BenchView} from './bench-view.ts';
import {controlStyles} from './controls.styles.ts';
import './field-log.element.ts';
import './pick-list.element.ts';
import type {PickOption} from './pick-option.ts';
import {placeOf, type RefusedAction} from './refused-action.ts';

/** The id under which what is neither part nor wire is searched. */
const plantSite = 'air-and-refrigerant';

/** Faults of the catalogue that sit at a part, at a wire (alone or with a neighbour), or in the plant. */
export function faultsAt(faults: readonly CatalogueLine[], site: string): readonly CatalogueLine[] {
  const here = faults.filter(({parts, wires}) =>
    parts.length + wires.length === 0
      ? site === plantSite
      : parts.includes(site) || wires.includes(site),
  );
  // what is wrong with this one alone comes before what it shares with a neighbour
  return [
    ...here.filter(({wires}) => wires.length < 2),
    ...here.filter(({wires}) => wires.length > 1),
  ];
}

/**
 * Names the fault: where it is, what is wrong with it, and the readings that prove it.
 *
 * @event {{action: Action}} action-asked - A person named it, and confirmed.
 * @event give-up-asked - A person would rather give up.
 * @event point-out-asked - A person wants to point at the part or wire on the diagram.
 */
@customElement('rb-name-fault')
export class NameFault extends LitElement {
  static override styles = [
    controlStyles,
    css`
      dialog {
        inline-size: min(46rem, calc(100vw - 2rem));
        max-block-size: calc(100dvh - 2rem);
        padding: 0;
        background: var(--paper);
        border: 2px solid var(--ink);
        border-radius: var(--radius-1);
        overflow: hidden;
      }
      dialog[open] {
        display: grid;
        grid-template-rows: auto minmax(0, 1fr) auto;
      }
      dialog::backdrop {
        background: rgb(10 14 18 / 45%);
      }
      .head,
      .foot {
        display: flex;
        align-items: center;
        justify-content: space-between;
        gap: var(--space-3);
        padding: var(--space-3) var(--space-5);
      }
      .head {
        border-block-end: 2px solid var(--ink);
      }
      .foot {
        flex-wrap: wrap;
        border-block-start: 1px solid var(--rule-strong);
        background: var(--paper-raised);
      }
      h2 {
        font-size: var(--text-l);
      }
      .body {
        overflow-y: auto;
        padding: var(--space-4) var(--space-5);
        display: grid;
        gap: var(--space-5);
        align-content: start;
      }
      fieldset {
        display: grid;
        gap: var(--space-2);
        margin: 0;
        padding: 0;
        border: 0;
        min-inline-size: 0;
      }
      legend {
        padding: 0;
        margin-block-end: var(--space-2);
        font-weight: 700;
      }
      .where {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        align-items: end;
        gap: var(--space-2);
      }
      .mode {
        display: flex;
        align-items: center;
        gap: var(--space-2);
        min-block-size: 44px;
        padding: var(--space-1) var(--space-2);
        border-block-end: 1px solid var(--rule);
        cursor: pointer;
      }
      .mode:has(:checked) {
        background: var(--accent-soft);
        box-shadow: inset 4px 0 0 var(--accent);
      }
      .mode input {
        inline-size: 20px;
        block-size: 20px;
        accent-color: var(--accent);
        flex: none;
      }
      .foot .buttons {
        display: flex;
        gap: var(--space-2);
        margin-inline-start: auto;
      }
      @media (max-width: 760px) {
        dialog {
          inline-size: 100vw;
          max-inline-size: 100vw;
          block-size: 100dvh;
          max-block-size: 100dvh;
          margin: 0;
          border: 0;
        }
        .head,
        .foot,
        .body {
          padding-inline: var(--space-4);
        }
        .where {
          grid-template-columns: minmax(0, 1fr);
        }
      }
    `,
  ];

  @property({attribute: false}) unit?: Unit;
  @property({attribute: false}) view?: BenchView;
  @property({attribute: false}) faults: readonly CatalogueLine[] = [];
  @property({attribute: false}) refusal?: RefusedAction;
  /** Part or wire pointed out. */
  @property() site = '';

  @state() private chosen = '';
  @state() private evidence: readonly number[] = [];
  @state() private sure = false;
  /** It stands open; closed, it costs nothing when a reading comes in. */
  @state() private open = false;
  @query('dialog') private dialog!: HTMLDialogElement;

  private sites: readonly PickOption[] = [];

  /** Its fields are drawn before it opens: the focus goes to the first of them. */
  show(): void {
    this.sure = false;
    this.open = true;
    this.performUpdate();
    if (!this.dialog.open) this.dialog.showModal();
  }

  hide(): void {
    this.dialog.close();
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    // what was named is right and there is more: this begins anew
    if (changed.has('view') && this.view?.more && !changed.get('view')?.more) this.startAnew();
    if (changed.has('unit') || changed.has('faults')) this.sites = this.sitesOfUnit();
    if (changed.has('site')) {
      this.chosen = '';
      this.sure = false;
    }
  }

  override render() {
    if (!this.unit || !this.view) return nothing;
    return html`<dialog aria-labelledby="title" @close=${() => (this.open = false)}>
      ${this.open ? this.form(this.view) : nothing}
    </dialog>`;
  }

  private form(view: BenchView) {
    const modes = faultsAt(this.faults, this.site);
    const fault = modes.find((each) => each.id === this.chosen);
    return html`<div class="head">
        <h2 id="title">Name the fault</h2>
        <button type="button" class="button quiet" @click=${this.hide}>Back to the bench</button>
      </div>
      <div class="body">
        ${view.more ? html`<p>One fault is named and right. This is for the other.</p>` : nothing}
        <fieldset>
          <legend>1. Where is it?</legend>
          <div class="where">
            <rb-pick-list
              label="Part or wire"
              placeholder="Contactor, W12, float …"
              inline
              .options=${this.sites}
              .value=${this.site}
              @picked=${(event: CustomEvent<{id: string}>) => (this.site = event.detail.id)}
            ></rb-pick-list>
            <button type="button" class="button" @click=${this.pointOut}>
              Point it out on the diagram
            </button>
          </div>
        </fieldset>
        ${
          this.site
            ? html`<fieldset>
                <legend>2. What is wrong with it?</legend>
                ${modes.map(
                  (mode) =>
                    html`<label class="mode">
                      <input
                        type="radio"
                        name="mode"
                        .value=${mode.id}
                        .checked=${mode.id === this.chosen}
                        @change=${() => this.choose(mode.id)}
                      />
                      <span>${mode.name}</span>
                    </label>`,
                )}
                ${modes.length === 0 ? html`<p class="quiet-text">Nothing in the catalogue goes wrong here.</p>` : nothing}
              </fieldset>`
            : nothing
        }
        ${
          fault
            ? html`<fieldset>
                <legend>3. Which readings prove it?</legend>
                <rb-field-log
                  caption="Tick your evidence"
                  selectable
                  readings-only
                  newest-first
                  .entries=${view.log}
                  .safety=${view.safety}
                  .evidence=${this.evidence}
                  @evidence-changed=${(event: CustomEvent<{evidence: readonly number[]}>) =>
                    (this.evidence = event.detail.evidence)}
                ></rb-field-log>
              </fieldset>`
            : nothing
        }
        ${
          this.refusal && placeOf(this.refusal.action) === 'name'
            ? html`<p class="refused" role="alert">${this.refusal.sentence}</p>`
            : nothing
        }
      </div>
      <div class="foot">
        ${
          this.sure && fault
            ? html`<span role="status"
                  ><b>${fault.name}</b>, with ${this.evidenceText}. The debrief then tells the
                  fault.</span
                >
                <span class="buttons">
                  <button type="button" class="button" @click=${() => (this.sure = false)}>
                    Not yet
                  </button>
                  <button type="button" class="button primary" @click=${() => this.name(fault)}>
                    Name it
                  </button>
                </span>`
            : html`<button type="button" class="button quiet" @click=${this.giveUp}>
                  Give up …
                </button>
                <span class="buttons">
                  <button
                    type="button"
                    class="button primary"
                    ?disabled=${!fault}
                    @click=${this.askOnce}
                  >
                    Name this fault …
                  </button>
                </span>`
        }
      </div>`;
  }

  private get evidenceText(): string {
    const count = this.evidence.length;
    return count === 0
      ? 'no reading as evidence'
      : count === 1
        ? '1 reading as evidence'
        : `${count} readings as evidence`;
  }

  /** Parts first, then wires, as far as anything in the catalogue sits there. */
  private sitesOfUnit(): readonly PickOption[] {
    const {unit, faults} = this;
    if (!unit) return [];
    const enclosures = new Map(unit.enclosures.map((each) => [each.id, each.title]));
    const options: PickOption[] = [
      ...unit.parts.map((part) => ({
        id: part.id,
        text: `${part.title}, ${enclosures.get(part.enclosure) ?? part.enclosure}`,
      })),
      ...unit.wires.map((wire) => ({
        id: wire.id,
        text: `wire, ${wire.colour}, ${wire.from} to ${wire.to}`,
      })),
      {id: plantSite, text: 'air, water and refrigerant'},
    ];
    return options.filter((option) => faultsAt(faults, option.id).length > 0);
  }

  private startAnew(): void {
    this.site = '';
    this.chosen = '';
    this.evidence = [];
    this.sure = false;
  }

  private choose(id: string): void {
    this.chosen = id;
    this.sure = false;
  }

  private pointOut(): void {
    this.hide();
    this.dispatchEvent(new CustomEvent('point-out-asked', {bubbles: true, composed: true}));
  }

  /** Asks once; the answer that goes on is in focus, so that Enter twice names it. */
  private async askOnce(): Promise<void> {
    this.sure = true;
    await this.updateComplete;
    this.renderRoot.querySelector<HTMLElement>('.foot .primary')?.focus();
  }

  private giveUp(): void {
    this.hide();
    this.dispatchEvent(new CustomEvent('give-up-asked', {bubbles: true, composed: true}));
  }

  private name(fault: CatalogueLine): void {
    const action = {do: 'name', fault: fault.id, evidence: this.evidence} as const;
    this.dispatchEvent(
      new CustomEvent('action-asked', {detail: {action}, bubbles: true, composed: true}),
    );
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-name-fault': NameFault;
  }
}
