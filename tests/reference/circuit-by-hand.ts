import {nodesOf} from '../../src/circuits/build-network.ts';
import {magnitude} from '../../src/circuits/complex.ts';
import {compileNetwork} from '../../src/circuits/plan.ts';
import {solveAc, solveDc} from '../../src/circuits/solve.ts';
import type {Complex, Element, ElementStates} from '../../src/parts/element.ts';

/** A source stiff enough that no figure of a textbook moves in its last digit. */
const stiffOhms = 1e-6;

let count = 0;
const id = (name: string) => name || `e${(count += 1)}`;

export const resistor = (a: string, b: string, ohms: number, name = ''): Element => ({
  is: 'conductor',
  id: id(name),
  a,
  b,
  ohms,
});
export const battery = (a: string, b: string, volts: number, name = ''): Element => ({
  is: 'dcSource',
  id: id(name),
  a,
  b,
  volts,
  ohms: stiffOhms,
});
export const supply = (
  a: string,
  b: string,
  volts: number,
  degrees = 0,
  name = '',
  ohms: Complex = {re: stiffOhms, im: 0},
): Element => ({is: 'acSource', id: id(name), a, b, volts, degrees, ohms});
export const load = (a: string, b: string, acOhms: Complex, name = ''): Element => ({
  is: 'impedance',
  id: id(name),
  a,
  b,
  acOhms,
  dcOhms: acOhms.re || 1e-3,
});
export const inductor = (a: string, b: string, henries: number, name = '', hertz = 60) =>
  load(a, b, {re: 0, im: 2 * Math.PI * hertz * henries}, name);
export const capacitor = (a: string, b: string, microfarads: number, name = ''): Element => ({
  is: 'capacitor',
  id: id(name),
  a,
  b,
  microfarads,
  leakageOhms: 1e15,
});

/** Solves elements alone, with no insulation or stray capacitance: the circuit as the book draws it. */
export function solved(
  kind: 'ac' | 'dc',
  elements: readonly Element[],
  states: ElementStates = {},
  frequencyHz = 60,
) {
  const nodes = new Set(['earth', ...elements.flatMap(nodesOf)]);
  const on = Object.fromEntries(
    elements
      .filter((element) => element.is === 'dcSource')
      .map((element) => [element.id, {on: true}]),
  );
  const network = {frequencyHz, nodes: [...nodes], elements};
  return (kind === 'ac' ? solveAc : solveDc)(compileNetwork(network), {...on, ...states});
}

/** Within a relative share of what the source prints. */
export function near(found: number, printed: number, relative: number): boolean {
  return Math.abs(found - printed) <= relative * Math.abs(printed);
}

export {magnitude};
