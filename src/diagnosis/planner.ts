import type {Action} from '../bench/actions.ts';
import {actionCost} from '../bench/action-costs.ts';
import type {MeterFunction} from '../meter/meter-function.ts';
import {OutcomeSplit} from './outcome-split.ts';
import type {OutcomeTable} from './outcome-table.ts';
import {wiresAt} from './look-alike.ts';
import {otherSituations, presentSituation, type Situation} from './situations.ts';
import type {Suspects} from './suspects.ts';
import {WorkedSituation} from './worked-situation.ts';

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
  private worked: WorkedSituation[] = [];
  /** Locked out with a wire's end lifted, by that end; found as they are needed. */
  private readonly lifted = new Map<string, WorkedSituation>();

  constructor(suspects: Suspects) {
    this.suspects = suspects;
  }

  /** Does a little of what the next answer will need; true while there is more to do. */
  prepare(): boolean {
    this.refresh();
    const next = this.worked.find((each) => !each.isReady) ?? this.nextLifting();
    if (!next) return false;
    next.advance();
    return (
      !next.isReady || this.worked.some((each) => !each.isReady) || this.nextLifting() !== undefined
    );
  }

  /**
   * The best readings, best first. The present state always counts; other states as far as they have been prepared,
   * or all of them where `thorough` is asked for or the present has nothing more to tell.
   *
   * @param patience how many suspects' units may be brought into another state meanwhile; what has not been prepared
   *   and takes more is left out as long as there is something else to read
   */
  best(most = 5, thorough = false, patience = Infinity): Proposal[] {
    this.refresh();
    const [present] = this.worked;
    present.finish();
    let proposals = this.rank(this.worked.filter(({isReady}) => isReady));
    let left = patience;
    const others = this.worked.filter(({isReady}) => !isReady);
    others.sort((a, b) => a.situation.minutes - b.situation.minutes);
    for (const each of others) {
      // somebody waits: with many suspects the first state that tells anything has to do
      if (!thorough && proposals.length) break;
      if (proposals.length && each.toMove > left) continue;
      left -= each.toMove;
      each.finish();
      proposals = this.rank(this.worked.filter(({isReady}) => isReady));
    }
    // the other end only where the first tells nothing: what hangs on it may still be joined to what was lifted before
    for (const end of ['from', 'to'] as const) {
      if (proposals.length) break;
      const told: WorkedSituation[] = [];
      for (const lifting of this.liftings(end)) {
        if (!lifting.isReady && lifting.toMove > left && this.rank(told, undefined, 1).length)
          break;
        if (!lifting.isReady) left -= lifting.toMove;
        lifting.finish();
        told.push(lifting);
      }
      proposals = this.rank(told);
    }
    return proposals.slice(0, most);
  }

  /** The reading of the greatest expected gain as the unit stands, whatever it costs. */
  bestNow(): Proposal | undefined {
    this.refresh();
    this.worked[0].finish();
    const [first] = this.rank([this.worked[0]], (bits) => bits, 1);
    return first;
  }

  /** The first lifting that is not worked out yet; undefined as long as there are too many suspects for it. */
  private nextLifting(): WorkedSituation | undefined {
    return this.liftings('from').find((each) => !each.isReady);
  }

  /** Locked out, with one end lifted of each wire in turn at which one of the few suspects left sits. */
  private liftings(side: 'from' | 'to'): WorkedSituation[] {
    const {conditions, hypotheses, unit} = this.suspects;
    if (hypotheses.length < 2 || hypotheses.length > mostToLiftFor) return [];
    const base = conditions.isolated
      ? this.worked[0]
      : this.worked.find(({situation}) => situation.isolated)!;
    const wires = wiresAt(
      unit,
      hypotheses.flatMap(({faults}) => faults),
    ).slice(0, mostWiresToLift);
    return wires
      .filter(({id}) => !conditions.lifted.has(`${id}.${side}`))
      .map((wire) => {
        const end = `${wire.id}.${side}`;
        const known = this.lifted.get(end);
        if (known) return known;
        const lift: Action = {do: 'lift', end};
        const covers = conditions
          .coversFor([end])
          .map((enclosure): Action => ({do: 'open-cover', enclosure}));
        const {situation} = base;
        const lifting = new WorkedSituation(
          this.suspects,
          {
            id: `${situation.id}:${end}`,
            title: `${situation.title}, with wire ${wire.id} lifted at ${wire[side]}`,
            actions: [...situation.actions, ...covers, lift],
            minutes: [...covers, lift].reduce(
              (sum, each) => sum + actionCost(each),
              situation.minutes,
            ),
            isolated: true,
          },
          base,
        );
        this.lifted.set(end, lifting);
        return lifting;
      });
  }

  private refresh(): void {
    if (this.version === this.suspects.version) return;
    this.version = this.suspects.version;
    this.lifted.clear();
    const {conditions} = this.suspects;
    this.worked = [presentSituation(conditions), ...otherSituations(conditions)].map(
      (situation) => new WorkedSituation(this.suspects, situation),
    );
  }

  private rank(
    among: readonly WorkedSituation[],
    worth: (bits: number, minutes: number) => number = (bits, minutes) => bits / minutes,
    most = 20,
  ): Proposal[] {
    const found: {
      worked: WorkedSituation;
      table: OutcomeTable;
      place: number;
      bits: number;
      minutes: number;
    }[] = [];
    for (const worked of among) {
      const {among: open, weights} = worked.open();
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
      .slice(0, most)
      .map((each) => this.proposal(each.worked, each.table, each.place, each.bits, each.minutes));
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
    worked: WorkedSituation,
    table: OutcomeTable,
    place: number,
    bits: number,
    minutes: number,
  ): Proposal {
    const {among, weights} = worked.open();
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

function coversForWire({conditions, unit}: Suspects, id: string): string[] {
  if (!conditions.reach.refuseWire(id, conditions.open)) return [];
  const wire = unit.wires.find((each) => each.id === id)!;
  return conditions.coversFor([wire.from]);
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
