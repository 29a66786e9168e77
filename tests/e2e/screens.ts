import type {Page} from 'puppeteer-core';
import {schoolToSee} from './class-for-pictures.ts';
import {startClassHarness} from './class-harness.ts';
import {classScreens, enter, firstStartScreens} from './class-screens.ts';
import {
  startHarness,
  axe,
  laptop,
  phone,
  problemsOf,
  screenshot,
  type Harness,
  type Screen,
} from './harness.ts';
import {Person} from './person.ts';
import {screens} from './screen-list.ts';

// `npm run screens [NAME …]`: a picture of each screen in both sizes and both themes, in
// test-output/screens, with what axe and the page itself complain of. `class-` names the first part of many.

const asked = process.argv.slice(2);
const all = [...screens, ...firstStartScreens, ...classScreens];
const isAsked = (name: string): boolean =>
  asked.length === 0 ||
  asked.some((each) => name === each || (each.endsWith('-') && name.startsWith(each)));
const unknown = asked.filter(
  (each) => !all.some(({name}) => name === each || (each.endsWith('-') && name.startsWith(each))),
);
if (unknown.length > 0) {
  console.error(
    `No screen "${unknown.join('", "')}". There are: ${all.map(({name}) => name).join(', ')}.`,
  );
  process.exit(2);
}

let complaints = 0;

/** Takes a screen in both sizes and both themes. `come` brings the page to where the picture is taken. */
async function take(
  harness: Harness,
  {
    name,
    path,
    wholePage,
    refused,
  }: {name: string; path: string; wholePage?: boolean; refused?: boolean},
  come: (page: Page, screen: Screen) => Promise<void>,
): Promise<void> {
  for (const [size, screen] of Object.entries({laptop, phone})) {
    for (const theme of ['light', 'dark'] as const) {
      const page = await harness.open(path, {...screen, theme});
      const found: string[] = [];
      try {
        await come(page, screen);
      } catch (error) {
        found.push(
          `could not be prepared: ${error instanceof Error ? error.message : String(error)}`,
        );
      }
      console.log(await screenshot(page, `screens/${name}-${size}-${theme}`, wholePage));
      const problems = problemsOf(page).filter((each) => !refused || !/status of 4\d\d/.test(each));
      found.push(...(await axe(page)), ...problems);
      for (const complaint of found) console.log(`  ${complaint}`);
      complaints += found.length;
      // the next picture starts with nothing stored
      await harness.leave();
    }
  }
}

const own = screens.filter(({name}) => isAsked(name));
if (own.length > 0) {
  const harness = await startHarness();
  try {
    for (const screen of own) await take(harness, screen, async (page) => screen.prepare?.(page));
  } finally {
    await harness.close();
  }
}

// an empty server first: once it has a school on it, nobody sees its first start any more
const first = firstStartScreens.filter(({name}) => isAsked(name));
const ofClass = classScreens.filter(({name}) => isAsked(name));
if (first.length + ofClass.length > 0) {
  const harness = await startClassHarness();
  try {
    for (const screen of first) {
      await take(harness, screen, (page, {width}) => screen.prepare(new Person(page, width < 600)));
    }
    const school = ofClass.length > 0 ? await schoolToSee(harness) : undefined;
    for (const screen of school ? ofClass : []) {
      await take(harness, {...screen, path: '#/about'}, async (page, {width}) => {
        await enter(page, screen, school!);
        await screen.prepare?.(new Person(page, width < 600), school!);
      });
    }
    school?.at.dropAll();
  } finally {
    await harness.close();
  }
}
console.log(complaints === 0 ? 'No complaints.' : `${complaints} complaints.`);
process.exitCode = complaints === 0 ? 0 : 1;
