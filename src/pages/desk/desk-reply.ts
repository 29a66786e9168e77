import type {DeskAnswering} from './desk-answers.ts';
import type {DeskReply, DeskRequest} from './desk-messages.ts';

/**
 * Answers one request; whatever is thrown comes back as a refusal with its sentence.
 *
 * @param tell hears how far a long answer is
 */
export async function replyTo(
  answers: DeskAnswering,
  {number, question, ask}: DeskRequest,
  tell: (reply: DeskReply) => void = () => undefined,
): Promise<DeskReply> {
  try {
    const answer = answers[question] as (ask: unknown, tell: (share: number) => void) => unknown;
    return {number, answer: await answer(ask, (share) => tell({number, share}))};
  } catch (error) {
    return {number, refused: error instanceof Error ? error.message : String(error)};
  }
}
