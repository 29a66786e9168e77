import type {Action} from '../bench/actions.ts';
import type {LogEntry} from '../bench/bench-view.ts';
import {layLeads, readInSeries, readWithLeads} from '../bench/lay-leads.ts';
import type {Unit} from '../content/unit.ts';
import {differ} from '../meter/accuracy.ts';
import type {MeterDisplay} from '../meter/meter.ts';
import type {MeterFunction} from '../meter/meter-function.ts';
import {readMeter, type Placement} from '../meter/read-meter.ts';
import type {Observation, OperatingUnit} from '../sequences/operating-unit.ts';
import {Conditions} from './conditions.ts';
import {entropyBits, gainBits} from './entropy.ts';
import {hypothesesOf, type Hypothesis} from './hypotheses.ts';
import {MeterTrust} from './meter-trust.ts';
import {outcomeGroups} from './outcome-groups.ts';
import {changesUnit, redo, restingUnit} from './replayed-unit.ts';

/** A hypothesis that nothing has ruled out yet, with its share of the odds (all shares add up to 1). */
export interface Suspect {
  readonly hypothesis: Hypothesis;
  readonly share: number;
}

/** What one reading, or one look at the unit, did to the suspects. */
export interface Elimination {
  readonly suspectsBefore: number;
  readonly suspectsAfter: number;
  /** Bits that the question was expected to answer, before the answer was known. */
  readonly expectedBits: number;
  /** Entropy lost by the answer. */
  readonly bits: number;
  readonly ruledOut: readonly string[];
}

interface Kept {
  readonly hypothesis: Hypothesis;
  readonly operating: OperatingUnit;
}

/**
 * The suspects of one attempt. Every hypothesis is a unit of its own on which the attempt's actions are done again;
 * it is ruled out when the meter, or what can be seen and heard, would have told something else than the student
 * got. Nothing here knows the hidden fault: fed with what the student's screen shows, it runs on the student's side.
 *
 * Incremental: a new action is done once to each suspect left, and a reading does nothing but read.
 */
export class Suspects {
  readonly unit: Unit;
  readonly conditions: Conditions;
  private kept: Kept[];
  /** How often something was done to the unit: what was worked out before the last time is out of date. */
  private changed = 0;
  private readonly trust = new MeterTrust();
  /** Suspects that readings of a meter not yet proved would have ruled out. */
  private doubted = new Set<string>();
  /** Leads lie on the suspects' units too; on microamps they are a part of the circuit. */
  private leadsLie: 'no' | 'across' | 'in-series' = 'no';

  constructor(unit: Unit, hypotheses: readonly Hypothesis[] = hypothesesOf(unit)) {
    this.unit = unit;
    this.conditions = new Conditions(unit);
    this.kept = hypotheses.map((hypothesis) => ({
      hypothesis,
      operating: restingUnit(unit, hypothesis.faults),
    }));
  }

  /** Suspects left, the likeliest first. */
  get open(): Suspect[] {
    const total = this.kept.reduce((sum, {hypothesis}) => sum + hypothesis.weight, 0);
    return this.kept
      .map(({hypothesis}) => ({hypothesis, share: hypothesis.weight / total}))
      .sort((a, b) => b.share - a.share);
  }

  get count(): number {
    return this.kept.length;
  }

  /** Bits still missing. */
  get bits(): number {
    return entropyBits(this.kept.map(({hypothesis}) => hypothesis.weight));
  }

  get version(): number {
    return this.changed;
  }

  /** The suspects' units as they stand, in catalogue order. Read them; fork before you change one. */
  get units(): readonly OperatingUnit[] {
    return this.kept.map(({operating}) => operating);
  }

  get hypotheses(): readonly Hypothesis[] {
    return this.kept.map(({hypothesis}) => hypothesis);
  }

  /** Whether somebody has worked this control since the attempt began. */
  wasSet(target: string): boolean {
    return this.conditions.touched.has(target);
  }

  has(id: string): boolean {
    return this.kept.some(({hypothesis}) => hypothesis.id === id);
  }

  /**
   * Follows an action that is no reading.
   *
   * @param sees what can be seen and heard after it, whatever lies behind a cover left aside; absent = nobody looked
   */
  do(action: Action, sees?: readonly Observation[]): Elimination {
    this.conditions.follow(action);
    if (action.do === 'renew') {
      this.trust.renewed(action.what);
      if (action.what === 'leads') this.doubted = new Set();
    }
    if (action.do === 'meter') this.takeLeadsOff();
    if (changesUnit(action)) {
      this.changed++;
      for (const {operating} of this.kept) redo(operating, action);
    }
    return sees ? this.see(sees) : this.eliminate(() => true, 0);
  }

