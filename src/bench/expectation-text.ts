import {functionNames} from '../meter/function-names.ts';
import type {MeterFunction} from '../meter/meter-function.ts';
import type {Expectation} from './actions.ts';

const prefixes: Readonly<Record<string, number>> = {
  u: 1e-6,
  µ: 1e-6,
  m: 1e-3,
  k: 1e3,
  K: 1e3,
  M: 1e6,
};

/**
 * What a person typed as their expectation, as a number in the function's base unit. Takes `24`, `24 V`,
 * `4.7k`, `120mV`, a decimal comma, and `OL` or `open`. An empty text means that they skip it.
 * @returns the expectation, `undefined` where skipped, or one sentence on what is wrong.
 */
export function parseExpectation(
  text: string,
  fn: MeterFunction,
): Expectation | undefined | string {
  const typed = text.trim();
  if (typed === '') return undefined;
  if (/^(ol|open|o\.?l\.?)$/i.test(typed)) return {open: true};
  const match =
    /^([+-]?\d+(?:[.,]\d+)?|[+-]?[.,]\d+)\s*([umkKMµ]?)\s*(v|vac|vdc|volts?|a|amps?|Ω|Ω|ohms?)?$/iu.exec(
      typed,
    );
  const unit = functionNames[fn].baseUnit;
  if (!match)
    return `Write a number in ${unit}, such as ${unit === 'V' ? '24' : unit === 'A' ? '3.5' : '4.7k'}, or OL.`;
  const [, digits = '', prefix = '', written = ''] = match;
  const meant = unitMeant(written);
  if (meant && meant !== unit)
    return `The meter stands on ${functionNames[fn].title.toLowerCase()}: expect ${unit}, not ${meant}.`;
  const value = Number(digits.replace(',', '.')) * (prefixes[prefix] ?? 1);
  return {value: Number(value.toPrecision(12))};
}

function unitMeant(written: string): 'V' | 'A' | 'Ω' | undefined {
  if (written === '') return undefined;
  const first = written.charAt(0).toLowerCase();
  return first === 'v' ? 'V' : first === 'a' ? 'A' : 'Ω';
}

/** An expectation as the log shows it: `24 V`, `4.7 kΩ`, `OL`; a dash where it was skipped. */
export function expectationText(
  expected: Expectation | undefined,
  fn: MeterFunction | undefined,
): string {
  if (!expected) return '–';
  if (expected.open) return 'OL';
  if (expected.value === undefined) return '–';
  const unit = fn ? functionNames[fn].baseUnit : '';
  const size = Math.abs(expected.value);
  if (size >= 1e6) return `${trim(expected.value / 1e6)} M${unit}`;
  if (size >= 1e3 && unit === 'Ω') return `${trim(expected.value / 1e3)} k${unit}`;
  if (size > 0 && size < 0.1 && unit !== 'Ω') return `${trim(expected.value * 1e3)} m${unit}`;
  return `${trim(expected.value)} ${unit}`;
}

function trim(value: number): string {
  return String(Number(value.toPrecision(4)));
}
