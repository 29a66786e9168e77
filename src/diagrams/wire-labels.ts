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
  /** Written upward, on an upright stretch. */
  readonly upright: boolean;
}

/** Type size in drawing units: read when zoomed in, and on paper. */
export const WIRE_LABEL_SIZE = 7.5;
const HEIGHT = WIRE_LABEL_SIZE + 2;

/**
 * A label such as `YE W25` for each wire, on one of its stretches, clear of parts, letters and of one
 * another. Wires with no room get their number alone, or none: their name is still told when picked.
 */
export function labelWires(drawing: Drawing): WireLabel[] {
  const connection = drawing.view === 'connection';
  const taken: Box[] = [
    ...(connection ? drawing.parts : []),
    ...drawing.labels.map(labelBox),
    ...drawing.terminals.map(({x, y, width, height}) => ({
      x: x - width / 2,
      y: y - height / 2,
      width,
      height,
    })),
  ];
  const labels: WireLabel[] = [];
  // on a ladder the label hangs under the line, or it would hide the short ones
  const dy = connection ? 0 : 6.6;
  for (const wire of drawing.wires) {
    const tries = [`${colourCode[wire.colour]} ${wire.id}`, wire.id].flatMap((text) => [
      {text, upright: false},
      ...(connection ? [{text, upright: true}] : []),
    ]);
    for (const {text, upright} of tries) {
      const width = textWidth(text, WIRE_LABEL_SIZE, true) + 4;
      const spot = wire.paths
        .flatMap((path) => spotsOn(path, width + (connection ? 12 : 2), upright))
        .find((at) => !taken.some((box) => meets(boxAt(at, width, dy, upright), box)));
      if (!spot) continue;
      taken.push(boxAt(spot, width, dy, upright));
      labels.push({wire: wire.id, text, width, upright, x: spot.x, y: spot.y + dy});
      break;
    }
  }
  return labels;
}

function boxAt({x, y}: Point, width: number, dy: number, upright: boolean): Box {
  const [across, down] = upright ? [HEIGHT, width] : [width, HEIGHT];
  return {x: x - across / 2, y: y + dy - down / 2, width: across, height: down};
}

const meets = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

/** Places for a label along the level (or upright) stretches of a path that are long enough, the longest first. */
function spotsOn(path: readonly Point[], room: number, upright: boolean): Point[] {
  const spots: {at: Point; length: number}[] = [];
  for (let i = 1; i < path.length; i++) {
    const [from, to] = [path[i - 1]!, path[i]!];
    const length = upright ? Math.abs(to.y - from.y) : Math.abs(to.x - from.x);
    if ((upright ? from.x !== to.x : from.y !== to.y) || length < room) continue;
    for (const share of [0.5, 0.3, 0.7, 0.15, 0.85])
      if (Math.min(share, 1 - share) * length + 0.1 >= room / 2)
        spots.push({
          at: {x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share},
          length,
        });
  }
  return spots.sort((a, b) => b.length - a.length).map(({at}) => at);
}
