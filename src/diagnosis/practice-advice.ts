import type {Grade} from './grade.ts';

/** What the advice is drawn from; a part of the whole reasoning. */
export interface Advised {
  readonly steps: readonly {
    readonly kind: 'reading' | 'look';
    readonly expectedBits: number;
    readonly best?: {readonly bits: number};
    readonly useless?: boolean;
  }[];
  readonly namings: readonly {
    readonly right: boolean;
    readonly proof: {readonly is: string; readonly open: readonly {readonly name: string}[]};
  }[];
  readonly calibration: {readonly asked: number; readonly right: number};
  readonly minutes: number;
  readonly route: {readonly readings: number; readonly minutes: number};
  readonly safety: readonly {readonly severity: 'danger' | 'caution'}[];
  readonly grade: Grade;
  readonly hints?: readonly unknown[];
}

/**
 * One paragraph of what to practise next: the weakest point first, then what goes with it. Every sentence follows
 * from a number of the attempt.
 */
export function practiceAdvice(advised: Advised): string {
  const {steps, namings, calibration, route, safety, minutes} = advised;
  const readings = steps.filter(({kind}) => kind === 'reading');
  const useless = readings.filter((step) => step.useless).length;
  const weak = readings.filter(
    ({expectedBits, best}) => best && best.bits > 0.3 && expectedBits < best.bits / 2,
  ).length;
  const last = namings[namings.length - 1];
  const says: string[] = [];
  const dangers = safety.filter(({severity}) => severity === 'danger').length;
  if (dangers)
    says.push(
      `Safety comes first: ${count(dangers, 'step')} of this call would have put you in danger. Practise lock-out, the absence-of-voltage test and where ohms may be read before the next call.`,
    );
  if (!readings.length) {
    says.push(
      `You ${last ? 'named' : 'gave up'} without one reading. Practise asking first: put the unit in the mode that the customer complains of, and halve what is left with each reading.`,
    );
  } else if (last?.proof.is === 'contradicted') {
    says.push(
      'Your own log spoke against what you named. Before naming, go through the readings once more and ask of each whether it would have come out so with that fault.',
    );
  } else if (last?.proof.is === 'guessed') {
    const open = last.proof.open.length;
    says.push(
      `When you named, ${count(open, 'other suspect')} ${open === 1 ? 'was' : 'were'} still open (${last.proof.open
        .slice(0, 2)
        .map(({name}) => name)
        .join(
          '; ',
        )}${open > 2 ? '; …' : ''}). Practise the last reading: the one that tells what you believe from what else it could be.`,
    );
  } else if (!last) {
    says.push(
      'You gave up. Walk the shortest way below with the unit in front of you, and say before each reading what you expect.',
    );
  } else if (!last.right) {
    says.push(
      'What you named was not in the unit. Compare the expected and the read values of your log.',
    );
  }
  if (useless > 1 && useless >= readings.length / 4)
    says.push(
      `${useless} of your ${readings.length} readings could not have come out otherwise. Before each one, say what two answers are possible and what each would mean.`,
    );
  else if (weak > 1 && weak >= readings.length / 3)
    says.push(
      `${weak} of your ${readings.length} readings asked for less than half of what could be asked. Practise splitting the rung in its middle rather than hopping along it.`,
    );
  if (calibration.asked >= 3 && calibration.right * 2 < calibration.asked)
    says.push(
      `Only ${calibration.right} of ${calibration.asked} expectations came out: read the ladder once more and work out volts before you read them.`,
    );
  else if (readings.length >= 3 && calibration.asked === 0)
    says.push(
      'Write down what you expect before each reading; that is what makes a reading an answer.',
    );
  const hints = advised.hints?.length ?? 0;
  if (hints && says.length < 3)
    says.push(
      `You asked the coach ${hints === 1 ? 'once' : `${hints} times`}. Take a call like this one again, and find its questions yourself.`,
    );
  if (says.length === 0)
    says.push(
      minutes > 1.5 * route.minutes
        ? `Well reasoned. What is left is the walk: the shortest way takes ${route.readings} readings and ${Math.round(route.minutes)} minutes. Take readings that need no cover off first.`
        : 'Well reasoned and to the point. Take a harder call next, on another section of the unit.',
    );
  return says.join(' ');
}

const count = (n: number, noun: string): string => `${n} ${noun}${n === 1 ? '' : 's'}`;
