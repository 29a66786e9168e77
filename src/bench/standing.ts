import type {Unit} from '../content/unit.ts';
import type {CircuitClass} from '../faults/nets.ts';
import type {OperatingUnit} from '../sequences/operating-unit.ts';
import type {MeterFunction} from '../meter/meter-function.ts';
import type {LogEntry} from './bench-view.ts';
import type {PlacedControl} from './bench-controls.ts';
import type {Reach} from './reach.ts';

/** How things stand at the bench at one moment: what the safety watch, the cautions and the log speak about. */
export interface Standing {
  readonly unit: Unit;
  readonly operating: OperatingUnit;
  readonly reach: Reach;
  readonly controls: readonly PlacedControl[];
  readonly classes: ReadonlyMap<string, CircuitClass>;
  /** Enclosures whose cover is off. */
  readonly open: ReadonlySet<string>;
  /** Isolating parts that a lock hangs on. */
  readonly locked: ReadonlySet<string>;
  readonly lifted: readonly string[];
  readonly jumpers: readonly (readonly [string, string])[];
  readonly function: MeterFunction;
  readonly log: readonly LogEntry[];
  /** Log length when an isolating part was last moved: what was measured before it proves nothing now. */
  readonly isolatedSince: number;
}
