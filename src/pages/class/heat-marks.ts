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

/** The busiest places in words, for those who cannot see the drawing: `K1.A1 7, F1.2 4`. */
export function heatText(heat: HeatMap, most = 8): string {
  return [...Object.entries(heat.terminals), ...Object.entries(heat.wires)]
    .sort(([a, p], [b, q]) => q - p || (a < b ? -1 : 1))
    .slice(0, most)
    .map(([id, count]) => `${id} ${count}`)
    .join(', ');
}
