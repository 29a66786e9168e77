import type {Across, ChargingPath} from '../circuits/capacitor-charge.ts';
import type {Complex} from '../parts/element.ts';
import {capacitanceShown, climbs} from './fill-capacitor.ts';
import type {MeterDisplay} from './meter.ts';
import {clampFunctions, type MeterFunction} from './meter-function.ts';
import {exact, type Calibration} from './calibration.ts';
import {digits, overload, show} from './display.ts';
import {
  countedFromAmps,
  countedFromVolts,
  disturbingAcVolts,
  disturbingDcVolts,
  fuseAmps,
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
  /** Direct volts that charged capacitors put on two points, a second after an input of so many ohms is laid on. */
  chargeVolts?(a: string, b: string, inputOhms: number): number;
  /** What a constant direct current between two points meets. */
  chargingPath?(a: string, b: string): ChargingPath;
  /** A meter's leads that are a part of the circuit already. */
  readonly meterLeads?: Across | undefined;
}

/** Where the leads are, or which wire the clamp is around. */
export type Placement = {readonly red: string; readonly black: string} | {readonly wire: string};

/**
 * What the meter shows. The circuit is never solved again: its Thevenin pair at the leads is loaded with
 * the meter's own input, which is exact for a linear network.
 *
 * @param fn Position of the selector. The clamp functions want a wire, every other function two leads.
 * @throws Error when the placement does not suit the function.
 */
export function readMeter(
  fn: MeterFunction,
  look: MeterLook,
  at: Placement,
  calibration: Calibration = exact,
): MeterDisplay {
  const gain = 1 + calibration[fn];
  if (clampFunctions.has(fn)) {
    if (!('wire' in at))
      throw new Error('The clamp goes around a wire; give a wire, not two terminals.');
    const amps = magnitude(look.amps(at.wire));
    return fn === 'clamp-amps'
      ? show(fn, amps * gain)
      : frequency(fn, look, amps >= countedFromAmps, gain);
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
    case 'hertz': {
      const volts = acVoltsSeen(fn, look, at.red, at.black);
      return frequency(fn, look, volts >= countedFromVolts, gain);
    }
    case 'capacitance':
      return capacitance(look, at.red, at.black, gain);
    case 'dc-microamps':
      return microamps(look, at.red, at.black, gain);
    default:
      throw new Error(`The ${fn} function does not read between two leads.`);
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
  return volts.re / (1 + ohms.re / inputOhms) + (look.chargeVolts?.(red, black, inputOhms) ?? 0);
}

/** Amps that the microamps input puts between two points, alternating and direct: it is nearly a short. */
export function burdenAmps(
  look: MeterLook,
  red: string,
  black: string,
): {readonly ac: number; readonly dc: number} {
  const {inputOhms: burden = 0} = meterSpec['dc-microamps'];
  if (red === black) return {ac: 0, dc: 0};
  const leads = look.meterLeads;
  const lies =
    leads !== undefined &&
    leads.ohms === burden &&
    [leads.a, leads.b].includes(red) &&
    [leads.a, leads.b].includes(black);
  const amps = (network: 'ac' | 'dc'): Complex => {
    const {volts, ohms} = look.thevenin(red, black, network);
    // a meter that lies in the circuit already is among the ohms behind its own leads
    const [re, im] = lies ? [burden, 0] : [ohms.re + burden, ohms.im];
    const square = re * re + im * im;
    return {
      re: (volts.re * re + volts.im * im) / square,
      im: (volts.im * re - volts.re * im) / square,
    };
  };
  return {ac: magnitude(amps('ac')), dc: amps('dc').re};
}

/** Whether the microamps input, laid between two points, blows its fuse: a source, or a charged capacitor, feeds it. */
export function blowsFuse(look: MeterLook, red: string, black: string): boolean {
  const {ac, dc} = burdenAmps(look, red, black);
  const {inputOhms: burden = 1} = meterSpec['dc-microamps'];
  const charge = Math.abs(look.chargeVolts?.(red, black, Infinity) ?? 0) / burden;
  return Math.max(ac, Math.abs(dc), charge) > fuseAmps;
}

/**
 * Direct current through the meter, which is a part of the circuit with the resistance of its shunt: positive into
 * red. Alternating current through it averages to nothing. What blows the fuse is read by nobody.
 */
function microamps(look: MeterLook, red: string, black: string, gain: number): MeterDisplay {
  const fn = 'dc-microamps';
  if (blowsFuse(look, red, black)) return {...show(fn, 0), fuseBlew: true};
  return show(fn, burdenAmps(look, red, black).dc * gain);
}

/** Zero crossings in a second; without enough volts or amps there is nothing to count. */
function frequency(
  fn: MeterFunction,
  look: MeterLook,
  counts: boolean,
  gain: number,
): MeterDisplay {
  return show(fn, counts ? look.network.frequencyHz * gain : 0);
}

/** A live circuit or a charged capacitor leaves no reading; see {@link capacitanceShown} for the rest. */
function capacitance(look: MeterLook, red: string, black: string, gain: number): MeterDisplay {
  const fn = 'capacitance';
  if (disturbed(fn, look, red, black))
    return {...overload(fn), hazard: true, ...chargedFlag(fn, look, red, black)};
  if (red === black) return overload(fn);
  const path = look.chargingPath?.(red, black) ?? {
    resistiveOhms: look.thevenin(red, black, 'dc').ohms.re,
    terms: [],
  };
  return capacitanceShown(path, gain);
}

/** Says that it is a capacitor's charge which disturbs, where the circuit itself is dead. */
function chargedFlag(
  fn: MeterFunction,
  look: MeterLook,
  red: string,
  black: string,
): {charged?: true} {
  const {inputOhms = Infinity} = meterSpec[fn];
  const charge = Math.abs(look.chargeVolts?.(red, black, inputOhms) ?? 0);
  return charge >= disturbingDcVolts && acVoltsSeen(fn, look, red, black) < disturbingAcVolts
    ? {charged: true}
    : {};
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
    return {
      ...overload(fn),
      hazard: true,
      ...chargedFlag(fn, look, red, black),
      ...(fn === 'continuity' ? {tone: false} : {}),
    };
  }
  const {volts, ohms} =
    red === black ? {volts: {re: 0, im: 0}, ohms: {re: 0, im: 0}} : look.thevenin(red, black, 'dc');
  const charge = look.chargeVolts?.(red, black, meterSpec[fn].inputOhms ?? Infinity) ?? 0;
  let display = overload(fn);
  for (const [i, range] of meterSpec[fn].ranges.entries()) {
    const seen = (ohms.re + (volts.re + charge) / testAmps[i]!) * gain;
    // a source that drives against the test current leaves the converter below zero: no reading
    if (seen < -range.resolution) break;
    const candidate = digits(Math.max(0, seen), range);
    if (candidate.value! <= range.upTo) {
      display = candidate;
      break;
    }
  }
  if (fn === 'continuity') return {...display, tone: (display.value ?? Infinity) < toneBelowOhms};
  return display;
}

/** What a person sees of a reading beside its digits: ohms on a capacitor climb to where they end. */
export function watched(
  fn: MeterFunction,
  look: MeterLook,
  at: Placement,
  display: MeterDisplay,
): MeterDisplay {
  if (fn !== 'ohms' || display.hazard || !('red' in at) || at.red === at.black) return display;
  const path = look.chargingPath?.(at.red, at.black);
  return path && climbs(path) ? {...display, climbed: true} : display;
}

function magnitude(value: Complex): number {
  return Math.hypot(value.re, value.im);
}
