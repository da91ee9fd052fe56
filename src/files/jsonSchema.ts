/** The published JSON Schemas, made from the validators themselves so that the two cannot part. */
import { toJsonSchema } from '@valibot/to-json-schema';
import * as v from 'valibot';
import { timedEventSchema } from './eventSchema.ts';
import { receiverSchema } from './receiverSchema.ts';
import { MOST_EVENTS, runFileSchema } from './runFileSchema.ts';
import { scenarioSchema } from './scenarioSchema.ts';
import { list } from './schemaPieces.ts';

type Node = Record<string, unknown>;

export const SCHEMA_FILES = {
  'receiver.schema.json': () =>
    published('receiver:1', receiverSchema, 'One practice receiver: slugs, test points, service sheet, chassis plan.', {
      notes: 'atHead',
    }),
  'scenario.schema.json': () =>
    published('scenario:2', scenarioSchema, 'One job on a receiver: how it starts, what may be used, what is asked.', {
      notes: 'anywhere',
      examples: [FIRST_SCENARIO],
    }),
  'run.schema.json': () =>
    published(
      'run:2',
      v.strictObject({
        ...runFileSchema.entries,
        scenario: scenarioSchema,
        events: list(timedEventSchema, 0, MOST_EVENTS),
      }),
      'One run: who, when and on what, every act with its time, and the score that is claimed.',
    ),
} as const;

/** What nobody need say more than. */
const FIRST_SCENARIO = {
  format: 'haystack-scenario',
  version: 2,
  id: 'back-from-the-regatta',
  code: 'T-01',
  title: 'Back from the regatta',
  track: 'tuesday',
  order: 1,
  receiver: 'loose-can-10m7',
  words: {
    brief: 'Two slugs are off.',
    story: 'It went out with the committee boat.',
    lesson: 'Look first, turn second.',
  },
  start: { slugs: { T1B: -0.75, T1T: 0.5 } },
};

/** The text of a published file. */
export function schemaText(name: keyof typeof SCHEMA_FILES): string {
  return `${JSON.stringify(SCHEMA_FILES[name](), null, 2)}\n`;
}

interface More {
  /** where people may write notes (`notes.ts`) */
  readonly notes?: 'anywhere' | 'atHead';
  readonly examples?: readonly unknown[];
}

function published(name: string, schema: Parameters<typeof toJsonSchema>[0], description: string, more: More = {}) {
  const { $schema, ...rest } = toJsonSchema(schema, { target: 'draft-2020-12' });
  const { notes, examples } = more;
  if (notes !== undefined) allowNotes(rest as Node, notes, true);
  const title = `Haystack ${name.split(':')[0]}`;
  return { $schema, $id: `urn:haystack:${name}`, title, description, ...(examples ? { examples } : {}), ...rest };
}

const NOTE = { type: 'string', maxLength: 1000, description: 'for people; not read' };

/** Objects whose keys are ours may hold notes; those whose keys are names have `propertyNames` and hold none. */
function allowNotes(node: Node, notes: 'anywhere' | 'atHead', head: boolean): void {
  if (node.additionalProperties === false && typeof node.properties === 'object') {
    const own = node.properties as Node;
    node.patternProperties = { '^x-': {} };
    node.properties = {
      ...own,
      ...(head ? { $schema: NOTE } : {}),
      ...(head || notes === 'anywhere' ? { note: NOTE } : {}),
    };
  }
  for (const inside of Object.values(node)) {
    for (const one of Array.isArray(inside) ? inside : [inside]) {
      if (typeof one === 'object' && one !== null && one !== NOTE) allowNotes(one as Node, notes, false);
    }
  }
}
