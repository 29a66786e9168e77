import type {Reasoning} from '../../diagnosis/reasoning.ts';

/** Only answered once a fault has been named or the search given up. It takes seconds, so it is asked for apart. */
export interface ReasoningRequest {
  readonly number: number;
  readonly ask: 'reasoning';
}

export interface ReasoningAnswer {
  readonly number: number;
  readonly is: 'reasoning';
  readonly reasoning: Reasoning;
}
