import {inSentence} from '../content/in-sentence.ts';
import {clampFunctions, meterFunctions} from '../meter/meter-function.ts';
import type {Action} from './actions.ts';
import type {BenchView} from './bench-view.ts';
import {isolating, refuseSetting} from './bench-controls.ts';
import {unknown} from './reach.ts';
import type {Standing} from './standing.ts';

/** How things stand, with what naming a fault needs to know. */
export interface Judged extends Standing {
  readonly stage: BenchView['stage'];
  readonly faultIds: () => string[];
  readonly gaveUp: boolean;
}

const longestWaitSeconds = 24 * 3600;
const longestNote = 2000;

/**
 * Why an action cannot be done now: one clear sentence, or undefined when it can. The answer follows from
 * the unit and from what has been done, never from the hidden fault.
 */
export function refusal(action: Action, at: Judged): string | undefined {
  switch (action.do) {
    case 'set':
      return refuseSetting(at.controls, action.target, action.value, at.reach, at.open, at.locked);
    case 'lock':
      return refuseLock(action.part, at);
    case 'unlock':
      return at.locked.has(action.part) ? undefined : `No lock of yours hangs on ${action.part}.`;
    case 'open-cover':
    case 'close-cover':
      return refuseCover(action, at);
    case 'meter':
      return meterFunctions.includes(action.function)
        ? undefined
        : `The meter has no function "${action.function}"; it has ${meterFunctions.join(', ')}.`;
    case 'keep':
    case 'renew':
      return undefined;
    case 'discharge':
      if (action.from === action.to) return 'A bleed resistor goes between two different points.';
      return (
        at.reach.refusePoint(action.from, at.open, at.lifted) ??
        at.reach.refusePoint(action.to, at.open, at.lifted)
      );
    case 'read':
      if (clampFunctions.has(at.function)) {
        return `The meter stands on ${at.function === 'clamp-amps' ? 'clamp amps' : 'clamp hertz'}; choose volts, ohms or continuity to use the leads.`;
      }
      return (
        at.reach.refusePoint(action.red, at.open, at.lifted) ??
        at.reach.refusePoint(action.black, at.open, at.lifted)
      );
    case 'clamp':
      if (!clampFunctions.has(at.function))
        return 'Choose clamp amps on the meter before you close the clamp around a wire.';
      return at.reach.refuseWire(action.wire, at.open);
    case 'lift':
      return at.lifted.includes(action.end)
        ? `Wire end ${action.end} is already lifted.`
        : at.reach.refuseEnd(action.end, at.open);
    case 'land':
      return (
        at.reach.refuseEnd(action.end, at.open) ??
        (at.lifted.includes(action.end)
          ? refuseLanding(action.end, at)
          : `Wire end ${action.end} is on its terminal.`)
      );
    case 'jumper':
      return refuseJumper(action.from, action.to, at);
    case 'remove-jumper':
      return hasJumper(action.from, action.to, at)
        ? undefined
        : `There is no jumper between ${action.from} and ${action.to}.`;
    case 'wait':
      return action.seconds > 0 && action.seconds <= longestWaitSeconds
        ? undefined
        : `Wait more than 0 and at most ${longestWaitSeconds / 3600} hours at a time.`;
    case 'note':
      if (action.text.trim() === '') return 'The note is empty; write what you want to remember.';
      return action.text.length <= longestNote
        ? undefined
        : `A note holds at most ${longestNote} characters.`;
    case 'hint':
      if (at.stage !== 'working') return 'The call is answered; the coach helps while you search.';
      return action.text.trim() !== '' && action.text.length <= longestNote
        ? undefined
        : `A hint holds from one to ${longestNote} characters.`;
    case 'name':
      return refuseNaming(action.fault, action.evidence, at);
    case 'give-up':
      // of two hidden faults one may be named and the other given up
      return at.stage === 'cleared' || at.gaveUp ? 'The call is already closed.' : undefined;
    case 'clear':
      if (at.stage === 'working') return 'Name the fault, or give up, before it is cleared.';
      return at.stage === 'cleared' ? 'The fault is already cleared.' : undefined;
  }
}

function refuseLock(part: string, {controls, locked, operating}: Judged): string | undefined {
  const isolators = controls.filter(({control}) => control.isolates);
  const found = isolators.find((each) => each.part === part);
  if (!found)
    return unknown(
      'isolating switch',
      part,
      isolators.map((each) => each.part),
    );
  if (locked.has(part)) return `Your lock already hangs on ${part}.`;
  return isolating(operating.valueOf(found.target))
    ? undefined
    : `${part} is not open; open it before you hang a lock and tag on it.`;
}

function refuseCover(
  {do: what, enclosure}: Extract<Action, {do: 'open-cover' | 'close-cover'}>,
  {unit, open}: Judged,
): string | undefined {
  const covered = unit.enclosures.filter((each) => each.cover);
  const found = unit.enclosures.find((each) => each.id === enclosure);
  if (!found)
    return unknown(
      'enclosure',
      enclosure,
      covered.map((each) => each.id),
    );
  if (!found.cover)
    return `The ${inSentence(found.title)} has no cover; everything in it can be reached.`;
  if (what === 'open-cover' && open.has(enclosure))
    return `The cover of the ${inSentence(found.title)} is already off.`;
  if (what === 'close-cover' && !open.has(enclosure))
    return `The cover of the ${inSentence(found.title)} is on.`;
  return undefined;
}

/** A jumper clipped to the lifted end would be buried with it. */
function refuseLanding(end: string, {jumpers}: Judged): string | undefined {
  return jumpers.some((jumper) => jumper.includes(end))
    ? `A jumper is clipped to ${end}; take it off before you land the wire.`
    : undefined;
}

function refuseJumper(from: string, to: string, at: Judged): string | undefined {
  if (from === to) return 'A jumper goes between two different points.';
  if (hasJumper(from, to, at)) return `There is already a jumper between ${from} and ${to}.`;
  return (
    at.reach.refusePoint(from, at.open, at.lifted) ?? at.reach.refusePoint(to, at.open, at.lifted)
  );
}

function hasJumper(from: string, to: string, {jumpers}: Judged): boolean {
  return jumpers.some(([a, b]) => (a === from && b === to) || (a === to && b === from));
}

function refuseNaming(fault: string, evidence: readonly number[], at: Judged): string | undefined {
  if (at.stage === 'cleared')
    return 'The fault is cleared; start another call to name another one.';
  const ids = at.faultIds();
  if (!ids.includes(fault)) return unknown('fault', fault, ids);
  const missing = evidence.find((index) => at.log[index]?.kind !== 'reading');
  return missing === undefined
    ? undefined
    : `Line ${missing + 1} of the field log is not a reading; choose readings as evidence.`;
}
