import type {Unit} from '../content/unit.ts';
import type {Decisions, Placement} from './connection-graph.ts';
import type {PartDecision, Side} from './part-geometry.ts';
import {isStrip} from './terminal-groups.ts';
import type {Box, Point} from './drawing.ts';

/** Raised when geometry of parts or the meaning of a layout file changes: old files no longer fit. */
export const LAYOUT_VERSION = 2;

type BoxNumbers = readonly [x: number, y: number, width: number, height: number];

/** A connection layout as committed beside a unit: places and decisions, no state and no fault. */
export interface LayoutFile {
  readonly unit: string;
  readonly version: number;
  /** {@link structureHash} of the unit it was made for. */
  readonly hash: string;
  readonly seed: number;
  readonly size: readonly [width: number, height: number];
  readonly enclosures: Readonly<Record<string, BoxNumbers>>;
  /** Corner, order of terminal groups, sides as a word of l and r. */
  readonly parts: Readonly<
    Record<string, readonly [x: number, y: number, order: readonly number[], sides: string]>
  >;
  /** x, y of the corner points of each wire, one after another, from its `from` end to its `to` end. */
  readonly wires: Readonly<Record<string, readonly number[]>>;
}

/** Hash of everything about a unit that its drawing depends on: FNV-1a over its structure, 64 bits as two halves. */
export function structureHash(unit: Unit): string {
  const text = JSON.stringify([
    LAYOUT_VERSION,
    unit.enclosures.map(({id}) => id),
    unit.parts.map((part) => [part.id, part.kind, part.title, part.enclosure, part.terminals]),
    unit.wires.map(({id, from, to, colour}) => [id, from, to, colour]),
  ]);
  let high = 0x811c9dc5;
  let low = 0x01000193;
  for (let i = 0; i < text.length; i++) {
    high = Math.imul(high ^ text.charCodeAt(i), 0x01000193);
    low = Math.imul(low ^ text.charCodeAt(text.length - 1 - i), 0x01000193);
  }
  return [high, low].map((half) => (half >>> 0).toString(16).padStart(8, '0')).join('');
}

const numbers = ({x, y, width, height}: Box): BoxNumbers => [x, y, width, height];

/** A search's result as a file. */
export function toLayoutFile(
  unit: Unit,
  {decisions, placement}: {readonly decisions: Decisions; readonly placement: Placement},
): LayoutFile {
  return {
    unit: unit.id,
    version: LAYOUT_VERSION,
    hash: structureHash(unit),
    seed: decisions.seed,
    size: [placement.width, placement.height],
    enclosures: Object.fromEntries(
      Object.entries(placement.enclosures).map(([id, box]) => [id, numbers(box)]),
    ),
    parts: Object.fromEntries(
      unit.parts.map((part) => {
        const {order, sides} = decisions.parts[part.id]!;
        const {x, y} = placement.parts[part.id]!;
        return [part.id, [x, y, order, sides.map((side) => side[0]).join('')]];
      }),
    ),
    wires: Object.fromEntries(
      unit.wires.map(({id}) => [id, (placement.wires[id] ?? []).flatMap(({x, y}) => [x, y])]),
    ),
  };
}

/** Corner points of a wire of a layout file. */
export function wirePoints(file: LayoutFile, wire: string): Point[] {
  const flat = file.wires[wire] ?? [];
  return Array.from({length: flat.length / 2}, (_, i) => ({x: flat[2 * i]!, y: flat[2 * i + 1]!}));
}

/**
 * Decisions of every part, lugs read back from where the wires end: a wire belongs to the side and the
 * height at which it meets its part.
 */
export function decisionsOf(unit: Unit, file: LayoutFile): Readonly<Record<string, PartDecision>> {
  const ends = new Map<string, {wire: string; x: number; y: number}[]>();
  for (const {id, from, to} of unit.wires) {
    const points = wirePoints(file, id);
    const [first, last] = [points[0], points[points.length - 1]];
    if (!first || !last) continue;
    ends.set(from, [...(ends.get(from) ?? []), {wire: id, ...first}]);
    ends.set(to, [...(ends.get(to) ?? []), {wire: id, ...last}]);
  }
  return Object.fromEntries(
    unit.parts.map((part): [string, PartDecision] => {
      const [x, , order, sides] = file.parts[part.id]!;
      const lugs: Record<string, readonly string[]> = {};
      for (const name of part.terminals) {
        const terminal = `${part.id}.${name}`;
        const list = [...(ends.get(terminal) ?? [])].sort((a, b) => a.y - b.y);
        if (isStrip(part)) {
          lugs[`${terminal}:left`] = list
            .filter((end) => Math.abs(end.x - x) < 1)
            .map(({wire}) => wire);
          lugs[`${terminal}:right`] = list
            .filter((end) => Math.abs(end.x - x) >= 1)
            .map(({wire}) => wire);
        } else if (list.length > 0) lugs[terminal] = list.map(({wire}) => wire);
      }
      return [
        part.id,
        {order, sides: [...sides].map((letter): Side => (letter === 'l' ? 'left' : 'right')), lugs},
      ];
    }),
  );
}
