import {afterAll, beforeAll, expect, test} from 'vitest';
import {axe, laptop, phone, problemsOf, startHarness, type Harness} from './harness.ts';

let harness: Harness;
beforeAll(async () => {
  harness = await startHarness();
});
afterAll(() => harness.close());

for (const [size, screen] of Object.entries({laptop, phone})) {
  for (const theme of ['light', 'dark'] as const) {
    test(`the start page opens without a complaint on a ${size}, ${theme}`, async () => {
      const page = await harness.open('', {...screen, theme});
      await page.waitForSelector('h1, >>> h1');
      expect(problemsOf(page)).toEqual([]);
      expect(await axe(page)).toEqual([]);
      const dark = await page.evaluate(() => matchMedia('(prefers-color-scheme: dark)').matches);
      expect(dark).toBe(theme === 'dark');
      await page.close();
    });
  }
}

test('two people share no storage', async () => {
  const one = await harness.open('', {}, 'instructor');
  const other = await harness.open('', {}, 'student');
  await one.evaluate(() => localStorage.setItem('mark', 'instructor was here'));
  expect(await other.evaluate(() => localStorage.getItem('mark'))).toBeNull();
  const again = await harness.open('', {}, 'instructor');
  expect(await again.evaluate(() => localStorage.getItem('mark'))).toBe('instructor was here');
});

test('the page refuses a script that was not built with it', async () => {
  const page = await harness.open('');
  const ran = await page.evaluate(() => {
    const script = document.createElement('script');
    script.textContent = 'document.documentElement.dataset.ran = "yes"';
    document.head.append(script);
    return document.documentElement.dataset['ran'] ?? 'no';
  });
  expect(ran).toBe('no');
  expect(problemsOf(page).join()).toMatch(/Content Security Policy/);
});
