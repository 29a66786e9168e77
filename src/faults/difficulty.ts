import type {Unit} from '../content/unit.ts';
import type {Fault} from './fault.ts';
import {conductorsOf, partOf, stretchesOf} from './nets.ts';

export const difficulties = ['easy', 'medium', 'hard'] as const;
export type Difficulty = (typeof difficulties)[number];

/** At most this many parts in the path is easy, and medium; what is above is hard. */
const easyUpTo = 4;
const mediumUpTo = 6;

/**
 * How hard a fault is to find, by the number of parts in its path: those that lie between the two rails of its
 * circuit on the shortest way through the fault. A fault that is in no ladder circuit (earth wires, plant)
 * works through everything at once and is hard.
 */
export function difficultyOf(unit: Unit, fault: Fault): Difficulty {
  const parts = partsInPath(unit, fault);
  if (parts === undefined) return 'hard';
  if (parts <= easyUpTo) return 'easy';
  return parts <= mediumUpTo ? 'medium' : 'hard';
}

/** Parts from rail to rail through the fault's site, or undefined where no circuit passes it. */
export function partsInPath(unit: Unit, fault: Fault): number | undefined {
  const conductors = conductorsOf(unit);
  const neighbours = partGraph(unit, conductors);
  const sites = siteTerminals(unit, fault).map((terminal) => conductors.of(terminal));
  let least: number | undefined;
  for (const circuit of unit.circuits) {
    const [first, second] = circuit.rails.map((rail) => steps(neighbours, conductors.of(rail)));
    for (const a of sites) {
      for (const b of sites) {
        const toFirst = first.get(a);
        const toSecond = second.get(b);
        if (toFirst === undefined || toSecond === undefined) continue;
        // a part's own two sides lie one step apart and the part is in the path
        const through = fault.site.on === 'part' && a !== b ? 1 : 0;
        const total = toFirst + toSecond + through;
        if (total > 0 && (least === undefined || total < least)) least = total;
      }
    }
  }
  return least;
}

/** Conductor to the conductors on the far side of one part. */
function partGraph(unit: Unit, conductors: ReturnType<typeof conductorsOf>): Map<string, Set<string>> {
  const graph = new Map<string, Set<string>>();
  const link = (a: string, b: string): void => {
    if (!graph.has(a)) graph.set(a, new Set());
    graph.get(a)!.add(b);
  };
  for (const part of unit.parts) {
    if (part.kind === 'supply') continue;
    for (const element of part.elements) {
      for (const [a, b] of stretchesOf(element)) {
        link(conductors.of(a), conductors.of(b));
        link(conductors.of(b), conductors.of(a));
      }
    }
  }
  return graph;
}

/** Parts crossed from one conductor to each other one, breadth first. */
function steps(graph: ReadonlyMap<string, ReadonlySet<string>>, start: string): Map<string, number> {
  const found = new Map([[start, 0]]);
  const queue = [start];
  for (const at of queue) {
    for (const next of graph.get(at) ?? []) {
      if (found.has(next)) continue;
      found.set(next, found.get(at)! + 1);
      queue.push(next);
    }
  }
  return found;
}

function siteTerminals(unit: Unit, fault: Fault): string[] {
  const {site} = fault;
  if (site.on === 'plant') return [];
  if (site.on === 'part') {
    const part = unit.parts.find((each) => each.id === site.part);
    const touched = new Set(fault.changes.map((change) => change.element));
    const stretches = (part?.elements ?? [])
      .filter((element) => touched.size === 0 || touched.has(element.id) || partOf(element.id) === '')
      .flatMap((element) => stretchesOf(element).flat());
    return stretches.length ? stretches : (part?.terminals ?? []).map((terminal) => `${site.part}.${terminal}`);
  }
  const ids = site.on === 'wire' ? [site.wire] : site.wires;
  return unit.wires.filter((wire) => ids.includes(wire.id)).flatMap((wire) => [wire.from, wire.to]);
}
