import {LitElement, css, html, nothing} from 'lit';
import {customElement, property, state} from 'lit/decorators.js';
import type {WorkSet, WorkSetBody, WorkSetKind} from '../../classroom/protocol/work-set.ts';
import {openAttempts} from '../../store/attempts.ts';
import {desk, type ListedUnit} from '../desk/desk.ts';
import {difficulties, type Difficulty} from '../desk/desk-messages.ts';
import {sheetStyles} from '../design/sheet.styles.ts';
import '../hide/fault-list.element.ts';
import {faultLines, type FaultSiteLine} from '../hide/fault-shelf.ts';
import {api, sentenceOf} from './class-api.ts';
import {classStyles} from './class.styles.ts';
import type {SetRules} from './set-rules.element.ts';
import './set-rules.element.ts';
import {setKinds} from './set-words.ts';

const mostFaults = 2;

interface ListedTask {
  readonly id: string;
  readonly title: string;
}

/**
 * What a class is given: which kind, on which unit, by which rules.
 * @event {{set: WorkSet}} set-made - A person gave it, and the server has it.
 * @event set-left - A person would rather not.
 */
@customElement('rb-set-form')
export class SetForm extends LitElement {
  static override styles = [
    sheetStyles,
    classStyles,
    css`
      form {
        display: grid;
        gap: var(--space-4);
        border: var(--line) solid var(--ink);
        padding: var(--space-4);
        margin-top: var(--space-3);
      }

      h3:focus {
        outline: none;
      }

      .kinds {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 22rem), 1fr));
        gap: var(--space-2);
        border: 0;
      }

      .kinds label {
        display: grid;
        grid-template-columns: auto minmax(0, 1fr);
        gap: 2px var(--space-2);
        align-items: center;
        padding: var(--space-2) var(--space-3);
        border: 1px solid var(--rule-strong);
        font-weight: 400;
        line-height: 1.3;
      }

      .kinds label:has(:checked) {
        border-color: var(--ink);
        outline: 1px solid var(--ink);
      }

      .kinds b,
      .kinds span {
        grid-column: 2;
      }

      .kinds input {
        grid-row: 1;
      }

      .pair {
        display: grid;
        grid-template-columns: repeat(2, minmax(0, 1fr));
        gap: var(--space-3) var(--space-4);
      }

      .row > fieldset,
      fieldset legend {
        margin: 0;
        padding: 0;
      }

      .row > fieldset {
        display: flex;
        flex-wrap: wrap;
        gap: 0 var(--space-4);
        align-items: center;
        border: 0;
      }

      .faults {
        max-height: 22rem;
        overflow-y: auto;
        padding: 3px;
      }

      @media (max-width: 720px) {
        .pair {
          grid-template-columns: minmax(0, 1fr);
        }
      }
    `,
  ];

  @property() classId = '';

  @state() private kind: WorkSetKind = 'different';
  @state() private units: readonly ListedUnit[] | undefined;
  @state() private tasks: readonly ListedTask[] | undefined;
  @state() private unit = '';
  @state() private task = '';
  @state() private levels: readonly Difficulty[] = ['medium'];
  @state() private lines: readonly FaultSiteLine[] = [];
  @state() private faults: readonly string[] = [];
  @state() private rules: SetRules = {coach: false, debriefWhen: 'named'};
  @state() private refusal = '';
  @state() private busy = false;

  override connectedCallback(): void {
    super.connectedCallback();
    void this.fetch();
  }

  protected override firstUpdated(): void {
    this.renderRoot.querySelector<HTMLElement>('h3')?.focus();
  }

