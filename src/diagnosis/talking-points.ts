import type {Debrief} from '../bench/debrief.ts';
import type {Reasoning, ReasoningStep} from './reasoning.ts';

/** One thing for an instructor to talk over with a student. */
export interface TalkingPoint {
  readonly title: string;
  /** What happened, with its numbers. */
  readonly text: string;
  /** What to ask the student. */
  readonly ask: string;
}

/** Less than this a better reading would have gained is not worth a talk, in bits. */
const worthATalk = 0.3;
/** Minutes over the plan's that are worth a talk: half as many again, and five at least (our own choice). */
const slow = {times: 1.5, minutes: 5};

/**
 * What to talk over after a call, what is dangerous first, then in the order in which it happened. Every point follows
 * from a number of the attempt; a call without a flaw gives the one point that is left.
 */
export function talkingPoints(debrief: Debrief, reasoning: Reasoning): readonly TalkingPoint[] {
  const points = [
    ...dangers(debrief),
    ...parting(reasoning),
    ...useless(reasoning),
    ...expectations(debrief),
    ...naming(reasoning),
    ...hints(reasoning),
    ...time(reasoning),
  ];
  return points.length ? points : [sound];
}

const sound: TalkingPoint = {
  title: 'Nothing went wrong',
  text: 'The fault was found, proved and reached without a detour.',
  ask: 'Tell it as you would to an apprentice: why each reading, and what would the other answer have meant?',
};

function dangers({safety}: Debrief): TalkingPoint[] {
  return safety
    .filter(({severity}) => severity === 'danger')
    .map(({logIndex, text}) => ({
      title: `Danger, entry ${logIndex + 1}`,
      text,
      ask: 'What could have happened here, and what must be done before this step to make it safe?',
    }));
}

/** The first reading that asked for less than half of what could be asked. */
export function partsAt({steps}: Reasoning): ReasoningStep | undefined {
  return steps.find(
    ({kind, best, expectedBits}) =>
      kind === 'reading' && best && best.bits > worthATalk && expectedBits < best.bits / 2,
  );
}

function parting(reasoning: Reasoning): TalkingPoint[] {
  const step = partsAt(reasoning);
  if (!step?.best) return [];
  return [
    {
      title: `The ways part at entry ${step.logIndex + 1}`,
      text: `With ${step.suspectsBefore} suspects open it asked for ${step.expectedBits.toFixed(2)} bit; ${step.best.bits.toFixed(2)} could be asked for: ${step.best.text}.`,
      ask: 'Which suspects did your reading part from one another? Where would one reading leave half of them?',
    },
  ];
}

function useless({steps}: Reasoning): TalkingPoint[] {
  const entries = steps.filter((step) => step.useless).map(({logIndex}) => logIndex + 1);
  if (!entries.length) return [];
  return [
    {
      title:
        entries.length === 1
          ? 'A reading that could tell nothing'
          : 'Readings that could tell nothing',
      text: `${entriesText(entries)} could not have come out otherwise, whatever was wrong.`,
      ask: 'Which two answers were possible there, and what would each have meant?',
    },
  ];
}

function expectations({readings}: Debrief): TalkingPoint[] {
  const missed = readings.filter(({expectedRight}) => expectedRight === false);
  const asked = readings.filter(({expectedRight}) => expectedRight !== undefined);
  if (missed.length)
    return [
      {
        title: 'Expected otherwise',
        text: `${missed.length} of ${asked.length} expectations did not come out: ${entriesText(missed.map(({logIndex}) => logIndex + 1)).toLowerCase()}.`,
        ask: 'Was the circuit not as you took it to be, or is this where the fault shows?',
      },
    ];
  if (readings.length >= 3 && !asked.length)
    return [
      {
        title: 'Nothing was expected',
        text: `None of the ${readings.length} readings had an expectation written before it.`,
        ask: 'Take three of them: what should a healthy unit have shown?',
      },
    ];
  return [];
}

function naming({namings}: Reasoning): TalkingPoint[] {
  const last = namings[namings.length - 1];
  if (!last)
    return [
      {
        title: 'Given up',
        text: 'Nothing was named.',
        ask: 'Walk the shortest way together: what do you expect before each reading?',
      },
    ];
  const {name, proof} = last;
  if (proof.is === 'contradicted')
    return [
      {
        title: 'Named against the log',
        text: `${name} would have given other readings than those in the log.`,
        ask: 'Which entry speaks against it?',
      },
    ];
  if (proof.is === 'guessed')
    return [
      {
        title: 'A guess',
        text: `${name} was named while ${proof.open.length === 1 ? 'one other suspect was' : `${proof.open.length} other suspects were`} open: ${proof.open
          .slice(0, 3)
          .map((each) => each.name)
          .join('; ')}${proof.open.length > 3 ? '; …' : ''}.`,
        ask: 'Which one reading would have told it from these?',
      },
    ];
  return [];
}

function hints({hints: asked, grade}: Reasoning): TalkingPoint[] {
  if (!asked.length) return [];
  return [
    {
      title: asked.length === 1 ? 'A hint was asked for' : `${asked.length} hints were asked for`,
      text: `${entriesText(asked.map(({logIndex}) => logIndex + 1))}; ${grade.hints} ${grade.hints === 1 ? 'point' : 'points'} off the questions asked.`,
      ask: 'What did you know when you asked, and what did you not know to ask?',
    },
  ];
}

function time({minutes, route, dollars}: Reasoning): TalkingPoint[] {
  const over = minutes > slow.times * route.minutes && minutes - route.minutes >= slow.minutes;
  if (!over && !dollars) return [];
  return [
    {
      title: dollars ? 'Time and parts' : 'Time',
      text: `${minutes.toFixed(0)} minutes against ${route.minutes.toFixed(0)} by the plan${dollars ? `, and about $${dollars} of parts changed on suspicion` : ''}.`,
      ask: 'Which step cost most, and could it have come later or not at all?',
    },
  ];
}

/** "Entry 4" or "Entries 4, 6 and 7". */
function entriesText(entries: readonly number[]): string {
  if (entries.length === 1) return `Entry ${entries[0]}`;
  return `Entries ${entries.slice(0, -1).join(', ')} and ${entries[entries.length - 1]}`;
}
