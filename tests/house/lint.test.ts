import {resolve} from 'node:path';
import {ESLint} from 'eslint';
import {expect, test} from 'vitest';

const root = resolve(import.meta.dirname, '../..');
const eslint = new ESLint({cwd: root});

/** Rules that this code breaks when it stands at this path. */
async function broken(path: string, code: string): Promise<string[]> {
  const [result] = await eslint.lintText(code, {filePath: resolve(root, path)});
  if (!result) throw new Error(`eslint ignores ${path}`);
  expect(result.messages.filter((message) => message.fatal)).toEqual([]);
  return [...new Set(result.messages.map((message) => message.ruleId ?? message.message))];
}

test.each([
  'window.scrollTo(0, 0);',
  "document.querySelector('svg');",
  "localStorage.getItem('attempt');",
  "indexedDB.open('attempts');",
  "fetch('unit.yaml');",
  'navigator.vibrate(10);',
  "self.postMessage('ready');",
  'export class Lamp extends HTMLElement {}',
])('the engine knows no page: %s', async (code) => {
  expect(await broken('src/circuits/solve.ts', code)).toEqual(['no-restricted-globals']);
});

test.each([
  ['Date.now();', 'no-restricted-properties'],
  ['export const now = new Date();', 'no-restricted-syntax'],
  ['performance.now();', 'no-restricted-globals'],
  ['setTimeout(() => {}, 10);', 'no-restricted-globals'],
  ['globalThis.setTimeout(() => {}, 10);', 'no-restricted-properties'],
  ['Math.random();', 'no-restricted-properties'],
])('the engine has its own clock and its own dice: %s', async (code, rule) => {
  expect(await broken('src/sequences/settle.ts', code)).toEqual([rule]);
});

test('the engine imports no Lit, directly or by a part of it', async () => {
  for (const from of ['lit', 'lit/decorators.js', '@lit/context']) {
    const code = `import * as lit from '${from}';\nexport const view = lit;\n`;
    expect(await broken('src/meter/meter.ts', code)).toEqual(['no-restricted-imports']);
  }
});

test.each([
  'src/meter/dial.element.ts',
  'src/pages/app/app.ts',
  'src/bench/bench.worker.ts',
  'src/store/attempts.ts',
])('what shows, stores or carries may know the page: %s', async (path) => {
  const code =
    "import {html} from 'lit';\nsetTimeout(() => document.title, 10);\nexport const view = html;\n";
  expect(await broken(path, code)).toEqual([]);
});

test('words that only look like the page are no trouble', async () => {
  const code =
    'export interface Contact {\n  readonly open: boolean;\n  readonly status: string;\n}\n' +
    'export function pick(contact: Contact): string {\n  return contact.open ? contact.status : "";\n}\n';
  expect(await broken('src/parts/contact.ts', code)).toEqual([]);
});

test.each([
  ['export enum Pole {\n  one,\n}\n', 'no-restricted-syntax'],
  ['export class Coil {\n  constructor(readonly ohms: number) {}\n}\n', 'no-restricted-syntax'],
  ['export const reading = JSON.parse("1") as any;\n', '@typescript-eslint/no-explicit-any'],
  ['// @ts-ignore\nexport const ohms: number = "";\n', '@typescript-eslint/ban-ts-comment'],
  ['export const same = (a: unknown) => a == 1;\n', 'eqeqeq'],
])('everywhere: %s', async (code, rule) => {
  for (const path of ['src/parts/coil.ts', 'src/pages/coil.ts'])
    expect(await broken(path, code)).toEqual([rule]);
});

test('an inline style in a template would be refused by the page, so it is refused here', async () => {
  const code =
    'import {html} from \'lit\';\nexport const view = (w: number) => html`<b style="width:${w}px"></b>`;\n';
  expect(await broken('src/pages/bar.element.ts', code)).toEqual(['no-restricted-syntax']);
});
