import {LitElement, html, nothing} from 'lit';
import {customElement, state} from 'lit/decorators.js';
import {repeat} from 'lit/directives/repeat.js';
import {
  callOf,
  callSetFile,
  complaintsOf,
  fillSet,
  key,
  levelsIn,
  mostCalls,
  planLines,
  readCallSet,
  type CallSet,
  type PlanFilter,
  type PlanLine,
  type PlannedCall,
} from '../../diagnosis/call-set.ts';
import {sections} from '../../diagnosis/fault-section.ts';
import {difficulties, type Difficulty} from '../../faults/difficulty.ts';
import {openAttempts, type AttemptStore} from '../../store/attempts.ts';
import {hrefOf} from '../app/router.ts';
import {desk, randomSeed, type ListedUnit} from '../desk/desk.ts';
import {sheetStyles} from '../design/sheet.styles.ts';
import {saveFile} from '../history/save-file.ts';
import {planPageStyles} from './plan-page.styles.ts';

const titles: Readonly<Record<Difficulty, string>> = {easy: 'Easy', medium: 'Medium', hard: 'Hard'};

/** Sets that are kept on this device. */
const setsSetting = 'sets of calls';

/** A usual class hour. */
const usualCalls = 10;

/** More lines than this are not read by anybody; the search narrows them. */
const mostShown = 60;

/**
 * An instructor puts a set of calls together from the catalogues: by how hard they are to find, by section, by what the
 * customer would notice. It is handed over as sealed links, printed with its answers, and kept.
 */
@customElement('rb-plan-page')
export class RbPlanPage extends LitElement {
  static override styles = [sheetStyles, planPageStyles];

  @state() private units: readonly ListedUnit[] = [];
  @state() private unitId = '';
  /** Lines of the units that have been looked at so far, by unit. */
  @state() private lines: ReadonlyMap<string, readonly PlanLine[]> = new Map();
  @state() private filter: PlanFilter = {};
  @state() private calls: readonly PlannedCall[] = [];
  @state() private heading = '';
  @state() private kept: readonly CallSet[] = [];
  @state() private links: readonly string[] | undefined;
  @state() private share: number | undefined;
  @state() private said = '';
  @state() private refusal = '';

  private setId = '';
  private store?: AttemptStore;

  override connectedCallback(): void {
    super.connectedCallback();
    void this.begin();
  }

  override render() {
    return html`
      <div class="no-print">
        <h1 tabindex="-1">Plan a set of calls</h1>
        <p class="lead">
          Every fault that a customer would notice, by what a good plan needs to find it. Choose
          some, let the rest be filled up, and hand the set over as links.
        </p>
        <div class="desk">
          <section aria-labelledby="faults">
            <h2 id="faults">Faults</h2>
            ${this.renderFilters()} ${this.renderLines()}
          </section>
          <aside aria-labelledby="set">${this.renderSet()}</aside>
        </div>
      </div>
      ${this.renderSheet()}
    `;
  }

  private get here(): readonly PlanLine[] {
    return this.lines.get(this.unitId) ?? [];
  }

  private get all(): readonly PlanLine[] {
    return [...this.lines.values()].flat();
  }

  private renderFilters() {
    const {filter} = this;
    return html`<div class="tools">
      <div>
        <label for="unit">Unit</label>
        <select id="unit" @change=${this.chooseUnit}>
          ${this.units.map(({id, title}) => html`<option value=${id} ?selected=${id === this.unitId}>${title}</option>`)}
        </select>
      </div>
      <div>
        <label for="section">Section</label>
        <select id="section" @change=${(event: Event) => this.narrow({section: valueOf(event)})}>
          <option value="">All sections</option>
          ${sections.map((id) => html`<option value=${id} ?selected=${id === filter.section}>${sentence(id)}</option>`)}
        </select>
      </div>
      <div class="wide">
        <label for="notices">The customer notices</label>
        <select id="notices" @change=${(event: Event) => this.narrow({complaint: valueOf(event)})}>
          <option value="">Anything</option>
          ${complaintsOf(this.here).map(
            ({complaint, faults}) =>
              html`<option value=${complaint} ?selected=${complaint === filter.complaint}>
                ${complaint} (${faults})
              </option>`,
          )}
        </select>
      </div>
      <div class="wide">
        <label for="words">Search</label>
        <input
          id="words"
          type="search"
          placeholder="K1, capacitor, open…"
          .value=${filter.words ?? ''}
          @input=${(event: Event) => this.narrow({words: valueOf(event)})}
        />
      </div>
      <fieldset class="wide levels">
        <legend class="sr-only">How hard</legend>
        ${[undefined, ...difficulties].map(
          (level) =>
            html`<label>
              <input
                type="radio"
                name="level"
                .checked=${filter.difficulty === level}
                @change=${() => this.narrow({difficulty: level})}
              />
              ${level ? titles[level] : 'All levels'}
            </label>`,
        )}
      </fieldset>
    </div>`;
  }

