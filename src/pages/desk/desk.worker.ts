import {answers} from './desk-answers.ts';
import type {DeskReply, DeskRequest} from './desk-messages.ts';

addEventListener('message', async ({data}: MessageEvent<DeskRequest>) => {
  const reply = (message: DeskReply): void => postMessage(message);
  try {
    const answer = answers[data.question] as ((ask: unknown) => unknown) | undefined;
    if (!answer) throw new Error(`The desk cannot answer "${data.question}".`);
    reply({number: data.number, answer: await answer(data.ask)});
  } catch (error) {
    reply({number: data.number, refused: error instanceof Error ? error.message : String(error)});
  }
});
