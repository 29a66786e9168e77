import {execFile} from 'node:child_process';
import {existsSync, mkdtempSync, readFileSync, rmSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join, resolve} from 'node:path';
import {promisify} from 'node:util';
import {expect, test} from 'vitest';
import {ClassAtWork} from './class-at-work.ts';

const root = resolve(import.meta.dirname, '../../..');
const {scripts} = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as {
  scripts: Record<string, string>;
};
const run = promisify(execFile);

test('the README names no command that package.json does not have', () => {
  for (const file of ['README.md', 'DEVELOPERS.md']) {
    const named = [...readFileSync(join(root, file), 'utf8').matchAll(/npm run ([a-z:]+)/g)];
    expect(named.length).toBeGreaterThan(0);
    for (const [, name] of named) expect([file, name, name in scripts]).toEqual([file, name, true]);
  }
});

test('backup and restore are one command each, while the server runs', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'commands-'));
  const at = await ClassAtWork.open(folder);
  const file = join(folder, 'school.backup');
  const npm = (name: string) =>
    run('npm', ['run', '--silent', name, '--', file, '--data', join(folder, 'data')], {cwd: root});
  try {
    await at.firstStart();
    const period = await at.classOf('Ana');
    expect((await npm('backup')).stdout).toMatch(/rows of .* keep it safe/);
    expect(existsSync(file)).toBe(true);
    await at.get('DELETE', `/classes/${period.id}`);
    expect((await npm('restore')).stdout).toMatch(/are in .* now/);
    const signIn = await at.ask('POST', '/sign-in', {
      name: 'Instructor',
      passphrase: 'lamp relay ladder seven',
    });
    at.cookie = signIn.headers.get('set-cookie')!.split(';')[0];
    expect(await at.get('GET', '/classes')).toMatchObject([{name: 'Period 3', students: 1}]);
  } finally {
    await at.close();
    rmSync(folder, {recursive: true, force: true});
  }
}, 120_000);
