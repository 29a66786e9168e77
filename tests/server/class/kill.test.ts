import {expect, test} from 'vitest';
import {killUnderLoad} from './kill-under-load.ts';

test('a server killed under load loses no confirmed action, and everybody goes on where they were', async () => {
  const report = await killUnderLoad(2, 8);
  expect(report).toMatchObject({lost: 0, stuck: 0});
  expect(report.confirmed).toBeGreaterThan(20);
}, 180_000);
