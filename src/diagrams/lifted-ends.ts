import type {Unit} from '../content/unit.ts';
import type {Drawing, Point, TerminalMark} from './drawing.ts';

/** A wire end off its terminal, where the drawing shows it. */
export interface LiftedEnd {
  /** `W12.from` */
  readonly end: string;
  readonly wire: string;
  readonly at: Point;
  /** Unit vector along the wire, away from the terminal. */
  readonly along: Point;
}

/** Every place at which a lifted wire end is drawn. */
export function liftedEnds(unit: Unit, drawing: Drawing, lifted: readonly string[]): LiftedEnd[] {
  return lifted.flatMap((end) => {
    const [id, which] = end.split('.') as [string, 'from' | 'to'];
    const wire = unit.wires.find((it) => it.id === id);
    const drawn = drawing.wires.find((it) => it.id === id);
    if (!wire || !drawn) return [];
    return drawn.paths.flatMap((path) => {
      const ordered = fromFirst(path, wire.from, wire.to, drawing.terminals)
        ? path
        : [...path].reverse();
      const points = which === 'from' ? ordered : [...ordered].reverse();
      const [at, next] = [points[0]!, points[1]!];
      const length = Math.hypot(next.x - at.x, next.y - at.y) || 1;
      return [
        {end, wire: id, at, along: {x: (next.x - at.x) / length, y: (next.y - at.y) / length}},
      ];
    });
  });
}

/** Whether a path begins at the wire's `from` end: told by the terminals that stand at its ends. */
function fromFirst(
  path: readonly Point[],
  from: string,
  to: string,
  marks: readonly TerminalMark[],
): boolean {
  const stands = (terminal: string, at: Point): boolean =>
    marks.some(
      (mark) =>
        mark.terminal === terminal &&
        Math.abs(mark.x - at.x) <= mark.width / 2 + 1 &&
        Math.abs(mark.y - at.y) <= mark.height / 2 + 5,
    );
  const [first, last] = [path[0]!, path[path.length - 1]!];
  if (stands(from, first) || stands(to, last)) return true;
  return !(stands(from, last) || stands(to, first));
}

/** How far a lifted end is drawn from its terminal. */
export const LIFTED_BY = 13;

/** Where the free end is drawn. */
export const liftedPoint = ({at, along}: LiftedEnd): Point => ({
  x: at.x + along.x * (LIFTED_BY + 4.5) - along.y * 6,
  y: at.y + along.y * (LIFTED_BY + 4.5) + along.x * 6,
});
