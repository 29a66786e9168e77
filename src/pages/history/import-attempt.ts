import type {AttemptHead, AttemptStore} from '../../store/attempts.ts';
import type {Desk} from '../desk/desk.ts';

/** An attempt of 20,000 actions has about 2 MB. */
export const largestBytes = 8_000_000;

/**
 * Takes an exported call into the store: the file is validated, its seal opened, its unit looked for, and the whole of
 * it replayed, before anything is kept. Rejects with the reason in a sentence for people.
 */
export async function importAttempt(
  desk: Desk,
  store: AttemptStore,
  file: {size: number; text(): Promise<string>},
): Promise<AttemptHead> {
  if (file.size > largestBytes)
    throw new Error(
      `It has ${Math.round(file.size / 1e6)} MB; an exported call has at most ${largestBytes / 1e6}.`,
    );
  const record = await desk.ask('imported', {text: await file.text()});
  const opened = await desk.ask('opened', {sealed: record.sealed});
  if (opened.unit !== record.unit) {
    throw new Error(
      `It says its unit is "${record.unit}", but its sealed fault is for "${opened.unit}". The file was changed by hand: export the call again.`,
    );
  }
  const source = await desk.source(store, record.unit);
  const unit = await desk.unit(store, record.unit);
  const {progress, purpose} = await desk.ask('appraised', {source, record});
  return store.add(record, {unitTitle: unit.title, purpose, progress});
}
