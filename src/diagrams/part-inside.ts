import type {Part} from '../content/unit.ts';
import type {Point} from './drawing.ts';
import {elementSymbol} from './element-symbol.ts';
import {
  LUG_PITCH,
  RING,
  type Lug,
  type PartGeometry,
  type PartLabel,
  type PartSymbol,
  type PartTerminal,
  type Side,
} from './part-geometry.ts';
import type {TerminalGroup} from './terminal-groups.ts';
import {labelWidth} from './text-width.ts';
import {localName} from './wiring.ts';

/** A terminal on its side of a part, with the wires on it. */
export interface Standing {
  readonly terminal: string;
  readonly side: Side;
  readonly y: number;
  readonly wires: readonly string[];
}

/** Room that the symbols need between the two columns of names. */
export function insideWidth(
  part: Part,
  groups: readonly TerminalGroup[],
  sideOf: (terminal: string) => Side,
): number {
  if (part.kind === 'psc-motor' || part.kind === 'three-phase-motor') return 40;
  if (part.kind === 'dual-capacitor' || part.kind === 'supply') return 34;
  if (part.kind === 'ground-lug') return 24;
  if (part.kind === 'transformer') return 62;
  const pairs = groups.filter((group) => group.edge);
  if (pairs.length === 0) return 14;
  const across = pairs.some((group) => new Set(group.terminals.map(sideOf)).size === 2);
  return across ? 58 : 52;
}

/** Terminals, names, lugs and symbols of a part whose terminals stand. */
export function dress(
  part: Part,
  groups: readonly TerminalGroup[],
  all: readonly Standing[],
  frame: {
    readonly width: number;
    readonly height: number;
    readonly top: number;
    readonly labels: readonly PartLabel[];
  },
  nameWidth: (side: Side) => number,
  sideOf: (terminal: string) => Side,
): PartGeometry {
  const {width, height} = frame;
  const lugs: Lug[] = [];
  const terminals: PartTerminal[] = [];
  const labels: PartLabel[] = [...frame.labels];
  for (const {terminal, side, y, wires} of all) {
    const x = side === 'left' ? 0 : width;
    const several = wires.length > 1;
    terminals.push({
      terminal,
      x,
      y,
      shape: several ? 'pill' : 'ring',
      width: 2 * RING,
      height: 2 * RING + Math.max(0, wires.length - 1) * LUG_PITCH,
    });
    wires.forEach((wire, k) =>
      lugs.push({wire, terminal, side, x, y: y + (k - (wires.length - 1) / 2) * LUG_PITCH}),
    );
    const start = side === 'left';
    labels.push({
      x: start ? 9 : width - 9,
      y: y + 4,
      text: localName(terminal),
      role: 'title',
      anchor: start ? 'start' : 'end',
      terminal,
    });
  }
  const drawn: PartSymbol[] = [];
  const lines: Point[][] = [];
  const inner = {left: nameWidth('left') + 13, right: width - nameWidth('right') - 13};
  const at = new Map(all.map((it) => [it.terminal, it]));
  const nameEnd = (terminal: string): number => {
    const own = labelWidth(localName(terminal), 'title');
    return sideOf(terminal) === 'left' ? own + 12 : width - own - 12;
  };
  for (const group of groups) {
    if (!group.edge) continue;
    const shown = elementSymbol(group.edge);
    const tag =
      shown.inside !== undefined && labelWidth(shown.inside, 'tag') <= 24
        ? {tag: shown.inside}
        : {};
    const ends = group.terminals.map((terminal) => at.get(terminal)!);
    const [first, last] = [ends[0]!, ends[ends.length - 1]!];
    if (ends.length === 2 && first.side !== last.side) {
      const x = (inner.left + inner.right) / 2;
      drawn.push({
        symbol: shown.symbol,
        edge: group.edge,
        x,
        y: first.y,
        turns: 0,
        mirrored: first.side === 'right',
        width: 48,
        ...tag,
      });
      for (const end of ends)
        lines.push([
          {x: nameEnd(end.terminal), y: end.y},
          {x: x + (end.side === 'left' ? -24 : 24), y: end.y},
        ]);
      continue;
    }
    // both on one side: the symbol stands upright between them
    const side = first.side;
    const x =
      part.kind === 'transformer'
        ? width / 2 + (side === 'left' ? -13 : 13)
        : side === 'left'
          ? Math.max(inner.left + 22, width / 2)
          : Math.min(inner.right - 22, width / 2);
    const top = Math.min(first.y, last.y);
    const bottom = Math.max(first.y, last.y);
    const middle = (top + bottom) / 2;
    const length = Math.min(48, bottom - top);
    drawn.push({
      symbol: shown.symbol,
      edge: group.edge,
      x,
      y: middle,
      turns: 1,
      mirrored: false,
      width: length,
      ...tag,
    });
    for (const end of [first, last]) {
      lines.push([
        {x: nameEnd(end.terminal), y: end.y},
        {x, y: end.y},
        {x, y: end.y === top ? middle - length / 2 : middle + length / 2},
      ]);
    }
  }
  if (part.kind === 'psc-motor' || part.kind === 'three-phase-motor')
    drawn.push({
      symbol: 'motor',
      tag: 'M',
      x: (inner.left + inner.right) / 2,
      y: (frame.top + height - 4) / 2,
      turns: 0,
      mirrored: false,
      width: 30,
    });
  const middle = {x: (inner.left + inner.right) / 2, y: (frame.top + height - 4) / 2};
  if (part.kind === 'supply')
    drawn.push({symbol: 'source', ...middle, turns: 0, mirrored: false, width: 28});
  if (part.kind === 'dual-capacitor')
    for (const dy of [-13, 13])
      drawn.push({
        symbol: 'capacitor',
        x: middle.x,
        y: middle.y + dy,
        turns: 0,
        mirrored: false,
        width: 28,
      });
  if (part.kind === 'ground-lug')
    drawn.push({
      symbol: 'earth',
      x: (inner.left + inner.right) / 2,
      y: (frame.top + height - 2) / 2,
      turns: 0,
      mirrored: false,
      width: 18,
    });
  return {width, height, lugs, terminals, labels, symbols: drawn, lines, lugLines: []};
}
