import type {OperatingUnit} from '../sequences/operating-unit.ts';
import {loadedAcVolts} from '../meter/read-meter.ts';
import type {Standing} from './standing.ts';
import {isolating} from './bench-controls.ts';

/** From here on a touch is held to be dangerous; below 50 V to ground is where 29 CFR 1910.333(a)(1) draws it. */
export const dangerousVolts = 50;

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

/** Highest volts to earth on the line-voltage terminals inside one enclosure, with the terminal. */
export function hottest(
  standing: Standing,
  enclosure: string,
): {terminal: string; volts: number} | undefined {
  let found: {terminal: string; volts: number} | undefined;
  for (const terminal of lineTerminals(standing, enclosure)) {
    const volts = touchVolts(standing.operating, terminal);
    if (!found || volts > found.volts) found = {terminal, volts};
  }
  return found;
}

/** Terminals in an enclosure on which a line-voltage wire lands. */
export function lineTerminals({unit, classes, reach}: Standing, enclosure: string): Set<string> {
  const terminals = new Set<string>();
  for (const wire of unit.wires) {
    if (classes.get(wire.id) !== 'line') continue;
    for (const terminal of [wire.from, wire.to]) {
      if (reach.enclosureOf(terminal.slice(0, terminal.indexOf('.')))?.id === enclosure)
        terminals.add(terminal);
    }
  }
  return terminals;
}
