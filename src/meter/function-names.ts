import {meterFunctions, type MeterFunction} from './meter-function.ts';

/** What a person calls a position of the selector, and what the expected value is counted in. */
export interface FunctionName {
  readonly title: string;
  /** A word or two that fits on a key. */
  readonly short: string;
  /** Symbol of the base unit: expectations are written in it. */
  readonly baseUnit: 'V' | 'Ω' | 'A';
  /** The base unit in words, for speech. */
  readonly spoken: string;
  /** Leads on two terminals, or the jaw around one wire. */
  readonly probes: 'leads' | 'clamp';
}

export const functionNames: Readonly<Record<MeterFunction, FunctionName>> = {
  'ac-volts': {
    title: 'Volts AC',
    short: 'AC volts',
    baseUnit: 'V',
    spoken: 'volts AC',
    probes: 'leads',
  },
  'dc-volts': {
    title: 'Volts DC',
    short: 'DC volts',
    baseUnit: 'V',
    spoken: 'volts DC',
    probes: 'leads',
  },
  'low-impedance-volts': {
    title: 'Volts AC, low impedance',
    short: 'Low Z',
    baseUnit: 'V',
    spoken: 'volts AC, low impedance',
    probes: 'leads',
  },
  ohms: {title: 'Ohms', short: 'Ohms', baseUnit: 'Ω', spoken: 'ohms', probes: 'leads'},
  continuity: {
    title: 'Continuity',
    short: 'Tone',
    baseUnit: 'Ω',
    spoken: 'ohms, continuity',
    probes: 'leads',
  },
  'clamp-amps': {
    title: 'Clamp amps AC',
    short: 'Clamp',
    baseUnit: 'A',
    spoken: 'amps AC',
    probes: 'clamp',
  },
};

/** The function at a place on the selector, counted from 1 as the number keys are; undefined past its ends. */
export function functionAt(place: number): MeterFunction | undefined {
  return meterFunctions[place - 1];
}
