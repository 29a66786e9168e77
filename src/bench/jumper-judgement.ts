import type {Part, Unit} from '../content/unit.ts';
import {conductorsOf} from '../faults/nets.ts';

/** Kinds of part that are there to stop the machine. */
const safeties: ReadonlySet<string> = new Set([
  'pressure-switch',
  'temperature-switch',
  'float-switch',
  'fusible-link',
  'fuse',
  'breaker',
]);

/**
 * Safeties that a jumper between two points leads around: those on the shortest way from one to the other
 * through contacts alone. (Through a load it would not be a way around but a short.)
 */
export function bypassedSafeties(unit: Unit, from: string, to: string): Part[] {
  const conductors = conductorsOf(unit);
  const goal = conductors.of(to);
  const cameBy = new Map<string, {from: string; part: Part} | undefined>([
    [conductors.of(from), undefined],
  ]);
  const queue = [conductors.of(from)];
  for (const at of queue) {
    if (at === goal) break;
    for (const part of unit.parts) {
      for (const element of part.elements) {
        if (element.is !== 'contact') continue;
        const sides = [conductors.of(element.a), conductors.of(element.b)];
        for (const [here, there] of [sides, [...sides].reverse()]) {
          if (here !== at || cameBy.has(there)) continue;
          cameBy.set(there, {from: at, part});
          queue.push(there);
        }
      }
    }
  }
  const around: Part[] = [];
  for (let at = cameBy.get(goal); at; at = cameBy.get(at.from)) around.push(at.part);
  return around.filter((part) => safeties.has(part.kind)).reverse();
}
