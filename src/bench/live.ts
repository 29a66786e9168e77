import {magnitude} from '../circuits/complex.ts';
import {partOf, type CircuitClass} from '../faults/nets.ts';
import type {OperatingUnit} from '../sequences/operating-unit.ts';
import {loadedAcVolts} from '../meter/read-meter.ts';
import type {Standing} from './standing.ts';
import {isolating} from './bench-controls.ts';

/** From here on a touch is held to be dangerous; below 50 V to ground is where 29 CFR 1910.333(a)(1) draws it. */
export const dangerousVolts = 50;

/** Two points whose volts differ by less than a thousandth are equally hot. */
const sameVolts = 1.001;

/** A control circuit is live from here on. */
export const liveVolts = 5;

/**
 * Volts from a point to earth that a body would meet. The point is loaded with 10 kΩ, so stray voltage on a
 * floating conductor does not count as live.
 */
export function touchVolts(operating: OperatingUnit, point: string): number {
  const {volts, ohms} = operating.thevenin(point, 'earth', 'ac');
  return loadedAcVolts(volts, ohms, 10_000, 0, operating.network.frequencyHz);
}

/** Isolating parts that stand open or off now. */
export function isolatedParts({controls, operating}: Standing): string[] {
  return controls
    .filter(({control, target}) => control.isolates && isolating(operating.valueOf(target)))
    .map(({part}) => part);
}

/** Highest volts to earth on the terminals of a class of circuit inside one enclosure, with the terminal. */
export function hottest(
  standing: Standing,
  enclosure: string,
  circuit: CircuitClass = 'line',
): {terminal: string; volts: number} | undefined {
  let found: {terminal: string; volts: number} | undefined;
  for (const terminal of terminalsOf(standing, enclosure, circuit)) {
    // a body draws current and never raises a point's volts, so one that stands lower unloaded needs no closer look
    const unloaded = magnitude(standing.operating.acVolts(terminal, 'earth'));
    if (found && unloaded <= found.volts * sameVolts) continue;
    const volts = touchVolts(standing.operating, terminal);
    if (!found || volts > found.volts) found = {terminal, volts};
  }
  return found;
}

/** Where wires land does not change while a person works, and is asked for after every action. */
const landings = new WeakMap<Standing['classes'], Map<string, ReadonlySet<string>>>();

/** Terminals in an enclosure on which a wire of a class of circuit lands. */
export function terminalsOf(
  {unit, classes, reach}: Standing,
  enclosure: string,
  circuit: CircuitClass,
): ReadonlySet<string> {
  let known = landings.get(classes);
  if (!known) landings.set(classes, (known = new Map()));
  const key = `${circuit} ${enclosure}`;
  const found = known.get(key);
  if (found) return found;
  const terminals = new Set<string>();
  known.set(key, terminals);
  for (const wire of unit.wires) {
    if (classes.get(wire.id) !== circuit) continue;
    for (const terminal of [wire.from, wire.to]) {
      if (reach.enclosureOf(partOf(terminal))?.id === enclosure) terminals.add(terminal);
    }
  }
  return terminals;
}
