import {readFileSync} from 'node:fs';
import {expect, test} from 'vitest';
import {generateJsonSchema, jsonSchemaText} from '../../src/content/unit-json-schema.ts';
import {partKinds} from '../../src/parts/part-kinds.ts';

test('the committed JSON Schema is current (else: npx tsx src/content/write-json-schema.ts)', () => {
  const committed = new URL('../../content/schema/unit.schema.json', import.meta.url);
  expect(readFileSync(committed, 'utf8')).toBe(jsonSchemaText());
});

test('every part kind has its own branch, told apart by its kind, and refuses unknown keys', () => {
  const schema = JSON.parse(JSON.stringify(generateJsonSchema())) as {
    properties: {
      parts: {
        items: {
          oneOf: {
            properties: {kind: {const: string}; data: {additionalProperties: boolean}};
            additionalProperties: boolean;
          }[];
        };
      };
    };
  };
  const branches = schema.properties.parts.items.oneOf;
  expect(branches.map((branch) => branch.properties.kind.const).sort()).toEqual(
    [...partKinds.keys()].sort(),
  );
  for (const branch of branches) {
    expect(branch.additionalProperties).toBe(false);
    expect(branch.properties.data.additionalProperties).toBe(false);
  }
});
