import type {HeatMap} from '../../classroom/protocol/wall-messages.ts';
import type {Drawing, Point} from '../../diagrams/drawing.ts';

/** One place where the class has put its meter. */
export interface HeatMark extends Point {
  readonly id: string;
  readonly count: number;
  /** In units of the drawing. The area goes with the count, so that twice the readings look like twice as much. */
  readonly radius: number;
}

const smallest = 9;
const largest = 34;

/** The marks of a heat map on a drawing, the busiest last so that it lies on top. Places not drawn are left out. */
export function heatMarks(drawing: Drawing, heat: HeatMap): HeatMark[] {
  const most = Math.max(1, ...Object.values(heat.terminals), ...Object.values(heat.wires));
  const radius = (count: number): number => Math.max(smallest, largest * Math.sqrt(count / most));
  const at = (id: string, count: number, point: Point | undefined): HeatMark[] =>
    point && count > 0 ? [{id, count, x: point.x, y: point.y, radius: radius(count)}] : [];
  const terminals = Object.entries(heat.terminals).flatMap(([id, count]) =>
    at(
      id,
      count,
      drawing.terminals.find(({terminal}) => terminal === id),
    ),
  );
  const wires = Object.entries(heat.wires).flatMap(([id, count]) => {
    const path = drawing.wires.find((wire) => wire.id === id)?.paths[0];
    return at(id, count, path?.[Math.floor(path.length / 2)]);
  });
  return [...terminals, ...wires].sort((a, b) => a.count - b.count || (a.id < b.id ? -1 : 1));
}

/** A part of a drawing, in its units. */
export interface Frame {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Around the marks, as much again as a large disc needs. */
const margin = 2.5 * largest;
/** Less than this part of a drawing would no longer tell where on the unit one is. */
const leastPart = 0.5;

/** The part of a drawing in which the class has measured, so that it is seen from the back of a room: half of it at least, in its own proportions. */
export function heatFrame({width, height}: Drawing, marks: readonly HeatMark[]): Frame {
  if (marks.length === 0) return {x: 0, y: 0, width, height};
  const [xs, ys] = [marks.map(({x}) => x), marks.map(({y}) => y)];
  const [left, right] = [Math.min(...xs) - margin, Math.max(...xs) + margin];
  const [top, bottom] = [Math.min(...ys) - margin, Math.max(...ys) + margin];
  const part = Math.min(1, Math.max(leastPart, (right - left) / width, (bottom - top) / height));
  const within = (middle: number, size: number): number =>
    Math.min(Math.max(0, middle - (size * part) / 2), size * (1 - part));
  return {
    x: within((left + right) / 2, width),
    y: within((top + bottom) / 2, height),
    width: width * part,
    height: height * part,
  };
}

/** The busiest places in words, for those who cannot see the drawing: `K1.A1 7, F1.2 4`. */
export function heatText(heat: HeatMap, most = 8): string {
  return [...Object.entries(heat.terminals), ...Object.entries(heat.wires)]
    .sort(([a, p], [b, q]) => q - p || (a < b ? -1 : 1))
    .slice(0, most)
    .map(([id, count]) => `${id} ${count}`)
    .join(', ');
}
