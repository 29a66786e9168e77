/**
 * Letters and digits that nobody mixes up when they are read off a wall or told aloud: no vowels (so no words come about),
 * none of B 8, G 6, I 1 L, O 0 Q D, S 5, U V, Z 2.
 */
export const codeLetters = 'CFHJKMNPRTWXY3479';

const codeLength = 6;

/** Letters for one code need this many random numbers. */
export const codeRandoms = codeLength;

/**
 * A class code, `KTM-4XP`, from random numbers in [0, 1).
 *
 * @throws RangeError where there are fewer than {@link codeRandoms}.
 */
export function classCode(randoms: readonly number[]): string {
  if (randoms.length < codeLength) {
    throw new RangeError(`A class code takes ${codeLength} random numbers, not ${randoms.length}.`);
  }
  const letters = randoms
    .slice(0, codeLength)
    .map((random) => codeLetters[Math.floor(random * codeLetters.length)]);
  return `${letters.slice(0, 3).join('')}-${letters.slice(3).join('')}`;
}

/** A code as somebody typed it: small letters, with or without the hyphen. Undefined where it can be no code. */
export function readClassCode(typed: string): string | undefined {
  const letters = typed.toUpperCase().replace(/[^A-Z0-9]/g, '');
  if (letters.length !== codeLength) return undefined;
  if ([...letters].some((letter) => !codeLetters.includes(letter))) return undefined;
  return `${letters.slice(0, 3)}-${letters.slice(3)}`;
}
