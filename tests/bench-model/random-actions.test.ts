import fc from 'fast-check';
import {describe, expect, test} from 'vitest';
import type {Action} from '../../src/bench/actions.ts';
import {Bench} from '../../src/bench/bench.ts';
import {controlsOf} from '../../src/bench/bench-controls.ts';
import {readShippedUnit, shippedUnitIds} from '../../src/content/node/read-shipped-unit.ts';
import {catalogue} from '../../src/faults/catalogue.ts';
import {meterFunctions} from '../../src/meter/meter-function.ts';

/** Anything that hands could try at a unit, sensible or not. */
function actionsAt(unitId: string): fc.Arbitrary<Action> {
  const unit = readShippedUnit(unitId);
  const points = unit.parts.flatMap((part) =>
    part.terminals.map((terminal) => `${part.id}.${terminal}`),
  );
  const ends = unit.wires.flatMap((wire) => [`${wire.id}.from`, `${wire.id}.to`]);
  const pick = (list: readonly string[]) => fc.constantFrom(...list);
  const point = fc.oneof({weight: 9, arbitrary: pick(points)}, {weight: 1, arbitrary: pick(ends)});
  const settings = controlsOf(unit).flatMap(({target, control}): Action[] => {
    const values = control.choices?.map(({value}) => value) ?? [
      control.min ?? 0,
      control.max ?? 'press',
    ];
    return values.map((value) => ({do: 'set', target, value}));
  });
  const part = pick(unit.parts.map(({id}) => id));
  const enclosure = pick(unit.enclosures.map(({id}) => id));
  return fc.oneof(
    {weight: 4, arbitrary: fc.constantFrom(...settings)},
    fc.record({do: fc.constant('open-cover' as const), enclosure}),
    fc.record({do: fc.constantFrom('lock' as const, 'unlock' as const), part}),
    fc.record({do: fc.constant('meter' as const), function: fc.constantFrom(...meterFunctions)}),
    {weight: 4, arbitrary: fc.record({do: fc.constant('read' as const), red: point, black: point})},
    fc.record({do: fc.constant('clamp' as const), wire: pick(unit.wires.map(({id}) => id))}),
    {
      weight: 2,
      arbitrary: fc.record({
        do: fc.constantFrom('lift' as const, 'land' as const),
        end: pick(ends),
      }),
    },
    {weight: 2, arbitrary: fc.record({do: fc.constant('jumper' as const), from: point, to: point})},
    fc.record({do: fc.constant('wait' as const), seconds: fc.constantFrom(1, 30, 600)}),
    fc.constantFrom<Action>({do: 'clear'}, {do: 'give-up'}, {do: 'note', text: 'x'}),
  );
}

describe.each(shippedUnitIds())('random hands at %s', (unitId) => {
  const unit = readShippedUnit(unitId);
  const faults = catalogue(unit);

  test(
    'never break the bench, and replaying what was done gives the same view',
    {timeout: 120_000},
    () => {
      let refusals = 0;
      fc.assert(
        fc.property(
          fc.constantFrom(...faults),
          fc.array(actionsAt(unitId), {minLength: 5, maxLength: 25}),
          fc.integer({min: 0, max: 1000}),
          (fault, tried, seed) => {
            const covers = unit.enclosures.filter(({cover}) => cover);
            const bench = new Bench({unit, faults: [fault], complaint: '', seed});
            for (const {id} of covers) bench.act({do: 'open-cover', enclosure: id});
            for (const action of tried) {
              const before = bench.actions.length;
              const result = bench.act(action);
              if ('refused' in result) refusals += 1;
              if (bench.actions.length !== before + ('refused' in result ? 0 : 1)) return false;
            }
            const view = bench.view();
            const again = Bench.replay(bench.setup, bench.actions).view();
            return JSON.stringify(view) === JSON.stringify(again);
          },
        ),
        {numRuns: 40, seed: 20261125},
      );
      // hands that try anything are also refused
      expect(refusals).toBeGreaterThan(20);
    },
  );
});
