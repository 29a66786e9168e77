import {hintMinutes} from '../bench/action-costs.ts';
import type {HintLevel} from '../bench/actions.ts';
import {doneText, duration} from '../bench/done-text.ts';
import {inSentence} from '../content/in-sentence.ts';
import type {OperatingSequence, Unit} from '../content/unit.ts';
import {Planner, type Proposal} from './planner.ts';
import {preparationText, readingText, splitText} from './proposal-text.ts';
import type {Elimination, Suspects} from './suspects.ts';

export type {HintLevel};

/** One hint. Asking costs points, never the call. */
export interface Hint {
  readonly level: HintLevel;
  readonly text: string;
  /** Minutes added to the work, as if a colleague had been telephoned. */
  readonly minutes: number;
  /** The reading itself, at the third level. */
  readonly proposal?: Proposal;
}

/** With as many suspects left, other states of the unit are weighed too, if need be while the student waits. */
const fewSuspects = 12;

/** Suspects' units that are brought into another state while the student waits: some milliseconds each. */
const patience = 24;

/**
 * Helps with an attempt from the same suspects that judge it. It knows what the student knows and not the fault, so
 * it can be wrong about nothing but luck.
 */
export class Coach {
  private readonly suspects: Suspects;
  private readonly planner: Planner;

  constructor(suspects: Suspects, planner = new Planner(suspects)) {
    this.suspects = suspects;
    this.planner = planner;
  }

  /** A little of the work ahead, for when nobody waits; true while there is more. */
  prepare(): boolean {
    return this.planner.prepare();
  }

  hint(level: HintLevel): Hint {
    const {unit, count} = this.suspects;
    const minutes = hintMinutes[level];
    const mode = this.modeToCall();
    if (mode) return {level, minutes, text: modeText(unit, mode, level)};
    if (count === 0)
      return {
        level,
        minutes,
        text: 'No single fault explains all of your log. There may be two, or a reading was not what you took it for.',
      };
    const [proposal] = count > 1 ? this.planner.best(1, count <= fewSuspects, patience) : [];
    if (!proposal) return {level, minutes, text: this.finished()};
    return {
      level,
      minutes,
      text: hintText(unit, proposal, level, count),
      ...(level === 3 ? {proposal} : {}),
    };
  }

  /** Why a reading that was just taken told nothing; undefined when it could have. */
  static uselessness({expectedBits, suspectsAfter, ruledOut}: Elimination): string | undefined {
    if (expectedBits > 0 || ruledOut.length) return undefined;
    return suspectsAfter === 1
      ? 'One suspect is left, so no reading can tell more. Name it, and point at the readings that prove it.'
      : `That reading could not have come out otherwise: all ${suspectsAfter} suspects that are left would have shown the same.`;
  }

  /** At rest, with nothing measured and nothing called for, the first thing is to call for something. */
  private modeToCall(): OperatingSequence | undefined {
    const {unit, conditions} = this.suspects;
    if (conditions.isolated) return undefined;
    const asked = unit.sequences.some(
      ({id, set}) =>
        id !== 'off' && set.every(({target, value}) => conditions.set.get(target) === value),
    );
    const touched = unit.sequences
      .flatMap(({set}) => set)
      .some(({target}) => this.suspects.wasSet(target));
    return asked || touched ? undefined : unit.sequences.find(({id}) => id !== 'off');
  }

  private finished(): string {
    const {open} = this.suspects;
    if (open.length === 1)
      return open[0].hypothesis.id === 'healthy'
        ? 'Nothing in your log speaks of a fault. Try the other modes of the unit, and let it run a while.'
        : 'Your log leaves one suspect. Name it, and point at the readings that prove it.';
    return `No reading on this unit tells the ${open.length} suspects that are left from each other. Name any of them.`;
  }
}

/** The first thing of all is to see the unit fail: in which mode, and how it is put there. */
function modeText(
  unit: Unit,
  {title, set, waitSeconds}: OperatingSequence,
  level: HintLevel,
): string {
  switch (level) {
    case 1:
      return 'What does the unit do, and not do, when it is asked to work? Put it into the mode that the customer complains of.';
    case 2:
      return `Put the unit into the mode “${title}” and let it settle; then look and listen before you measure.`;
    case 3: {
      const steps = set.map(({target, value}) => doneText({do: 'set', target, value}, unit));
      return `For the mode “${title}”: ${steps.join('; ')}; then wait ${duration(waitSeconds)}. Look and listen before you measure.`;
    }
  }
}

function hintText(unit: Unit, proposal: Proposal, level: HintLevel, count: number): string {
  const before = preparationText(unit, proposal);
  switch (level) {
    case 1:
      return `${count} suspects are open. ${question(unit, proposal)}`;
    case 2:
      return `${place(unit, proposal)}${before ? ` First: ${before}.` : ''} ${functionHint(proposal)}`;
    case 3:
      return `${before ? `First: ${before}. ` : ''}Read ${inSentence(readingText(proposal))}. It ${splitText(proposal)}, for ${proposal.minutes.toFixed(1)} minutes of work.`;
  }
}

/** The question that the best reading answers, without the place. */
function question(unit: Unit, {function: fn, red, black, situation}: Proposal): string {
  if (situation.id !== 'present' && !situation.isolated)
    return `What does the unit do ${situation.title}? This mode has told what it can.`;
  if (fn === 'ohms')
    return 'Volts have told what they can: which path is open, or shorted, with the power off?';
  if (fn === 'clamp-amps')
    return 'Does current flow where it ought to? Amps tell whether a load works at all.';
  if (fn === 'dc-volts') return 'What does the board see and send on its direct-current side?';
  const part = (red ?? '').split('.')[0] === (black ?? '').split('.')[0] ? red!.split('.')[0] : '';
  const title = unit.parts.find(({id}) => id === part)?.title;
  return title
    ? 'Which part is it across which the voltage is lost, or never arrives?'
    : 'How far does the voltage come? Ask at a point with about as many suspects before it as behind it.';
}

/** Where the best reading is taken: the enclosure and the circuit, not the terminals. */
function place(unit: Unit, {red, black, wire}: Proposal): string {
  const point = wire === undefined ? red! : unit.wires.find(({id}) => id === wire)!.from;
  const parts = [point, black ?? point].map((each) => each.split('.')[0]);
  const part = unit.parts.find(({id}) => id === parts[0]);
  const enclosure = unit.enclosures.find(({id}) => id === part?.enclosure);
  const where = enclosure ? `in the ${inSentence(enclosure.title)}` : 'at a lifted wire';
  return part ? `Look ${where}, at ${part.id} (${inSentence(part.title)}).` : `Look ${where}.`;
}

function functionHint({function: fn}: Proposal): string {
  switch (fn) {
    case 'ohms':
      return 'Ohms, locked out and proved dead.';
    case 'clamp-amps':
      return 'The clamp, without moving a wire.';
    case 'dc-volts':
      return 'Volts DC.';
    default:
      return 'Volts AC, on live parts: mind your hands, and follow your local code and the maker.';
  }
}
