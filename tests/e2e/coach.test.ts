import {afterAll, beforeAll, describe, expect, test} from 'vitest';
import {callLink, takeCall} from './at-the-bench.ts';
import {axe, laptop, phone, problemsOf, startHarness, type Harness} from './harness.ts';

let harness: Harness;
beforeAll(async () => (harness = await startHarness()), 180_000);
afterAll(() => harness.close());

describe('the coach', () => {
  test.each([
    ['on a laptop', laptop],
    ['on a phone', phone],
  ])(
    'is asked three times and is told and costed in the debrief, %s',
    async (where, screen) => {
      const link = callLink(
        'practice-panel',
        ['HPS:stuck-open'],
        'The call switch is on, but the lamp does not light.',
      );
      const student = await takeCall(harness, link, screen, where);
      for (const level of ['The question', 'The place', 'The reading']) {
        await student.press('Coach', '[role=tab]');
        await student.press(level, '.levels button');
        await student.sees(`${level}, log line`, '.said li');
      }
      await student.sees('3 hints: 10 min of work, 10 of 30 points', 'p');
      expect(await axe(student.page)).toEqual([]);

      // a reload does the actions again: what was said is in the log
      await student.page.reload({waitUntil: 'load'});
      await student.find('rb-meter-face');
      await student.press('Coach', '[role=tab]');
      await student.sees('3 hints: 10 min of work, 10 of 30 points', 'p');

      // on a phone the way out is beside naming
      if (screen === phone) await student.press('Name it');
      await student.press('Give up');
      await student.press('Give up', 'dialog .danger, .danger');
      await student.sees('Hints asked of the coach', 'h2');
      await student.sees('3 hints: 10 minutes of work', 'p');
      expect(problemsOf(student.page)).toEqual([]);
    },
    90_000,
  );
});
