import {Bench} from '../../bench/bench.ts';
import type {BenchAnswer, BenchRequest, InitMessage} from '../../bench/bench-messages.ts';
import type {BenchView} from '../../bench/bench-view.ts';
import {catalogueLines} from '../../bench/catalogue-lines.ts';
import {openSealed} from '../../bench/sealed-fault.ts';
import {catalogue} from '../../faults/catalogue.ts';
import {operateUnit} from '../../sequences/operate-unit.ts';
import type {Observation} from '../../sequences/operating-unit.ts';
import type {TrailAnswer, TrailRequest} from './coach-messages.ts';
import type {ReasoningAnswer, ReasoningProgress, ReasoningRequest} from './reasoning-messages.ts';

/**
 * The side that holds the fault. The seal is opened here and nowhere else; what goes back is the view, which
 * knows nothing of it, and the debrief once a fault has been named.
 */
let bench: Bench | undefined;
/** What could be seen after each action, for the coach. */
let seen: (readonly Observation[])[] = [];

// What judges a call is as large as what runs one, and is not needed until a fault has been named.
const judging = () => import('../../diagnosis/debrief.ts');
const reasonings = () => import('../../diagnosis/reasoning.ts');

/** One of two faults has been named, and the other is still hidden. */
let more = false;
const endsSearch: ReadonlySet<string> = new Set(['name', 'give-up', 'clear']);

const broken =
  'The bench broke down at this. Reload the page: everything up to your last action is kept.';

type Asked = BenchRequest | ReasoningRequest | TrailRequest;
type Heard = BenchAnswer | ReasoningAnswer | TrailAnswer;
type Reply = Heard extends infer A ? (A extends Heard ? Omit<A, 'number'> : never) : never;

async function answer(request: Asked): Promise<Reply> {
  if (request.ask === 'init') {
    bench = begin(request);
    more = await isMore(bench);
    return {is: 'view', view: viewOf(bench)};
  }
  if (!bench) return {is: 'error', sentence: 'The bench has no call yet.'};
  switch (request.ask) {
    case 'act': {
      const result = bench.act(request.action);
      if (!('refused' in result)) seen.push(bench.sees);
      // two faults that look alike are told apart by running the unit: only when there is cause to
      if (endsSearch.has(request.action.do)) more = await isMore(bench);
      return 'refused' in result
        ? {is: 'refused', sentence: result.refused}
        : {is: 'view', view: viewOf(bench)};
    }
    case 'catalogue':
      return {is: 'catalogue', lines: catalogueLines(bench.setup.unit)};
    case 'debrief':
      return notYet(bench) ?? {is: 'debrief', debrief: (await judging()).debriefOf(bench)};
    case 'reasoning':
      return notYet(bench) ?? {is: 'reasoning', reasoning: await reasoned(bench, request.number)};
    case 'trail':
      return {
        is: 'trail',
        steps: bench.history
          .slice(request.from)
          .map((step, at) => ({...step, sees: seen[request.from + at]})),
      };
  }
}

/** Works it out and says how far it has come, in whole hundredths. */
async function reasoned(
  {setup, actions}: Bench,
  number: number,
): Promise<ReasoningAnswer['reasoning']> {
  const {reasoningOf} = await reasonings();
  let told = 0;
  return reasoningOf(setup, actions, undefined, (share) => {
    const hundredths = Math.floor(share * 100);
    if (hundredths <= told) return;
    told = hundredths;
    postMessage({number, is: 'progress', share: hundredths / 100} satisfies ReasoningProgress);
  });
}

/** Whether one of two faults has been named and the other is still hidden. */
async function isMore(at: Bench): Promise<boolean> {
  return at.view().stage !== 'working' && (await judging()).goesOn(at);
}

/** What may be seen; that one of two faults is still hidden is told once the other has been named. */
const viewOf = (at: Bench): BenchView => ({...at.view(), ...(more ? {more} : {})});

/** Why there is no debrief yet. */
function notYet(at: Bench): Reply | undefined {
  if (at.view().stage === 'working')
    return {is: 'refused', sentence: 'The debrief comes once the fault is named, or given up.'};
  return more
    ? {
        is: 'refused',
        sentence:
          'What you named is right, and another fault is still in the unit. The debrief comes once that is named too, or given up.',
      }
    : undefined;
}

/** An error that is safe to show: its sentence knows nothing of the fault. */
class Unusable extends Error {}

function begin({unit, sealed, complaint, seed, actions}: InitMessage): Bench {
  const opened = openSealed(sealed);
  if ('reason' in opened) throw new Unusable(opened.reason);
  if (opened.hidden.unit !== unit.id) {
    throw new Unusable(
      'What is hidden belongs to another unit than this call. Ask for the link again.',
    );
  }
  const all = catalogue(unit);
  const faults = all.filter((fault) => opened.hidden.faults.includes(fault.id));
  // never say which one is missing
  if (faults.length !== opened.hidden.faults.length) {
    throw new Unusable(
      'What is hidden does not fit this unit any more: the unit has changed since. Begin a new call.',
    );
  }
  const {meter} = opened.hidden;
  const fresh = new Bench({
    unit,
    faults,
    complaint,
    seed,
    operate: operateUnit,
    ...(meter ? {meterFlaw: meter} : {}),
  });
  seen = [];
  for (const [at, action] of actions.entries()) {
    const result = fresh.act(action);
    if ('refused' in result) {
      throw new Unusable(`Action ${at + 1} of this call cannot be done again: ${result.refused}`);
    }
    seen.push(fresh.sees);
  }
  return fresh;
}

async function reply(request: Asked): Promise<void> {
  const {number} = request;
  let told: Reply;
  try {
    told = await answer(request);
  } catch (error) {
    // the text of an unforeseen error could name the fault, so it stays here
    told = {is: 'error', sentence: error instanceof Unusable ? error.message : broken};
  }
  postMessage({...told, number});
}

let turn: Promise<void> = Promise.resolve();
/** One after the other: an answer that waits for more of the program must not be overtaken by the next. */
addEventListener('message', ({data}: MessageEvent<Asked>) => {
  turn = turn.then(() => reply(data));
});
