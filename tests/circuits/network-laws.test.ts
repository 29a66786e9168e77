import fc from 'fast-check';
import {isMotor} from '../../src/parts/motor-windings.ts';
import {describe, expect, test} from 'vitest';
import {compileNetwork} from '../../src/circuits/plan.ts';
import {solveAc, solveDc} from '../../src/circuits/solve.ts';
import type {Network} from '../../src/circuits/network.ts';
import type {Complex, Element} from '../../src/parts/element.ts';
import {networks, type Drawn} from './random-network.ts';

const magnitude = (p: Complex) => Math.hypot(p.re, p.im);
const apart = (p: Complex, q: Complex) => Math.hypot(p.re - q.re, p.im - q.im);

// the same networks in every run
fc.configureGlobal({seed: 20240502});

/**
 * Amps that the last digit of a double is worth beside the sources' short-circuit amps: what a source near open
 * circuit gives is the difference of two such numbers.
 */
function lastDigitAmps({network}: Drawn): number {
  return network.elements.reduce((sum, element) => {
    if (element.is === 'acSource') return sum + (1e-15 * element.volts) / magnitude(element.ohms);
    return element.is === 'dcSource' ? sum + (1e-15 * element.volts) / element.ohms : sum;
  }, 0);
}

/** And the volts that these make on a floating part of the network, through its 100 MΩ to earth. */
const lastDigitVolts = (drawn: Drawn) => 1e8 * lastDigitAmps(drawn);

/** Every two nodes of a network that the laws are tried on: the first, the last and one between. */
function somePairs({network}: Drawn): [string, string][] {
  const {nodes} = network;
  const last = nodes[nodes.length - 1];
  return [
    [nodes[1], 'earth'],
    [nodes[1], last],
    [nodes[2], last],
  ];
}

function withElements(network: Network, elements: readonly Element[]): Network {
  return {...network, elements};
}

describe('power', () => {
  // Tellegen's theorem: over all branches, Σ v·i* = 0
  test.each(['ac', 'dc'] as const)('what sources give, the rest takes in (%s)', (kind) => {
    fc.assert(
      fc.property(networks(), ({network, states}) => {
        const plan = compileNetwork(network);
        const solution = (kind === 'ac' ? solveAc : solveDc)(plan, states);
        let re = 0;
        let im = 0;
        let all = 0;
        for (const id of plan.branchOf.keys()) {
          const power = solution.voltAmperes(id);
          re += power.re;
          im += power.im;
          all += magnitude(power);
        }
        expect(Math.hypot(re, im)).toBeLessThanOrEqual(1e-9 * all);
      }),
      {numRuns: 300},
    );
  });

  test('no passive element, transformer or standing motor gives real power', () => {
    fc.assert(
      fc.property(networks(), ({network, states}) => {
        const solution = solveAc(compileNetwork(network), states);
        const total = network.elements
          .filter((element) => element.is === 'acSource')
          .reduce((sum, {id}) => sum + magnitude(solution.voltAmperes(id)), 0);
        for (const element of network.elements)
          if (element.is !== 'acSource' && element.is !== 'motor')
            expect(solution.voltAmperes(element.id).re).toBeGreaterThanOrEqual(-1e-9 * total);
      }),
      {numRuns: 200},
    );
  });
});

test('amps into every node add up to nothing', () => {
  fc.assert(
    fc.property(networks(), ({network, states}) => {
      const plan = compileNetwork(network);
      const solution = solveAc(plan, states);
      const sums = new Map<number, {re: number; im: number; all: number}>();
      for (const branch of plan.branches) {
        if (branch.from === branch.to) continue;
        const amps = solution.amps(branch.id);
        for (const [position, sign] of [
          [branch.from, -1],
          [branch.to, 1],
        ]) {
          const sum = sums.get(position) ?? {re: 0, im: 0, all: 0};
          sum.re += sign * amps.re;
          sum.im += sign * amps.im;
          sum.all += magnitude(amps);
          sums.set(position, sum);
        }
      }
      for (const [position, sum] of sums)
        if (position >= 0)
          expect(Math.hypot(sum.re, sum.im)).toBeLessThanOrEqual(1e-12 * sum.all + 1e-18);
    }),
    {numRuns: 200},
  );
});

