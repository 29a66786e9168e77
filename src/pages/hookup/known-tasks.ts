import {formatContentError} from '../../content/content-error.ts';
import type {HookupTask} from '../../hookup/hookup-task.ts';
import {loadTask} from '../../hookup/load-task.ts';
import type {AttemptStore, KeptTask} from '../../store/attempts.ts';
import {isShipped, shippedTask} from './shipped-tasks.ts';

/** A task with the text of its file, where it is one of this person's own. */
export interface KnownTask {
  readonly task: HookupTask;
  readonly text?: string;
}

/** A task by its id: one that comes with Rungbench, or one kept on this device. Rejects with a sentence. */
export async function knownTask(store: AttemptStore, id: string): Promise<KnownTask> {
  if (isShipped(id)) return {task: await shippedTask(id)};
  const kept = (await store.tasks()).find((each) => each.id === id);
  if (!kept)
    throw new Error(
      `There is no wiring task "${id}" on this device. Open its file on the page of the wiring tasks.`,
    );
  return {task: taskOf(kept.text, kept.fileName), text: kept.text};
}

/** The task that work was done at: the file that came with it, or one that is known here. */
export async function taskOfWork(
  store: AttemptStore,
  {task, taskText}: {readonly task: string; readonly taskText?: string},
): Promise<KnownTask> {
  if (taskText === undefined || isShipped(task)) return knownTask(store, task);
  return {task: taskOf(taskText, `${task}.yaml`), text: taskText};
}

/** Tasks that this person opened; those that no longer load are left out. */
export async function ownTasks(store: AttemptStore): Promise<HookupTask[]> {
  const kept: KeptTask[] = await store.tasks();
  return kept.flatMap(({text, fileName}) => loadTask(text, fileName).task ?? []);
}

function taskOf(text: string, fileName: string): HookupTask {
  const {task, errors} = loadTask(text, fileName);
  if (!task) throw new Error(errors.map(formatContentError).join(' '));
  return task;
}
