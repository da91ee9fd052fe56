/** Writes the JSON Schemas in `scenarios/schema/` anew from the validators. Run: `npm run schemas` */
import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { SCHEMA_FILES, schemaText } from '../src/files/jsonSchema.ts';

const folder = fileURLToPath(new URL('../scenarios/schema/', import.meta.url));
mkdirSync(folder, { recursive: true });
for (const name of Object.keys(SCHEMA_FILES) as (keyof typeof SCHEMA_FILES)[]) {
  writeFileSync(folder + name, schemaText(name));
  console.log(`scenarios/schema/${name}`);
}
