import type {WireColour} from '../content/unit.ts';
import type {Box, Drawing, Point} from './drawing.ts';
import {labelBox, textWidth} from './text-width.ts';

/** Two-letter colour codes as on wiring prints (common practice, after the letters of IEC 60757). */
export const colourCode: Readonly<Record<WireColour, string>> = {
  black: 'BK',
  white: 'WH',
  red: 'RD',
  blue: 'BU',
  green: 'GN',
  yellow: 'YE',
  orange: 'OG',
  brown: 'BN',
  purple: 'VT',
  grey: 'GY',
  pink: 'PK',
  tan: 'TN',
};

export interface WireLabel extends Point {
  readonly wire: string;
  readonly text: string;
  readonly width: number;
}

/** Type size in drawing units: read when zoomed in, and on paper. */
export const WIRE_LABEL_SIZE = 7.5;
const HEIGHT = WIRE_LABEL_SIZE + 2;

/**
 * A label such as `YE W25` for each wire, on one of its level stretches, clear of parts, letters and of
 * one another. Wires with no room get their number alone, or none: their name is still told when picked.
 */
export function labelWires(drawing: Drawing): WireLabel[] {
  const taken: Box[] = [
    ...(drawing.view === 'connection' ? drawing.parts : []),
    ...drawing.labels.map(labelBox),
    ...drawing.terminals.map(({x, y, width, height}) => ({x: x - width / 2, y: y - height / 2, width, height})),
  ];
  const labels: WireLabel[] = [];
  const dy = drawing.view === 'ladder' ? 6.6 : 0;
  for (const wire of drawing.wires)
    for (const text of [`${colourCode[wire.colour]} ${wire.id}`, wire.id]) {
      const width = textWidth(text, WIRE_LABEL_SIZE, true) + 4;
      const spot = wire.paths.flatMap((path) => spotsOn(path, width + (drawing.view === 'connection' ? 12 : 2))).find((at) => !taken.some((box) => meets(boxAt(at, width, dy), box)));
      if (!spot) continue;
      taken.push(boxAt(spot, width, dy));
      labels.push({wire: wire.id, text, width, x: spot.x, y: spot.y + dy});
      break;
    }
  return labels;
}

const boxAt = ({x, y}: Point, width: number, dy: number): Box => ({x: x - width / 2, y: y + dy - HEIGHT / 2, width, height: HEIGHT});

const meets = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

/** Places for a label along the level stretches of a path that are long enough, the middle of the longest first. */
function spotsOn(path: readonly Point[], width: number): Point[] {
  const spots: {at: Point; length: number}[] = [];
  for (let i = 1; i < path.length; i++) {
    const [from, to] = [path[i - 1]!, path[i]!];
    const length = Math.abs(to.x - from.x);
    if (from.y !== to.y || length < width) continue;
    for (const share of [0.5, 0.3, 0.7, 0.15, 0.85]) {
      const x = from.x + (to.x - from.x) * share;
      if (Math.min(Math.abs(x - from.x), Math.abs(x - to.x)) + 0.1 >= width / 2) spots.push({at: {x, y: from.y}, length});
    }
  }
  return spots.sort((a, b) => b.length - a.length).map(({at}) => at);
}
