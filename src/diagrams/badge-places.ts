import type {Drawing, Point} from './drawing.ts';
import {textWidth} from './text-width.ts';

/** A word about a part that a person at the unit sees or hears: "pulled in", "running". */
export interface Badge extends Point {
  readonly part: string;
  readonly text: string;
  readonly width: number;
  /** How much larger it may be drawn, about its right end, while the drawing is seen from afar. */
  readonly most: number;
}

export const BADGE_SIZE = 10;
export const BADGE_HEIGHT = 15;
/** As far as there is room over and under the edge of a part. */
const LARGEST = 1.45;

/**
 * Where badges go: on the top edge of the part in the connection view; in the ladder on the free line
 * before the part's load, or above its caption where the line is short.
 */
export function placeBadges(
  drawing: Drawing,
  words: readonly {readonly part: string; readonly text: string}[],
): Badge[] {
  const byPart = new Map<string, string[]>();
  for (const {part, text} of words) byPart.set(part, [...(byPart.get(part) ?? []), text]);
  const badges: Badge[] = [];
  for (const [part, texts] of byPart) {
    const text = [...new Set(texts)].join(', ');
    const width = textWidth(text, BADGE_SIZE, true) + 12;
    const at = placeFor(drawing, part, width);
    if (!at) continue;
    const outline = drawing.parts.find((box) => box.part === part);
    const room = drawing.view === 'connection' && outline ? (outline.width - 6) / width : 1;
    badges.push({part, text, width, ...at, most: Math.max(1, Math.min(LARGEST, room))});
  }
  return badges;
}

/** Shapes that a state belongs to before all others: what moves, lights or hums. */
const actors = ['coil', 'solenoid', 'lamp', 'module', 'heater', 'breaker-pole', 'disconnect-pole'];

function placeFor(drawing: Drawing, part: string, width: number): Point | undefined {
  const outline = drawing.parts.find((box) => box.part === part);
  if (outline) {
    const bottom = outline.y + outline.height;
    // on the lower edge: at its right end, or in the middle where terminals stand at the ends
    if (drawing.view === 'connection')
      return {x: outline.x + outline.width - width / 2 - 6, y: bottom};
    return {x: outline.x + outline.width / 2, y: bottom + 2};
  }
  const symbols = drawing.symbols.filter((symbol) => symbol.part === part);
  // a board is where it is fed, not where one of its inputs is drawn
  const symbol =
    symbols.find((it) => it.element === `${part}.supply`) ??
    symbols.find((it) => actors.includes(it.symbol)) ??
    symbols[0];
  if (!symbol) return undefined;
  const before = symbol.x - (symbol.width ?? 48) / 2 - 10;
  const free = [
    ...drawing.wires.flatMap(({paths}) => paths),
    ...drawing.lines.map(({points}) => points),
  ].find((path) => {
    const [from, to] = [path[0]!, path[path.length - 1]!];
    const right = Math.max(from.x, to.x);
    return (
      from.y === symbol.y &&
      to.y === symbol.y &&
      right <= before + 8 &&
      right > before - 20 &&
      Math.abs(to.x - from.x) > width + 24
    );
  });
  if (free)
    return {x: Math.max(free[0]!.x, free[free.length - 1]!.x) - 10 - width / 2, y: symbol.y};
  const captions = drawing.labels.filter(
    (label) =>
      label.part === part &&
      label.y < symbol.y &&
      symbol.y - label.y < 60 &&
      Math.abs(label.x - symbol.x) < 30,
  );
  const top = Math.min(symbol.y - 12, ...captions.map(({y}) => y - 8));
  return {x: symbol.x, y: top - BADGE_HEIGHT / 2 - 4};
}
