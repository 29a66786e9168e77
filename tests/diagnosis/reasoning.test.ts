import {describe, expect, test} from 'vitest';
import type {Action} from '../../src/bench/actions.ts';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import {hypothesesOf} from '../../src/diagnosis/hypotheses.ts';
import {lookAlikeClasses} from '../../src/diagnosis/look-alike-classes.ts';
import {reasoningOf} from '../../src/diagnosis/reasoning.ts';
import {catalogue, faultsById} from '../../src/faults/catalogue.ts';

const panel = readShippedUnit('practice-panel');

function reasoned(fault: string, ...actions: Action[]) {
  const faults = faultsById(catalogue(panel), [fault]);
  const call: Action[] = [
    {do: 'set', target: 'S1.position', value: 'on'},
    {do: 'wait', seconds: 2},
  ];
  return reasoningOf({unit: panel, faults, complaint: '', seed: 11}, [...call, ...actions]);
}

const name = (fault: string): Action => ({do: 'name', fault, evidence: []});
const read = (red: string, black: string): Action => ({do: 'read', red, black});

describe('the reasoning of a call', () => {
  test('a fault named after the reading that leaves it alone is proved, and costs no parts', () => {
    const report = reasoned('HPS:stuck-open', read('HPS.1', 'HPS.2'), name('HPS:stuck-open'));
    expect(report.namings[0].proof.is).toBe('proved');
    expect(report.namings[0].right).toBe(true);
    expect(report.dollars).toBe(0);
    expect(report.grade.outcome).toBe(40);
  });

  test('named without a reading it is a guess, priced, with the suspects that were open', () => {
    const report = reasoned('HPS:stuck-open', name('HPS:stuck-open'));
    const [{proof, dollars}] = report.namings;
    expect(proof.is).toBe('guessed');
    expect(proof.open.length).toBeGreaterThan(10);
    expect(proof.share).toBeLessThan(0.2);
    expect(dollars).toBeGreaterThan(0);
    expect(report.practise).toMatch(/without one reading/);
  });

  test('what the log speaks against is contradicted, right or not', () => {
    const report = reasoned('HPS:stuck-open', read('HPS.1', 'HPS.2'), name('K1:coil-open'));
    expect(report.namings[0].proof.is).toBe('contradicted');
    expect(report.namings[0].right).toBe(false);
    expect(report.grade.outcome).toBe(0);
  });

  test('the suspects left only ever become fewer, and each step says how many', () => {
    const report = reasoned(
      'W17:open',
      read('TB2.R', 'TB2.C'),
      read('HPS.1', 'TB2.C'),
      read('FS1.2', 'TB2.C'),
      name('W17:open'),
    );
    const counts = report.steps.map(({suspectsAfter}) => suspectsAfter);
    expect(counts).toEqual([...counts].sort((a, b) => b - a));
    expect(counts[counts.length - 1]).toBe(1);
    expect(report.namings[0].proof.is).toBe('proved');
  });

  test('a reading that could not have come out otherwise is marked useless', () => {
    const report = reasoned('HPS:stuck-open', read('TB1.L', 'TB1.N'), read('TB1.L', 'TB1.N'), {
      do: 'give-up',
    });
    const readings = report.steps.filter(({kind}) => kind === 'reading');
    expect(readings.map(({useless}) => useless)).toEqual([false, true]);
    expect(readings[1].best!.bits).toBeGreaterThan(0.5);
  });

  test('no reading asks for more than the best there was', () => {
    const report = reasoned('F1:open', read('F1.1', 'F1.2'), read('TB2.R', 'TB2.C'), {
      do: 'give-up',
    });
    for (const {kind, expectedBits, best} of report.steps)
      if (kind === 'reading') expect(expectedBits).toBeLessThanOrEqual(best!.bits + 1e-9);
  });

  test('expectations are counted, and those that came out', () => {
    const report = reasoned(
      'HPS:stuck-open',
      {do: 'read', red: 'TB2.R', black: 'TB2.C', expected: {value: 24}},
      {do: 'read', red: 'HPS.1', black: 'HPS.2', expected: {value: 0}},
      {do: 'give-up'},
    );
    expect(report.calibration).toEqual({asked: 2, right: 1});
  });

  test('a search that is still on is not judged', () => {
    expect(() => reasoned('HPS:stuck-open', read('TB2.R', 'TB2.C'))).toThrow(/still on/);
  });
});

describe('look-alikes', () => {
  test('two safeties that would not open are one class while nothing asks them to; open ones stand alone', () => {
    const some = hypothesesOf(panel).filter(({id}) =>
      ['healthy', 'HPS:stuck-open', 'LPS:stuck-open', 'W17:open'].includes(id),
    );
    const classes = lookAlikeClasses(panel, some).map((members) => members.map(({id}) => id));
    expect(classes).toContainEqual(['HPS:stuck-open']);
    expect(classes).toContainEqual(['W17:open']);
    const heatPump = readShippedUnit('split-heat-pump');
    const shut = hypothesesOf(heatPump).filter(({id}) => /^(HPS|LPS):stuck-closed$/.test(id));
    expect(lookAlikeClasses(heatPump, shut)).toHaveLength(1);
  });
});
