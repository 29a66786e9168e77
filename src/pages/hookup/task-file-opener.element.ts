import {customElement} from 'lit/decorators.js';
import {loadTask} from '../../hookup/load-task.ts';
import {openAttempts} from '../../store/attempts.ts';
import {goTo} from '../app/router.ts';
import type {FileMistake} from '../desk/desk-messages.ts';
import {FileOpener} from '../own-files/file-opener.ts';
import {isShipped} from './shipped-tasks.ts';

/** Opens a task file from disk, lists its mistakes or keeps it on this device and goes to the task. */
@customElement('rb-task-file-opener')
export class TaskFileOpener extends FileOpener {
  protected override readonly what = 'task file';

  protected override async keep(fileName: string, text: string): Promise<readonly FileMistake[]> {
    const {task, errors} = loadTask(text, fileName);
    if (!task) return errors;
    if (isShipped(task.id))
      throw new Error(
        `The task's id "${task.id}" is one that comes with Rungbench. Give yours another id in its first lines.`,
      );
    const store = await openAttempts();
    await store.putTask({
      id: task.id,
      title: task.title,
      fileName,
      text,
      keptAt: new Date().toISOString(),
    });
    goTo({page: 'hookup-task', task: task.id});
    return [];
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'rb-task-file-opener': TaskFileOpener;
  }
}
