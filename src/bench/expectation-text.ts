import {functionNames, type FunctionName} from '../meter/function-names.ts';
import type {MeterFunction} from '../meter/meter-function.ts';
import type {Expectation} from './actions.ts';

const prefixes: Readonly<Record<string, number>> = {
  p: 1e-12,
  n: 1e-9,
  u: 1e-6,
  µ: 1e-6,
  m: 1e-3,
  k: 1e3,
  K: 1e3,
  M: 1e6,
};

/**
 * What a person typed as their expectation, as a number in the function's base unit. Takes `24`, `24 V`,
 * `4.7k`, `120mV`, a decimal comma, and `OL` or `open`. A plain number is in the unit that the function is written in:
 * `35` on capacitance is 35 µF. An empty text means that they skip it.
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
    /^([+-]?\d+(?:[.,]\d+)?|[+-]?[.,]\d+)\s*([pnumkKMµμ]?)\s*(v|vac|vdc|volts?|a|amps?|Ω|Ω|ohms?|hz|hertz|f|fd|farads?)?$/iu.exec(
      typed,
    );
  const {baseUnit: unit, written: plain, title} = functionNames[fn];
  if (!match) return `Write a number in ${plain.unit}, such as ${examples[plain.unit]}, or OL.`;
  const [, digits = '', prefix = '', written = ''] = match;
  const meant = unitMeant(written);
  if (meant && meant !== unit)
    return `The meter stands on ${title.charAt(0).toLowerCase()}${title.slice(1)}: expect ${plain.unit}, not ${meant}.`;
  const scale = prefix === '' && !meant ? plain.scale : (prefixes[prefix] ?? 1);
  const value = Number(digits.replace(',', '.')) * scale;
  return {value: Number(value.toPrecision(12))};
}

const examples: Readonly<Record<string, string>> = {
  V: '24',
  A: '3.5',
  Ω: '4.7k',
  Hz: '60',
  µF: '35',
  µA: '3',
};

function unitMeant(written: string): FunctionName['baseUnit'] | undefined {
  if (written === '') return undefined;
  const first = written.charAt(0).toLowerCase();
  const units = {v: 'V', a: 'A', h: 'Hz', f: 'F'} as const;
  return units[first as keyof typeof units] ?? 'Ω';
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
  const plain = fn && functionNames[fn].written;
  if (plain && plain.scale !== 1) return `${trim(expected.value / plain.scale)} ${plain.unit}`;
  const size = Math.abs(expected.value);
  if (size >= 1e6) return `${trim(expected.value / 1e6)} M${unit}`;
  if (size >= 1e3 && unit === 'Ω') return `${trim(expected.value / 1e3)} k${unit}`;
  if (size > 0 && size < 0.1 && unit !== 'Ω') return `${trim(expected.value * 1e3)} m${unit}`;
  return `${trim(expected.value)} ${unit}`;
}

function trim(value: number): string {
  return String(Number(value.toPrecision(4)));
}
