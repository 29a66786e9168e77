import {createHash, randomBytes, timingSafeEqual} from 'node:crypto';

/** Random id of a row: 80 bits, so that nobody guesses one and two never meet. */
export function randomId(): string {
  // base 32 without padding; small letters and digits only
  return [...randomBytes(16)].map((byte) => 'abcdefghijkmnpqrstuvwxyz23456789'[byte % 32]).join('');
}

/** A token that opens something: 192 bits (OWASP ASVS 4.0.3, 3.2.2 asks 64 at least). */
export const randomToken = (): string => randomBytes(24).toString('base64url');

/** What is kept of a token. It is random and long, so a plain hash does. */
export const tokenHash = (token: string): string =>
  createHash('sha256').update(token).digest('base64url');

/** Compares two secrets without telling by the time it takes how far they agree. */
export function sameSecret(a: string, b: string): boolean {
  const [x, y] = [a, b].map((text) => createHash('sha256').update(text).digest());
  return timingSafeEqual(x, y);
}

/** Numbers in [0, 1), each from 32 random bits. */
export const randomNumbers = (count: number): number[] =>
  Array.from({length: count}, () => randomBytes(4).readUInt32LE() / 2 ** 32);

/** A seed for a meter's own error, never 0 (which means an exact meter). */
export const randomSeed = (): number => 1 + (randomBytes(4).readUInt32LE() % 0x7ffffffe);
