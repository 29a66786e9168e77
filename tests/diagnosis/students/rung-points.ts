import type {Unit} from '../../../src/content/unit.ts';
import {stretchesOf} from '../../../src/faults/nets.ts';

/** A circuit as somebody with a ladder in hand walks it: where to put the red lead, in order, and where the black one stays. */
export interface Rung {
  readonly volts: number;
  readonly reference: string;
  /** From the source to the hot side of the load. */
  readonly points: readonly string[];
  readonly load: readonly [string, string];
}

/** The longest rung of each circuit, low voltage first. */
export function rungs(unit: Unit): Rung[] {
  return [...unit.circuits]
    .sort((a, b) => a.volts - b.volts)
    .flatMap(({rails: [hot, reference], volts}) => {
      const feed = walk(unit, hot, reference, true).reverse();
      const path = walk(unit, hot, reference, false);
      const at = path.findIndex((point, i) => i > 0 && isLoad(unit, path[i - 1], point));
      if (at < 1) return [];
      return [
        {
          volts,
          reference,
          points: [...feed, ...path.slice(1, at)],
          load: [path[at - 1], path[at]] as const,
        },
      ];
    });
}

/** Longest way from the hot rail: up to a source's terminal, or through one load to the other rail. */
function walk(unit: Unit, from: string, reference: string, up: boolean): string[] {
  let longest: string[] = up ? [from] : [];
  let steps = 0;
  const visit = (path: string[], seen: Set<string>): void => {
    // ways through a whole unit are many; a person does not try them all either
    if ((steps += 1) > 4000) return;
    const here = path[path.length - 1];
    if (up ? isSource(unit, here) : here === reference) {
      if (path.length > longest.length || (up && longest.length === 1)) longest = path;
      return;
    }
    for (const next of neighbours(unit, here, !up)) {
      if (seen.has(next)) continue;
      visit([...path, next], new Set([...seen, next]));
    }
  };
  visit([from], new Set([from]));
  return longest;
}

function neighbours(unit: Unit, here: string, throughLoads: boolean): string[] {
  const wires = unit.wires.flatMap(({from, to}) =>
    from === here ? [to] : to === here ? [from] : [],
  );
  const parts = unit.parts.flatMap((part) =>
    part.elements.flatMap((element) => {
      if (element.is === 'transformer' || element.is === 'acSource' || element.is === 'motor')
        return [];
      if (!throughLoads && element.is !== 'contact' && element.is !== 'conductor') return [];
      return stretchesOf(element).flatMap(([a, b]) => (a === here ? [b] : b === here ? [a] : []));
    }),
  );
  return [...wires, ...parts].filter((each) => each !== 'earth' && !each.includes('~'));
}

function isSource(unit: Unit, point: string): boolean {
  return unit.parts.some((part) =>
    part.elements.some(
      (element) =>
        (element.is === 'acSource' && element.a === point) ||
        (element.is === 'transformer' && element.windings.slice(-1).some(({a}) => a === point)),
    ),
  );
}

function isLoad(unit: Unit, a: string, b: string): boolean {
  return unit.parts.some((part) =>
    part.elements.some(
      (element) =>
        (element.is === 'coil' || element.is === 'impedance') &&
        ((element.a === a && element.b === b) || (element.a === b && element.b === a)),
    ),
  );
}
