import {writeFileSync} from 'node:fs';
import {taskSchemaText} from '../task-json-schema.ts';

// Run after a change of the task schema, the unit schema or a part kind: npx tsx src/hookup/node/write-json-schema.ts
writeFileSync(
  new URL('../../../content/schema/hookup.schema.json', import.meta.url),
  taskSchemaText(),
);
