import type {Part} from '../content/unit.ts';
import type {LabelRole, Point} from './drawing.ts';
import {elementSymbol} from './element-symbol.ts';
import {edgesOf, isHidden, localName, type Edge} from './wiring.ts';
import {symbols, type SymbolName} from './symbols.ts';
import {labelWidth, twoLines} from './text-width.ts';

export type Side = 'left' | 'right';

/** Terminals of a part that belong together: the two ends of a contact or coil, or one on its own. */
export interface TerminalGroup {
  readonly terminals: readonly string[];
  /** Drawn between the two, where the group is a pair. */
  readonly edge?: Edge;
}

/** What a layout decides about one part; its geometry follows from it. */
export interface PartDecision {
  /** Order of the groups from top to bottom, as indices into {@link groupsOf}. */
  readonly order: readonly number[];
  /** Side of each terminal, in the part's own terminal order. Ignored for strips, which have both. */
  readonly sides: readonly Side[];
  /** Wire ends on each terminal's lugs, top to bottom: terminal → ids of wires. Left and right apart for strips. */
  readonly lugs: Readonly<Record<string, readonly string[]>>;
}

/** A wire end at the edge of a part. */
export interface Lug extends Point {
  readonly wire: string;
  readonly terminal: string;
  readonly side: Side;
}

export interface PartGeometry {
  readonly width: number;
  readonly height: number;
  readonly lugs: readonly Lug[];
  readonly terminals: readonly PartTerminal[];
  readonly symbols: readonly PartSymbol[];
  readonly labels: readonly PartLabel[];
  readonly lines: readonly (readonly Point[])[];
  /** From a strip's tag to its lugs. */
  readonly lugLines: readonly {readonly terminal: string; readonly points: readonly Point[]}[];
}

export interface PartTerminal extends Point {
  readonly terminal: string;
  readonly shape: 'ring' | 'pill' | 'tag';
  readonly width: number;
  readonly height: number;
  readonly text?: string;
}

export interface PartSymbol extends Point {
  readonly symbol: SymbolName;
  readonly edge?: Edge;
  readonly tag?: string;
  readonly turns: 0 | 1;
  readonly mirrored: boolean;
  readonly width: number;
}

export interface PartLabel extends Point {
  readonly text: string;
  readonly role: LabelRole;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly terminal?: string;
}

/** Least distance between two terminals of one side; at 1280 pixels' width it must still be 24. */
export const ROW_PITCH = 29;
/** Distance between two wires on one terminal. */
export const LUG_PITCH = 9;
/** Length of a symbol that stands upright between two terminals of one side. */
const UPRIGHT = 36;
const FOOT = 10;
const RING = 4.5;

/** Parts that show as a row of tags with wires on both sides. */
export const isStrip = (part: Part): boolean => part.kind === 'terminal-strip' || part.kind === 'splice';

/** Parts that show their terminals only: what is inside is not drawn, as on the maker's own print. */
const boards = new Set(['thermostat', 'defrost-board', 'supply', 'psc-motor', 'dual-capacitor', 'ground-lug']);

/** The groups of a part's terminals in their natural order. */
export function groupsOf(part: Part): TerminalGroup[] {
  const all = part.terminals.map((name) => `${part.id}.${name}`);
  if (isStrip(part) || boards.has(part.kind)) return all.map((terminal) => ({terminals: [terminal]}));
  const groups: TerminalGroup[] = [];
  const taken = new Set<string>();
  const take = (terminals: readonly string[], edge?: Edge): void => {
    for (const terminal of terminals) taken.add(terminal);
    groups.push(edge ? {terminals, edge} : {terminals});
  };
  const edges = edgesOf({parts: [part]});
  if (part.kind === 'transformer') {
    const secondary = edges.find(({winding}) => winding.startsWith('secondary'))!;
    take(all.filter((terminal) => terminal !== secondary.a && terminal !== secondary.b), edges[0]);
    take([secondary.a, secondary.b], secondary);
    return groups;
  }
  // a contact says more about its part than what feeds the part's electronics
  const contactsFirst = [...edges].sort((a, b) => Number(b.element.is === 'contact') - Number(a.element.is === 'contact'));
  for (const edge of contactsFirst)
    if (!taken.has(edge.a) && !taken.has(edge.b) && !isHidden(edge.a) && !isHidden(edge.b) && edge.a !== edge.b)
      take([edge.a, edge.b], edge);
  for (const terminal of all) if (!taken.has(terminal)) take([terminal]);
  const place = (group: TerminalGroup): number => Math.min(...group.terminals.map((terminal) => all.indexOf(terminal)));
  return groups.sort((a, b) => place(a) - place(b));
}

const CAPTION_FITS = 92;
const LINE = 11.5;

