import {describe, expect, test} from 'vitest';
import {complaintOf} from '../../src/bench/complaint.ts';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import type {Unit} from '../../src/content/unit.ts';
import {hypothesesOf} from '../../src/diagnosis/hypotheses.ts';
import {lookAlikeClasses} from '../../src/diagnosis/look-alike-classes.ts';
import {Planner} from '../../src/diagnosis/planner.ts';
import {shortestRoute} from '../../src/diagnosis/shortest-route.ts';
import {Suspects} from '../../src/diagnosis/suspects.ts';
import {catalogue, faultsById} from '../../src/faults/catalogue.ts';
import {readMeter} from '../../src/meter/read-meter.ts';
import {chainUnit} from './chain-unit.ts';

/** Readings that the planner takes to find one after another of n opens in a chain, or every so many-th of them. */
function readingsOnChain(safeties: number, every = 1): number[] {
  const unit = chainUnit(safeties);
  const opens = hypothesesOf(unit).filter(({id}) => /^S\d+:stuck-open$/.test(id));
  expect(opens).toHaveLength(safeties);
  return opens
    .filter((_, i) => i % every === 0)
    .map((truth) => {
      const suspects = new Suspects(
        unit,
        opens.map((open) => ({...open, weight: 1})),
      );
      const real = new Suspects(unit, [truth]).units[0];
      const planner = new Planner(suspects);
      let readings = 0;
      while (suspects.count > 1) {
        const {function: fn, red, black} = planner.best(1)[0];
        const at = {red: red!, black: black!};
        suspects.read(fn, at, readMeter(fn, real, at));
        readings += 1;
      }
      expect(suspects.open[0].hypothesis.id).toBe(truth.id);
      return readings;
    });
}

describe('against the half-split bound', () => {
  // ⌈log₂ n⌉ yes-or-no tests always isolate one of n, and no fewer can: the bound of the half-split method.
  test.each([
    [5, 3],
    [8, 3],
    [10, 4],
  ])('one of %i equally likely opens in series is found with at most %i readings', (n, bound) => {
    expect(Math.max(...readingsOnChain(n))).toBe(bound);
  });

  test('one of sixty-four with six, wherever it is', () => {
    expect(new Set(readingsOnChain(64, 9))).toEqual(new Set([6]));
  });

  // Binary search over twelve equal leaves: four at depth 3, eight at depth 4 (own arithmetic on the half-split method).
  test('of twelve, in 3.667 readings on the average', () => {
    const readings = readingsOnChain(12);
    expect(Math.max(...readings)).toBe(4);
    expect(readings.reduce((sum, each) => sum + each, 0) / 12).toBeCloseTo(3.667, 3);
  });
});

describe('the planner on the practice panel', () => {
  const panel = readShippedUnit('practice-panel');
  const route = (unit: Unit, id: string) =>
    shortestRoute(unit, faultsById(catalogue(unit), [id]), 'call');

  test('finds an open safety in a handful of readings and less than ten minutes', () => {
    const {readings, minutes, left} = route(panel, 'HPS:stuck-open');
    expect(left).toEqual(['HPS:stuck-open']);
    expect(readings).toBeLessThanOrEqual(6);
    expect(minutes).toBeLessThan(10);
  });

  test.each([
    'W17:open',
    'K1:coil-open',
    'F1:open',
    'LT1:open',
    'T1:secondary-open',
    'W20:high-resistance',
  ])('never loses %s, and ends with what no reading tells from it', (id) => {
    const {left} = route(panel, id);
    expect(left).toContain(id);
    expect(left.length).toBeLessThanOrEqual(3);
  });

  // a sample that has been hard: a line wire on metal or on its neighbour, a joint that opens after a while
  test.each(['W10:earth', 'W10~W11:short', 'W19:loose-by-time', 'DS1:pole1-open', 'LT1:shorted'])(
    'proves %s: what is left cannot be told apart on this unit',
    (id) => {
      const faults = faultsById(catalogue(panel), [id]);
      const {sequence, afterSeconds} = complaintOf(panel, faults);
      const {left} = shortestRoute(panel, faults, sequence, undefined, afterSeconds);
      const open = hypothesesOf(panel).filter((each) => left.includes(each.id));
      expect(left).toContain(id);
      expect(lookAlikeClasses(panel, open)).toHaveLength(1);
    },
  );

  test('reads ohms only with the power off', () => {
    const {steps} = route(panel, 'F1:open');
    for (const {proposal} of steps)
      if (proposal.function === 'ohms') expect(proposal.situation.isolated).toBe(true);
  });

  test('what it prepares while nobody waits is what it answers from', () => {
    const suspects = new Suspects(panel);
    suspects.do({do: 'set', target: 'S1.position', value: 'on'});
    const eager = new Planner(suspects);
    while (eager.prepare());
    const late = new Planner(suspects);
    const lines = (planner: Planner) =>
      planner
        .best(5, true)
        .map((each) => `${each.function} ${each.red} ${each.black} ${each.bits}`);
    expect(lines(eager)).toEqual(lines(late));
  });
});
