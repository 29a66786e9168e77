import type {DifficultyFile} from '../../diagnosis/difficulty-file.ts';

// each is its own chunk: only the unit that is asked about is fetched
const files = import.meta.glob<DifficultyFile>('../../../content/difficulty/*.json', {
  import: 'default',
});

/** How hard the faults of a shipped unit are to find; undefined for any other unit. */
export async function shippedDifficulty(id: string): Promise<DifficultyFile | undefined> {
  return files[`../../../content/difficulty/${id}.json`]?.();
}
