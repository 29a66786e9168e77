import {elementSymbol, type ElementSymbol} from './element-symbol.ts';
import type {Item} from './ladder-row.ts';
import type {LabelRole} from './drawing.ts';
import {SYMBOL_REACH, symbols} from './symbols.ts';
import {labelWidth, twoLines} from './text-width.ts';
import {localName, type Edge, type Wiring} from './wiring.ts';

/** Room that an item takes left and right of its column, on one track. Absent where it takes none. */
export type Reach = readonly [left: number, right: number];

export interface Letter {
  readonly dx: number;
  readonly dy: number;
  readonly text: string;
  readonly role: LabelRole;
  readonly anchor: 'start' | 'middle' | 'end';
}

/** An item with its lettering and the room it needs: over the line, on it, just under it, further down. */
export interface Lettered {
  readonly item: Item;
  readonly tracks: readonly [over?: Reach, line?: Reach, under?: Reach, below?: Reach];
  readonly above: number;
  readonly below: number;
  readonly letters: readonly Letter[];
  readonly symbol?: ElementSymbol;
  /** Half of the symbol's width. */
  readonly half: number;
}

/** Radius of a terminal's ring. */
export const RING = 4.5;
/** Widest caption on one line, between neighbours and on a row with room. */
const CAPTION_FITS = 74;
const CAPTION_FITS_ALONE = 104;

/** Cross-references of an element's part: what is written under coils and contacts. */
export type References = (edge: Edge) => string;

/** Text of a flag or strip: `TB1·C`. */
export const dotted = (terminal: string): string => terminal.replace('.', '·').replace('~', '');

/** Letters an item. `branches` tells that a vertical hangs under a terminal, so its name moves aside. */
export function letter(
  item: Item,
  wiring: Wiring,
  branches: boolean,
  references: References,
  crowded: boolean,
): Lettered {
  switch (item.is) {
    case 'rail':
    case 'tap':
    case 'crossing':
      return {
        item,
        tracks: [undefined, [1, 1], item.is === 'crossing' ? [2, 2] : undefined],
        above: 4,
        below: 4,
        letters: [],
        half: 0,
      };
    case 'node':
      return {
        item,
        tracks: [undefined, [3, 3], branches ? [3, 3] : undefined],
        above: 4,
        below: 4,
        letters: [],
        half: 0,
      };
    case 'flag': {
      const text = dotted(item.terminal);
      const width = flagWidth(item.terminal);
      const reach: Reach = item.side === 'left' ? [width, 0] : [0, width];
      return {
        item,
        tracks: [reach, reach, reach],
        above: 10,
        below: 10,
        half: 0,
        letters: [
          {
            dx: item.side === 'left' ? -width / 2 - 3 : width / 2 + 3,
            dy: 3.8,
            text,
            role: 'terminal',
            anchor: 'middle',
          },
        ],
      };
    }
    case 'terminal':
      return letterTerminal(item, wiring, branches);
    case 'symbol':
      return letterSymbol(item, references, crowded ? CAPTION_FITS : CAPTION_FITS_ALONE);
  }
}

/** Width of the pentagon around a terminal's name. */
export const flagWidth = (terminal: string): number =>
  labelWidth(dotted(terminal), 'terminal') + 18;

function letterTerminal(
  item: Item & {is: 'terminal'},
  wiring: Wiring,
  branches: boolean,
): Lettered {
  const name = localName(item.terminal);
  const width = labelWidth(name, 'terminal');
  const letters: Letter[] = [
    branches
      ? {dx: -6, dy: 16.5, text: name, role: 'terminal', anchor: 'end'}
      : {dx: 0, dy: 16.5, text: name, role: 'terminal', anchor: 'middle'},
  ];
  const strip = item.through ? wiring.partOf(item.terminal).id : '';
  const stripHalf = labelWidth(strip, 'strip') / 2;
  if (strip) letters.push({dx: 0, dy: -9, text: strip, role: 'strip', anchor: 'middle'});
  return {
    item,
    tracks: [
      strip ? [stripHalf, stripHalf] : undefined,
      [RING, RING],
      branches ? [width + 6, 2] : [width / 2, width / 2],
    ],
    above: strip ? 19 : 6,
    below: 20,
    letters,
    half: 0,
  };
}

function letterSymbol(
  item: Item & {is: 'symbol'},
  references: References,
  captionFits: number,
): Lettered {
  const symbol = elementSymbol(item.edge);
  const shape = symbols[symbol.symbol];
  const inside = symbol.inside ?? '';
  const half =
    symbol.symbol === 'module'
      ? Math.max(SYMBOL_REACH, labelWidth(inside, 'tag') / 2 + 8)
      : SYMBOL_REACH;
  const letters: Letter[] = [];
  // a coil's circle holds a short designator; a long one goes above it
  const fits = symbol.symbol === 'module' || labelWidth(inside, 'tag') <= 24;
  const tag = symbol.tag || (inside && !fits ? inside : '');
  let top = -Math.max(shape.above, 8) - 5;
  let over = 0;
  if (tag) {
    letters.push({dx: 0, dy: top, text: tag, role: 'tag', anchor: 'middle'});
    over = labelWidth(tag, 'tag') / 2;
    top -= 13;
  }
  const caption = symbol.caption ? twoLines(symbol.caption, 'caption', captionFits) : [];
  for (const line of [...caption].reverse()) {
    letters.push({dx: 0, dy: top, text: line, role: 'caption', anchor: 'middle'});
    over = Math.max(over, labelWidth(line, 'caption') / 2);
    top -= 11.5;
  }
  let bottom = Math.max(shape.below, 5);
  let belowReach = 0;
  const note = [symbol.value, references(item.edge)].filter(Boolean).join('  ');
  if (note) {
    letters.push({
      dx: 0,
      dy: bottom + 11,
      text: note,
      role: symbol.value ? 'value' : 'reference',
      anchor: 'middle',
    });
    belowReach = labelWidth(note, 'value') / 2;
    bottom += 15;
  }
  // the note shares its height with the terminals' names where the symbol is shallow
  const noteIsUnder = note && Math.max(shape.below, 5) + 11 < 30;
  // a module's box reaches down into the names for its whole width
  const ink = symbol.symbol === 'module' ? half - 4 : shape.below > 5 ? 13 : 0;
  const underReach = Math.max(ink, noteIsUnder ? belowReach : 0);
  return {
    item,
    symbol,
    half,
    letters,
    tracks: [
      over ? [over, over] : undefined,
      [half, half],
      underReach ? [underReach, underReach] : undefined,
      undefined,
    ],
    above: -top - 2,
    below: bottom + 2,
  };
}

/** Least distance between two items of one row, left and right: no letters touch, no symbols crowd. */
export function leastBetween(left: Lettered, right: Lettered, neighbours: boolean): number {
  let least = neighbours ? apart(left, right) : 0;
  left.tracks.forEach((reach, i) => {
    const other = right.tracks[i];
    // a name moved aside may reach over its neighbour's line, never over its letters
    if (reach && other) least = Math.max(least, reach[1] + other[0] + (i === 1 ? 2 : 5));
  });
  return least;
}

function apart(left: Lettered, right: Lettered): number {
  const kinds = [left.item.is, right.item.is];
  if (kinds.includes('crossing')) return (left.half || right.half) + 14;
  if (kinds.includes('symbol')) {
    const half = left.half || right.half;
    return half + (kinds.includes('terminal') ? RING + 2.5 : kinds.includes('node') ? 8 : 12);
  }
  return 27;
}