  private renderLines() {
    if (this.share !== undefined)
      return html`<p role="status">
        Trying every fault of this unit once: ${Math.round(100 * this.share)} %.
        <progress max="1" .value=${this.share}></progress>
      </p>`;
    if (!this.lines.has(this.unitId))
      return html`<p class="quiet" role="status">Fetching the catalogue…</p>`;
    const found = planLines(this.here, this.filter);
    return html`<p class="small quiet" role="status">
        ${found.length} ${found.length === 1 ? 'fault' : 'faults'}, the quickest to find
        first${found.length > mostShown ? `; the first ${mostShown} are shown` : ''}.
      </p>
      <ul class="lines" aria-label="Faults">
        ${repeat(found.slice(0, mostShown), key, (line) => this.renderLine(line))}
      </ul>`;
  }

  private renderLine(line: PlanLine) {
    const chosen = this.calls.some((call) => key(call) === key(line));
    return html`<li>
      <div>
        <b>${line.name}</b>
        <span class="small quiet">
          ${titles[line.difficulty]} · ${line.readings}
          ${line.readings === 1 ? 'reading' : 'readings'}, ${line.minutes} min ·
          ${sentence(line.section)} ·
          ${line.lookAlikes === 0 ? 'no other fault' : line.lookAlikes === 1 ? 'one other fault' : `${line.lookAlikes} others`}
          with these words
        </span>
        <q class="small">${line.complaint}</q>
      </div>
      <button
        class="button"
        aria-pressed=${chosen ? 'true' : 'false'}
        aria-label="${chosen ? 'In the set' : 'Add'}: ${line.name}"
        @click=${() => this.toggle(line)}
      >
        ${chosen ? 'In the set' : 'Add'}
      </button>
    </li>`;
  }

  private renderSet() {
    const {easy, medium, hard} = levelsIn(this.calls, this.all);
    return html`
      <h2 id="set">The set</h2>
      <label for="title">Title</label>
      <input
        id="title"
        type="text"
        maxlength="80"
        placeholder="Week 3, safeties"
        .value=${this.heading}
        @input=${(event: Event) => (this.heading = valueOf(event))}
      />
      <p class="small quiet" role="status">
        ${this.calls.length}
        ${this.calls.length === 1 ? 'call' : 'calls'}${this.calls.length ? `: ${easy} easy, ${medium} medium, ${hard} hard` : ''}.
      </p>
      <ol class="set">
        ${repeat(
          this.calls,
          key,
          (call, i) =>
            html`<li>
              <span class="number">${i + 1}</span>
              <span><b>${this.nameOf(call)}</b><q class="small">${call.complaint}</q></span>
              <button
                class="plain"
                aria-label="Take out: ${this.nameOf(call)}"
                @click=${() => this.change(this.calls.filter((each) => each !== call))}
              >
                Take out
              </button>
            </li>`,
        )}
      </ol>
      <p class="row">
        <button
          class="button first"
          ?disabled=${this.calls.length >= usualCalls || !this.here.length}
          @click=${this.fill}
        >
          Fill up to ${usualCalls}
        </button>
        <button class="button" ?disabled=${!this.calls.length} @click=${this.makeLinks}>
          Make the links
        </button>
        <button class="button" ?disabled=${!this.calls.length} @click=${() => print()}>
          Print
        </button>
        <button class="button" ?disabled=${!this.calls.length} @click=${this.keep}>Keep</button>
        <button class="button" ?disabled=${!this.calls.length} @click=${this.export}>
          Save as a file
        </button>
      </p>
      <p class="small quiet">
        Filling up takes from the unit and the filters chosen under Faults, evenly by section.
      </p>
      <div role="status">
        ${this.said ? html`<p class="note good"><strong>Done.</strong>${this.said}</p>` : nothing}
        ${this.refusal ? html`<p class="note danger"><strong>Not done.</strong>${this.refusal}</p>` : nothing}
      </div>
      ${this.links ? this.renderLinks(this.links) : nothing} ${this.renderKept()}
    `;
  }