  override render() {
    const {kind} = this;
    return html`<form @submit=${(event: Event) => this.submit(event, true)}>
      <h3 tabindex="-1">Give the class something to do</h3>
      <fieldset class="kinds">
        <legend class="sr-only">Kind</legend>
        ${setKinds.map(
          (each) =>
            html`<label>
              <input
                type="radio"
                name="kind"
                .checked=${each.kind === kind}
                @change=${() => this.choose(each.kind)}
              />
              <b>${each.title}</b><span class="small quiet">${each.says}</span>
            </label>`,
        )}
      </fieldset>
      ${kind === 'hookup' ? this.renderTasks() : this.renderUnits()}
      ${kind === 'different' || kind === 'in-pairs' ? this.renderLevels() : nothing}
      ${kind === 'same' ? this.renderFaults() : nothing}
      <rb-set-rules
        metered
        .rules=${this.rules}
        ?bare=${kind === 'hookup'}
        @rules-changed=${(event: CustomEvent<{rules: SetRules}>) => (this.rules = event.detail.rules)}
      ></rb-set-rules>
      <div role="alert">
        ${this.refusal ? html`<p class="note danger"><strong>Not given.</strong>${this.refusal}</p>` : nothing}
      </div>
      <p class="row">
        <button class="button first" ?disabled=${!this.ready}>Open it now</button>
        <button
          type="button"
          class="button"
          ?disabled=${!this.ready}
          @click=${(event: Event) => this.submit(event, false)}
        >
          Keep it for later
        </button>
        <button
          type="button"
          class="plain"
          @click=${() => this.dispatchEvent(new CustomEvent('set-left'))}
        >
          Cancel
        </button>
      </p>
    </form>`;
  }

  private renderUnits() {
    return html`<div class="pair">
      <div>
        <label for="unit">Unit</label>
        <select id="unit" ?disabled=${!this.units} @change=${this.chooseUnit}>
          ${
            this.units
              ? this.units.map(
                  ({id, title}) =>
                    html`<option value=${id} ?selected=${id === this.unit}>${title}</option>`,
                )
              : html`<option>Fetching the units…</option>`
          }
        </select>
      </div>
      ${this.renderTitle()}
    </div>`;
  }

  private renderTasks() {
    return html`<div class="pair">
      <div>
        <label for="task">Wiring task</label>
        <select
          id="task"
          ?disabled=${!this.tasks}
          @change=${(event: Event) => (this.task = (event.target as HTMLSelectElement).value)}
        >
          ${
            this.tasks
              ? this.tasks.map(
                  ({id, title}) =>
                    html`<option value=${id} ?selected=${id === this.task}>${title}</option>`,
                )
              : html`<option>Fetching the tasks…</option>`
          }
        </select>
      </div>
      ${this.renderTitle()}
    </div>`;
  }

  private renderTitle() {
    return html`<div>
      <label for="title">Title <span class="quiet">(if you like)</span></label>
      <input id="title" type="text" maxlength="80" autocomplete="off" />
    </div>`;
  }

  private renderLevels() {
    const several = this.kind === 'in-pairs';
    return html`<div class="row">
      <fieldset>
        <legend class="label">${several ? 'What may be hidden' : 'How hard'}</legend>
        ${difficulties.map(
          (level) =>
            html`<label class="choice"
              ><input
                type=${several ? 'checkbox' : 'radio'}
                name="level"
                .checked=${this.levels.includes(level)}
                @change=${() => this.chooseLevel(level, several)}
              />${level}</label
            >`,
        )}
      </fieldset>
    </div>`;
  }

  private renderFaults() {
    const unit = this.units?.find(({id}) => id === this.unit)?.unit;
    if (!unit) return nothing;
    return html`<div>
      <p class="label">
        What is
        wrong${this.faults.length ? html`: <span class="quiet">${this.chosenNames()}</span>` : nothing}
      </p>
      <div class="faults" tabindex="0" role="region" aria-label="Catalogue of faults">
        <rb-fault-list
          .unit=${unit}
          .lines=${this.lines}
          .chosen=${this.faults}
          ?full=${this.faults.length >= mostFaults}
          @fault-toggled=${this.toggle}
        ></rb-fault-list>
      </div>
    </div>`;
  }

