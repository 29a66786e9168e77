import {expect, test} from 'vitest';
import {killUnderLoad} from '../server/class/kill-under-load.ts';

test('fifty kills under load: no confirmed action lost, nobody unable to resume', async () => {
  const report = await killUnderLoad(50, 15);
  console.log(JSON.stringify(report));
  expect(report).toMatchObject({lost: 0, stuck: 0});
  expect(report.confirmed).toBeGreaterThan(1000);
}, 3_600_000);
