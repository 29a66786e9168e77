import {mkdir, mkdtemp, rm, utimes, writeFile} from 'node:fs/promises';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {gzipSync} from 'node:zlib';
import {afterAll, beforeAll, expect, test} from 'vitest';
import {createApp} from '../../src/server/app.ts';
import {isStale} from '../../src/server/build.ts';

let root: string;
let app: Awaited<ReturnType<typeof createApp>>;
beforeAll(async () => {
  root = await mkdtemp(join(tmpdir(), 'tutor-'));
  await mkdir(join(root, 'dist', 'assets'), {recursive: true});
  await mkdir(join(root, 'src'));
  await writeFile(join(root, 'src', 'main.ts'), '');
  await writeFile(join(root, 'dist', 'index.html'), '<!doctype html><title>Built</title>');
  await writeFile(join(root, 'dist', 'assets', 'main-1a2b.js'), 'plain');
  await writeFile(join(root, 'dist', 'assets', 'main-1a2b.js.gz'), gzipSync('packed'));
  app = await createApp(join(root, 'dist'));
});
afterAll(async () => {
  await app.close();
  await rm(root, {recursive: true});
});

test('the start page is asked for again each time, the hashed files never', async () => {
  const page = await app.inject('/');
  expect(page.body).toContain('<title>Built</title>');
  expect(page.headers['cache-control']).toBe('no-cache');
  const script = await app.inject('/assets/main-1a2b.js');
  expect(script.body).toBe('plain');
  expect(script.headers['cache-control']).toBe('public, max-age=31536000, immutable');
});

test('a browser that can unpack gets the compressed copy', async () => {
  const script = await app.inject({
    url: '/assets/main-1a2b.js',
    headers: {'accept-encoding': 'gzip'},
  });
  expect(script.headers['content-encoding']).toBe('gzip');
  expect(script.headers['content-type']).toMatch(/javascript/);
  expect(script.rawPayload.equals(gzipSync('packed'))).toBe(true);
});

test('every answer forbids inline scripts and styles, and other addresses', async () => {
  for (const url of ['/', '/assets/main-1a2b.js', '/nowhere']) {
    const policy = String((await app.inject(url)).headers['content-security-policy']);
    expect(policy).toContain("default-src 'none'");
    expect(policy).not.toContain('unsafe');
    expect(policy).not.toMatch(/https?:/);
  }
});

test('a wrong address is told so, and nothing outside the built app is served', async () => {
  const nowhere = await app.inject('/nowhere');
  expect(nowhere.statusCode).toBe(404);
  expect(nowhere.headers['content-type']).toMatch(/^text\/plain/);
  expect((await app.inject('/../src/main.ts')).statusCode).toBe(404);
  expect((await app.inject('/%2e%2e/src/main.ts')).statusCode).not.toBe(200);
});

test('a build is stale when a source is newer, or when there is none', async () => {
  const at = (path: string, seconds: number) => utimes(join(root, path), seconds, seconds);
  await at('src/main.ts', 1000);
  await at('src', 1000);
  await at('dist/index.html', 2000);
  expect(await isStale(root)).toBe(false);
  await at('src/main.ts', 3000);
  expect(await isStale(root)).toBe(true);
  // a source that went away shows in its folder
  await at('src/main.ts', 1000);
  await at('src', 3000);
  expect(await isStale(root)).toBe(true);
  expect(await isStale(join(root, 'src'))).toBe(true);
});
