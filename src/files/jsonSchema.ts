/** The published JSON Schemas, made from the validators themselves so that the two cannot part. */
import { toJsonSchema } from '@valibot/to-json-schema';
import { receiverSchema } from './receiverSchema.ts';
import { scenarioSchema } from './scenarioSchema.ts';

export const SCHEMA_FILES = {
  'receiver.schema.json': () =>
    published(
      receiverSchema,
      'Haystack receiver',
      'One practice receiver: slugs, test points, service sheet, chassis plan.',
    ),
  'scenario.schema.json': () =>
    published(
      scenarioSchema,
      'Haystack scenario',
      'One job on a receiver: how it starts, what may be used, what is asked.',
    ),
} as const;

/** The text of a published file. */
export function schemaText(name: keyof typeof SCHEMA_FILES): string {
  return `${JSON.stringify(SCHEMA_FILES[name](), null, 2)}\n`;
}

function published(schema: Parameters<typeof toJsonSchema>[0], title: string, description: string) {
  const { $schema, ...rest } = toJsonSchema(schema, { target: 'draft-2020-12' });
  return { $schema, title, description, ...rest };
}
