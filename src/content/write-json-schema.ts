import {mkdirSync, writeFileSync} from 'node:fs';
import {fileURLToPath} from 'node:url';
import {jsonSchemaText} from './unit-json-schema.ts';

// Run after a change of the unit schema or of a part kind: npx tsx src/content/write-json-schema.ts
const file = fileURLToPath(new URL('../../content/schema/unit.schema.json', import.meta.url));
mkdirSync(new URL('.', `file://${file}`), {recursive: true});
writeFileSync(file, jsonSchemaText());
