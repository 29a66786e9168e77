import {randomBytes, scrypt, timingSafeEqual} from 'node:crypto';

// OWASP ASVS 4.0.3, 2.4.6: N at least 2^16, r at least 8, p at least 1
const cost = {N: 2 ** 16, r: 8, p: 2};
const saltBytes = 16;
const hashBytes = 32;

function derive(passphrase: string, salt: Buffer, {N, r, p}: typeof cost): Promise<Buffer> {
  return new Promise((resolve, reject) => {
    // 128·N·r bytes are what it works in; twice that is room enough
    scrypt(
      passphrase.normalize('NFKC'),
      salt,
      hashBytes,
      {N, r, p, maxmem: 256 * N * r},
      (error, key) => (error ? reject(error) : resolve(key)),
    );
  });
}

/** One at a time: each takes 64 MB and a good part of a core while it lasts. */
let queue: Promise<unknown> = Promise.resolve();
function oneByOne<T>(work: () => Promise<T>): Promise<T> {
  const turn = queue.then(work);
  queue = turn.catch(() => undefined);
  return turn;
}

/** What is kept of a passphrase: `scrypt$N$r$p$salt$hash`. */
export async function passphraseHash(passphrase: string): Promise<string> {
  const salt = randomBytes(saltBytes);
  const key = await oneByOne(() => derive(passphrase, salt, cost));
  return [
    'scrypt',
    cost.N,
    cost.r,
    cost.p,
    salt.toString('base64url'),
    key.toString('base64url'),
  ].join('$');
}

/** Whether a passphrase is the one that was kept. Takes as long where nobody of that name is known (`kept` absent). */
export async function isPassphrase(passphrase: string, kept: string | undefined): Promise<boolean> {
  if (kept === undefined) {
    await oneByOne(() => derive(passphrase, Buffer.alloc(saltBytes), cost));
    return false;
  }
  const [, N, r, p, salt, hash] = kept.split('$');
  const key = await oneByOne(() =>
    derive(passphrase, Buffer.from(salt, 'base64url'), {N: Number(N), r: Number(r), p: Number(p)}),
  );
  return timingSafeEqual(key, Buffer.from(hash, 'base64url'));
}
