import fc from 'fast-check';
import type {Action} from '../../src/bench/actions.ts';
import {Bench} from '../../src/bench/bench.ts';
import {controlsOf} from '../../src/bench/bench-controls.ts';
import type {Unit} from '../../src/content/unit.ts';
import {catalogue} from '../../src/faults/catalogue.ts';
import {keepings} from '../../src/meter/extremes.ts';
import {meterCares, meterFlaws} from '../../src/meter/meter-condition.ts';
import {meterFunctions} from '../../src/meter/meter-function.ts';

/** Anything that hands could try at a unit, sensible or not. */
export function actionsAt(unit: Unit): fc.Arbitrary<Action> {
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
    fc.record({do: fc.constant('discharge' as const), from: point, to: point}),
    fc.record({
      do: fc.constant('keep' as const),
      // recording reads again and again, so it is rare here
      what: fc.constantFrom(...keepings, 'nothing' as const, 'last' as const, 'last' as const),
    }),
    fc.record({do: fc.constant('renew' as const), what: fc.constantFrom(...meterCares)}),
    fc.record({do: fc.constant('wait' as const), seconds: fc.constantFrom(1, 30, 600)}),
    fc.constantFrom<Action>({do: 'clear'}, {do: 'give-up'}, {do: 'note', text: 'x'}),
  );
}

/**
 * Tries random actions at a unit with random faults until `tried` of them were tried, `each` at one bench, and then
 * replays what was done. Throws on anything that breaks; counts what was refused.
 */
export function workAtRandom(
  unit: Unit,
  {tried, each, seed}: {tried: number; each: number; seed: number},
): {refused: number; done: number} {
  const faults = catalogue(unit);
  const [first] = faults;
  let [refused, done] = [0, 0];
  const calls = fc.sample(
    fc.record({
      faults: fc.oneof(
        {weight: 4, arbitrary: fc.constantFrom(...faults).map((fault) => [fault])},
        fc.uniqueArray(fc.constantFrom(...faults), {minLength: 2, maxLength: 2}),
        fc.constant([]),
        fc.constant([first]),
      ),
      actions: fc.array(actionsAt(unit), {minLength: each, maxLength: each}),
      seed: fc.integer({min: 0, max: 1000}),
      flaw: fc.constantFrom(undefined, ...meterFlaws),
    }),
    {numRuns: Math.ceil(tried / each), seed},
  );
  for (const {actions, flaw, ...setup} of calls) {
    const bench = new Bench({
      unit,
      complaint: '',
      ...setup,
      ...(flaw ? {meterFlaw: flaw} : {}),
    });
    for (const {id, cover} of unit.enclosures)
      if (cover) bench.act({do: 'open-cover', enclosure: id});
    for (const action of actions) {
      const before = bench.actions.length;
      const result = bench.act(action);
      if ('refused' in result) refused += 1;
      else done += 1;
      if (bench.actions.length !== before + ('refused' in result ? 0 : 1))
        throw new Error(`${JSON.stringify(action)} was not kept as it was done.`);
    }
    const again = Bench.replay(bench.setup, bench.actions).view();
    if (JSON.stringify(bench.view()) !== JSON.stringify(again))
      throw new Error(`A replay differs: ${JSON.stringify(bench.actions)}`);
  }
  return {refused, done};
}
