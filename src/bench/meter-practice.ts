import {blowsFuse, disturbed} from '../meter/read-meter.ts';
import {sourcingFunctions, type MeterFunction} from '../meter/meter-function.ts';
import {partOf} from '../faults/nets.ts';
import type {Breach} from './breach.ts';
import {dangerousVolts, liveVolts, touchVolts} from './live.ts';
import type {Standing} from './standing.ts';

/** Charge from here on spoils a reading, and is worth a word. */
const spoilingVolts = 0.5;

const named: Readonly<Partial<Record<MeterFunction, string>>> = {
  ohms: 'Resistance',
  continuity: 'Continuity',
  capacitance: 'Capacitance',
};

/** What a reading breaks of safe practice, judged just before the leads go on. */
export function readingBreaches(red: string, black: string, standing: Standing): Breach[] {
  const {operating, function: fn} = standing;
  if (fn === 'dc-microamps') {
    return blowsFuse(operating, red, black) ? [microampsAcross(red, black)] : [];
  }
  if (!sourcingFunctions.has(fn)) return [];
  const charge = Math.abs(operating.chargeVolts(red, black, Infinity));
  if (charge >= spoilingVolts) return [onCharge(red, black, charge, fn)];
  return onLive(red, black, standing);
}

/** The microamps input is nearly a short: it belongs in series, never across a source. */
export function microampsAcross(red: string, black: string): Breach {
  return {
    id: `microamps-across:${red}:${black}`,
    severity: 'danger',
    text: `Microamps measured across a source (${red} to ${black}): the input is nearly a short, and only the meter’s fuse stood between it and an arc in your hand. It has blown; until it is renewed the meter reads zero here. Microamps are read in series: power off, lift the wire, bridge the gap with the leads.`,
  };
}

/** Resistance and continuity are for dead circuits, whatever the leads happen to show between them. */
function onLive(red: string, black: string, {operating, function: fn}: Standing): Breach[] {
  const volts = Math.max(touchVolts(operating, red), touchVolts(operating, black));
  if (volts < liveVolts && !disturbed(fn, operating, red, black)) return [];
  return [
    {
      id: `${fn === 'capacitance' ? 'capacitance' : 'resistance'}-on-live:${red}:${black}`,
      severity: volts >= dangerousVolts ? 'danger' : 'caution',
      text: `${named[fn]} measured on a live circuit (${red} to ${black}${volts >= 1 ? `, ${Math.round(volts)} V to earth` : ''}). The reading is wrong and a meter can be destroyed in your hand: isolate and prove dead first.`,
    },
  ];
}

function onCharge(red: string, black: string, volts: number, fn: MeterFunction): Breach {
  return {
    id: `on-charge:${red}:${black}`,
    severity: volts >= dangerousVolts ? 'danger' : 'caution',
    text: `${named[fn]} measured on a charged capacitor (${red} to ${black}, ${shown(volts)} V DC left). The reading is worth nothing: discharge it through a resistor, measure volts DC, then read.`,
  };
}

/** A bleed resistor on a live circuit is a heater in your hand. */
export function dischargeBreaches(from: string, to: string, {operating}: Standing): Breach[] {
  const touch = Math.max(touchVolts(operating, from), touchVolts(operating, to));
  const {volts, ohms} = operating.thevenin(from, to, 'ac');
  const across =
    Math.hypot(volts.re, volts.im) / Math.hypot(1 + ohms.re / bleedOhms, ohms.im / bleedOhms);
  if (touch < dangerousVolts && across < liveVolts) return [];
  return [
    {
      id: `bleed-on-live:${from}:${to}`,
      severity: touch >= dangerousVolts ? 'danger' : 'caution',
      text: `Bleed resistor laid on a live circuit (${from} to ${to}). It heats, and discharges nothing while the power is on: isolate, lock and prove dead before you discharge a capacitor.`,
    },
  ];
}

/** A wire moved on a capacitor that is still charged: its terminals are a hand's breadth apart. */
export function chargedTerminal(terminal: string, {unit, operating}: Standing): Breach[] {
  const part = unit.parts.find(({id}) => id === partOf(terminal));
  if (!part?.elements.some((element) => element.is === 'capacitor')) return [];
  const volts = Math.max(
    0,
    ...part.terminals
      .map((each) => `${part.id}.${each}`)
      .filter((other) => other !== terminal)
      .map((other) => Math.abs(operating.chargeVolts(terminal, other, Infinity))),
  );
  if (volts < dangerousVolts) return [];
  return [
    {
      id: `charged:${part.id}`,
      severity: 'danger',
      text: `A wire moved at ${terminal} with ${shown(volts)} V DC left on the capacitor. A dead circuit is not a discharged one: discharge it through a resistor and measure volts DC before your hands go near.`,
    },
  ];
}

/**
 * The bleed resistor of the bag, ohms, and how long it is held on, seconds. Five time constants of the largest run
 * capacitor are 6 s; a screwdriver is not offered (resistor: common practice, no source).
 */
export const bleedOhms = 15e3;
export const bleedSeconds = 10;

const shown = (volts: number): string => (volts >= 10 ? volts.toFixed(0) : volts.toFixed(1));
