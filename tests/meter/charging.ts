import {CapacitorCharge, capacitorsOf} from '../../src/circuits/capacitor-charge.ts';
import {insulationOhms} from '../../src/circuits/build-network.ts';
import {compileNetwork} from '../../src/circuits/plan.ts';
import {solveDc} from '../../src/circuits/solve.ts';
import type {Element} from '../../src/parts/element.ts';

/** A resistor or a capacitor between two named points, `earth` among them. */
export type Drawn =
  | {readonly a: string; readonly b: string; readonly ohms: number}
  | {readonly a: string; readonly b: string; readonly microfarads: number};

/** Resistors and capacitors as the meter finds them. Every point is insulated from earth, as in a unit. */
export function charging(drawn: readonly Drawn[]): CapacitorCharge {
  const nodes = [...new Set(drawn.flatMap(({a, b}) => [a, b]))].filter((n) => n !== 'earth');
  const elements: Element[] = [
    ...drawn.map((each, i): Element =>
      'ohms' in each
        ? {is: 'conductor', id: `r${i}`, ...each}
        : {is: 'capacitor', id: `c${i}`, leakageOhms: 1e12, ...each},
    ),
    ...nodes.map((a): Element => ({
      is: 'conductor',
      id: `insulation:${a}`,
      a,
      b: 'earth',
      ohms: insulationOhms * 1e3,
    })),
  ];
  const network = {frequencyHz: 60, nodes: ['earth', ...nodes], elements};
  return new CapacitorCharge(solveDc(compileNetwork(network), {}), capacitorsOf(elements));
}
