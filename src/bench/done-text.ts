import {inSentence} from '../content/in-sentence.ts';
import type {Unit} from '../content/unit.ts';
import type {Action} from './actions.ts';

/** What was done, for its line in the field log. The fault that was named is what the student said, not what is. */
export function doneText(action: Action, unit: Unit): string {
  switch (action.do) {
    case 'set':
      return `Set ${action.target} to ${action.value}`;
    case 'lock':
      return `Hung lock and tag on ${action.part}`;
    case 'unlock':
      return `Took lock and tag off ${action.part}`;
    case 'open-cover':
      return `Took the cover off the ${title(unit, action.enclosure)}`;
    case 'close-cover':
      return `Put the cover on the ${title(unit, action.enclosure)}`;
    case 'lift':
      return `Lifted wire end ${action.end}`;
    case 'land':
      return `Landed wire end ${action.end}`;
    case 'jumper':
      return `Laid a jumper from ${action.from} to ${action.to}`;
    case 'remove-jumper':
      return `Took the jumper off ${action.from} and ${action.to}`;
    case 'wait':
      return `Waited ${duration(action.seconds)}`;
    case 'note':
      return action.text;
    case 'name':
      return `Named ${action.fault}${action.evidence.length ? `, on the evidence of ${lines(action.evidence)}` : ', without evidence'}`;
    case 'clear':
      return 'Cleared the fault';
    case 'give-up':
      return 'Gave up the search';
    case 'meter':
    case 'read':
    case 'clamp':
      return '';
  }
}

const title = (unit: Unit, id: string): string =>
  inSentence(unit.enclosures.find((enclosure) => enclosure.id === id)?.title ?? id);

/** Log lines are numbered from 1 for people. */
const lines = (indices: readonly number[]): string =>
  `${indices.length === 1 ? 'line' : 'lines'} ${indices.map((index) => index + 1).join(', ')}`;

/** "10 s", "1 min", "1 min 30 s". */
export function duration(seconds: number): string {
  const minutes = Math.floor(seconds / 60);
  const rest = seconds - minutes * 60;
  if (minutes === 0) return `${rest} s`;
  return rest === 0 ? `${minutes} min` : `${minutes} min ${rest} s`;
}
