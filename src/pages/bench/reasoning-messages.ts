import type {Reasoning} from '../../diagnosis/reasoning.ts';

/** Only answered once a fault has been named or the search given up. It takes seconds, so it is asked for apart. */
export interface ReasoningRequest {
  readonly number: number;
  readonly ask: 'reasoning';
}

/** How much of it is worked out; the answer itself comes later under the same number. */
export interface ReasoningProgress {
  readonly number: number;
  readonly is: 'progress';
  /** 0 to 1. */
  readonly share: number;
}

export interface ReasoningAnswer {
  readonly number: number;
  readonly is: 'reasoning';
  readonly reasoning: Reasoning;
}