/** What is written over a part: its designator, then what a technician calls it on one or two lines. */
function titleOf(part: Part): {readonly labels: readonly PartLabel[]; readonly width: number; readonly height: number} {
  const caption = part.kind === 'ground-lug' ? [] : twoLines(part.title, 'caption', CAPTION_FITS);
  const width = Math.max(labelWidth(part.id, 'title'), ...caption.map((line) => labelWidth(line, 'caption')));
  const labels: PartLabel[] = [{x: 0, y: 16, text: part.id, role: 'title', anchor: 'middle'}];
  caption.forEach((text, i) => labels.push({x: 0, y: 28 + i * LINE, text, role: 'caption', anchor: 'middle'}));
  return {labels, width: width + 16, height: 22 + caption.length * LINE};
}

const centred = (labels: readonly PartLabel[], x: number): PartLabel[] => labels.map((label) => ({...label, x}));

/** Size, terminals, lugs and inside of a part for a decision, with the part's corner at (0, 0). */
export function partGeometry(part: Part, decision: PartDecision): PartGeometry {
  return isStrip(part) ? stripGeometry(part, decision) : deviceGeometry(part, decision);
}

function stripGeometry(part: Part, decision: PartDecision): PartGeometry {
  const names = part.terminals;
  const tagWidth = Math.max(24, ...names.map((name) => labelWidth(name, 'title') + 12));
  const title = titleOf(part);
  const width = Math.max(tagWidth + 46, title.width);
  const terminals: PartTerminal[] = [];
  const lugs: Lug[] = [];
  const lugLines: {terminal: string; points: Point[]}[] = [];
  let y = title.height - 2;
  let previous = 0;
  for (const index of decision.order) {
    const terminal = `${part.id}.${names[index]!}`;
    const sides = (['left', 'right'] as const).map((side) => decision.lugs[`${terminal}:${side}`] ?? []);
    const most = Math.max(1, ...sides.map((list) => list.length));
    const height = ROW_PITCH + (most - 1) * LUG_PITCH;
    y += (previous + height) / 2;
    previous = height;
    terminals.push({terminal, x: width / 2, y, shape: 'tag', width: tagWidth, height: 18, text: names[index]!});
    sides.forEach((list, i) =>
      list.forEach((wire, k) => {
        const x = i === 0 ? 0 : width;
        const lugY = y + (k - (list.length - 1) / 2) * LUG_PITCH;
        lugs.push({wire, terminal, side: i === 0 ? 'left' : 'right', x, y: lugY});
        const start = {x: width / 2 + ((i === 0 ? -1 : 1) * tagWidth) / 2, y};
        lugLines.push({terminal, points: [start, {x, y: lugY}]});
      }),
    );
  }
  return {
    width,
    height: y + previous / 2 + FOOT - 6,
    lugs,
    terminals,
    symbols: [],
    lines: [],
    lugLines,
    labels: centred(title.labels, width / 2),
  };
}

interface Standing {
  readonly terminal: string;
  readonly side: Side;
  readonly y: number;
  readonly wires: readonly string[];
}

function deviceGeometry(part: Part, decision: PartDecision): PartGeometry {
  const groups = groupsOf(part);
  const sideOf = (terminal: string): Side => decision.sides[part.terminals.indexOf(localName(terminal))] ?? 'left';
  const wiresOn = (terminal: string): readonly string[] => decision.lugs[terminal] ?? [];
  const heightOf = (terminal: string): number => ROW_PITCH + Math.max(0, wiresOn(terminal).length - 1) * LUG_PITCH;
  const title = titleOf(part);
  const top = title.height - 2;
  const next: Record<Side, number> = {left: top, right: top};
  const standing = new Map<string, Standing>();
  const stand = (terminal: string, y: number): void => {
    standing.set(terminal, {terminal, side: sideOf(terminal), y, wires: wiresOn(terminal)});
  };
  for (const index of decision.order) {
    const group = groups[index]!;
    const sides = new Set(group.terminals.map(sideOf));
    if (group.terminals.length === 2 && sides.size === 2) {
      const height = Math.max(...group.terminals.map(heightOf));
      const y = Math.max(next.left, next.right) + height / 2;
      for (const terminal of group.terminals) stand(terminal, y);
      next.left = next.right = y + height / 2;
      continue;
    }
    // a pair on one side starts level with nothing on the other, or its symbol would meet another's
    if (group.edge) next.left = next.right = Math.max(next.left, next.right);
    group.terminals.forEach((terminal, i) => {
      const side = sideOf(terminal);
      const last = group.terminals[i - 1];
      // the symbol stands upright between the two: they keep its length
      const room = group.edge && last !== undefined && sideOf(last) === side && group.terminals.length === 2 ? UPRIGHT : 0;
      const y = Math.max(next[side] + heightOf(terminal) / 2, room > 0 ? standing.get(last!)!.y + room : 0);
      stand(terminal, y);
      next[side] = y + heightOf(terminal) / 2;
    });
    if (group.edge && part.kind !== 'transformer') next.left = next.right = Math.max(next.left, next.right);
    if (group.edge && part.kind === 'transformer' && sides.size === 1) {
      // primary and secondary may stand beside each other on their two sides
      const other = groups.find((it) => it !== group)!;
      const facing = other.terminals.every((terminal) => sideOf(terminal) !== [...sides][0]);
      if (facing && !standing.has(other.terminals[0]!)) next[[...sides][0] === 'left' ? 'right' : 'left'] = top;
    }
  }
  const bottom = Math.max(next.left, next.right);
  const all = [...standing.values()];
  const nameWidth = (side: Side): number =>
    Math.max(0, ...all.filter((it) => it.side === side).map((it) => labelWidth(localName(it.terminal), 'title')));
  const inside = insideWidth(part, groups, sideOf);
  const width = Math.max(
    nameWidth('left') + nameWidth('right') + inside + 30,
    title.width,
    part.kind === 'ground-lug' ? 58 : 78,
  );
  const height = Math.max(bottom + FOOT - 6, title.height + 30);
  return dress(part, groups, all, {width, height, top: title.height, labels: centred(title.labels, width / 2)}, nameWidth, sideOf);
}

