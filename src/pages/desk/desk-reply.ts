import type {DeskAnswering} from './desk-answers.ts';
import type {DeskReply, DeskRequest} from './desk-messages.ts';

/** Answers one request; whatever is thrown comes back as a refusal with its sentence. */
export async function replyTo(
  answers: DeskAnswering,
  {number, question, ask}: DeskRequest,
): Promise<DeskReply> {
  try {
    const answer = answers[question] as (ask: unknown) => unknown;
    return {number, answer: await answer(ask)};
  } catch (error) {
    return {number, refused: error instanceof Error ? error.message : String(error)};
  }
}
