// each text is its own chunk: a unit is fetched when it is asked for
const texts = import.meta.glob<string>('../../../content/units/*.yaml', {
  query: '?raw',
  import: 'default',
});

const byId = new Map(
  Object.entries(texts).map(([path, load]) => [
    path.slice(path.lastIndexOf('/') + 1, -'.yaml'.length),
    load,
  ]),
);

/** Ids of the units that come with Rungbench: what a first-week student starts on comes first. */
export const shippedIds: readonly string[] = [...byId.keys()].sort(
  (a, b) => Number(b === 'practice-panel') - Number(a === 'practice-panel') || (a < b ? -1 : 1),
);

/** Text of a shipped unit's file. Rejects where there is none of that id. */
export async function shippedText(id: string): Promise<string> {
  const load = byId.get(id);
  if (!load) throw new Error(`There is no unit "${id}"; there are ${shippedIds.join(', ')}.`);
  return load();
}
