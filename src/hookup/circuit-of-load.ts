import type {LadderCircuit} from '../content/unit.ts';
import type {HookupTask} from './hookup-task.ts';
import type {Load} from './loads.ts';
import {isMotor, motorWindings} from '../parts/motor-windings.ts';

/**
 * The circuit that a load belongs to: one whose rail the right answer joins it to (through wires and parts, but not
 * through a transformer or the service), and of those the one nearest to its rated volts.
 */
export function circuitOfLoad(task: HookupTask, load: Load): LadderCircuit {
  const parent = new Map<string, string>();
  const root = (node: string): string => {
    let at = node;
    for (let up = parent.get(at); up !== undefined; up = parent.get(at)) at = up;
    return at;
  };
  const join = (a: string, b: string): void => {
    const [p, q] = [root(a), root(b)];
    if (p !== q) parent.set(p, q);
  };
  for (const {from, to} of [...task.given, ...task.answer]) join(from, to);
  for (const {kind, elements} of task.parts) {
    if (kind === 'supply') continue;
    for (const element of elements) {
      if (element.is === 'transformer') for (const {a, b} of element.windings) join(a, b);
      else if (isMotor(element)) for (const {a, b} of motorWindings(element)) join(a, b);
      else join(element.a, element.b);
    }
  }
  const home = root(load.a);
  const joined = task.circuits.filter(({rails}) => rails.some((rail) => root(rail) === home));
  const [nearest] = [...(joined.length > 0 ? joined : task.circuits)].sort(
    (p, q) => Math.abs(p.volts - load.ratedVolts) - Math.abs(q.volts - load.ratedVolts),
  );
  return nearest;
}
