import type {Unit} from '../../content/unit.ts';

// each unit is its own chunk, checked when the page was built, and fetched when it is asked for
const units = import.meta.glob<Unit>('../../../content/units/*.yaml', {
  query: '?checked',
  import: 'default',
});

const byId = new Map(
  Object.entries(units).map(([path, load]) => [
    path.slice(path.lastIndexOf('/') + 1, -'.yaml'.length),
    load,
  ]),
);

/** Ids of the units that come with Rungbench: what a first-week student starts on comes first. */
export const shippedIds: readonly string[] = [...byId.keys()].sort(
  (a, b) => Number(b === 'practice-panel') - Number(a === 'practice-panel') || (a < b ? -1 : 1),
);

/** A unit that comes with Rungbench. Rejects where there is none of that id. */
export async function shippedUnit(id: string): Promise<Unit> {
  const load = byId.get(id);
  if (!load) throw new Error(`There is no unit "${id}"; there are ${shippedIds.join(', ')}.`);
  return load();
}
