import fc from 'fast-check';
import {describe, expect, test} from 'vitest';
import {
  compileCondition,
  compileForCubes,
  findIn,
  readCondition,
  type Condition,
} from '../../src/hookup/condition.ts';
import {readRule} from '../../src/hookup/rule.ts';

const order = ['A', 'B', 'C', 'D'];

const all = Array.from({length: 16}, (_, closed) => closed);

const anyCondition: fc.Arbitrary<Condition> = fc.letrec<{term: Condition}>((tie) => ({
  term: fc.oneof(
    {maxDepth: 3},
    fc.constantFrom(...order).map((input): Condition => ({is: 'input', input})),
    tie('term').map((term): Condition => ({is: 'not', term})),
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

  test('asked of a cube, it says what all combinations in it say, or that it does not know', () => {
    fc.assert(
      fc.property(anyCondition, fc.nat(15), fc.nat(15), (condition, mask, care) => {
        const ask = compileCondition(condition, order);
        const answer = compileForCubes(condition, order)({mask, care});
        const inside = all.filter((closed) => ((closed ^ mask) & care) === 0).map(ask);
        if (answer !== undefined) expect(inside.every((each) => each === answer)).toBe(true);
        if (care === 15) expect(answer).toBe(inside[0]);
      }),
      {numRuns: 200},
    );
  });

  test('a combination of a cube is found if there is one', () => {
    fc.assert(
      fc.property(
        anyCondition,
        fc.nat(15),
        fc.nat(15),
        fc.constantFrom('closed' as const, 'open' as const),
        (condition, mask, care, first) => {
          const ask = compileCondition(condition, order);
          const found = findIn(
            compileForCubes(condition, order),
            {mask, care},
            [1, 2, 4, 8],
            first,
          );
          const inside = all.filter((closed) => ((closed ^ mask) & care) === 0 && ask(closed));
          if (found === undefined) expect(inside).toEqual([]);
          else expect(inside).toContain(found);
        },
      ),
      {numRuns: 200},
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
