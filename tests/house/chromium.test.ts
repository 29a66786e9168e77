import {describe, expect, test} from 'vitest';
import {findInstalled, type Machine} from '../chromium.ts';

/** A machine on which just these files are there. */
const machine = (
  files: readonly string[],
  {platform = 'linux', arch = 'x64', env = {}}: Partial<Machine> = {},
): Machine => ({platform, arch, env, exists: (path) => files.includes(path)});

describe('the browser that the tests drive', () => {
  test('CHROME_PATH goes before everything that is installed', () => {
    const found = findInstalled(
      machine(['/usr/bin/chromium', '/opt/mine/chrome'], {env: {CHROME_PATH: '/opt/mine/chrome'}}),
    );
    expect(found).toMatchObject({executablePath: '/opt/mine/chrome', origin: 'CHROME_PATH'});
  });

  test('a CHROME_PATH that names no file is told, not passed over', () => {
    const env = {CHROME_PATH: '/opt/gone'};
    expect(() => findInstalled(machine(['/usr/bin/chromium'], {env}))).toThrow(
      'CHROME_PATH is "/opt/gone", but there is no such file.',
    );
  });

  test.each([
    ['linux', '/usr/bin/google-chrome'],
    ['linux', '/snap/bin/chromium'],
    ['darwin', '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome'],
    ['win32', 'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe'],
  ] as const)('on %s an installed one is found at %s', (platform, path) => {
    expect(findInstalled(machine([path], {platform}))).toMatchObject({
      executablePath: path,
      origin: 'installed',
    });
  });

  test('one in a folder of PATH is found too, and a relative folder is not searched', () => {
    const env = {PATH: 'bin:/opt/browsers:/usr/local/bin'};
    const files = ['bin/chromium', '/usr/local/bin/chromium'];
    expect(findInstalled(machine(files, {env}))?.executablePath).toBe('/usr/local/bin/chromium');
  });

  test('an installed browser keeps its own processes; only the unpacked one is started as one', () => {
    const found = findInstalled(machine(['/usr/bin/chromium']));
    expect(found?.args).toContain('--headless');
    expect(found?.args).not.toContain('--single-process');
  });

  test('a bare Linux x64 machine takes the packaged one', () => {
    expect(findInstalled(machine([]))).toBeUndefined();
  });

  test('where none can be unpacked, one sentence says what to do', () => {
    expect(() => findInstalled(machine([], {platform: 'darwin', arch: 'arm64'}))).toThrow(
      'No Chrome or Chromium found on darwin arm64: install one, or set CHROME_PATH to its executable.',
    );
  });
});
