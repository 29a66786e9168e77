import {expect, test} from 'vitest';
import {planElimination} from '../../src/circuits/elimination-order.ts';
import {compileNetwork} from '../../src/circuits/plan.ts';
import {solveAc, solveDc} from '../../src/circuits/solve.ts';
import type {Element} from '../../src/parts/element.ts';

const conductor = (id: string, a: string, b: string, ohms: number): Element => ({
  is: 'conductor',
  id,
  a,
  b,
  ohms,
});
const network = (nodes: string[], elements: Element[]) => ({
  frequencyHz: 60,
  nodes: ['earth', ...nodes],
  elements,
});

test('a node with no path to earth is refused by name', () => {
  expect(() =>
    compileNetwork(
      network(['a', 'b', 'c'], [conductor('r1', 'a', 'earth', 1), conductor('r2', 'b', 'c', 1)]),
    ),
  ).toThrow('The node "b" has no path to earth');
});

test('a transformer alone does not tie its secondary to earth', () => {
  const transformer: Element = {
    is: 'transformer',
    id: 'T',
    magnetisingVa: {re: 1, im: 1},
    windings: [
      {id: 'T.p', a: 'a', b: 'earth', turnsVolts: 120, ohms: 1, reactanceOhms: 1},
      {id: 'T.s', a: 'x', b: 'y', turnsVolts: 24, ohms: 1, reactanceOhms: 1},
    ],
  };
  expect(() => compileNetwork(network(['a', 'x', 'y'], [transformer]))).toThrow(
    'has no path to earth',
  );
});

test('an element on a node that is not listed, two with one id, and one without ohms are refused', () => {
  expect(() => compileNetwork(network(['K1.A1'], [conductor('r', 'K1.A2', 'earth', 1)]))).toThrow(
    'There is no node for r "K1.A2". The nearest is "K1.A1".',
  );
  expect(() =>
    compileNetwork(
      network(['a'], [conductor('r', 'a', 'earth', 1), conductor('r', 'a', 'earth', 2)]),
    ),
  ).toThrow('Two elements have the id "r"');
  expect(() => compileNetwork(network(['a'], [conductor('r', 'a', 'earth', 0)]))).toThrow(
    '"r" has no impedance',
  );
});

test('a chain is eliminated without any fill', () => {
  const pairs = Array.from({length: 99}, (_, i) => [i, i + 1]).flat();
  const plan = planElimination(100, pairs);
  expect(plan.row).toHaveLength(99);
  expect([...plan.position].sort((p, q) => p - q)).toEqual(Array.from({length: 100}, (_, i) => i));
});

test('a floating group keeps every digit of its insulation beside milliohm wires', () => {
  // 100 nodes joined by 1 mΩ, 100 MΩ each to earth, and 1 TΩ from a 240 V line to the middle one
  const nodes = Array.from({length: 100}, (_, i) => `n${i}`);
  const elements: Element[] = [
    ...nodes.slice(1).map((node, i) => conductor(`w${i}`, nodes[i], node, 1e-3)),
    ...nodes.map((node) => conductor(`i${node}`, node, 'earth', 1e8)),
    conductor('gap', 'line', 'n50', 1e12),
    {
      is: 'acSource',
      id: 'source',
      a: 'line',
      b: 'earth',
      volts: 240,
      degrees: 0,
      ohms: {re: 0.01, im: 0},
    },
  ];
  const s = solveAc(compileNetwork(network(['line', ...nodes], elements)), {});
  // by hand: the admittance that a chain of n sections shows, from its far end on
  const chain = (sections: number): number => {
    let y = 0;
    for (let i = 0; i < sections; i += 1) y = (1e-8 + y) / (1 + 1e-3 * (1e-8 + y));
    return y;
  };
  let volts = 240 / (1 + 1e12 * (1e-8 + chain(50) + chain(49)));
  for (let left = 49; left > 0; left -= 1) volts /= 1 + 1e-3 * (1e-8 + chain(left - 1));
  expect(Math.abs(s.volts('n99').re / volts - 1)).toBeLessThan(1e-12);
});

test('capacitors are open to direct current, and their plates stay apart', () => {
  const s = solveDc(
    compileNetwork(
      network(
        ['a', 'b'],
        [
          {is: 'dcSource', id: 'five', a: 'a', b: 'earth', volts: 5, ohms: 10},
          {is: 'capacitor', id: 'c', a: 'a', b: 'b', microfarads: 45, leakageOhms: 5e8},
          conductor('r', 'b', 'earth', 1000),
        ],
      ),
    ),
    {five: {on: true}},
  );
  expect(s.volts('a').re).toBeCloseTo(5, 5);
  expect(s.volts('b').re).toBeLessThan(1e-4);
});

test('a direct-current source that is not on is its resistance', () => {
  const plan = compileNetwork(
    network(
      ['a'],
      [
        {is: 'dcSource', id: 'five', a: 'a', b: 'earth', volts: 5, ohms: 10},
        conductor('r', 'a', 'earth', 10),
      ],
    ),
  );
  expect(solveDc(plan, {}).volts('a').re).toBe(0);
  expect(solveDc(plan, {}).thevenin('a', 'earth').ohms.re).toBeCloseTo(5, 9);
  expect(solveDc(plan, {five: {on: true}}).volts('a').re).toBeCloseTo(2.5, 9);
});
