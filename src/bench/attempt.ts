import type {Action} from './actions.ts';

/**
 * An attempt as stored and exported. The fault is sealed (not readable as text); everything else is a pure
 * function of it and the actions.
 */
export interface AttemptRecord {
  readonly format: 'rungbench-attempt';
  readonly version: 1;
  /** Random id made by the page. */
  readonly id: string;
  readonly unit: string;
  readonly complaint: string;
  /** Sealed fault ids, see `sealed-fault.ts`. */
  readonly sealed: string;
  readonly seed: number;
  /** ISO date-time at which the page began it; shown only, never used in the simulation. */
  readonly begunAt: string;
  readonly actions: readonly Action[];
}
