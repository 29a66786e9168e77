/** What people type first when twelve characters are asked for (common practice, no source: our own short list). */
const commonWords = [
  'password',
  'passphrase',
  'passwort',
  'letmein',
  'iloveyou',
  'welcome',
  'administrator',
  'instructor',
  'teacher',
  'school',
  'rungbench',
  'qwertyuiop',
  'qwerty',
  'asdfghjkl',
  'zxcvbnm',
  'abcdefghijklmnopqrstuvwxyz',
];
const runs = [...commonWords.slice(-4), '01234567890123456789', '98765432109876543210'];

/**
 * Whether somebody who guesses would begin with it (OWASP ASVS 4.0.3, 2.1.7, as far as it goes without a list from the
 * internet): common words and digits only, a run of keys, or fewer than five different characters.
 */
export function isCommonPassphrase(passphrase: string): boolean {
  const plain = passphrase.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '');
  if (new Set(plain).size < 5) return true;
  if (runs.some((run) => run.includes(plain))) return true;
  let rest = plain;
  for (const word of commonWords) rest = rest.replaceAll(word, '');
  return /^\p{N}*$/u.test(rest);
}
