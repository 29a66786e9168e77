import {readHookupFile} from '../../hookup/hookup-attempt.ts';
import {HookupWork} from '../../hookup/hookup-work.ts';
import type {AttemptStore, KeptHookup} from '../../store/attempts.ts';
import {taskOfWork} from './known-tasks.ts';
import {rowOf} from './work-keeper.ts';

/**
 * Takes exported work at a wiring task into the store. It is validated and done once more before anything is kept, so
 * its points are worked out here and not believed. It is put away, so that it takes nobody's board from them. Rejects
 * with the reason in a sentence.
 */
export async function importHookup(store: AttemptStore, text: string): Promise<KeptHookup> {
  const read = readHookupFile(text);
  if ('reason' in read) throw new Error(read.reason);
  const {attempt} = read;
  if (await store.hookup(attempt.id))
    throw new Error(
      'This work is already kept on this device. Delete it in the history first to replace it.',
    );
  const {task} = await taskOfWork(store, attempt);
  const row = rowOf(attempt, HookupWork.replay(task, attempt.deeds), true);
  await store.putHookup(row, 0);
  return row;
}