  /** Rules out every suspect whose unit would look or sound different now. */
  see(sees: readonly Observation[]): Elimination {
    if (!this.trust.sightsCount) return this.eliminate(() => true, 0);
    const key = sightKey(this.conditions.visible(sees));
    const keys = new Map(
      this.kept.map(({operating}) => [
        operating,
        sightKey(this.conditions.visible(operating.observations())),
      ]),
    );
    const groups = new Map<string, number[]>();
    for (const {hypothesis, operating} of this.kept) {
      const group = groups.get(keys.get(operating)!) ?? [];
      group.push(hypothesis.weight);
      groups.set(keys.get(operating)!, group);
    }
    return this.eliminate(
      ({operating}) => keys.get(operating) === key,
      gainBits([...groups.values()]),
    );
  }

  /**
   * Rules out every suspect on which the meter would have shown something else, beyond its accuracy.
   *
   * @param toProve the meter of this call may itself be at fault: what a broken lead could have shown is held back
   *   until the leads are proved; see {@link MeterTrust}
   */
  read(fn: MeterFunction, at: Placement, display: MeterDisplay, toProve = false): Elimination {
    const reaches = this.trust.closesGap;
    const displays = this.displays(fn, at);
    const groups = outcomeGroups(
      fn,
      displays,
      this.kept.map(({hypothesis}) => hypothesis.weight),
    );
    const out = new Set(
      this.kept.flatMap(({hypothesis}, i) =>
        differ(fn, display, displays[i]) ? [hypothesis.id] : [],
      ),
    );
    const worth = this.trust.take(fn, display, toProve);
    if (worth === 'when-proved') for (const id of out) this.doubted.add(id);
    const proved = worth === 'counts' ? out : new Set<string>();
    if (this.trust.isProved && this.doubted.size) {
      for (const id of this.doubted) proved.add(id);
      this.doubted = new Set();
    }
    const result = this.eliminate(
      ({hypothesis}) => !proved.has(hypothesis.id),
      gainBits(groups.map((group) => group.weights)),
    );
    if ('red' in at) this.leadsOn(fn, at.red, at.black, reaches);
    return result;
  }

  /**
   * The leads stay where they are on the suspects' units as well: on microamps they are a part of the circuit.
   *
   * @param reaches the meter's fuse was whole when the leads were put down
   */
  private leadsOn(fn: MeterFunction, red: string, black: string, reaches: boolean): void {
    const inSeries = fn === 'dc-microamps';
    if (inSeries && !reaches) {
      this.takeLeadsOff();
      return;
    }
    this.leadsLie = inSeries ? 'in-series' : 'across';
    // in series they close a circuit, so what was worked out before is out of date
    if (inSeries) this.changed++;
    for (const {operating} of this.kept) {
      if (inSeries) readInSeries(operating, red, black);
      else layLeads(operating, fn, red, black);
      readWithLeads(operating, fn, red, black);
    }
    if (this.trust.closesGap) return;
    // the fuse opened at this reading, on the student's meter
    for (const {operating} of this.kept) operating.disconnectMeter();
    this.leadsLie = 'no';
  }

  private takeLeadsOff(): void {
    if (this.leadsLie === 'no') return;
    if (this.leadsLie === 'in-series') this.changed++;
    this.leadsLie = 'no';
    for (const {operating} of this.kept) operating.disconnectMeter();
  }

  /** What the meter would show on each suspect now, in the order of {@link hypotheses}. */
  displays(fn: MeterFunction, at: Placement): MeterDisplay[] {
    const inSeries = fn === 'dc-microamps' && 'red' in at && this.trust.closesGap;
    return this.kept.map(({operating}) =>
      inSeries ? readInSeries(operating.fork(), at.red, at.black) : readMeter(fn, operating, at),
    );
  }

  /** Follows a whole step of an attempt: the action and the line that it left in the field log. */
  step(action: Action, entry: LogEntry | undefined, sees: readonly Observation[]): Elimination {
    if (entry?.kind === 'reading' && entry.display && entry.function)
      return this.read(entry.function, placementOf(entry), entry.display, entry.toProve);
    if (!entry?.fuseBlew) return this.do(action, sees);
    // what was done put a source across the microamps leads: the circuit is seen once the fuse has opened it again
    this.do(action);
    this.trust.fuseBlew();
    this.takeLeadsOff();
    return this.see(sees);
  }

  private eliminate(stays: (kept: Kept) => boolean, expected: number): Elimination {
    const before = this.kept;
    const bitsBefore = this.bits;
    const after: Kept[] = [];
    const ruledOut: string[] = [];
    for (const kept of before) {
      if (stays(kept)) after.push(kept);
      else ruledOut.push(kept.hypothesis.id);
    }
    this.kept = after;
    return {
      suspectsBefore: before.length,
      suspectsAfter: after.length,
      expectedBits: expected,
      bits: bitsBefore - this.bits,
      ruledOut,
    };
  }
}

/** Where the leads or the clamp were for a reading in the log. */
export function placementOf(entry: LogEntry): Placement {
  return entry.wire !== undefined ? {wire: entry.wire} : {red: entry.red!, black: entry.black!};
}

/** Everything seen and heard, as one text to compare: part, how it is, and what a display shows. */
export function sightKey(observations: readonly Observation[]): string {
  return observations
    .map(({part, is, display}) => `${part} ${is} ${display ?? ''}`)
    .sort()
    .join('|');
}
