import type {Drawing, Point} from '../../src/diagrams/drawing.ts';
import type {Wiring} from '../../src/diagrams/wiring.ts';

/** Union-find over names. */
class Joined {
  readonly #up = new Map<string, string>();

  find(name: string): string {
    const up = this.#up.get(name);
    if (up === undefined || up === name) return name;
    const top = this.find(up);
    this.#up.set(name, top);
    return top;
  }

  join(a: string, b: string): void {
    this.#up.set(this.find(a), this.find(b));
  }
}

interface Line {
  readonly id: string;
  readonly points: readonly Point[];
}

const onLine = (at: Point, {points}: Line): boolean =>
  points.slice(1).some((to, i) => {
    const from = points[i]!;
    const inside = (v: number, a: number, b: number): boolean =>
      v >= Math.min(a, b) - 0.6 && v <= Math.max(a, b) + 0.6;
    return inside(at.x, from.x, to.x) && inside(at.y, from.y, to.y);
  });

/**
 * What a ladder drawing joins, read back from its lines as a person would: lines join where one ends on
 * another, a terminal joins what ends at it, and two marks of one terminal are one. Symbols join nothing.
 * One wire may be taken out. The answer tells whether two terminals are joined.
 */
export function drawnJoints(
  drawing: Drawing,
  withoutWire?: string,
): (a: string, b: string) => boolean {
  const joined = new Joined();
  const lines: Line[] = [
    ...drawing.wires
      .filter(({id}) => id !== withoutWire)
      .flatMap(({id, paths}) => paths.map((points, i) => ({id: `wire ${id} ${i}`, points}))),
    ...drawing.lines.map(({points}, i) => ({id: `line ${i}`, points})),
  ];
  for (const line of lines)
    for (const end of [line.points[0]!, line.points[line.points.length - 1]!])
      for (const other of lines)
        if (other !== line && onLine(end, other)) joined.join(line.id, other.id);
  for (const mark of drawing.terminals)
    for (const line of lines) if (onLine(mark, line)) joined.join(mark.terminal, line.id);
  for (const flag of drawing.flags)
    for (const line of lines) if (onLine(flag, line)) joined.join(flag.terminal, line.id);
  return (a, b) => joined.find(a) === joined.find(b);
}

/** What the wires themselves join, one taken out. */
export function wiredJoints(
  wiring: Wiring,
  withoutWire?: string,
): (a: string, b: string) => boolean {
  const joined = new Joined();
  for (const [from, list] of wiring.joints)
    for (const {to, wire} of list) if (!wire || wire.id !== withoutWire) joined.join(from, to);
  return (a, b) => joined.find(a) === joined.find(b);
}
