import type {Element} from '../parts/element.ts';

/**
 * A network to solve: named nodes and placed elements between them. Node 0 is `earth`, the reference.
 * Built from a unit by `buildNetwork`; numbers live in the compiled solver, names only here.
 */
export interface Network {
  readonly frequencyHz: number;
  /** Node names; index 0 is `earth`. */
  readonly nodes: readonly string[];
  /** Elements with node names as `a`, `b`. */
  readonly elements: readonly Element[];
}
