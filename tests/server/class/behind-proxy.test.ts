import {mkdtempSync, rmSync, writeFileSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {expect, test} from 'vitest';
import {createApp} from '../../../src/server/app.ts';
import {openSchool} from '../../../src/server/class/school.ts';
import {openFileDatabase} from '../../../src/server/data/school-database.ts';

test.each([
  ['behind TLS the cookie is secure', true, true],
  ['a header that nobody vouches for changes nothing', false, false],
])('%s', async (_what, trustProxy, isSecure) => {
  const folder = mkdtempSync(join(tmpdir(), 'proxy-'));
  writeFileSync(join(folder, 'index.html'), '');
  const school = await openSchool(await openFileDatabase(join(folder, 'data')));
  const app = await createApp(folder, school, {trustProxy});
  const response = await app.inject({
    method: 'POST',
    url: '/api/first-start',
    headers: {'x-forwarded-proto': 'https', 'x-forwarded-host': 'school.example'},
    payload: {key: school.firstStartKey, name: 'Instructor', passphrase: 'lamp relay ladder seven'},
  });
  expect(response.statusCode).toBe(200);
  expect(/; Secure/.test(String(response.headers['set-cookie']))).toBe(isSecure);
  await app.close();
  await school.close();
  rmSync(folder, {recursive: true});
});
