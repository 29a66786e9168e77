import type {Action} from '../bench/actions.ts';
import {actionCost} from '../bench/action-costs.ts';
import type {MeterFunction} from '../meter/meter-function.ts';
import type {OperatingUnit} from '../sequences/operating-unit.ts';
import {OutcomeSplit} from './outcome-split.ts';
import {outcomeTable, type OutcomeTable} from './outcome-table.ts';
import {sensiblePairs} from './places.ts';
import {redo} from './replayed-unit.ts';
import {wiresAt} from './look-alike.ts';
import {otherSituations, presentSituation, type Situation} from './situations.ts';
import type {Suspects} from './suspects.ts';

/** A reading worth taking, with what it takes to get at it and what it is expected to bring. */
export interface Proposal {
  readonly function: MeterFunction;
  readonly red?: string;
  readonly black?: string;
  readonly wire?: string;
  /** State to bring the unit into first. */
  readonly situation: Situation;
  /** Covers to take off first. */
  readonly covers: readonly string[];
  readonly bits: number;
  readonly minutes: number;
  /** How many suspects each outcome leaves, most first. */
  readonly splits: readonly number[];
  /** What the meter would show in each of these cases, as far as it is a number. */
  readonly amounts: readonly (number | undefined)[];
}

/** Tables of the readings in one situation, for the suspects that were open when it was worked out. */
interface Worked {
  readonly situation: Situation;
  readonly ids: readonly string[];
  readonly units: OperatingUnit[];
  readonly tables: OutcomeTable[];
  /** Which column of the tables belongs to which suspect. */
  readonly columns: Map<string, number>;
  /** Suspects whose unit has been brought into the situation so far. */
  done: number;
}

/** With more suspects than this, lifting a wire is not what to do next. */
const mostToLiftFor = 8;
const mostWiresToLift = 16;

/** Below this a reading is not worth the walk. */
const leastBits = 1e-6;

/**
 * Chooses readings by expected gain per minute of work. A greedy, one-step choice, as de Kleer and Williams (1987)
 * take it: the reading that is expected to leave the least entropy, here for each minute that it costs.
 *
 * Tables stand until the unit is changed, so after a reading only the ranking is done again. {@link prepare} does the
 * slow part, a suspect at a time, while nobody waits.
 */
export class Planner {
  private readonly suspects: Suspects;
  private version = -1;
  private worked: Worked[] = [];

  constructor(suspects: Suspects) {
    this.suspects = suspects;
  }

  /** Does a little of what the next answer will need; true while there is more to do. */
  prepare(): boolean {
    this.refresh();
    const next = this.worked.find((each) => !isReady(each));
    if (!next) return false;
    this.advance(next);
    return this.worked.some((each) => !isReady(each));
  }

  /**
   * The best readings, best first. The present state always counts; other states as far as they have been prepared,
   * or all of them where `thorough` is asked for or the present has nothing more to tell.
   */
  best(most = 5, thorough = false): Proposal[] {
    this.refresh();
    const [present] = this.worked;
    this.finish(present);
    let proposals = this.rank(this.worked.filter(isReady));
    for (const each of this.worked) {
      // somebody waits: with many suspects the first state that tells anything has to do
      if (!thorough && proposals.length) break;
      if (isReady(each)) continue;
      this.finish(each);
      if (!thorough) proposals = this.rank([each]);
    }
    if (thorough) proposals = this.rank(this.worked);
    // the other end only where the first tells nothing: what hangs on it may still be joined to what was lifted before
    for (const end of ['from', 'to'] as const)
      if (proposals.length === 0) proposals = this.rank(this.liftings(end));
    return proposals.slice(0, most);
  }

  /** The reading of the greatest expected gain as the unit stands, whatever it costs. */
  bestNow(): Proposal | undefined {
    this.refresh();
    this.finish(this.worked[0]);
    const [first] = this.rank([this.worked[0]], (bits) => bits);
    return first;
  }

