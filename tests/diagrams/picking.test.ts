import {describe, expect, test} from 'vitest';
import type {TerminalMark} from '../../src/diagrams/drawing.ts';
import {layoutLadder} from '../../src/diagrams/ladder-layout.ts';
import {
  nextInDirection,
  partBoxes,
  pick,
  withinReach,
  type Pickable,
} from '../../src/diagrams/picking.ts';
import {shippedUnits} from './units.ts';

const panel = shippedUnits.find(({id}) => id === 'practice-panel')!;
const drawing = layoutLadder(panel, {aspect: 1.6});
const everything: Pickable = {
  terminals: drawing.terminals,
  wires: drawing.wires,
  parts: partBoxes(drawing),
  lids: [],
};
const mark = (terminal: string) => drawing.terminals.find((it) => it.terminal === terminal)!;

describe('pointing at a drawing', () => {
  test('the nearest terminal is meant, though the pointer is beside it', () => {
    const {x, y} = mark('HPS.1');
    const picked = pick({x: x + 7, y: y - 8}, 1, 'mouse', everything);
    expect(picked).toMatchObject({is: 'terminal', mark: {terminal: 'HPS.1'}});
  });

  test('a terminal beats the wire that ends on it', () => {
    const {x, y} = mark('HPS.2');
    expect(pick({x: x + 6, y}, 1, 'mouse', everything)).toMatchObject({is: 'terminal'});
  });

  test('away from terminals the wire is meant', () => {
    const [a, b] = [mark('K1.4'), mark('LT1.1')];
    expect(pick({x: (a.x + b.x) / 2, y: a.y + 4}, 1, 'mouse', everything)).toMatchObject({
      is: 'wire',
      wire: 'W10',
    });
  });

  test('away from both the part is meant', () => {
    const symbol = drawing.symbols.find(({element}) => element === 'T1.primary')!;
    expect(pick({x: symbol.x, y: symbol.y - 20}, 1, 'mouse', everything)).toEqual({
      is: 'part',
      part: 'T1',
    });
  });

  test('nothing is picked on empty paper', () => {
    expect(
      pick({x: drawing.width - 2, y: drawing.height - 2}, 1, 'mouse', everything),
    ).toBeUndefined();
  });

  test('under a closed cover wires and parts cannot be picked', () => {
    const covered: Pickable = {
      ...everything,
      terminals: [],
      lids: [{x: 0, y: 0, width: drawing.width, height: drawing.height}],
    };
    const symbol = drawing.symbols.find(({element}) => element === 'T1.primary')!;
    expect(pick(symbol, 1, 'mouse', covered)).toBeUndefined();
  });

  test('a fingertip reaches further than a mouse, and on a small drawing over several terminals', () => {
    const {x, y} = mark('HPS.1');
    const beside = {x: x - 13.5, y};
    expect(
      new Set(withinReach(beside, 0.5, 'touch', drawing.terminals).map(({terminal}) => terminal))
        .size,
    ).toBeGreaterThan(1);
    expect(
      withinReach({x, y}, 1, 'mouse', drawing.terminals).map(({terminal}) => terminal),
    ).toEqual(['HPS.1']);
  });

  test('every wire of the drawing can be picked somewhere', () => {
    for (const wire of drawing.wires) {
      const found = wire.paths.some((path) => {
        const [from, to] = [path[0]!, path[path.length - 1]!];
        const middle = {x: (from.x + to.x) / 2, y: (from.y + to.y) / 2};
        const picked = pick(middle, 1.5, 'mouse', everything);
        return picked?.is === 'wire' && picked.wire === wire.id;
      });
      expect(found, wire.id).toBe(true);
    }
  });
});

describe('arrow keys over a drawing', () => {
  test('right goes along the rung, terminal by terminal', () => {
    const row = drawing.terminals.filter(({y}) => y === mark('HPS.1').y).sort((a, b) => a.x - b.x);
    const walked = [row[0]!];
    for (
      let at: TerminalMark | undefined = row[0];
      at;
      at = nextInDirection(at, drawing.terminals, 'right')
    )
      if (at !== row[0]) walked.push(at);
    expect(walked.slice(0, row.length).map(({terminal}) => terminal)).toEqual(
      row.map(({terminal}) => terminal),
    );
  });

  test('from every terminal, every other is reached by arrow keys alone', () => {
    const reached = new Set([drawing.terminals[0]!]);
    const queue = [drawing.terminals[0]!];
    for (let at: TerminalMark | undefined = queue.pop(); at; at = queue.pop())
      for (const direction of ['left', 'right', 'up', 'down'] as const) {
        const next = nextInDirection(at, drawing.terminals, direction);
        if (next && !reached.has(next)) {
          reached.add(next);
          queue.push(next);
        }
      }
    expect(reached.size).toBe(drawing.terminals.length);
  });
});
