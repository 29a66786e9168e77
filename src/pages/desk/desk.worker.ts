import {shippedDifficulty} from '../units/shipped-difficulties.ts';
import {deskAnswers} from './desk-answers.ts';
import type {DeskReply, DeskRequest} from './desk-messages.ts';
import {replyTo} from './desk-reply.ts';
import {shippedIds, shippedUnit} from './shipped-units.ts';

const answers = deskAnswers({ids: shippedIds, unit: shippedUnit, difficulty: shippedDifficulty});

addEventListener('message', async ({data}: MessageEvent<DeskRequest>) => {
  const tell = (reply: DeskReply): void => postMessage(reply);
  tell(await replyTo(answers, data, tell));
});
