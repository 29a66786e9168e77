import {mkdir, mkdtemp, rm, symlink, writeFile} from 'node:fs/promises';
import {createRequire} from 'node:module';
import {tmpdir} from 'node:os';
import {dirname, join, resolve} from 'node:path';
import {cruise, type ICruiseResult, type IFlattenedRuleSet} from 'dependency-cruiser';
import {afterEach, expect, test} from 'vitest';

const root = resolve(import.meta.dirname, '../..');
const {options, ...ruleSet} = createRequire(import.meta.url)(
  '../../.dependency-cruiser.cjs',
) as IFlattenedRuleSet & {options: object};

let house: string | undefined;
afterEach(async () => {
  if (house) await rm(house, {recursive: true});
  house = undefined;
});

/** Names of the rules that a house of these files (path → content) breaks. */
async function broken(files: Record<string, string>): Promise<string[]> {
  house = await mkdtemp(join(tmpdir(), 'house-'));
  for (const [path, content] of Object.entries(files)) {
    await mkdir(dirname(join(house, path)), {recursive: true});
    await writeFile(join(house, path), content);
  }
  await writeFile(
    join(house, 'package.json'),
    '{"type":"module","dependencies":{"lit":"3","elkjs":"0"}}',
  );
  await symlink(join(root, 'node_modules'), join(house, 'node_modules'));
  const {tsConfig: _, ...plain} = options as {tsConfig?: object};
  const result = await cruise(['src'], {...plain, baseDir: house, validate: true, ruleSet});
  const {summary} = result.output as ICruiseResult;
  expect(summary.totalCruised).toBeGreaterThan(0);
  return [...new Set(summary.violations.map((violation) => violation.rule.name))].sort();
}

const a = 'export const a = 1;\nexport interface A {\n  readonly a: number;\n}\n';

test('a layer may import what stands before it', async () => {
  const rules = await broken({
    'src/parts/part.ts': a,
    'src/circuits/network.ts': "import {a} from '../parts/part.ts';\nexport const b = a;\n",
  });
  expect(rules).toEqual([]);
});

test('a layer may not import what stands after it', async () => {
  const rules = await broken({
    'src/circuits/network.ts': a,
    'src/parts/part.ts': "import {a} from '../circuits/network.ts';\nexport const b = a;\n",
  });
  expect(rules).toEqual(['parts-imports-only-what-stands-before-it']);
});

test('a type is an import like any other', async () => {
  const rules = await broken({
    'src/pages/page.ts': a,
    'src/bench/bench.ts': "import type {A} from '../pages/page.ts';\nexport type B = A;\n",
  });
  expect(rules).toEqual(['bench-imports-only-what-stands-before-it']);
});

test('faults may take the types of the circuits, not their code', async () => {
  const circuits = {'src/circuits/network.ts': a};
  const types = "import type {A} from '../circuits/network.ts';\nexport type B = A;\n";
  const code = "import {a} from '../circuits/network.ts';\nexport const b = a;\n";
  expect(await broken({...circuits, 'src/faults/fault.ts': types})).toEqual([]);
  await rm(house!, {recursive: true});
  expect(await broken({...circuits, 'src/faults/fault.ts': code})).toEqual([
    'faults-takes-only-types-of-circuits',
  ]);
});

test('the server knows nothing of the pages', async () => {
  const rules = await broken({
    'src/pages/page.ts': a,
    'src/server/app.ts': "import {a} from '../pages/page.ts';\nexport const b = a;\n",
  });
  expect(rules).toEqual(['server-imports-only-what-stands-before-it']);
});

test('two files may not need each other', async () => {
  const rules = await broken({
    'src/meter/range.ts': "import {b} from './display.ts';\nexport const a = () => b;\n",
    'src/meter/display.ts': "import {a} from './range.ts';\nexport const b = () => a;\n",
  });
  expect(rules).toEqual(['no-cycles']);
});

test('a model file may not import Lit; the element beside it may', async () => {
  const lit = "import {html} from 'lit';\nexport const view = html;\n";
  expect(await broken({'src/meter/meter.ts': lit})).toEqual(['engine-knows-no-page']);
  await rm(house!, {recursive: true});
  expect(await broken({'src/meter/meter.element.ts': lit})).toEqual([]);
});

test('a model file may not import an element, nor a module of Node', async () => {
  const rules = await broken({
    'src/meter/dial.element.ts': a,
    'src/meter/meter.ts': "import {a} from './dial.element.ts';\nexport const b = a;\n",
    'src/content/load.ts':
      "import {readFileSync} from 'node:fs';\nexport const read = readFileSync;\n",
  });
  expect(rules).toEqual(['engine-imports-no-element', 'engine-runs-in-a-browser']);
});

test('only the diagrams load elk', async () => {
  const elk = "import ELK from 'elkjs/lib/elk-api.js';\nexport const engine = ELK;\n";
  expect(await broken({'src/pages/page.ts': elk})).toEqual(['layout-engine-only-for-diagrams']);
  await rm(house!, {recursive: true});
  expect(await broken({'src/diagrams/layout.ts': elk})).toEqual([]);
});

test('a file that is not there, and a folder without a row, are found', async () => {
  const rules = await broken({
    'src/parts/part.ts': "import {a} from './gone.ts';\nexport const b = a;\n",
    'src/helpers/help.ts': a,
    'src/pages/page.ts': "import {a} from '../helpers/help.ts';\nexport const b = a;\n",
  });
  expect(rules).toEqual(['every-import-exists', 'known-folders-only']);
});
