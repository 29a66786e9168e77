import {LitElement, html} from 'lit';
import {customElement, state} from 'lit/decorators.js';
import {
  callOf,
  callSetFile,
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
import {openAttempts, type AttemptStore} from '../../store/attempts.ts';
import {hrefOf} from '../app/router.ts';
import {desk, randomSeed, type ListedUnit} from '../desk/desk.ts';
import {sheetStyles} from '../design/sheet.styles.ts';
import {saveFile} from '../history/save-file.ts';
import {planPageStyles} from './plan-page.styles.ts';
import {planSet, usualCalls, type PlannedSet} from './plan-set.ts';
import {planSheet} from './plan-sheet.ts';
import {planShelf, type Shelf} from './plan-shelf.ts';

/** Sets that are kept on this device. */
const setsSetting = 'sets of calls';

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
            ${planShelf(this.shelf)}
          </section>
          <aside aria-labelledby="set">${planSet(this.plannedSet)}</aside>
        </div>
      </div>
      ${planSheet(
        this.heading,
        this.calls,
        (call) => this.lineOf(call),
        (id) => this.unitTitle(id),
      )}
    `;
  }

  private get here(): readonly PlanLine[] {
    return this.lines.get(this.unitId) ?? [];
  }

  private get shelf(): Shelf {
    return {
      units: this.units,
      unitId: this.unitId,
      here: this.lines.get(this.unitId),
      share: this.share,
      filter: this.filter,
      calls: this.calls,
      on: {
        unit: (id) => this.chooseUnit(id),
        filter: (change) => (this.filter = {...this.filter, ...change}),
        toggle: (line) => this.toggle(line),
      },
    };
  }

  private get plannedSet(): PlannedSet {
    return {
      heading: this.heading,
      calls: this.calls,
      levels: levelsIn(this.calls, [...this.lines.values()].flat()),
      canFill: this.here.length > 0,
      links: this.links,
      kept: this.kept,
      said: this.said,
      refusal: this.refusal,
      nameOf: (call) => this.lineOf(call)?.name ?? call.fault,
      on: {
        title: (text) => (this.heading = text),
        change: (calls) => this.change(calls),
        fill: () => this.fill(),
        links: () => void this.makeLinks(),
        keep: () => void this.keep(),
        save: () => this.export(),
        copy: (links) => void this.copy(links),
        open: (set) => void this.openSet(set),
        forget: (set) => void this.forget(set),
        file: (event) => void this.import(event),
      },
    };
  }

  private lineOf(call: PlannedCall): PlanLine | undefined {
    return this.lines.get(call.unit)?.find(({fault}) => fault === call.fault);
  }

  private unitTitle(id: string): string {
    return this.units.find((unit) => unit.id === id)?.title ?? id;
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

  private chooseUnit(id: string): void {
    this.unitId = id;
    this.filter = {...this.filter, complaint: undefined};
    void this.look(id);
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

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-plan-page': RbPlanPage;
  }
}
