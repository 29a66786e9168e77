import {afterAll, beforeAll, expect, test} from 'vitest';
import {isCommonPassphrase} from '../../../src/classroom/protocol/common-passphrase.ts';
import {passphraseHash} from '../../../src/server/class/passphrase.ts';
import {ClassAtWork} from './class-at-work.ts';

let at: ClassAtWork;
beforeAll(async () => {
  at = await ClassAtWork.open();
  await at.firstStart();
}, 60_000);
afterAll(() => at.close(), 60_000);

const old = 'lamp relay ladder seven';
const fresh = 'heron pliers gravel nine';
const signIn = (passphrase: string): Promise<Response> =>
  at.ask('POST', '/sign-in', {name: 'Instructor', passphrase});

test('an instructor changes the passphrase by giving the old one; other sign-ins end, this one stays', async () => {
  const elsewhere = (await signIn(old)).headers.get('set-cookie')!.split(';')[0];
  expect((await at.ask('POST', '/passphrase', {current: 'guess', passphrase: fresh})).status).toBe(
    403,
  );
  expect((await at.ask('POST', '/passphrase', {current: old, passphrase: 'short'})).status).toBe(
    400,
  );
  expect((await at.ask('POST', '/passphrase', {current: old, passphrase: fresh})).status).toBe(200);
  expect((await at.ask('GET', '/signed-in')).status).toBe(200);
  const other = await fetch(`${at.url}/api/signed-in`, {headers: {cookie: elsewhere}});
  expect(other.status).toBe(401);
  expect((await signIn(old)).status).toBe(401);
  expect((await signIn(fresh)).status).toBe(200);
});

test('what is guessed first is refused with a sentence, however it is spelt', async () => {
  for (const passphrase of ['Password-12345', 'qwerty qwerty', '123456789012', 'aaaa bbbb aaaa']) {
    const response = await at.ask('POST', '/instructors', {name: 'Second', passphrase});
    expect([passphrase, response.status]).toEqual([passphrase, 400]);
    expect(await response.text()).toMatch(/guessed first/);
  }
  expect(isCommonPassphrase(old)).toBe(false);
  expect(isCommonPassphrase('our school bell rings late')).toBe(false);
});

// OWASP ASVS 4.0.3, 2.4.2 and 2.4.6
test('a passphrase is kept as scrypt with N of 2^16 at least, r of 8, and a salt of its own', async () => {
  const [one, two] = [await passphraseHash(old), await passphraseHash(old)];
  const [kind, N, r, p, salt] = one.split('$');
  expect(kind).toBe('scrypt');
  expect(Number(N)).toBeGreaterThanOrEqual(2 ** 16);
  expect(Number(r)).toBeGreaterThanOrEqual(8);
  expect(Number(p)).toBeGreaterThanOrEqual(1);
  expect(Buffer.from(salt, 'base64url').length * 8).toBeGreaterThanOrEqual(32);
  expect(two).not.toBe(one);
});
