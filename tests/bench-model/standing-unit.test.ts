import fc from 'fast-check';
import {expect, test} from 'vitest';
import {Bench} from '../../src/bench/bench.ts';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import {catalogue} from '../../src/faults/catalogue.ts';
import {actionsAt} from './random-hands.ts';

const unit = readShippedUnit('practice-panel');

test('whoever looks after every action sees in the end what one sees who looks only then', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...catalogue(unit)),
      fc.array(actionsAt(unit), {minLength: 20, maxLength: 20}),
      (fault, actions) => {
        const bench = new Bench({unit, faults: [fault], complaint: '', seed: 3});
        for (const {id, cover} of unit.enclosures) {
          if (cover) bench.act({do: 'open-cover', enclosure: id});
        }
        for (const action of actions) {
          bench.act(action);
          bench.view();
        }
        // what was worked out while the unit stood otherwise must not be shown now
        const fresh = Bench.replay(bench.setup, bench.actions);
        expect(bench.view()).toEqual(fresh.view());
        expect(bench.sees).toEqual(fresh.sees);
      },
    ),
    {numRuns: 60, seed: 11},
  );
});

test('while only readings are taken, what is seen of the unit is made once', () => {
  const bench = new Bench({unit, faults: [], complaint: '', seed: 0});
  const before = bench.view();
  const [a, b] = unit.circuits[0].rails;
  bench.act({do: 'read', red: a, black: b});
  const after = bench.view();
  expect(after.observations).toBe(before.observations);
  expect(after.controls).toBe(before.controls);
  expect(after.cautions).toBe(before.cautions);
  bench.act({do: 'wait', seconds: 1});
  expect(bench.view().observations).not.toBe(before.observations);
});
