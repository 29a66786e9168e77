import type {Part} from '../content/unit.ts';
import type {Point} from './drawing.ts';
import {
  LUG_PITCH,
  ROW_PITCH,
  type Lug,
  type PartDecision,
  type PartGeometry,
  type PartLabel,
  type PartTerminal,
  type Side,
} from './part-geometry.ts';
import {dress, insideWidth, type Standing} from './part-inside.ts';
import {groupsOf, isStrip} from './terminal-groups.ts';
import {labelWidth, twoLines} from './text-width.ts';
import {localName} from './wiring.ts';

/** Length of a symbol that stands upright between two terminals of one side. */
const UPRIGHT = 36;
const FOOT = 10;

const CAPTION_FITS = 92;
/** Two lines of a name may be this wide before a third is taken. */
const CAPTION_WIDEST = 108;
const LINE = 11.5;
const AFTER_DESIGNATOR = 5;

/**
 * What is written over a part: its designator and, after it, what a technician calls it, on as few lines as
 * fit. Labels have x from the part's middle.
 */
function titleOf(part: Part): {
  readonly labels: readonly PartLabel[];
  readonly width: number;
  readonly height: number;
} {
  const designator = labelWidth(part.id, 'title');
  // a number stays with its unit
  const words = part.kind === 'ground-lug' ? [] : part.title.split(/(?<!\d) /);
  const widthOf = (some: readonly string[]): number => labelWidth(some.join(' '), 'caption');
  /** The first so many words stand beside the designator, the others on lines of their own. */
  const after = (beside: number): {beside: string; below: readonly string[]; width: number} => {
    const first = words.slice(0, beside);
    const rest = words.slice(beside);
    const head = designator + (beside > 0 ? AFTER_DESIGNATOR + widthOf(first) : 0);
    return {
      beside: first.join(' '),
      below: rest.length > 0 ? [rest.join(' ')] : [],
      width: Math.max(head, widthOf(rest)),
    };
  };
  let best = after(words.length);
  if (best.width > CAPTION_FITS) {
    best = words.map((_, beside) => after(beside)).reduce((a, b) => (b.width < a.width ? b : a));
    if (best.width > CAPTION_WIDEST) {
      const below = twoLines(words.join(' '), 'caption', CAPTION_FITS);
      const width = Math.max(designator, ...below.map((line) => labelWidth(line, 'caption')));
      best = {beside: '', below, width};
    }
  }
  const {beside, below, width} = best;
  const head = designator + (beside ? AFTER_DESIGNATOR + labelWidth(beside, 'caption') : 0);
  const labels: PartLabel[] = [
    {x: -head / 2, y: 16, text: part.id, role: 'title', anchor: 'start'},
  ];
  if (beside)
    labels.push({
      x: -head / 2 + designator + AFTER_DESIGNATOR,
      y: 16,
      text: beside,
      role: 'caption',
      anchor: 'start',
    });
  below.forEach((text, i) =>
    labels.push({x: 0, y: 28 + i * LINE, text, role: 'caption', anchor: 'middle'}),
  );
  return {labels, width: width + 16, height: 22 + below.length * LINE};
}

const centred = (labels: readonly PartLabel[], x: number): PartLabel[] =>
  labels.map((label) => ({...label, x: x + label.x}));

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
    const sides = (['left', 'right'] as const).map(
      (side) => decision.lugs[`${terminal}:${side}`] ?? [],
    );
    const most = Math.max(1, ...sides.map((list) => list.length));
    const height = ROW_PITCH + (most - 1) * LUG_PITCH;
    y += (previous + height) / 2;
    previous = height;
    terminals.push({
      terminal,
      x: width / 2,
      y,
      shape: 'tag',
      width: tagWidth,
      height: 18,
      text: names[index]!,
    });
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

function deviceGeometry(part: Part, decision: PartDecision): PartGeometry {
  const groups = groupsOf(part);
  const sideOf = (terminal: string): Side =>
    decision.sides[part.terminals.indexOf(localName(terminal))] ?? 'left';
  const wiresOn = (terminal: string): readonly string[] => decision.lugs[terminal] ?? [];
  const heightOf = (terminal: string): number =>
    ROW_PITCH + Math.max(0, wiresOn(terminal).length - 1) * LUG_PITCH;
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
      const room =
        group.edge && last !== undefined && sideOf(last) === side && group.terminals.length === 2
          ? UPRIGHT
          : 0;
      const y = Math.max(
        next[side] + heightOf(terminal) / 2,
        room > 0 ? standing.get(last!)!.y + room : 0,
      );
      stand(terminal, y);
      next[side] = y + heightOf(terminal) / 2;
    });
    if (group.edge && part.kind !== 'transformer')
      next.left = next.right = Math.max(next.left, next.right);
    if (group.edge && part.kind === 'transformer' && sides.size === 1) {
      // primary and secondary may stand beside each other on their two sides
      const other = groups.find((it) => it !== group)!;
      const facing = other.terminals.every((terminal) => sideOf(terminal) !== [...sides][0]);
      if (facing && !standing.has(other.terminals[0]!))
        next[[...sides][0] === 'left' ? 'right' : 'left'] = top;
    }
  }
  const bottom = Math.max(next.left, next.right);
  const all = [...standing.values()];
  const nameWidth = (side: Side): number =>
    Math.max(
      0,
      ...all
        .filter((it) => it.side === side)
        .map((it) => labelWidth(localName(it.terminal), 'title')),
    );
  const inside = insideWidth(part, groups, sideOf);
  const width = Math.max(
    nameWidth('left') + nameWidth('right') + inside + 30,
    title.width,
    part.kind === 'ground-lug' ? 58 : 78,
  );
  const height = Math.max(bottom + FOOT - 6, title.height + 30);
  return dress(
    part,
    groups,
    all,
    {width, height, top: title.height, labels: centred(title.labels, width / 2)},
    nameWidth,
    sideOf,
  );
}
