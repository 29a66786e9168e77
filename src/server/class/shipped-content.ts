import {readShippedUnit, shippedUnitIds} from '../../content/node/read-shipped-unit.ts';
import type {Unit} from '../../content/unit.ts';
import type {Content} from '../../classroom/long-jobs.ts';
import type {FaultDifficulty} from '../../diagnosis/difficulty-level.ts';
import {difficultiesOfAny} from '../../diagnosis/node/read-difficulties.ts';
import type {HookupTask} from '../../hookup/hookup-task.ts';
import {readShippedTask, shippedTaskIds} from '../../hookup/node/read-shipped-task.ts';

const units = new Map<string, Unit>();
const tasks = new Map<string, HookupTask>();
const difficulties = new Map<string, readonly FaultDifficulty[]>();

const known = <T>(map: Map<string, T>, id: string, read: (id: string) => T): T => {
  let found = map.get(id);
  if (found === undefined) map.set(id, (found = read(id)));
  return found;
};

/** Units and tasks that come with Rungbench, each read once. */
export const shippedContent: Content = {
  unit: (id) => known(units, id, readShippedUnit),
  task: (id) => known(tasks, id, readShippedTask),
  difficulties: (unit) => known(difficulties, unit.id, () => difficultiesOfAny(unit)),
};

export const isShippedUnit = (id: string): boolean => shippedUnitIds().includes(id);
export const isShippedTask = (id: string): boolean => shippedTaskIds().includes(id);