  /** Locked out, with one end lifted of each wire in turn at which one of the few suspects left sits. */
  private liftings(side: 'from' | 'to'): Worked[] {
    const {conditions, hypotheses, unit} = this.suspects;
    if (hypotheses.length < 2 || hypotheses.length > mostToLiftFor) return [];
    const base = conditions.isolated
      ? this.worked[0].situation
      : this.worked.find(({situation}) => situation.isolated)!.situation;
    const wires = wiresAt(
      unit,
      hypotheses.flatMap(({faults}) => faults),
    ).slice(0, mostWiresToLift);
    return wires
      .filter(({id}) => !conditions.lifted.has(`${id}.${side}`))
      .map((wire) => {
        const {id, [side]: terminal} = wire;
        const lift: Action = {do: 'lift', end: `${id}.${side}`};
        const covers = conditions
          .coversFor([lift.end])
          .map((enclosure): Action => ({do: 'open-cover', enclosure}));
        const worked = this.fresh({
          id: `${base.id}:${lift.end}`,
          title: `${base.title}, with wire ${id} lifted at ${terminal}`,
          actions: [...base.actions, ...covers, lift],
          minutes: [...covers, lift].reduce((sum, each) => sum + actionCost(each), base.minutes),
          isolated: true,
        });
        this.finish(worked);
        return worked;
      });
  }

  private refresh(): void {
    if (this.version === this.suspects.version) return;
    this.version = this.suspects.version;
    const {conditions} = this.suspects;
    this.worked = [presentSituation(conditions), ...otherSituations(conditions)].map((situation) =>
      this.fresh(situation),
    );
    // the units as they stand need no work
    this.worked[0].done = this.suspects.count;
  }

  private fresh(situation: Situation): Worked {
    const {hypotheses, units} = this.suspects;
    const ids = hypotheses.map(({id}) => id);
    return {situation, ids, units: [...units], tables: [], columns: new Map(), done: 0};
  }

  /** Brings one suspect more into the situation; after the last one, works out the tables. */
  private advance(worked: Worked): void {
    const {situation, units, ids} = worked;
    while (worked.done < ids.length) {
      const index = worked.done;
      worked.done += 1;
      // those ruled out since are left where they are: nobody asks for their readings
      if (!this.suspects.has(ids[index])) continue;
      const operating = units[index].fork();
      for (const action of situation.actions) redo(operating, action);
      units[index] = operating;
      return;
    }
    this.tabulate(worked);
  }

  private finish(worked: Worked): void {
    while (!isReady(worked)) this.advance(worked);
  }

  private tabulate(worked: Worked): void {
    const open = worked.ids.flatMap((id, index) => (this.suspects.has(id) ? [index] : []));
    const units = open.map((index) => worked.units[index]);
    const {unit} = this.suspects;
    const points = units[0]?.probePoints() ?? [];
    const pairs = sensiblePairs(unit, points);
    const functions: MeterFunction[] = worked.situation.isolated
      ? ['ac-volts', 'ohms']
      : ['ac-volts', 'clamp-amps'];
    if (hasDirectCurrent(units[0])) functions.push('dc-volts');
    open.forEach((index, column) => worked.columns.set(worked.ids[index], column));
    for (const fn of functions)
      worked.tables.push(outcomeTable(fn, units, points, {pairs, practical: true}));
  }

  private rank(
    among: readonly Worked[],
    worth: (bits: number, minutes: number) => number = (bits, minutes) => bits / minutes,
  ): Proposal[] {
    const found: {
      worked: Worked;
      table: OutcomeTable;
      place: number;
      bits: number;
      minutes: number;
    }[] = [];
    for (const worked of among) {
      const {among: open, weights} = this.openIn(worked);
      for (const table of worked.tables) {
        const split = new OutcomeSplit(table);
        const minutesOf = this.costs(worked.situation, table);
        for (let place = 0; place < table.places; place += 1) {
          const bits = split.bits(place, open, weights);
          if (bits > leastBits) found.push({worked, table, place, bits, minutes: minutesOf(place)});
        }
      }
    }
    const value = (each: (typeof found)[number]): number => worth(each.bits, each.minutes);
    found.sort((a, b) => value(b) - value(a) || a.minutes - b.minutes);
    return found
      .slice(0, 20)
      .map((each) => this.proposal(each.worked, each.table, each.place, each.bits, each.minutes));
  }