test('without turning motors, volts at one pair for amps at another are the same the other way about', () => {
  fc.assert(
    fc.property(networks({reciprocal: true}), (drawn) => {
      const solution = solveAc(compileNetwork(drawn.network), drawn.states);
      const [, [a, b], [c, d]] = somePairs(drawn);
      const there = solution.injection(a, b)(c, d);
      const back = solution.injection(c, d)(a, b);
      const size =
        magnitude(solution.thevenin(a, b).ohms) + magnitude(solution.thevenin(c, d).ohms);
      expect(apart(there, back)).toBeLessThanOrEqual(1e-9 * size);
    }),
    {numRuns: 200},
  );
});

test('a turning motor makes a network that is not reciprocal', () => {
  const plan = compileNetwork({
    frequencyHz: 60,
    nodes: ['earth', 'M.R', 'M.S'],
    elements: [
      {
        is: 'motor',
        id: 'M.motor',
        main: {a: 'M.R', b: 'earth'},
        start: {a: 'M.S', b: 'earth'},
        model: {
          ratedVolts: 230,
          poles: 2,
          mainOhms: 0.8,
          mainReactanceOhms: 0.7,
          startOhms: 2,
          startReactanceOhms: 1.4,
          turnsRatio: 1.3,
          rotorOhms: 1.3,
          rotorReactanceOhms: 1.1,
          magnetisingOhms: 29,
          loadNewtonMetres: 8,
          loadExponent: 1,
          breakawayNewtonMetres: 1.6,
        },
      },
    ],
  });
  const turning = solveAc(plan, {'M.motor': {speed: 0.96}});
  const there = turning.injection('M.R', 'earth')('M.S', 'earth');
  const back = turning.injection('M.S', 'earth')('M.R', 'earth');
  // antisymmetric: the same ohms with the sign turned
  expect(apart(there, {re: -back.re, im: -back.im})).toBeLessThan(1e-9);
  expect(magnitude(there)).toBeGreaterThan(1);
  const standing = solveAc(plan, {});
  expect(magnitude(standing.injection('M.R', 'earth')('M.S', 'earth'))).toBe(0);
});

test('several sources together make the sum of what each makes alone', () => {
  fc.assert(
    fc.property(networks(), (drawn) => {
      const {network, states} = drawn;
      const together = solveAc(compileNetwork(network), states);
      const sources = network.elements.filter((element) => element.is === 'acSource');
      const alone = sources.map(({id}) =>
        solveAc(
          compileNetwork(
            withElements(
              network,
              network.elements.map((element) =>
                element.is === 'acSource' && element.id !== id ? {...element, volts: 0} : element,
              ),
            ),
          ),
          states,
        ),
      );
      for (const node of network.nodes) {
        const sum = alone.reduce(
          (total, each) => ({
            re: total.re + each.volts(node).re,
            im: total.im + each.volts(node).im,
          }),
          {re: 0, im: 0},
        );
        const size = alone.reduce((total, each) => total + magnitude(each.volts(node)), 0);
        expect(apart(together.volts(node), sum)).toBeLessThanOrEqual(
          1e-9 * size + lastDigitVolts(drawn),
        );
      }
    }),
    {numRuns: 150},
  );
});

test('twice the source volts make exactly twice the volts everywhere', () => {
  fc.assert(
    fc.property(networks(), ({network, states}) => {
      const one = solveAc(compileNetwork(network), states);
      const doubled = withElements(
        network,
        network.elements.map((element) =>
          element.is === 'acSource' ? {...element, volts: element.volts * 2} : element,
        ),
      );
      const two = solveAc(compileNetwork(doubled), states);
      for (const node of network.nodes) {
        const {re, im} = one.volts(node);
        // a power of two changes no digit, so nothing may differ
        expect(two.volts(node)).toEqual({re: re * 2, im: im * 2});
      }
    }),
    {numRuns: 150},
  );
});

