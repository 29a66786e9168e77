import fc from 'fast-check';
import type {Action} from '../../src/bench/actions.ts';
import {controlsOf} from '../../src/bench/bench-controls.ts';
import type {Unit} from '../../src/content/unit.ts';
import type {MeterFunction} from '../../src/meter/meter-function.ts';

/** Any one thing that a student may try at a unit; the bench refuses what cannot be done. */
export function anyAction(unit: Unit): fc.Arbitrary<Action> {
  const terminals = unit.parts.flatMap((part) =>
    part.terminals.map((terminal) => `${part.id}.${terminal}`),
  );
  const ends = unit.wires.flatMap((wire) => [`${wire.id}.from`, `${wire.id}.to`]);
  const functions: MeterFunction[] = [
    'ac-volts',
    'dc-volts',
    'low-impedance-volts',
    'ohms',
    'continuity',
    'hertz',
    'capacitance',
    'dc-microamps',
  ];
  const controls = controlsOf(unit);
  const setting = fc.constantFrom(...controls).chain(({target, control}): fc.Arbitrary<Action> => {
    const values =
      control.type === 'choice'
        ? control.choices!.map(({value}) => value)
        : control.type === 'press'
          ? ['press']
          : [control.min ?? 0, control.max ?? 100, Number(control.initial)];
    return fc.constantFrom(...values).map((value) => ({do: 'set', target, value}) as const);
  });
  const reading = fc
    .tuple(fc.constantFrom(...terminals), fc.constantFrom(...terminals))
    .map(([red, black]): Action => ({do: 'read', red, black}));
  return fc.oneof(
    {weight: 6, arbitrary: reading},
    {weight: 2, arbitrary: setting},
    {
      weight: 1,
      arbitrary: fc.constantFrom(10, 60, 400).map((seconds): Action => ({do: 'wait', seconds})),
    },
    {
      weight: 1,
      arbitrary: fc.constantFrom(...functions).map((fn): Action => ({do: 'meter', function: fn})),
    },
    {weight: 1, arbitrary: fc.constantFrom(...ends).map((end): Action => ({do: 'lift', end}))},
    {weight: 1, arbitrary: fc.constantFrom(...ends).map((end): Action => ({do: 'land', end}))},
    {
      weight: 1,
      arbitrary: fc
        .constantFrom(...unit.enclosures.map(({id}) => id))
        .map((enclosure): Action => ({do: 'open-cover', enclosure})),
    },
  );
}

/** Meter on the clamp, one reading at a wire, and back to volts. */
export function clampAt(wire: string): Action[] {
  return [
    {do: 'meter', function: 'clamp-amps'},
    {do: 'clamp', wire},
    {do: 'meter', function: 'ac-volts'},
  ];
}