  private renderLinks(links: readonly string[]) {
    return html`<section aria-labelledby="links">
      <h3 id="links">Links</h3>
      <p class="small quiet">
        One line a call. Whoever opens one gets the unit and the complaint; what is hidden cannot be
        read in it.
      </p>
      <textarea
        readonly
        rows="6"
        aria-labelledby="links"
        .value=${links.join('\n')}
        @focus=${(event: Event) => (event.target as HTMLTextAreaElement).select()}
      ></textarea>
      <p class="row"><button class="button" @click=${() => this.copy(links)}>Copy all</button></p>
    </section>`;
  }

  private renderKept() {
    return html`<section aria-labelledby="kept">
      <h3 id="kept">Kept on this device</h3>
      ${
        this.kept.length
          ? html`<ul class="kept">
              ${this.kept.map(
                (set) =>
                  html`<li>
                    <span>${set.title || 'Without a title'}, ${set.calls.length} calls</span>
                    <button class="plain" @click=${() => this.openSet(set)}>
                      Open<span class="sr-only">: ${set.title}</span>
                    </button>
                    <button class="plain" @click=${() => this.forget(set)}>
                      Delete<span class="sr-only">: ${set.title}</span>
                    </button>
                  </li>`,
              )}
            </ul>`
          : html`<p class="small quiet">
              None. A set that is kept tells its faults to whoever opens this page on this device.
            </p>`
      }
      <input
        class="file"
        type="file"
        id="file"
        accept=".json,application/json"
        @change=${this.import}
      />
      <label class="button" for="file">Open a set from a file…</label>
    </section>`;
  }

  /** On paper: the instructor's copy, with the answers. */
  private renderSheet() {
    const known = new Map(this.all.map((line) => [key(line), line]));
    return html`<section class="sheet" aria-hidden="true">
      <h1>${this.heading || 'Set of calls'}</h1>
      <p>
        Instructor’s copy: it tells what is hidden. Readings and minutes are those of a good plan.
      </p>
      <table>
        <thead>
          <tr>
            <th>No.</th>
            <th>Unit</th>
            <th>The customer says</th>
            <th>Hidden</th>
            <th>Level</th>
            <th>Readings</th>
            <th>Minutes</th>
          </tr>
        </thead>
        <tbody>
          ${this.calls.map((call, i) => {
            const line = known.get(key(call));
            return html`<tr>
              <td>${i + 1}</td>
              <td>${this.unitTitle(call.unit)}</td>
              <td>${call.complaint}</td>
              <td>${this.nameOf(call)}</td>
              <td>${line ? titles[line.difficulty] : ''}</td>
              <td>${line?.readings ?? ''}</td>
              <td>${line?.minutes ?? ''}</td>
            </tr>`;
          })}
        </tbody>
      </table>
    </section>`;
  }

  private nameOf(call: PlannedCall): string {
    return this.lines.get(call.unit)?.find(({fault}) => fault === call.fault)?.name ?? call.fault;
  }

  private unitTitle(id: string): string {
    return this.units.find((unit) => unit.id === id)?.title ?? id;
  }

  private narrow(change: PlanFilter): void {
    this.filter = {...this.filter, ...change};
  }

  private toggle(line: PlanLine): void {
    const without = this.calls.filter((call) => key(call) !== key(line));
    if (without.length < this.calls.length) return this.change(without);
    if (this.calls.length >= mostCalls) {
      this.refusal = `A set holds at most ${mostCalls} calls.`;
      return;
    }
    this.change([...this.calls, callOf(line)]);
  }

  private change(calls: readonly PlannedCall[]): void {
    this.calls = calls;
    this.links = undefined;
    this.said = '';
    this.refusal = '';
  }

  private fill(): void {
    this.change(fillSet(this.calls, planLines(this.here, this.filter), usualCalls, randomSeed()));
  }

