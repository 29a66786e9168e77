import type {Unit} from '../../content/unit.ts';
import {LAYOUT_VERSION, structureHash} from '../../diagrams/layout-file.ts';
import type {LayoutFile} from '../../diagrams/layout-file.ts';
import {openAttempts} from '../../store/attempts.ts';

// each layout is its own chunk: only the unit at work is fetched
const committed = import.meta.glob<LayoutFile>('../../../content/layouts/*.json', {
  import: 'default',
});

const searching = new Map<string, Promise<LayoutFile>>();

/**
 * Layout of a unit's connection drawing. A unit that comes with Rungbench has one that was computed beforehand; that of
 * a person's own file is searched in a worker (some seconds, elk is fetched for it) and kept for the next time.
 * Rejects with a sentence for people when it cannot be laid out.
 */
export async function layoutOf(unit: Unit): Promise<LayoutFile> {
  const hash = structureHash(unit);
  const ready = await committed[`../../../content/layouts/${unit.id}.json`]?.();
  if (ready && fits(ready, hash)) return ready;
  let search = searching.get(hash);
  if (!search) {
    search = searched(unit, hash);
    searching.set(hash, search);
    search.catch(() => searching.delete(hash));
  }
  return search;
}

/** The kept layout of this structure, or a new one, which is kept. */
async function searched(unit: Unit, hash: string): Promise<LayoutFile> {
  const store = await openAttempts();
  const name = `layout ${hash}`;
  const kept = await store.setting(name).catch(() => undefined);
  if (kept) {
    const layout = JSON.parse(kept) as LayoutFile;
    if (fits(layout, hash)) return layout;
  }
  const layout = await search(unit);
  await store.putSetting(name, JSON.stringify(layout)).catch(() => undefined);
  return layout;
}

function fits({version, hash}: LayoutFile, wanted: string): boolean {
  return version === LAYOUT_VERSION && hash === wanted;
}

function search(unit: Unit): Promise<LayoutFile> {
  const worker = new Worker(new URL('../../diagrams/layout.worker.ts', import.meta.url), {
    type: 'module',
  });
  return new Promise<LayoutFile>((resolve, reject) => {
    worker.addEventListener(
      'message',
      ({data}: MessageEvent<{layout: LayoutFile} | {failed: string}>) => {
        if ('layout' in data) resolve(data.layout);
        else
          reject(
            new Error(
              `The connection drawing could not be laid out (${data.failed}). The ladder shows the same unit.`,
            ),
          );
      },
    );
    worker.addEventListener('error', () =>
      reject(
        new Error(
          'The connection drawing could not be laid out: a part of Rungbench did not load. The ladder shows the same unit.',
        ),
      ),
    );
    worker.postMessage(unit);
  }).finally(() => worker.terminate());
}
