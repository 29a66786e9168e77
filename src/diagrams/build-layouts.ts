/**
 * Lays out the connection drawings of the shipped units and writes content/layouts/<unit>.json.
 * `npm run layout` for all; `npm run layout -- split-heat-pump 20 7` for one unit with 20 % of the effort and 7 as the
 * seed of the search. 1 improves what is there, 0 only places it again. A layout that is there and fits its unit is gone
 * on from, so the result is never worse. LAYOUTS in the environment names another folder, for trials.
 */
import {existsSync, mkdirSync, readFileSync, writeFileSync} from 'node:fs';
import {pathToFileURL} from 'node:url';
import {createRequire} from 'node:module';
import type {ELK} from 'elkjs/lib/elk-api.js';
import {readShippedUnit, shippedUnitIds} from '../content/node/read-shipped-unit.ts';
import {
  cost,
  searchLayout,
  shippedBudget,
  type ConnectionLayout,
  type LayoutBudget,
} from './connection-layout.ts';
import type {Unit} from '../content/unit.ts';
import type {LanePlan} from './lane-plan.ts';
import {planOfFile} from './lane-start.ts';
import {LAYOUT_VERSION, structureHash, toLayoutFile, type LayoutFile} from './layout-file.ts';

const folder = process.env['LAYOUTS']
  ? pathToFileURL(`${process.env['LAYOUTS']}/`)
  : new URL('../../content/layouts/', import.meta.url);

const Bundled = createRequire(import.meta.url)('elkjs/lib/elk.bundled.js') as {new (): ELK};

function describe({placement, quality}: ConnectionLayout): string {
  const {width, height} = placement;
  const scale = Math.min(1280 / width, 800 / height).toFixed(2);
  return `${width} × ${height} (scale ${scale} at 1280 × 800), ${quality.crossings} crossings (${quality.sameColour} of one colour), ${quality.bends} bends, ${quality.overlaps} overlaps, ${quality.through} through parts`;
}

/** The shipped budget, or a share of it. */
function budgetOf(percent: number): LayoutBudget {
  const share = (count: number): number => Math.ceil((count * percent) / 100);
  return {
    ...shippedBudget,
    arrangements: share(shippedBudget.arrangements),
    rearrangements: share(shippedBudget.rearrangements),
    finalists: share(shippedBudget.finalists),
  };
}

/** The plan of the layout that is there, where it still fits the unit. */
function presentPlan(unit: Unit): LanePlan | undefined {
  const path = new URL(`${unit.id}.json`, folder);
  if (!existsSync(path)) return undefined;
  const file = JSON.parse(readFileSync(path, 'utf8')) as LayoutFile;
  const fits = file.version === LAYOUT_VERSION && file.hash === structureHash(unit);
  return fits ? planOfFile(unit, file) : undefined;
}

async function main([only, percent = '100', seed = '7']: readonly string[]): Promise<void> {
  const elk = new Bundled();
  mkdirSync(folder, {recursive: true});
  for (const id of only ? [only] : shippedUnitIds()) {
    const unit = readShippedUnit(id);
    const layout = await searchLayout(
      unit,
      (graph) => elk.layout(graph),
      budgetOf(Number(percent)),
      Number(seed),
      (stage, best) =>
        process.stderr.write(`${id} ${stage}, cost ${cost(best).toFixed(1)}: ${describe(best)}\n`),
      presentPlan(unit),
    );
    writeFileSync(new URL(`${id}.json`, folder), `${JSON.stringify(toLayoutFile(unit, layout))}\n`);
    process.stdout.write(`${id}: ${describe(layout)}\n`);
  }
}

await main(process.argv.slice(2));
