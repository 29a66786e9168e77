import {readdirSync, readFileSync} from 'node:fs';
import {basename} from 'node:path';
import {formatContentError} from '../../content/content-error.ts';
import type {HookupTask} from '../hookup-task.ts';
import {loadTask} from '../load-task.ts';

const folder = new URL('../../../content/hookups/', import.meta.url);

/** Ids of the tasks in content/hookups, in alphabetical order. */
export function shippedTaskIds(): string[] {
  return readdirSync(folder)
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => basename(name, '.yaml'))
    .sort();
}

/** A shipped task by its id. Throws with all the errors of its file where it does not load. */
export function readShippedTask(id: string): HookupTask {
  const text = readFileSync(new URL(`${id}.yaml`, folder), 'utf8');
  const {task, errors} = loadTask(text, `content/hookups/${id}.yaml`);
  if (!task) throw new Error(errors.map(formatContentError).join('\n'));
  return task;
}
