import {shippedIds, shippedText} from '../units/shipped-texts.ts';
import {deskAnswers} from './desk-answers.ts';
import type {DeskReply, DeskRequest} from './desk-messages.ts';
import {replyTo} from './desk-reply.ts';

const answers = deskAnswers({ids: shippedIds, text: shippedText});

addEventListener('message', async ({data}: MessageEvent<DeskRequest>) => {
  postMessage((await replyTo(answers, data)) satisfies DeskReply);
});
