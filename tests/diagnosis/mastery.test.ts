import fc from 'fast-check';
import {describe, expect, test} from 'vitest';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import {mastered, masteryOf, trace, tracing, type Occasion} from '../../src/diagnosis/mastery.ts';
import {occasionsOf} from '../../src/diagnosis/occasions.ts';
import {
  intervalDays,
  labReadiness,
  neededForTheLab,
  reviewNext,
} from '../../src/diagnosis/review.ts';
import {skillsOf} from '../../src/diagnosis/skills.ts';
import {catalogue, faultsById} from '../../src/faults/catalogue.ts';

const panel = readShippedUnit('practice-panel');
const heatPump = readShippedUnit('split-heat-pump');
const fault = (unit: typeof panel, id: string) => faultsById(catalogue(unit), [id])[0];

describe('knowledge tracing (Corbett and Anderson 1995)', () => {
  test('one right occasion by hand: 0.2·0.9 / (0.2·0.9 + 0.8·0.15) = 0.6, then a fifth of the rest is learnt', () => {
    expect(trace(0.2, true)).toBeCloseTo(0.6 + 0.4 * 0.2, 12);
  });

  test('one wrong occasion by hand: 0.2·0.1 / (0.2·0.1 + 0.8·0.85)', () => {
    const evidence = 0.02 / (0.02 + 0.68);
    expect(trace(0.2, false)).toBeCloseTo(evidence + (1 - evidence) * 0.2, 12);
  });

  test('with no slip and no guess one right occasion proves, and a wrong one disproves', () => {
    const sure = {...tracing, slip: 0, guess: 0, learn: 0};
    expect(trace(0.2, true, sure)).toBe(1);
    expect(trace(0.2, false, sure)).toBe(0);
  });

  test('stays a probability, and right is never worth less than wrong', () => {
    fc.assert(
      fc.property(fc.double({min: 0, max: 1, noNaN: true}), (known) => {
        const [up, down] = [trace(known, true), trace(known, false)];
        return up >= down && down >= 0 && up <= 1;
      }),
    );
  });

  test('three right calls in a row from a beginner are mastery, one is not', () => {
    const right = (n: number): Occasion[] =>
      Array.from({length: n}, () => ({skill: 'voltage-drop', right: true, day: 1}));
    expect(masteryOf(right(1))[0].known).toBeLessThan(mastered);
    expect(masteryOf(right(3))[0].known).toBeGreaterThan(mastered);
  });
});

describe('spaced review', () => {
  const occasion = (skill: Occasion['skill'], right: boolean, day: number): Occasion => ({
    skill,
    right,
    day,
  });

  test('what is weakest comes first, then what is due, then what was never tried', () => {
    const mastery = masteryOf([
      ...[1, 2, 3, 4].map((day) => occasion('safeties-in-series', true, day)),
      occasion('voltage-drop', true, 1),
      occasion('earth-faults', false, 1),
    ]);
    const order = reviewNext(mastery, 40).map(({skill}) => skill);
    expect(order.slice(0, 3)).toEqual(['earth-faults', 'voltage-drop', 'safeties-in-series']);
    expect(reviewNext(mastery, 5).map(({skill}) => skill)).not.toContain('safeties-in-series');
  });

  test('intervals double with each right occasion', () => {
    expect([1, 2, 3, 4, 9].map(intervalDays)).toEqual([1, 2, 4, 8, 64]);
  });

  test('the laboratory asks for safe practice before anything else', () => {
    expect(labReadiness([]).missing).toEqual([...neededForTheLab]);
    const all = neededForTheLab.flatMap((skill) =>
      [1, 2, 3, 4].map((day) => occasion(skill, true, day)),
    );
    expect(labReadiness(masteryOf(all))).toMatchObject({ready: true, missing: []});
  });
});

describe('skills of a fault', () => {
  test.each([
    [panel, 'HPS:stuck-open', ['reading-a-ladder', 'safeties-in-series']],
    [panel, 'F1:open', ['reading-a-ladder', 'transformer-and-fuse']],
    [panel, 'W15:earth', ['reading-a-ladder', 'earth-faults']],
    [heatPump, 'C2:herm-open', ['reading-a-ladder', 'motors-and-capacitors']],
    [heatPump, 'DB1:dead', ['reading-a-ladder', 'boards-and-timing']],
  ] as const)('%#: the skills of its place and its mode', (unit, id, expected) => {
    expect(skillsOf(unit, fault(unit, id))).toEqual(expected);
  });

  test('a call that broke safe practice is a wrong occasion for it, found or not', () => {
    const occasions = occasionsOf({
      unit: panel,
      faults: [fault(panel, 'HPS:stuck-open')],
      proved: true,
      log: [{index: 0, kind: 'reading', timeMs: 0, minutes: 1, state: '', findings: [0]}],
      safety: [{id: 'resistance-on-live:HPS.1:HPS.2', logIndex: 0, severity: 'caution', text: ''}],
    });
    expect(occasions).toContainEqual({skill: 'meter-safety', right: false});
    expect(occasions).toContainEqual({skill: 'safeties-in-series', right: true});
    expect(occasions.map(({skill}) => skill)).not.toContain('lock-out');
  });
});
