import {z} from 'zod';
import {taskSchema} from './task-schema.ts';

/** Keys of a task that are written as in a unit file; the unit's schema says how, so that it is said once. */
const asInUnits = [
  'id',
  'title',
  'about',
  'frequencyHz',
  'enclosures',
  'runs',
  'parts',
  'wires',
  'circuits',
  'plant',
] as const;

/** JSON Schema (draft 2020-12) of a task file, for completion and checks while typing in an editor. */
export function generateTaskSchema(): Record<string, unknown> {
  const {$schema, ...schema} = z.toJSONSchema(taskSchema, {io: 'input'});
  const properties: Record<string, unknown> = {...schema.properties};
  for (const key of asInUnits) properties[key] = {$ref: `unit.schema.json#/properties/${key}`};
  return {$schema, title: 'Rungbench wiring task', ...schema, properties};
}

/** The text of `content/schema/hookup.schema.json`. */
export const taskSchemaText = (): string => `${JSON.stringify(generateTaskSchema(), null, 2)}\n`;