test('leads the other way about change only the sign', () => {
  fc.assert(
    fc.property(networks(), (drawn) => {
      const solution = solveAc(compileNetwork(drawn.network), drawn.states);
      for (const [a, b] of somePairs(drawn)) {
        const forward = solution.thevenin(a, b);
        const reversed = solution.thevenin(b, a);
        expect(reversed.volts.re).toBe(-forward.volts.re || 0);
        expect(reversed.volts.im).toBe(-forward.volts.im || 0);
        expect(apart(reversed.ohms, forward.ohms)).toBeLessThanOrEqual(
          1e-12 * magnitude(forward.ohms),
        );
      }
    }),
    {numRuns: 150},
  );
});

test.each(['ac', 'dc'] as const)(
  'a meter put across a Thevenin pair reads what the network with the meter wired in has (%s)',
  (kind) => {
    const solve = kind === 'ac' ? solveAc : solveDc;
    fc.assert(
      fc.property(networks(), fc.constantFrom(10e6, 3e3, 100, 1), (drawn, meterOhms) => {
        const {network, states} = drawn;
        const solution = solve(compileNetwork(network), states);
        for (const [a, b] of somePairs(drawn)) {
          const {volts, ohms} = solution.thevenin(a, b);
          const sum = (ohms.re + meterOhms) ** 2 + ohms.im ** 2;
          const share = {
            re: (meterOhms * (ohms.re + meterOhms)) / sum,
            im: (-meterOhms * ohms.im) / sum,
          };
          const reading = {
            re: volts.re * share.re - volts.im * share.im,
            im: volts.re * share.im + volts.im * share.re,
          };
          const wired = solve(
            compileNetwork(
              withElements(network, [
                ...network.elements,
                {is: 'conductor', id: 'meter', a, b, ohms: meterOhms},
              ]),
            ),
            states,
          ).voltsBetween(a, b);
          expect(apart(reading, wired)).toBeLessThanOrEqual(
            1e-7 * magnitude(volts) + lastDigitVolts(drawn),
          );
        }
      }),
      {numRuns: 150},
    );
  },
);

test('a solution that is reused gives the very same numbers as a new one', () => {
  fc.assert(
    fc.property(networks(), ({network, states}) => {
      const plan = compileNetwork(network);
      const reused = solveAc(plan, {});
      solveDc(plan, states, reused);
      solveAc(plan, states, reused);
      const fresh = solveAc(compileNetwork(network), states);
      for (const node of network.nodes) expect(reused.volts(node)).toEqual(fresh.volts(node));
      for (const id of plan.branchOf.keys()) expect(reused.amps(id)).toEqual(fresh.amps(id));
    }),
    {numRuns: 100},
  );
});

test('an element burnt open solves as the network with an open gap in its place', () => {
  fc.assert(
    fc.property(networks(), fc.nat(1000), ({network, states}, pick) => {
      const candidates = network.elements.filter(
        (element) => element.is !== 'transformer' && !isMotor(element),
      );
      const burnt = candidates[pick % candidates.length];
      // a node's only insulation must stay, or it would float on nothing
      fc.pre(!burnt.id.startsWith('insulation:'));
      const before = solveAc(compileNetwork(network), {
        ...states,
        [burnt.id]: {...states[burnt.id], open: true},
      });
      const gap: Element = {is: 'conductor', id: burnt.id, a: burnt.a, b: burnt.b, ohms: 1e12};
      const after = solveAc(
        compileNetwork(
          withElements(
            network,
            network.elements.map((element) => (element === burnt ? gap : element)),
          ),
        ),
        states,
      );
      for (const node of network.nodes)
        expect(apart(before.volts(node), after.volts(node))).toBeLessThanOrEqual(
          1e-9 * magnitude(after.volts(node)) + 1e-9,
        );
    }),
    {numRuns: 150},
  );
});
