import type {Unit} from '../content/unit.ts';
import type {Network} from './network.ts';

/** What is different from the unit as drawn: structural, so it decides the network's pattern. */
export interface Alterations {
  /** Wire ends lifted off their terminal: `W12.from`, `W12.to`. A lifted end is a node of that name. */
  readonly lifted: readonly string[];
  /** Jumper leads between two placed terminals (or lifted ends). */
  readonly jumpers: readonly (readonly [string, string])[];
  /** Changes and extra paths of the faults present. */
  readonly changes: readonly import('../parts/part-kind.ts').ElementChange[];
  readonly paths: readonly {readonly id: string; readonly a: string; readonly b: string; readonly ohms: number}[];
}

export type BuildNetwork = (unit: Unit, alterations: Alterations) => Network;
