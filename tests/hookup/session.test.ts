import fc from 'fast-check';
import {describe, expect, test} from 'vitest';
import {checkHookup} from '../../src/hookup/check-hookup.ts';
import {
  alterWire,
  beginSession,
  checked,
  energised,
  putWire,
  redo,
  resumeSession,
  takeWire,
  undo,
  type HookupSession,
} from '../../src/hookup/hookup-session.ts';
import {readShippedTask} from '../../src/hookup/node/read-shipped-task.ts';

const task = readShippedTask('lamp-and-switch');
const terminals = task.parts.flatMap(({id, terminals: names}) =>
  names.map((name) => `${id}.${name}`),
);

type Deed = (session: HookupSession) => HookupSession;
const terminal = fc.constantFrom(...terminals);
const deed: fc.Arbitrary<Deed> = fc.oneof(
  fc.tuple(terminal, terminal).map(
    ([from, to]): Deed =>
      (session) =>
        putWire(session, {from, to, gauge: 14, colour: 'red'}),
  ),
  fc.nat(8).map(
    (i): Deed =>
      (session) =>
        session.wires[i] ? takeWire(session, session.wires[i].id) : session,
  ),
  fc.nat(8).map(
    (i): Deed =>
      (session) =>
        session.wires[i] ? alterWire(session, session.wires[i].id, {gauge: 12}) : session,
  ),
);

describe('a session', () => {
  test('undo and redo without limit: all the way back and all the way on again', () => {
    fc.assert(
      fc.property(fc.array(deed, {maxLength: 40}), (deeds) => {
        const start = beginSession(task);
        const end = deeds.reduce((session, each) => each(session), start);
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

  test('ids of wires are never used again, and no wire is there twice', () => {
    fc.assert(
      fc.property(fc.array(deed, {maxLength: 40}), (deeds) => {
        const {wires} = deeds.reduce((session, each) => each(session), beginSession(task));
        expect(new Set(wires.map(({id}) => id)).size).toBe(wires.length);
        const pairs = wires.map(({from, to}) => [from, to].sort().join());
        expect(new Set(pairs).size).toBe(pairs.length);
        expect(wires.every(({from, to}) => from !== to)).toBe(true);
      }),
      {numRuns: 60},
    );
  });

  test('a deed after an undo ends the way back on', () => {
    const one = putWire(beginSession(task), {from: 'S1.1', to: 'S1.2', gauge: 14, colour: 'red'});
    const other = putWire(undo(one), {from: 'LT1.1', to: 'LT1.2', gauge: 14, colour: 'red'});
    expect(redo(other)).toBe(other);
  });

  test('counts corrections until the first right verdict, and unsafe energisings', () => {
    const wrong = checkHookup(task, []);
    const right = checkHookup(task, task.answer);
    const short = checkHookup(task, [
      ...task.answer,
      {id: 'X', from: 'CB1.T1', to: 'SUP.N', gauge: 14, colour: 'red'},
    ]);
    const session = [wrong, wrong, right, wrong].reduce(checked, beginSession(task));
    expect(session).toMatchObject({checks: 4, corrections: 2, solved: true});
    const powered = [short, right].reduce(energised, session);
    expect(powered).toMatchObject({energisings: 2, unsafeEnergisings: 1});
  });

  test('goes on from what was kept, and begins anew from what cannot be read', () => {
    const session = putWire(beginSession(task), {
      from: 'S1.1',
      to: 'LT1.1',
      gauge: 14,
      colour: 'red',
    });
    expect(resumeSession(task, JSON.stringify(session))).toEqual(session);
    for (const kept of [
      undefined,
      '',
      '{',
      'null',
      '{"version":2}',
      JSON.stringify({...session, task: 'else'}),
    ])
      expect(resumeSession(task, kept)).toEqual(beginSession(task));
  });
});
