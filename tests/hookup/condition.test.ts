import fc from 'fast-check';
import {describe, expect, test} from 'vitest';
import {
  compileCondition,
  isMonotone,
  pathAndCutSets,
  readCondition,
  type Condition,
} from '../../src/hookup/condition.ts';
import {readRule} from '../../src/hookup/rule.ts';

const order = ['A', 'B', 'C', 'D'];

const monotone: fc.Arbitrary<Condition> = fc.letrec<{term: Condition}>((tie) => ({
  term: fc.oneof(
    {maxDepth: 3},
    fc.constantFrom(...order).map((input): Condition => ({is: 'input', input})),
    fc
      .tuple(
        fc.constantFrom('and' as const, 'or' as const),
        fc.array(tie('term'), {minLength: 2, maxLength: 3}),
      )
      .map(([is, terms]): Condition => ({is, terms})),
  ),
})).term;

describe('a condition', () => {
  test('binds "and" before "or"', () => {
    const ask = compileCondition(readCondition('A or B and not C'), order);
    expect([0b0001, 0b0010, 0b0110, 0b0111].map(ask)).toEqual([true, true, false, true]);
  });

  test('with "not" is not monotone', () => {
    expect(isMonotone(readCondition('A and not B'))).toBe(false);
  });

  test('is true exactly where a path is closed, and false exactly where a cut is open', () => {
    fc.assert(
      fc.property(monotone, (condition) => {
        const ask = compileCondition(condition, order);
        const {paths, cuts} = pathAndCutSets(condition, order);
        for (let closed = 0; closed < 16; closed++) {
          expect(paths.some((path) => (closed & path) === path)).toBe(ask(closed));
          expect(cuts.some((cut) => (closed & cut) === 0)).toBe(!ask(closed));
        }
      }),
      {numRuns: 60},
    );
  });

  test.each(['A and', 'and A', '(A or B', 'A B', ''])('cannot be read: "%s"', (text) => {
    expect(() => readCondition(text)).toThrow();
  });
});

test('a rule is read from its sentence', () => {
  expect(readRule('K1.coil ≥ 85 % exactly when Y and FS1 are closed')).toMatchObject({
    load: 'K1.coil',
    least: 0.85,
    when: {is: 'and', terms: [{input: 'Y'}, {input: 'FS1'}]},
  });
});
