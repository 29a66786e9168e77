import {formatContentError} from '../../content/content-error.ts';
import type {HookupTask} from '../../hookup/hookup-task.ts';
import {loadTask} from '../../hookup/load-task.ts';

// each text is its own chunk: a task is fetched when it is opened
const texts = import.meta.glob<string>('../../../content/hookups/*.yaml', {
  query: '?raw',
  import: 'default',
});

const idOf = (path: string): string => path.slice(path.lastIndexOf('/') + 1, -'.yaml'.length);

/** Whether a task of that id comes with Rungbench. */
export const isShipped = (id: string): boolean =>
  Object.hasOwn(texts, `../../../content/hookups/${id}.yaml`);

/** A task that comes with Rungbench. Rejects with a sentence where there is none of that id. */
export async function shippedTask(id: string): Promise<HookupTask> {
  const load = texts[`../../../content/hookups/${id}.yaml`];
  if (!load) throw new Error(`There is no wiring task "${id}".`);
  const {task, errors} = loadTask(await load(), `${id}.yaml`);
  if (!task) throw new Error(errors.map(formatContentError).join(' '));
  return task;
}

/** All tasks, easiest first. */
export async function shippedTasks(): Promise<HookupTask[]> {
  const tasks = await Promise.all(Object.keys(texts).map((path) => shippedTask(idOf(path))));
  return tasks.sort(
    (p, q) =>
      p.level - q.level || p.answer.length - q.answer.length || (p.title < q.title ? -1 : 1),
  );
}
