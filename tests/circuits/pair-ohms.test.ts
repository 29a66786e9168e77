import {expect, test} from 'vitest';
import {PairOhms} from '../../src/circuits/pair-ohms.ts';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import {operateUnit} from '../../src/sequences/operate-unit.ts';

const heatPump = readShippedUnit('split-heat-pump');
const operating = operateUnit(heatPump, []);
const resting = operating.fork();
const cooling = heatPump.sequences.find(({id}) => id === 'cooling')!;
for (const {target, value} of cooling.set) operating.set(target, value);
operating.advance(cooling.waitSeconds * 1000);

// against one substitution for each pair, which the solver's own tests hold against ngspice
test.each([
  ['with motors turning, where Z(p,q) is not Z(q,p)', operating, 'ac'],
  ['at rest', resting, 'ac'],
  ['for direct current', operating, 'dc'],
] as const)('every pair of terminals has its ohms, %s', (_, unit, kind) => {
  const solution = unit.solution(kind);
  const {plan} = solution;
  const points = ['earth', ...unit.probePoints()];
  const pairs = points.flatMap((a, i) => points.slice(i).map((b) => [a, b] as const));
  const positions = (of: 0 | 1): Int32Array =>
    Int32Array.from(pairs, (pair) => plan.positionOf.get(pair[of])!);
  const re = new Float64Array(pairs.length);
  const im = new Float64Array(pairs.length);
  new PairOhms(plan, positions(0), positions(1)).find(solution, re, im);
  let worst = 0;
  pairs.forEach(([a, b], i) => {
    const {ohms} = solution.thevenin(a, b);
    const off = Math.hypot(re[i] - ohms.re, im[i] - ohms.im);
    worst = Math.max(worst, off / (Math.hypot(ohms.re, ohms.im) + 0.1));
  });
  expect(pairs.length).toBeGreaterThan(7000);
  expect(worst).toBeLessThan(1e-6);
});
