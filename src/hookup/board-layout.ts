import type {Part} from '../content/unit.ts';
import type {HookupTask} from './hookup-task.ts';

/** A terminal on the board, with the side of its part that wires leave from. */
export interface BoardTerminal {
  readonly terminal: string;
  readonly part: string;
  readonly x: number;
  readonly y: number;
  readonly side: 'left' | 'right';
}

export interface BoardPart {
  readonly part: Part;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly terminals: readonly BoardTerminal[];
}

/** Parts of a task in their boxes, in user units, y down. Columns of parts stand between gutters for wires. */
export interface BoardLayout {
  readonly width: number;
  readonly height: number;
  readonly boxes: readonly {
    readonly id: string;
    readonly title: string;
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
  }[];
  readonly parts: readonly BoardPart[];
  /** Left edges of the gutters, one more than there are columns. */
  readonly gutters: readonly number[];
  /** Where the lanes that go across run, above all parts. */
  readonly busY: number;
}

export const gutterWidth = 92;
const partWidth = 148;
const rowPitch = 30;
const headHeight = 40;
const between = 18;
const busHeight = 74;
const boxHead = 30;
const tallest = 460;

/**
 * Parts of each box in columns, in the order of the file, so that the board stays where it is while it is wired.
 * Terminals in pairs: the first of a pair on the left, the second on the right.
 */
export function layBoard(task: HookupTask): BoardLayout {
  const gutters: number[] = [];
  const parts: BoardPart[] = [];
  const boxes: {id: string; title: string; x: number; y: number; width: number; height: number}[] =
    [];
  const top = 10 + boxHead + busHeight;
  let x = 12;
  let bottom = top;
  for (const {id, title} of task.enclosures) {
    const left = x;
    const columns = inColumns(task.parts.filter(({enclosure}) => enclosure === id));
    for (const column of columns) {
      gutters.push(x);
      x += gutterWidth;
      let y = top;
      for (const part of column) {
        parts.push(placePart(part, x, y));
        y += heightOf(part) + between;
      }
      bottom = Math.max(bottom, y);
      x += partWidth;
    }
    // the gutter after the last column of a box is the one before the next box
    boxes.push({id, title, x: left + 4, y: 10, width: x - left + gutterWidth - 20, height: 0});
    x += 8;
  }
  gutters.push(x - 8);
  return {
    width: x + gutterWidth,
    height: bottom + 14,
    boxes: boxes.map((box) => ({...box, height: bottom - 4})),
    parts,
    gutters,
    busY: 10 + boxHead,
  };
}

const heightOf = ({terminals}: Part): number =>
  headHeight + Math.ceil(terminals.length / 2) * rowPitch;

function inColumns(parts: readonly Part[]): Part[][] {
  const whole = parts.reduce((sum, part) => sum + heightOf(part) + between, 0);
  const most = whole / Math.max(1, Math.ceil(whole / tallest)) + 40;
  const columns: Part[][] = [[]];
  let height = 0;
  for (const part of parts) {
    const next = heightOf(part) + between;
    if (height + next > most && columns[columns.length - 1].length > 0) {
      columns.push([]);
      height = 0;
    }
    columns[columns.length - 1].push(part);
    height += next;
  }
  return columns;
}

function placePart(part: Part, x: number, y: number): BoardPart {
  return {
    part,
    x,
    y,
    width: partWidth,
    height: heightOf(part),
    terminals: part.terminals.map((name, i) => ({
      terminal: `${part.id}.${name}`,
      part: part.id,
      x: i % 2 === 0 ? x : x + partWidth,
      y: y + headHeight + Math.floor(i / 2) * rowPitch + rowPitch / 2 - 4,
      side: i % 2 === 0 ? 'left' : 'right',
    })),
  };
}
