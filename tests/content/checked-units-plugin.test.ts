import {mkdtempSync, rmSync, writeFileSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {afterAll, expect, it} from 'vitest';
import {build, type Rolldown} from 'vite';
import {checkedUnits} from '../../src/content/node/checked-units-plugin.ts';
import {readShippedUnit, readShippedUnitText} from '../../src/content/node/read-shipped-unit.ts';

// Units that come with the tutor are checked while it is built; a student's device gets them ready to run.

const folder = mkdtempSync(join(tmpdir(), 'checked-units-'));
afterAll(() => rmSync(folder, {recursive: true}));

/** The script that `import unit from './<name>.yaml?checked'` becomes. */
async function built(name: string, text: string): Promise<string> {
  writeFileSync(join(folder, `${name}.yaml`), text);
  const entry = join(folder, `${name}.js`);
  writeFileSync(entry, `export {default} from './${name}.yaml?checked';`);
  const output = (await build({
    root: folder,
    configFile: false,
    logLevel: 'silent',
    plugins: [checkedUnits()],
    build: {write: false, lib: {entry, formats: ['es']}},
  })) as Rolldown.RolldownOutput[];
  return output[0].output[0].code;
}

it('gives a page the unit as the loader reads it, with every part’s data filled in', async () => {
  const code = await built('furnace', readShippedUnitText('gas-furnace'));
  const {default: unit} = (await import(`data:text/javascript,${encodeURIComponent(code)}`)) as {
    default: unknown;
  };
  expect(unit).toEqual(JSON.parse(JSON.stringify(readShippedUnit('gas-furnace'))));
});

it('ends the build at a unit file with a mistake, and tells its line and how to mend it', async () => {
  const text = readShippedUnitText('practice-panel');
  const spoilt = text.replace(/from: [A-Z0-9]+\./, 'from: NOSUCH.');
  const line = spoilt.split('\n').findIndex((each) => each.includes('NOSUCH')) + 1;
  await expect(built('spoilt', spoilt)).rejects.toThrow(
    new RegExp(`spoilt\\.yaml:${line}:\\d+: .*NOSUCH`),
  );
});
