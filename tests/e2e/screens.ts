import {startHarness, axe, laptop, phone, problemsOf, screenshot} from './harness.ts';
import {screens} from './screen-list.ts';

// `npm run screens [NAME …]`: a picture of each screen in both sizes and both themes, in
// test-output/screens, with what axe and the page itself complain of.

const asked = process.argv.slice(2);
const unknown = asked.filter((name) => !screens.some((screen) => screen.name === name));
if (unknown.length > 0) {
  console.error(
    `No screen "${unknown.join('", "')}". There are: ${screens.map(({name}) => name).join(', ')}.`,
  );
  process.exit(2);
}

const harness = await startHarness();
let complaints = 0;
try {
  for (const {name, path, prepare, wholePage} of screens) {
    if (asked.length > 0 && !asked.includes(name)) continue;
    for (const [size, screen] of Object.entries({laptop, phone})) {
      for (const theme of ['light', 'dark'] as const) {
        const page = await harness.open(path, {...screen, theme});
        const found: string[] = [];
        try {
          await prepare?.(page);
        } catch (error) {
          found.push(
            `could not be prepared: ${error instanceof Error ? error.message : String(error)}`,
          );
        }
        console.log(await screenshot(page, `screens/${name}-${size}-${theme}`, wholePage));
        found.push(...(await axe(page)), ...problemsOf(page));
        for (const complaint of found) console.log(`  ${complaint}`);
        complaints += found.length;
        // the next picture starts with nothing stored
        await harness.leave();
      }
    }
  }
} finally {
  await harness.close();
}
console.log(complaints === 0 ? 'No complaints.' : `${complaints} complaints.`);
process.exitCode = complaints === 0 ? 0 : 1;
