import {z} from 'zod';
import {unitSchema} from './unit-schema.ts';

/** JSON Schema (draft 2020-12) of a unit file, for completion and checks while typing in an editor. */
export function generateJsonSchema(): Record<string, unknown> {
  const {$schema, ...schema} = z.toJSONSchema(unitSchema, {io: 'input'});
  return {$schema, title: 'Rungbench unit', ...schema};
}

/** The text of `content/schema/unit.schema.json`. */
export function jsonSchemaText(): string {
  return `${JSON.stringify(generateJsonSchema(), null, 2)}\n`;
}
