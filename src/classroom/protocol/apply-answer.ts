import type {BenchView} from '../../bench/bench-view.ts';
import type {StudentAnswer} from './student-messages.ts';

/** The view after an answer: what only grows is sent in pieces. Applying the same answer twice changes nothing. */
export function applyAnswer(
  before: BenchView,
  answer: Extract<StudentAnswer, {is: 'done'}>,
): BenchView {
  return {
    ...answer.now,
    log: [...before.log.slice(0, answer.logFrom), ...answer.log],
    safety: [...before.safety.slice(0, answer.safetyFrom), ...answer.safety],
  };
}
