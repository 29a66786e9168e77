import type {Complex} from '../parts/element.ts';
import type {MeterDisplay} from './meter.ts';
import type {MeterFunction} from './meter-function.ts';
import {exact, type Calibration} from './calibration.ts';
import {digits, overload, show} from './display.ts';
import {
  disturbingAcVolts,
  disturbingDcVolts,
  meterSpec,
  testAmps,
  toneBelowOhms,
} from './meter-spec.ts';

/** What the meter meets: a solved circuit that can say what stands behind two points. */
export interface MeterLook {
  readonly network: {readonly frequencyHz: number};
  thevenin(
    a: string,
    b: string,
    network: 'ac' | 'dc',
  ): {readonly volts: Complex; readonly ohms: Complex};
  amps(element: string): Complex;
}

/** Where the leads are, or which wire the clamp is around. */
export type Placement = {readonly red: string; readonly black: string} | {readonly wire: string};

/**
 * What the meter shows. The circuit is never solved again: its Thevenin pair at the leads is loaded with
 * the meter's own input, which is exact for a linear network.
 *
 * @param fn Position of the selector. `clamp-amps` wants a wire, every other function two leads.
 * @throws Error when the placement does not suit the function.
 */
export function readMeter(
  fn: MeterFunction,
  look: MeterLook,
  at: Placement,
  calibration: Calibration = exact,
): MeterDisplay {
  const gain = 1 + calibration[fn];
  if (fn === 'clamp-amps') {
    if (!('wire' in at))
      throw new Error('The clamp goes around a wire; give a wire, not two terminals.');
    return show(fn, magnitude(look.amps(at.wire)) * gain);
  }
  if (!('red' in at))
    throw new Error(`The ${fn} function reads between two leads; give red and black.`);
  switch (fn) {
    case 'ac-volts':
    case 'low-impedance-volts':
      return show(fn, acVoltsSeen(fn, look, at.red, at.black) * gain);
    case 'dc-volts':
      return show(fn, dcVoltsSeen(fn, look, at.red, at.black) * gain);
    case 'ohms':
    case 'continuity':
      return resistance(fn, look, at.red, at.black, gain);
  }
}

/** RMS volts left on the leads once the meter's input loads the circuit. */
export function acVoltsSeen(
  fn: MeterFunction,
  look: MeterLook,
  red: string,
  black: string,
): number {
  if (red === black) return 0;
  const {volts, ohms} = look.thevenin(red, black, 'ac');
  const {inputOhms = Infinity, inputPicofarads = 0} = meterSpec[fn];
  return loadedAcVolts(volts, ohms, inputOhms, inputPicofarads, look.network.frequencyHz);
}

/**
 * |V·Z_in / (Z_th + Z_in)| = |V / (1 + Z_th·Y_in)|, with Y_in = 1/R + jωC.
 * The voltage divider of a meter with its source; OpenStax College Physics 2e §21.4, "null measurements".
 */
export function loadedAcVolts(
  volts: Complex,
  ohms: Complex,
  inputOhms: number,
  inputPicofarads: number,
  frequencyHz: number,
): number {
  const g = 1 / inputOhms;
  const b = 2 * Math.PI * frequencyHz * inputPicofarads * 1e-12;
  const re = 1 + ohms.re * g - ohms.im * b;
  const im = ohms.re * b + ohms.im * g;
  return magnitude(volts) / Math.hypot(re, im);
}

/** Direct volts on the loaded leads, positive when red is the higher. Alternating volts average to nothing. */
export function dcVoltsSeen(
  fn: MeterFunction,
  look: MeterLook,
  red: string,
  black: string,
): number {
  if (red === black) return 0;
  const {volts, ohms} = look.thevenin(red, black, 'dc');
  const {inputOhms = Infinity} = meterSpec[fn];
  return volts.re / (1 + ohms.re / inputOhms);
}

/**
 * Whether an outside voltage on the leads is enough to spoil a resistance reading. Stray voltage is not: the
 * protection resistor of the input pulls it down.
 */
export function disturbed(fn: MeterFunction, look: MeterLook, red: string, black: string): boolean {
  return (
    acVoltsSeen(fn, look, red, black) >= disturbingAcVolts ||
    Math.abs(dcVoltsSeen(fn, look, red, black)) >= disturbingDcVolts
  );
}

/**
 * An ohmmeter sends a known current and measures the volts that it makes. A small direct voltage already
 * there adds to them and makes the reading wrong with no warning; a large one, or an alternating one, leaves
 * no reading at all.
 */
function resistance(
  fn: 'ohms' | 'continuity',
  look: MeterLook,
  red: string,
  black: string,
  gain: number,
): MeterDisplay {
  if (disturbed(fn, look, red, black)) {
    return {...overload(fn), hazard: true, ...(fn === 'continuity' ? {tone: false} : {})};
  }
  const {volts, ohms} =
    red === black ? {volts: {re: 0, im: 0}, ohms: {re: 0, im: 0}} : look.thevenin(red, black, 'dc');
  let display = overload(fn);
  for (const [i, range] of meterSpec[fn].ranges.entries()) {
    const seen = (ohms.re + volts.re / testAmps[i]!) * gain;
    // a source that drives against the test current leaves the converter below zero: no reading
    if (seen < -range.resolution) break;
    const candidate = digits(Math.max(0, seen), range);
    if (candidate.value! <= range.upTo) {
      display = candidate;
      break;
    }
  }
  return fn === 'continuity'
    ? {...display, tone: (display.value ?? Infinity) < toneBelowOhms}
    : display;
}

function magnitude(value: Complex): number {
  return Math.hypot(value.re, value.im);
}
