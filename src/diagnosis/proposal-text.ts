import {inSentence} from '../content/in-sentence.ts';
import type {Unit} from '../content/unit.ts';
import {functionNames} from '../meter/function-names.ts';
import type {Proposal} from './planner.ts';

/** "AC volts, red on HPS.1, black on TB2.C". */
export function readingText({function: fn, red, black, wire}: Proposal): string {
  const name = functionNames[fn].title;
  return wire !== undefined
    ? `${name}, the clamp around wire ${wire}`
    : `${name}, red on ${red}, black on ${black}`;
}

/** "splits 34 suspects 18/16": how many suspects each outcome leaves. */
export function splitText({splits}: Proposal): string {
  const total = splits.reduce((sum, count) => sum + count, 0);
  const [first, second, third, ...rest] = splits;
  const shown = [first, second, third].filter((count) => count !== undefined).join('/');
  const more = rest.reduce((sum, count) => sum + count, 0);
  return `splits ${total} suspects ${shown}${more ? `/${more} more` : ''}`;
}

/** What must be done before the reading, in a sentence; empty where nothing is. */
export function preparationText(unit: Unit, {situation, covers}: Proposal): string {
  const titles = covers.map((cover) =>
    inSentence(unit.enclosures.find(({id}) => id === cover)?.title ?? cover),
  );
  const parts = [
    ...(situation.id === 'present' ? [] : [situation.title]),
    ...(titles.length ? [`cover off the ${titles.join(' and the ')}`] : []),
  ];
  return parts.join(', ');
}

/** One line: the reading, what it takes, what it brings. */
export function proposalText(unit: Unit, proposal: Proposal): string {
  const before = preparationText(unit, proposal);
  return (
    `${readingText(proposal)}${before ? ` (${before})` : ''}: ${splitText(proposal)}, ` +
    `${proposal.bits.toFixed(2)} bit for ${proposal.minutes.toFixed(1)} min`
  );
}