  private openIn(worked: Worked): {among: Int32Array; weights: Float64Array} {
    const kept = worked.columns;
    const weights = new Float64Array(kept.size);
    const among: number[] = [];
    for (const {id, weight} of this.suspects.hypotheses) {
      const column = kept.get(id);
      if (column === undefined) continue;
      among.push(column);
      weights[column] = weight;
    }
    return {among: Int32Array.from(among), weights};
  }

  /** Minutes of a reading at each place of a table: getting into the situation, covers off, and the reading. */
  private costs({minutes, actions}: Situation, table: OutcomeTable): (place: number) => number {
    const {conditions} = this.suspects;
    const cover = actionCost({do: 'open-cover', enclosure: ''});
    const read = actionCost({do: 'read', red: '', black: ''});
    if (table.fn === 'clamp-amps') {
      const covers = table.names.map((wire) =>
        conditions.reach.refuseWire(wire, conditions.open) ? 1 : 0,
      );
      return (place) => minutes + read + cover * covers[place];
    }
    const opened = openedBy(actions);
    const closed = table.names.map((point) =>
      conditions.coversFor([point]).find((cover) => !opened.has(cover)),
    );
    return (place) => {
      const [a, b] = [closed[table.first[place]], closed[table.second[place]]];
      const count = (a ? 1 : 0) + (b && b !== a ? 1 : 0);
      return minutes + read + cover * count;
    };
  }

  private proposal(
    worked: Worked,
    table: OutcomeTable,
    place: number,
    bits: number,
    minutes: number,
  ): Proposal {
    const {among, weights} = this.openIn(worked);
    const split = new OutcomeSplit(table);
    split.group(place, among, weights);
    const order = split.groupCounts.map((_, i) => i);
    order.sort((a, b) => split.groupCounts[b] - split.groupCounts[a]);
    const [red, black] = [table.names[table.first[place]], table.names[table.second[place]]];
    const {conditions} = this.suspects;
    const wire = table.fn === 'clamp-amps' ? red : undefined;
    return {
      function: table.fn,
      ...(wire !== undefined ? {wire} : {red, black}),
      situation: worked.situation,
      covers:
        wire !== undefined
          ? coversForWire(this.suspects, wire)
          : conditions
              .coversFor([red, black])
              .filter((cover) => !openedBy(worked.situation.actions).has(cover)),
      bits,
      minutes,
      splits: order.map((i) => split.groupCounts[i]),
      amounts: order.map((i) => table.scale.amountOf(split.groupOutcomes[i])),
    };
  }
}

/** Covers that are off once these actions are done. */
function openedBy(actions: readonly Action[]): ReadonlySet<string> {
  return new Set(
    actions.flatMap((action) => (action.do === 'open-cover' ? [action.enclosure] : [])),
  );
}

const isReady = ({tables}: Worked): boolean => tables.length > 0;

function coversForWire({conditions, unit}: Suspects, id: string): string[] {
  if (!conditions.reach.refuseWire(id, conditions.open)) return [];
  const wire = unit.wires.find((each) => each.id === id)!;
  return conditions.coversFor([wire.from]);
}

function hasDirectCurrent(unit: OperatingUnit | undefined): boolean {
  return unit?.network.elements.some((element) => element.is === 'dcSource') ?? false;
}

/** Everything to do for a proposal, in order, down to the reading. */
export function stepsOf(proposal: Proposal, present: MeterFunction): Action[] {
  const {situation, covers, function: fn, red, black, wire} = proposal;
  return [
    ...situation.actions,
    ...covers.map((enclosure): Action => ({do: 'open-cover', enclosure})),
    ...(fn === present ? [] : [{do: 'meter', function: fn} as const]),
    wire !== undefined ? {do: 'clamp', wire} : {do: 'read', red: red!, black: black!},
  ];
}
