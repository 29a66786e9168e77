import fc from 'fast-check';
import {describe, expect, test} from 'vitest';
import {readShippedTask} from '../../src/hookup/node/read-shipped-task.ts';
import {
  alterWire,
  beginWiring,
  putWire,
  redo,
  takeWire,
  undo,
  type WireHistory,
} from '../../src/hookup/wire-history.ts';

const task = readShippedTask('lamp-and-switch');
const terminals = task.parts.flatMap(({id, terminals: names}) =>
  names.map((name) => `${id}.${name}`),
);

type Deed = (history: WireHistory) => WireHistory;
const terminal = fc.constantFrom(...terminals);
const nth =
  (i: number, deed: (history: WireHistory, id: string) => WireHistory): Deed =>
  (history) =>
    history.wires[i] ? deed(history, history.wires[i].id) : history;
const deed: fc.Arbitrary<Deed> = fc.oneof(
  fc.tuple(terminal, terminal).map(
    ([from, to]): Deed =>
      (history) =>
        putWire(history, {from, to, gauge: 14, colour: 'red'}),
  ),
  fc.nat(8).map((i) => nth(i, takeWire)),
  fc.nat(8).map((i) => nth(i, (history, id) => alterWire(history, id, {gauge: 12}))),
  fc
    .tuple(fc.nat(8), fc.constantFrom('from' as const, 'to' as const), terminal)
    .map(([i, end, to]) => nth(i, (history, id) => alterWire(history, id, {[end]: to}))),
);

describe('wires with their history', () => {
  test('undo and redo without limit: all the way back and all the way on again', () => {
    fc.assert(
      fc.property(fc.array(deed, {maxLength: 40}), (deeds) => {
        const start = beginWiring(task);
        const end = deeds.reduce((history, each) => each(history), start);
        let back = end;
        for (let i = 0; i < end.past.length; i++) back = undo(back);
        expect(back.wires).toEqual(start.wires);
        expect(undo(back)).toBe(back);
        let on = back;
        for (let i = 0; i < end.past.length; i++) on = redo(on);
        expect(on.wires).toEqual(end.wires);
        expect(redo(on)).toBe(on);
      }),
      {numRuns: 60},
    );
  });

  test('ids of wires are never used again, no wire is there twice, none begins where it ends', () => {
    fc.assert(
      fc.property(fc.array(deed, {maxLength: 40}), (deeds) => {
        const {wires} = deeds.reduce((history, each) => each(history), beginWiring(task));
        expect(new Set(wires.map(({id}) => id)).size).toBe(wires.length);
        const pairs = wires.map(({from, to}) => [from, to].sort().join());
        expect(new Set(pairs).size).toBe(pairs.length);
        expect(wires.every(({from, to}) => from !== to)).toBe(true);
      }),
      {numRuns: 60},
    );
  });

  test('an end that was moved goes back on undo, and the wire keeps its id', () => {
    const one = putWire(beginWiring(task), {from: 'S1.1', to: 'S1.2', gauge: 14, colour: 'red'});
    const moved = alterWire(one, 'H1', {to: 'LT1.1'});
    expect(moved.wires).toEqual([{id: 'H1', from: 'S1.1', to: 'LT1.1', gauge: 14, colour: 'red'}]);
    expect(undo(moved).wires).toEqual(one.wires);
    // onto its own other end
    expect(alterWire(one, 'H1', {to: 'S1.1'})).toBe(one);
  });

  test('a deed after an undo ends the way back on', () => {
    const one = putWire(beginWiring(task), {from: 'S1.1', to: 'S1.2', gauge: 14, colour: 'red'});
    const other = putWire(undo(one), {from: 'LT1.1', to: 'LT1.2', gauge: 14, colour: 'red'});
    expect(redo(other)).toBe(other);
  });

  test('a new wire takes no id of the wires that were there', () => {
    const mend = readShippedTask('mend-no-fuse');
    const {wires} = putWire(beginWiring(mend), {
      from: 'T1.X1',
      to: 'K1.1',
      gauge: 18,
      colour: 'red',
    });
    expect(new Set(wires.map(({id}) => id)).size).toBe(mend.begin.length + 1);
  });
});
