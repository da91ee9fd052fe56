/** Says whether the JSON Schemas in `scenarios/schema/` are those of the validators. Run: `npx tsx scripts/check-schemas.ts` */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { SCHEMA_FILES, schemaText } from '../src/files/jsonSchema.ts';

const folder = fileURLToPath(new URL('../scenarios/schema/', import.meta.url));
const published = new Set(readdirSync(folder));
for (const name of Object.keys(SCHEMA_FILES) as (keyof typeof SCHEMA_FILES)[]) {
  if (!published.delete(name) || readFileSync(folder + name, 'utf8') !== schemaText(name)) {
    console.error(`scenarios/schema/${name} is not what the code says; run: npm run schemas`);
    process.exitCode = 1;
  }
}
for (const name of published) {
  console.error(`scenarios/schema/${name}: the code knows no such schema`);
  process.exitCode = 1;
}
