import type {Unit} from '../content/unit.ts';
import type {Fault} from './fault.ts';
import {stretchesOf} from './nets.ts';

export const difficulties = ['easy', 'medium', 'hard'] as const;
export type Difficulty = (typeof difficulties)[number];

/** At most this many parts in the path is easy, and medium; what is above is hard. */
const easyUpTo = 3;
const mediumUpTo = 6;

/**
 * How hard a fault is to find, by the number of parts in its path. A fault that lies in no ladder circuit (the
 * plant, earth wires) works through everything at once and is hard. A stand-in, until difficulty is computed from
 * the readings that a planner needs.
 */
export function difficultyOf(unit: Unit, fault: Fault): Difficulty {
  const parts = partsInPath(unit, fault);
  if (parts === undefined) return 'hard';
  if (parts <= easyUpTo) return 'easy';
  return parts <= mediumUpTo ? 'medium' : 'hard';
}

/**
 * Parts that must all conduct for the fault's place to do its work: from the service to the rails of its circuit,
 * and from rail to rail through the fault. Undefined where no circuit passes the place.
 */
export function partsInPath(unit: Unit, fault: Fault): number | undefined {
  let least: number | undefined;
  const count = (...ways: (Iterable<string> | undefined)[]): void => {
    const parts = new Set<string>();
    for (const way of ways) {
      if (!way) return;
      for (const part of way) parts.add(part);
    }
    if (least === undefined || parts.size < least) least = parts.size;
  };
  const {feeders, sources, rungs, feeds} = mapOf(unit);
  for (const {edges, ends, part} of places(unit, fault)) {
    const own = part ? [part] : [];
    for (const [a, b] of [ends, [ends[1], ends[0]]]) {
      for (const {rails} of unit.circuits) {
        const [first, second] = rails;
        count(
          partsBetween(rungs, a, first, edges),
          partsBetween(rungs, b, second, edges),
          feeders.get(first),
          own,
        );
        // or the place lies in the feed, between the service and a rail
        for (const source of sources) {
          for (const rail of rails) {
            const up = partsBetween(feeds, a, source, edges);
            if (up) count(up, partsBetween(rungs, b, rail, edges), own);
          }
        }
      }
    }
  }
  return least;
}

/** A stretch of the fault's site: the edges that it is, its two ends, the part that it belongs to. */
interface Place {
  readonly edges: readonly string[];
  readonly ends: readonly [string, string];
  readonly part?: string;
}

function places(unit: Unit, fault: Fault): Place[] {
  const {site} = fault;
  if (site.on === 'plant') return [];
  if (site.on !== 'part') {
    const ids = site.on === 'wire' ? [site.wire] : site.wires;
    return unit.wires
      .filter((wire) => ids.includes(wire.id))
      .map((wire) => ({edges: [wire.id], ends: [wire.from, wire.to]}));
  }
  const part = unit.parts.find((each) => each.id === site.part);
  const touched = new Set(fault.changes.map((change) => change.element));
  return (part?.elements ?? [])
    .filter(
      (element) =>
        touched.size === 0 ||
        element.is === 'transformer' ||
        element.is === 'motor' ||
        touched.has(element.id),
    )
    .flatMap((element) =>
      stretchesOf(element).map((ends) => ({edges: [element.id], ends, part: site.part})),
    );
}

interface Edge {
  /** Wire or element that it is. */
  readonly id: string;
  readonly to: string;
  /** Part that is crossed; a wire crosses none. */
  readonly part?: string;
}

type Graph = ReadonlyMap<string, readonly Edge[]>;

/** Terminals joined by wires and by the elements of parts. */
function graphOf(unit: Unit, throughCores: boolean): Graph {
  const graph = new Map<string, Edge[]>();
  const link = (id: string, a: string, b: string, part?: string): void => {
    for (const [from, to] of [
      [a, b],
      [b, a],
    ]) {
      if (!graph.has(from)) graph.set(from, []);
      graph.get(from)!.push({id, to, part});
    }
  };
  for (const wire of unit.wires) link(wire.id, wire.from, wire.to);
  for (const {id, elements} of unit.parts) {
    for (const element of elements) {
      // a source joins its two rails; a path from rail to rail ends there
      if (element.is === 'acSource') continue;
      if (element.is === 'transformer' && throughCores) {
        const [first, ...rest] = stretchesOf(element).flat();
        for (const other of rest) link(element.id, first, other, id);
        continue;
      }
      for (const [a, b] of stretchesOf(element)) {
        if (element.is === 'transformer' && a === `${id}.X1`) continue;
        link(element.id, a, b, id);
      }
    }
  }
  return graph;
}

/** Ways through a unit, the service's live terminals, and to each circuit's first rail the parts that feed it. */
interface UnitMap {
  /** From rail to rail; a secondary winding ends a path. */
  readonly rungs: Graph;
  /** From the service on, across a transformer's core too. */
  readonly feeds: Graph;
  readonly sources: readonly string[];
  readonly feeders: ReadonlyMap<string, ReadonlySet<string>>;
}

/** Follows from the unit alone, so it is found once for each. */
const maps = new WeakMap<Unit, UnitMap>();

function mapOf(unit: Unit): UnitMap {
  const known = maps.get(unit);
  if (known) return known;
  const feeds = graphOf(unit, true);
  const sources = unit.parts.flatMap((part) =>
    part.elements.flatMap((element) => (element.is === 'acSource' ? [element.a] : [])),
  );
  const feeders = new Map(
    unit.circuits.map(({rails}) => {
      const ways = sources.flatMap((source) => partsBetween(feeds, rails[0], source, []) ?? []);
      const shortest = ways.sort((a, b) => a.size - b.size)[0];
      return [rails[0], shortest ?? new Set<string>()] as const;
    }),
  );
  const map = {rungs: graphOf(unit, false), feeds, sources, feeders};
  maps.set(unit, map);
  return map;
}

/** Parts on the way with the fewest crossings, found with a double-ended queue (0–1 breadth-first search). */
function partsBetween(
  graph: Graph,
  start: string,
  goal: string,
  without: readonly string[],
): ReadonlySet<string> | undefined {
  const cameBy = new Map<string, {from: string; part?: string} | undefined>();
  const queue: {at: string; by?: {from: string; part?: string}}[] = [{at: start}];
  for (let next = queue.shift(); next; next = queue.shift()) {
    const {at, by} = next;
    if (cameBy.has(at)) continue;
    cameBy.set(at, by);
    if (at === goal) break;
    for (const {id, to, part} of graph.get(at) ?? []) {
      if (without.includes(id)) continue;
      const step = {at: to, by: {from: at, part}};
      if (part) queue.push(step);
      else queue.unshift(step);
    }
  }
  if (!cameBy.has(goal)) return undefined;
  const parts = new Set<string>();
  for (let by = cameBy.get(goal); by; by = cameBy.get(by.from)) if (by.part) parts.add(by.part);
  return parts;
}