/** Room that the symbols need between the two columns of names. */
function insideWidth(part: Part, groups: readonly TerminalGroup[], sideOf: (terminal: string) => Side): number {
  if (part.kind === 'psc-motor') return 40;
  if (part.kind === 'dual-capacitor' || part.kind === 'supply') return 34;
  if (part.kind === 'ground-lug') return 24;
  if (part.kind === 'transformer') return 62;
  const pairs = groups.filter((group) => group.edge);
  if (pairs.length === 0) return 14;
  const across = pairs.some((group) => new Set(group.terminals.map(sideOf)).size === 2);
  return across ? 58 : 52;
}

function dress(
  part: Part,
  groups: readonly TerminalGroup[],
  all: readonly Standing[],
  frame: {readonly width: number; readonly height: number; readonly top: number; readonly labels: readonly PartLabel[]},
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
    wires.forEach((wire, k) => lugs.push({wire, terminal, side, x, y: y + (k - (wires.length - 1) / 2) * LUG_PITCH}));
    const start = side === 'left';
    labels.push({x: start ? 9 : width - 9, y: y + 4, text: localName(terminal), role: 'title', anchor: start ? 'start' : 'end', terminal});
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
    const tag = shown.inside !== undefined && labelWidth(shown.inside, 'tag') <= 24 ? {tag: shown.inside} : {};
    const ends = group.terminals.map((terminal) => at.get(terminal)!);
    const [first, last] = [ends[0]!, ends[ends.length - 1]!];
    if (ends.length === 2 && first.side !== last.side) {
      const x = (inner.left + inner.right) / 2;
      drawn.push({symbol: shown.symbol, edge: group.edge, x, y: first.y, turns: 0, mirrored: first.side === 'right', width: 48, ...tag});
      for (const end of ends)
        lines.push([
          {x: nameEnd(end.terminal), y: end.y},
          {x: x + (end.side === 'left' ? -24 : 24), y: end.y},
        ]);
      continue;
    }
    // both on one side: the symbol stands upright between them
    const side = first.side;
    const x = part.kind === 'transformer' ? width / 2 + (side === 'left' ? -13 : 13) : side === 'left' ? Math.max(inner.left + 22, width / 2) : Math.min(inner.right - 22, width / 2);
    const top = Math.min(first.y, last.y);
    const bottom = Math.max(first.y, last.y);
    const middle = (top + bottom) / 2;
    const length = Math.min(48, bottom - top);
    drawn.push({symbol: shown.symbol, edge: group.edge, x, y: middle, turns: 1, mirrored: false, width: length, ...tag});
    for (const end of [first, last]) {
      lines.push([
        {x: nameEnd(end.terminal), y: end.y},
        {x, y: end.y},
        {x, y: end.y === top ? middle - length / 2 : middle + length / 2},
      ]);
    }
  }
  if (part.kind === 'psc-motor')
    drawn.push({symbol: 'motor', tag: 'M', x: (inner.left + inner.right) / 2, y: (frame.top + height - 4) / 2, turns: 0, mirrored: false, width: 30});
  const middle = {x: (inner.left + inner.right) / 2, y: (frame.top + height - 4) / 2};
  if (part.kind === 'supply') drawn.push({symbol: 'source', ...middle, turns: 0, mirrored: false, width: 28});
  if (part.kind === 'dual-capacitor')
    for (const dy of [-13, 13])
      drawn.push({symbol: 'capacitor', x: middle.x, y: middle.y + dy, turns: 0, mirrored: false, width: 28});
  if (part.kind === 'ground-lug')
    drawn.push({symbol: 'earth', x: (inner.left + inner.right) / 2, y: (frame.top + height - 2) / 2, turns: 0, mirrored: false, width: 18});
  return {width, height, lugs, terminals, labels, symbols: drawn, lines, lugLines: []};
}

/** Ink of a symbol either side of its axis when it stands upright. */
export const uprightReach = (name: SymbolName): number => Math.max(symbols[name].above, symbols[name].below);
