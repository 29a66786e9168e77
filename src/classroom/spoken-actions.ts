import type {Action} from '../bench/actions.ts';
import {functionNames} from '../meter/function-names.ts';
import type {MeterFunction} from '../meter/meter-function.ts';

/** The readings of an attempt, in words, in order: "R3.A1 to R3.A2, AC volts". */
export function readingsInWords(actions: readonly Action[]): string[] {
  let fn: MeterFunction = 'ac-volts';
  const words: string[] = [];
  for (const action of actions) {
    if (action.do === 'meter') fn = action.function;
    else if (action.do === 'read') {
      words.push(`${action.red} to ${action.black}, ${functionNames[fn].short}`);
    } else if (action.do === 'clamp')
      words.push(`around ${action.wire}, ${functionNames[fn].short}`);
  }
  return words;
}
