import type {Alterations} from '../circuits/build-network.ts';
import type {Fault} from './fault.ts';

/** What faults change in the network; with it, wire ends lifted and jumpers laid by hand. */
export function alterationsOf(
  faults: readonly Fault[],
  lifted: readonly string[] = [],
  jumpers: readonly (readonly [string, string])[] = [],
): Alterations {
  return {
    lifted,
    jumpers,
    changes: faults.flatMap((fault) => fault.changes),
    paths: faults.flatMap((fault) => fault.paths),
    moved: faults.flatMap((fault) => fault.moves ?? []),
  };
}
