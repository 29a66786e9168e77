import {shippedDifficulty} from '../units/shipped-difficulties.ts';
import {shippedIds, shippedText} from '../units/shipped-texts.ts';
import {deskAnswers} from './desk-answers.ts';
import type {DeskReply, DeskRequest} from './desk-messages.ts';
import {replyTo} from './desk-reply.ts';

const answers = deskAnswers({ids: shippedIds, text: shippedText, difficulty: shippedDifficulty});

addEventListener('message', async ({data}: MessageEvent<DeskRequest>) => {
  const tell = (reply: DeskReply): void => postMessage(reply);
  tell(await replyTo(answers, data, tell));
});
