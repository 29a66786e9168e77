import type {SafetyFinding} from './bench-view.ts';

/** A breach of safe practice before it has its place in the log. */
export interface Breach {
  /** Same id in one stretch of isolation = same breach; it is told once. */
  readonly id: string;
  readonly severity: SafetyFinding['severity'];
  readonly text: string;
}
