import {Bench, type ActResult} from '../../src/bench/bench.ts';
import type {Action} from '../../src/bench/actions.ts';
import type {LogEntry} from '../../src/bench/bench-view.ts';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import {catalogue, faultsById} from '../../src/faults/catalogue.ts';

/** A bench at a shipped unit with these hidden faults and an exact meter. */
export function benchAt(unitId: string, faults: readonly string[] = [], seed = 0): Bench {
  const unit = readShippedUnit(unitId);
  return new Bench({
    unit,
    faults: faultsById(catalogue(unit), faults),
    complaint: 'It does not work.',
    seed,
  });
}

/** Does actions that must succeed, and gives the last one's line. */
export function doAll(bench: Bench, ...actions: readonly Action[]): LogEntry {
  let last: LogEntry | undefined;
  for (const action of actions) {
    const result: ActResult = bench.act(action);
    if ('refused' in result) throw new Error(`${JSON.stringify(action)}: ${result.refused}`);
    last = result.entry ?? last;
  }
  return last!;
}

/** The sentence with which an action is refused; fails where it is done. */
export function refusalOf(bench: Bench, action: Action): string {
  const before = JSON.stringify(bench.view());
  const result = bench.act(action);
  if (!('refused' in result)) throw new Error(`${JSON.stringify(action)} was done.`);
  if (JSON.stringify(bench.view()) !== before)
    throw new Error('A refused action changed something.');
  return result.refused;
}

/** Controls for a cooling call on the heat pump, a minute in. */
export const coolingCall: readonly Action[] = [
  {do: 'set', target: 'plant.outdoorDegF', value: 92},
  {do: 'set', target: 'plant.roomDegF', value: 80},
  {do: 'set', target: 'TS.mode', value: 'cool'},
  {do: 'wait', seconds: 60},
];

export const read = (red: string, black: string): Action => ({do: 'read', red, black});
