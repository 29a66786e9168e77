import {meterFunctions, type MeterFunction} from './meter-function.ts';

/** What a person calls a position of the selector, and what the expected value is counted in. */
export interface FunctionName {
  readonly title: string;
  /** A word or two that fits on a key. */
  readonly short: string;
  /** Symbol of the base unit, in which amounts are kept. */
  readonly baseUnit: 'V' | 'Ω' | 'A' | 'Hz' | 'F';
  /** The unit in which a person writes a plain number: `3` means 3 µA on microamps. */
  readonly written: {readonly unit: string; readonly scale: number};
  /** The base unit in words, for speech. */
  readonly spoken: string;
  /** Leads on two terminals, or the jaw around one wire. */
  readonly probes: 'leads' | 'clamp';
}

const volts = {baseUnit: 'V', written: {unit: 'V', scale: 1}, probes: 'leads'} as const;
const ohms = {baseUnit: 'Ω', written: {unit: 'Ω', scale: 1}, probes: 'leads'} as const;
const hertz = {baseUnit: 'Hz', written: {unit: 'Hz', scale: 1}} as const;

export const functionNames: Readonly<Record<MeterFunction, FunctionName>> = {
  'ac-volts': {...volts, title: 'Volts AC', short: 'AC volts', spoken: 'volts AC'},
  'dc-volts': {...volts, title: 'Volts DC', short: 'DC volts', spoken: 'volts DC'},
  'low-impedance-volts': {
    ...volts,
    title: 'Volts AC, low impedance',
    short: 'Low Z',
    spoken: 'volts AC, low impedance',
  },
  ohms: {...ohms, title: 'Ohms', short: 'Ohms', spoken: 'ohms'},
  continuity: {...ohms, title: 'Continuity', short: 'Tone', spoken: 'ohms, continuity'},
  'clamp-amps': {
    title: 'Clamp amps AC',
    short: 'Clamp',
    baseUnit: 'A',
    written: {unit: 'A', scale: 1},
    spoken: 'amps AC',
    probes: 'clamp',
  },
  hertz: {...hertz, title: 'Hertz, leads', short: 'Hertz', spoken: 'hertz', probes: 'leads'},
  'clamp-hertz': {
    ...hertz,
    title: 'Hertz, clamp',
    short: 'Hz clamp',
    spoken: 'hertz in the clamp',
    probes: 'clamp',
  },
  capacitance: {
    title: 'Capacitance',
    short: 'Capacity',
    baseUnit: 'F',
    written: {unit: 'µF', scale: 1e-6},
    spoken: 'farads',
    probes: 'leads',
  },
  'dc-microamps': {
    title: 'Microamps DC',
    short: 'µA series',
    baseUnit: 'A',
    written: {unit: 'µA', scale: 1e-6},
    spoken: 'amps DC',
    probes: 'leads',
  },
};

/** The function at a place on the selector, counted from 1 as the number keys are; undefined past its ends. */
export function functionAt(place: number): MeterFunction | undefined {
  return meterFunctions[place - 1];
}