  private readonly makeLinks = async (): Promise<void> => {
    try {
      const links: string[] = [];
      for (const {unit, fault, complaint} of this.calls) {
        const source = await desk().source(this.store!, unit);
        const {sealed} = await desk().seal(source, [fault], complaint);
        links.push(new URL(hrefOf({page: 'open', sealed}), location.href).href);
      }
      this.links = links;
    } catch (error) {
      this.refusal = messageOf(error);
    }
  };

  private async copy(links: readonly string[]): Promise<void> {
    try {
      await navigator.clipboard.writeText(links.join('\n'));
      this.said = `${links.length} links are copied.`;
    } catch {
      this.refusal = 'The browser did not let the links be copied: select them and copy by hand.';
    }
  }

  private get set(): CallSet {
    this.setId ||= crypto.randomUUID();
    return {
      format: 'rungbench-set',
      version: 1,
      id: this.setId,
      title: this.heading.trim(),
      calls: this.calls,
    };
  }

  private readonly keep = async (): Promise<void> => {
    const {set} = this;
    await this.putKept([set, ...this.kept.filter(({id}) => id !== set.id)]);
    this.said = 'The set is kept on this device.';
  };

  private readonly export = (): void => {
    const {set} = this;
    saveFile(
      `set-${set.title.toLowerCase().replace(/[^a-z0-9]+/g, '-') || 'of-calls'}.json`,
      callSetFile(set),
    );
  };

  private readonly import = async (event: Event): Promise<void> => {
    const input = event.target as HTMLInputElement;
    const file = input.files?.[0];
    if (!file) return;
    const read = readCallSet(await file.text());
    input.value = '';
    if ('reason' in read) this.refusal = `${file.name}: ${read.reason}`;
    else await this.openSet(read.set);
  };

  private async openSet(set: CallSet): Promise<void> {
    this.setId = set.id;
    this.heading = set.title;
    this.change(set.calls);
    for (const unit of new Set(set.calls.map((call) => call.unit))) await this.look(unit);
  }

  private forget(set: CallSet): Promise<void> {
    return this.putKept(this.kept.filter(({id}) => id !== set.id));
  }

  private async putKept(kept: readonly CallSet[]): Promise<void> {
    this.kept = kept;
    await this.store?.putSetting(setsSetting, JSON.stringify(kept)).catch((error: unknown) => {
      this.refusal = messageOf(error);
    });
  }

  private chooseUnit(event: Event): void {
    this.unitId = valueOf(event);
    this.filter = {...this.filter, complaint: undefined};
    void this.look(this.unitId);
  }

  /** Fetches a unit's lines; those of a person's own unit are worked out, which takes a while. */
  private async look(id: string): Promise<void> {
    if (this.lines.has(id) || !this.store) return;
    try {
      const [known, catalogue] = await Promise.all([
        desk().difficulties(this.store, id, (share) => (this.share = share)),
        desk().catalogue(await desk().source(this.store, id)),
      ]);
      const names = new Map(catalogue.map(({id: fault, name}) => [fault, name]));
      const lines = known.map((each): PlanLine => ({
        ...each,
        unit: id,
        name: names.get(each.fault) ?? each.fault,
      }));
      this.lines = new Map([...this.lines, [id, lines]]);
    } catch (error) {
      this.refusal = messageOf(error);
    } finally {
      this.share = undefined;
    }
  }

  private async begin(): Promise<void> {
    try {
      this.store = await openAttempts();
      this.units = (await desk().units(this.store)).filter(({unit}) => unit !== undefined);
      this.kept = keptSets(await this.store.setting(setsSetting));
      this.unitId = this.units[0]?.id ?? '';
      await this.look(this.unitId);
    } catch (error) {
      this.refusal = messageOf(error);
    }
  }
}

/** What was kept, without what this release does not read. */
function keptSets(text: string | undefined): CallSet[] {
  const sets = JSON.parse(text ?? '[]') as unknown[];
  return sets.flatMap((each) => {
    const read = readCallSet(JSON.stringify(each));
    return 'set' in read ? [read.set] : [];
  });
}

const valueOf = (event: Event): string =>
  (event.target as HTMLInputElement | HTMLSelectElement).value;

const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-plan-page': RbPlanPage;
  }
}
