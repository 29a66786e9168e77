import type {Unit} from '../content/unit.ts';
import type {Box, Drawing, Point, TerminalMark, WireDrawing} from './drawing.ts';
import {liftedEnds, liftedPoint} from './lifted-ends.ts';
import {partBoxes, type Pickable} from './picking.ts';

/** What a pick is for: placing a lead, closing the clamp, working on a wire, pointing something out. */
export type DiagramMode = 'red' | 'black' | 'clamp' | 'lift' | 'select';

/** What can be reached of a drawing just now. */
export interface Reach {
  readonly unit: Unit;
  readonly drawing: Drawing;
  readonly mode: DiagramMode;
  /** Enclosures whose covers are off; absent where all can be reached. */
  readonly openEnclosures?: readonly string[];
  readonly lifted: readonly string[];
}

/** A target of the keyboard. */
export interface Target extends Point {
  /** `terminal 12` (index of the mark), `wire W5`, `part K1`. */
  readonly key: string;
  readonly box: Box;
}

const partOf = (terminal: string): string => terminal.slice(0, terminal.indexOf('.'));

/** Whether the mode is one in which terminals are picked. */
export const isProbing = (mode: DiagramMode): boolean => mode === 'red' || mode === 'black';

/** Ids of enclosures whose covers are closed. */
export function closedEnclosures({
  unit,
  openEnclosures: open,
}: Pick<Reach, 'unit' | 'openEnclosures'>): ReadonlySet<string> {
  if (!open) return new Set();
  return new Set(
    unit.enclosures.filter(({id, cover}) => cover && !open.includes(id)).map(({id}) => id),
  );
}

/** Drawn wires with an end that is not behind a closed cover. */
export function reachableWires(reach: Reach): ReadonlySet<string> {
  const closed = closedEnclosures(reach);
  const enclosureOf = new Map(reach.unit.parts.map(({id, enclosure}) => [id, enclosure]));
  const open = (terminal: string): boolean => !closed.has(enclosureOf.get(partOf(terminal))!);
  const drawn = new Set(reach.drawing.wires.map(({id}) => id));
  return new Set(
    reach.unit.wires
      .filter(({id, from, to}) => drawn.has(id) && (open(from) || open(to)))
      .map(({id}) => id),
  );
}

/** One box for each part that can be pointed out. */
export function partMarks(reach: Reach): (Box & {readonly part: string})[] {
  const {unit, drawing} = reach;
  const closed = closedEnclosures(reach);
  const enclosureOf = new Map(unit.parts.map(({id, enclosure}) => [id, enclosure]));
  const seen = new Set<string>();
  return partBoxes(drawing).filter(({part}) => {
    if (seen.has(part) || (drawing.view === 'connection' && closed.has(enclosureOf.get(part)!)))
      return false;
    seen.add(part);
    return true;
  });
}

/** What a pointer can pick. */
export function pickableOf(reach: Reach): Pickable {
  const {unit, drawing, mode, lifted} = reach;
  const closed = closedEnclosures(reach);
  const wires = reachableWires(reach);
  const freeEnds = liftedEnds(unit, drawing, lifted).map((end): TerminalMark => ({
    terminal: end.end,
    part: '',
    enclosure: '',
    shape: 'ring',
    ...liftedPoint(end),
    width: 9,
    height: 9,
  }));
  return {
    terminals: isProbing(mode)
      ? [...freeEnds, ...drawing.terminals.filter(({enclosure}) => !closed.has(enclosure))]
      : [],
    wires: drawing.wires.filter(({id}) => wires.has(id)),
    parts: partBoxes(drawing),
    lids: drawing.enclosures.filter(({id}) => closed.has(id)),
  };
}

/** Targets of the keyboard in reading order. */
export function targetsOf(reach: Reach): Target[] {
  const {drawing, mode} = reach;
  const targets: Target[] = [];
  if (isProbing(mode)) {
    const closed = closedEnclosures(reach);
    drawing.terminals.forEach((mark, i) => {
      if (!closed.has(mark.enclosure))
        targets.push({key: `terminal ${i}`, x: mark.x, y: mark.y, box: around(mark)});
    });
  } else {
    const reachable = reachableWires(reach);
    for (const wire of drawing.wires) {
      const at = alongWire(wire);
      if (at && reachable.has(wire.id))
        targets.push({key: `wire ${wire.id}`, ...at, box: {...at, width: 1, height: 1}});
    }
    if (mode === 'select')
      for (const box of partMarks(reach))
        targets.push({
          key: `part ${box.part}`,
          x: box.x + box.width / 2,
          y: box.y + box.height / 2,
          box,
        });
  }
  const row = (y: number): number => Math.round(y / 30);
  return targets.sort((a, b) => row(a.y) - row(b.y) || a.x - b.x);
}

/** Box of a terminal (its first mark), wire or part. */
export function boxOf(drawing: Drawing, id: string): Box | undefined {
  const mark = drawing.terminals.find(({terminal}) => terminal === id);
  if (mark) return around(mark);
  const wire = alongWire(drawing.wires.find((it) => it.id === id));
  if (wire) return {...wire, width: 1, height: 1};
  return partBoxes(drawing).find(({part}) => part === id);
}

const around = ({x, y, width, height}: TerminalMark): Box => ({
  x: x - width / 2,
  y: y - height / 2,
  width,
  height,
});

/** Middle of the longest stretch of a wire, or another share of the way along it. */
export function alongWire(wire: WireDrawing | undefined, share = 0.5): Point | undefined {
  let best: {at: Point; length: number} | undefined;
  for (const path of wire?.paths ?? [])
    for (let i = 1; i < path.length; i++) {
      const [from, to] = [path[i - 1]!, path[i]!];
      const length = Math.hypot(to.x - from.x, to.y - from.y);
      if (best && length <= best.length) continue;
      best = {
        at: {x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share},
        length,
      };
    }
  return best?.at;
}
