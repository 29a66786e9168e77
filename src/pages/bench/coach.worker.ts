import {CoachedCall, type SeenStep} from '../../diagnosis/coached-call.ts';
import type {CoachAnswer, CoachRequest} from './coach-messages.ts';

/**
 * The coach of one call. It gets what the student saw and never the sealed fault. Steps are followed one at a time, so
 * that the page hears how far it is; between questions it works ahead for the next one.
 */
let call: CoachedCall | undefined;

type Task = {readonly step: SeenStep} | {readonly question: Exclude<CoachRequest, {ask: 'begin'}>};

const tasks: Task[] = [];
let awake = false;

const tell = (answer: CoachAnswer): void => postMessage(answer);

addEventListener('message', ({data}: MessageEvent<CoachRequest>) => {
  if (data.ask === 'begin') {
    call = new CoachedCall(data.unit);
    tasks.length = 0;
  } else {
    if (data.ask === 'follow') tasks.push(...data.steps.map((step) => ({step})));
    tasks.push({question: data});
  }
  wake();
});

function wake(): void {
  if (awake) return;
  awake = true;
  // a task of its own: messages that have arrived meanwhile come first
  setTimeout(work, 0);
}

function work(): void {
  awake = false;
  if (!call) return;
  const task = tasks.shift();
  if (task) {
    perform(call, task);
    wake();
  } else if (call.prepare()) wake();
}

function perform(coached: CoachedCall, task: Task): void {
  if ('step' in task) {
    coached.follow(task.step);
    tell({is: 'following', left: tasks.filter((each) => 'step' in each).length});
    return;
  }
  const {question} = task;
  const {number} = question;
  try {
    if (question.ask === 'hint')
      tell({is: 'hint', number, text: coached.hint(question.level).text});
    else tell({is: 'followed', number, word: coached.word});
  } catch {
    tell({
      is: 'error',
      number,
      sentence: 'The coach has lost the thread. Reload the page to ask again.',
    });
  }
}
