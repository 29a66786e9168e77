import {actionCost} from '../bench/action-costs.ts';
import type {Unit} from '../content/unit.ts';
import type {MeterFunction} from '../meter/meter-function.ts';
import type {OperatingUnit} from '../sequences/operating-unit.ts';
import {Conditions} from './conditions.ts';
import type {Hypothesis} from './hypotheses.ts';
import {established, isolate} from './operating-states.ts';
import {OutcomeScale} from './outcome-scale.ts';
import {OutcomeSplit} from './outcome-split.ts';
import {outcomeTables, type OutcomeTable} from './outcome-table.ts';
import {sensiblePairs} from './places.ts';
import {otherSituations} from './situations.ts';
import {sightKey} from './suspects.ts';

/** What finding a hypothesis takes. */
export interface SearchCost {
  readonly readings: number;
  readonly minutes: number;
  /** Hypotheses that the search ends with, the one looked for included. */
  readonly left: readonly string[];
}

/** One state of the unit with the readings of all hypotheses in it. */
interface Stage {
  readonly id: string;
  readonly minutes: number;
  readonly isolated: boolean;
  /** What is seen and heard with every cover on, by hypothesis. */
  readonly sights: readonly string[];
  readonly tables: readonly OutcomeTable[];
}

/** Readings of every hypothesis of a unit in each of its modes and locked out, worked out once. */
export interface SearchGround {
  readonly unit: Unit;
  readonly hypotheses: readonly Hypothesis[];
  readonly stages: readonly Stage[];
}

const leastBits = 1e-6;

/**
 * Works out the ground on which any number of searches stand. Takes seconds for a unit of hundreds of faults.
 *
 * @param tell called on the way with the share of the work that is done, 0 … 1
 */
export function searchGround(
  unit: Unit,
  hypotheses: readonly Hypothesis[],
  tell: (share: number) => void = () => undefined,
): SearchGround {
  const most = (unit.sequences.length + 1) * hypotheses.length;
  let done = 0;
  const counted = <T>(one: T): T => {
    tell((done += 1) / most);
    return one;
  };
  const conditions = new Conditions(unit);
  const costs = new Map(otherSituations(conditions).map(({id, minutes}) => [id, minutes]));
  const stage = (id: string, isolated: boolean, units: readonly OperatingUnit[]): Stage => {
    const points = units[0]?.probePoints() ?? [];
    const pairs = sensiblePairs(unit, points);
    const functions: MeterFunction[] = isolated ? ['ohms'] : ['ac-volts', 'clamp-amps'];
    if (!isolated && units[0]?.network.elements.some(({is}) => is === 'dcSource'))
      functions.push('dc-volts');
    return {
      id,
      isolated,
      minutes: costs.get(id) ?? actionCost({do: 'set', target: '', value: ''}),
      sights: units.map((each) => sightKey(conditions.visible(each.observations()))),
      tables: outcomeTables(functions, units, points, {pairs, practical: true}),
    };
  };
  const stages = unit.sequences.map((sequence) =>
    stage(
      sequence.id,
      false,
      hypotheses.map(({faults}) => counted(established(unit, faults, sequence))),
    ),
  );
  const [first] = unit.sequences;
  if (first)
    stages.push(
      stage(
        'locked-out',
        true,
        hypotheses.map(({faults}) => counted(isolate(unit, established(unit, faults, first)))),
      ),
    );
  return {unit, hypotheses, stages};
}

/** Where a search stands: the state of the unit and the covers that are off. */
interface Standing {
  readonly stage: number;
  readonly covers: ReadonlySet<string>;
  readonly readings: number;
  readonly minutes: number;
}

/**
 * Follows the planner down every branch at once: at each point the reading of the greatest gain per minute, then each
 * of its outcomes in turn. Gives what finding each of the hypotheses takes. One search for a whole complaint, instead
 * of one for each fault.
 *
 * @param among ids of the hypotheses that the complaint fits
 * @param mode sequence of operation that the unit is in when the search begins
 */
