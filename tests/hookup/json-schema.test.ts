import {readFileSync} from 'node:fs';
import {expect, test} from 'vitest';
import {shippedTaskIds} from '../../src/hookup/node/read-shipped-task.ts';
import {taskSchema} from '../../src/hookup/task-schema.ts';
import {generateTaskSchema, taskSchemaText} from '../../src/hookup/task-json-schema.ts';

const content = new URL('../../content/', import.meta.url);
const read = (path: string): string => readFileSync(new URL(path, content), 'utf8');

test('the committed JSON Schema of tasks is current (else: npx tsx src/hookup/node/write-json-schema.ts)', () => {
  expect(read('schema/hookup.schema.json')).toBe(taskSchemaText());
});

test('it has every key of a task, and what it leaves to the schema of units is there', () => {
  const {properties} = generateTaskSchema() as {properties: Record<string, {$ref?: string}>};
  expect(Object.keys(properties).sort()).toEqual(Object.keys(taskSchema.shape).sort());
  const units = JSON.parse(read('schema/unit.schema.json')) as {
    properties: Record<string, unknown>;
  };
  const left = Object.values(properties).flatMap(({$ref}) => $ref ?? []);
  expect(left.length).toBeGreaterThan(5);
  for (const ref of left) {
    const [file, key] = ref.split('#/properties/');
    expect(file).toBe('unit.schema.json');
    expect(Object.keys(units.properties)).toContain(key);
  }
});

test.each(shippedTaskIds())('%s names the schema in its first line', (id) => {
  expect(read(`hookups/${id}.yaml`)).toMatch(
    /^# yaml-language-server: \$schema=\.\.\/schema\/hookup\.schema\.json\n/,
  );
});
