import fc from 'fast-check';
import {expect, test} from 'vitest';
import {
  classCode,
  codeLetters,
  codeRandoms,
  readClassCode,
} from '../../src/classroom/class-code.ts';

const randoms = fc.array(fc.double({min: 0, max: 1, maxExcluded: true, noNaN: true}), {
  minLength: codeRandoms,
  maxLength: codeRandoms,
});

test('a code is read back however it was typed', () => {
  fc.assert(
    fc.property(randoms, (numbers) => {
      const code = classCode(numbers);
      const typed = [
        code,
        code.toLowerCase(),
        code.replace('-', ''),
        ` ${code.replace('-', ' ')} `,
      ];
      return typed.every((each) => readClassCode(each) === code);
    }),
  );
});

test('no two letters of the codes are easily mixed up, and none is a vowel', () => {
  for (const letter of 'AEIOU01528BDGILOQSVZ') expect(codeLetters).not.toContain(letter);
  expect(new Set(codeLetters).size).toBe(codeLetters.length);
});

test('what can be no code is none', () => {
  for (const typed of ['', 'KTM', 'KTM-4XPP', 'KTM-4XO', '../../x']) {
    expect(readClassCode(typed)).toBeUndefined();
  }
});