export function searchCosts(
  ground: SearchGround,
  among: readonly string[],
  mode: string,
): Map<string, SearchCost> {
  const {hypotheses, stages, unit} = ground;
  const conditions = new Conditions(unit);
  const wanted = new Set(among);
  const start = Math.max(
    0,
    stages.findIndex(({id}) => id === mode),
  );
  const weights = Float64Array.from(hypotheses, ({weight}) => weight);
  const costs = new Map<string, SearchCost>();
  const splits = stages.map(({tables}) => tables.map((table) => new OutcomeSplit(table)));
  const coverMinutes = actionCost({do: 'open-cover', enclosure: ''});
  const readMinutes = actionCost({do: 'read', red: '', black: ''});
  const coversOf = stages.map(({tables}) => tables.map((table) => placeCovers(conditions, table)));

  const end = (members: Int32Array, {readings, minutes}: Standing): void => {
    const left = [...members].map((index) => hypotheses[index].id);
    for (const id of left) costs.set(id, {readings, minutes, left});
  };

  const search = (members: Int32Array, at: Standing): void => {
    if (members.length < 2) return end(members, at);
    let best:
      {stage: number; table: number; place: number; rate: number; minutes: number} | undefined;
    stages.forEach((stage, s) => {
      const there = s === at.stage ? 0 : stage.minutes;
      stage.tables.forEach((table, t) => {
        for (let place = 0; place < table.places; place += 1) {
          const bits = splits[s][t].bits(place, members, weights);
          if (bits <= leastBits) continue;
          const closed = coversOf[s][t][place].filter((cover) => !at.covers.has(cover)).length;
          const minutes = there + readMinutes + closed * coverMinutes;
          if (!best || bits / minutes > best.rate)
            best = {stage: s, table: t, place, rate: bits / minutes, minutes};
        }
      });
    });
    if (!best) return end(members, at);
    const {stage, table, place, minutes} = best;
    const next: Standing = {
      stage,
      covers: new Set([...at.covers, ...coversOf[stage][table][place]]),
      readings: at.readings + 1,
      minutes: at.minutes + minutes,
    };
    for (const group of groupsOf(stages[stage].tables[table], place, members))
      look(group, next, at.stage !== stage);
  };

  /** A new state also shows and sounds, which costs no reading. */
  const look = (members: Int32Array, at: Standing, isNew: boolean): void => {
    if (!isNew) return search(members, at);
    const bySight = new Map<string, number[]>();
    for (const index of members) {
      const sight = stages[at.stage].sights[index];
      const same = bySight.get(sight);
      if (same) same.push(index);
      else bySight.set(sight, [index]);
    }
    for (const group of bySight.values()) search(Int32Array.from(group), at);
  };

  const members = hypotheses.flatMap(({id}, index) => (wanted.has(id) ? [index] : []));
  const begin = {
    stage: start,
    covers: new Set<string>(),
    readings: 0,
    minutes: stages[start]?.minutes ?? 0,
  };
  look(Int32Array.from(members), begin, true);
  return costs;
}

/** Suspects by outcome, outcomes that the meter cannot tell apart together. */
function groupsOf(table: OutcomeTable, place: number, members: Int32Array): Int32Array[] {
  const base = place * table.suspects;
  const ordered = [...members].sort((a, b) => table.outcomes[base + a] - table.outcomes[base + b]);
  const groups: number[][] = [];
  let last = -Infinity;
  for (const index of ordered) {
    const outcome = table.outcomes[base + index];
    if (outcome - last > OutcomeScale.apart) groups.push([]);
    groups[groups.length - 1].push(index);
    last = outcome;
  }
  return groups.map((group) => Int32Array.from(group));
}

/** Covers that hide each place of a table. */
function placeCovers(conditions: Conditions, table: OutcomeTable): string[][] {
  if (table.fn === 'clamp-amps')
    return table.names.map((id) => {
      const wire = conditions.unit.wires.find((each) => each.id === id)!;
      return conditions.reach.refuseWire(id, conditions.open)
        ? conditions.coversFor([wire.from])
        : [];
    });
  const covers = table.names.map((point) => conditions.coversFor([point]));
  return Array.from({length: table.places}, (_, place) => [
    ...new Set([...covers[table.first[place]], ...covers[table.second[place]]]),
  ]);
}