  private chosenNames(): string {
    const modes = this.lines.flatMap(({modes}) => modes);
    return this.faults.map((id) => modes.find(({fault}) => fault === id)?.name ?? id).join('; ');
  }

  private get ready(): boolean {
    if (this.busy) return false;
    if (this.kind === 'hookup') return this.task !== '';
    if (!this.unit) return false;
    return this.kind === 'same' ? this.faults.length > 0 : this.levels.length > 0;
  }

  private choose(kind: WorkSetKind): void {
    this.kind = kind;
    if (kind === 'different') this.levels = this.levels.slice(0, 1);
    if (kind === 'in-pairs') this.levels = difficulties;
    if (kind === 'hookup') void this.fetchTasks();
    if (kind === 'same') void this.fetchCatalogue();
  }

  private chooseUnit(event: Event): void {
    this.unit = (event.target as HTMLSelectElement).value;
    this.faults = [];
    if (this.kind === 'same') void this.fetchCatalogue();
  }

  private chooseLevel(level: Difficulty, several: boolean): void {
    if (!several) this.levels = [level];
    else if (this.levels.includes(level))
      this.levels = this.levels.filter((each) => each !== level);
    else this.levels = [...this.levels, level];
  }

  private toggle(event: CustomEvent<{fault: string}>): void {
    const {fault} = event.detail;
    this.faults = this.faults.includes(fault)
      ? this.faults.filter((each) => each !== fault)
      : [...this.faults, fault].slice(0, mostFaults);
  }

  private async submit(event: Event, open: boolean): Promise<void> {
    event.preventDefault();
    if (!this.ready) return;
    this.busy = true;
    this.refusal = '';
    try {
      const set = await api<WorkSet>('POST', `classes/${this.classId}/sets`, this.body(open));
      this.dispatchEvent(new CustomEvent('set-made', {detail: {set}}));
    } catch (error) {
      this.refusal = sentenceOf(error);
    } finally {
      this.busy = false;
    }
  }

  private body(open: boolean): WorkSetBody {
    const {unit, task, levels, faults, rules} = this;
    const {meterFlaw: _meter, ...bare} = rules;
    const title = this.renderRoot.querySelector<HTMLInputElement>('#title')?.value.trim();
    const named = {open, ...(title ? {title} : {})};
    const more = {...rules, ...named};
    switch (this.kind) {
      case 'same':
        return {kind: 'same', unit, faults: [...faults], ...more};
      case 'different':
        return {kind: 'different', unit, difficulty: levels[0], ...more};
      case 'in-pairs':
        return {kind: 'in-pairs', unit, allowed: [...levels], ...more};
      case 'hookup':
        return {kind: 'hookup', task, ...bare, ...named, coach: false, debriefWhen: 'named'};
    }
  }

  private async fetch(): Promise<void> {
    try {
      const units = await desk().units(await openAttempts());
      // what a person opened from a file lies on this device only: the server does not have it
      this.units = units.filter(({shipped, unit}) => shipped && unit);
      this.unit =
        this.units.find(({id}) => id === 'split-heat-pump')?.id ?? this.units[0]?.id ?? '';
      // chosen before the units were here
      if (this.kind === 'same') void this.fetchCatalogue();
    } catch (error) {
      this.refusal = sentenceOf(error);
    }
  }

  private async fetchTasks(): Promise<void> {
    if (this.tasks) return;
    try {
      const {shippedTasks} = await import('../hookup/shipped-tasks.ts');
      this.tasks = (await shippedTasks()).map(({id, title}) => ({id, title}));
      this.task = this.tasks[0]?.id ?? '';
    } catch (error) {
      this.refusal = sentenceOf(error);
    }
  }

  private async fetchCatalogue(): Promise<void> {
    const listed = this.units?.find(({id}) => id === this.unit);
    if (!listed?.unit) return;
    try {
      this.lines = faultLines(listed.unit, await desk().catalogue({shipped: listed.id}));
    } catch (error) {
      this.refusal = sentenceOf(error);
    }
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-set-form': SetForm;
  }
}
