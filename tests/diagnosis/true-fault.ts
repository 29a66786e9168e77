import fc from 'fast-check';
import {Bench} from '../../src/bench/bench.ts';
import type {Action} from '../../src/bench/actions.ts';
import type {Unit} from '../../src/content/unit.ts';
import {hypothesesOf} from '../../src/diagnosis/hypotheses.ts';
import {Suspects} from '../../src/diagnosis/suspects.ts';
import {catalogue} from '../../src/faults/catalogue.ts';
import type {Fault} from '../../src/faults/fault.ts';
import {anyAction, clampAt} from './random-attempt.ts';

/**
 * Whether the true fault is still a suspect after anything that was done and read with every cover off and a meter of
 * some error. Who else is suspected changes nothing for it, so it stands alone.
 */
export function staysSuspect(
  unit: Unit,
  fault: Fault,
  seed: number,
  actions: readonly Action[],
): boolean {
  const only = hypothesesOf(unit).filter(({id}) => id === fault.id);
  const suspects = new Suspects(unit, only);
  const bench = new Bench({unit, faults: [fault], complaint: '', seed});
  const covers = unit.enclosures.map(({id}): Action => ({do: 'open-cover', enclosure: id}));
  for (const action of [
    ...covers,
    ...actions,
    ...clampAt(unit.wires[seed % unit.wires.length].id),
  ]) {
    const result = bench.act(action);
    if (!('refused' in result)) suspects.step(action, result.entry, bench.sees);
  }
  return suspects.has(fault.id);
}

/** Any fault of a unit, any error of the meter, anything done. */
export function anySearch(unit: Unit, faults: readonly Fault[] = catalogue(unit)) {
  return fc.tuple(
    fc.constantFrom(...faults),
    fc.integer({min: 0, max: 1_000_000}),
    fc.array(anyAction(unit), {minLength: 5, maxLength: 16}),
  );
}
