import type {Unit} from '../content/unit.ts';
import {partOf, stretchesOf} from '../faults/nets.ts';

/**
 * Whether every way from the service to a terminal leads through a part that a lock hangs on. A lock on some other
 * switch protects nobody, even where the terminal happens to be dead. Ways lead along wires, through contacts
 * whatever their position, and through loads; not along the neutral or the ground, which are live only by a fault.
 */
export function isLockedOut(unit: Unit, terminal: string, locked: ReadonlySet<string>): boolean {
  const reached = new Set<string>();
  const queue = unit.parts.flatMap((part) =>
    part.elements.flatMap((element) => (element.is === 'acSource' ? [element.a] : [])),
  );
  const next = waysOn(unit, locked);
  for (const at of queue) {
    if (reached.has(at)) continue;
    reached.add(at);
    if (at === terminal) return false;
    queue.push(...(next.get(at) ?? []));
  }
  return true;
}

function waysOn(unit: Unit, locked: ReadonlySet<string>): Map<string, string[]> {
  const ways = new Map<string, string[]>();
  const link = (a: string, b: string): void => {
    for (const [from, to] of [
      [a, b],
      [b, a],
    ]) {
      if (!ways.has(from)) ways.set(from, []);
      ways.get(from)!.push(to);
    }
  };
  const supplies = new Set(unit.parts.filter((part) => part.kind === 'supply').map(({id}) => id));
  const liveEnds = new Set(
    unit.parts.flatMap((part) =>
      part.elements.flatMap((element) => (element.is === 'acSource' ? [element.a] : [])),
    ),
  );
  const barred = (terminal: string): boolean =>
    supplies.has(partOf(terminal)) && !liveEnds.has(terminal);
  for (const {from, to} of unit.wires) if (!barred(from) && !barred(to)) link(from, to);
  for (const part of unit.parts) {
    if (locked.has(part.id) || supplies.has(part.id)) continue;
    for (const element of part.elements) for (const [a, b] of stretchesOf(element)) link(a, b);
  }
  return ways;
}
