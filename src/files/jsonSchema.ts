/** The published JSON Schemas, made from the validators themselves so that the two cannot part. */
import { toJsonSchema } from '@valibot/to-json-schema';
import * as v from 'valibot';
import { CONTROL_ROWS } from '../bench/controls/rows.ts';
import { certificateSchema } from './certificateSchema.ts';
import { eveningSchema } from './evening.ts';
import { timedEventSchema } from './eventSchema.ts';
import { keyDescription } from './keyDescriptions.ts';
import { keyExample } from './keyExamples.ts';
import { receiverSchema } from './receiverSchema.ts';
import { MOST_EVENTS, runFileSchema } from './runFileSchema.ts';
import { runsFileSchema } from './runsFile.ts';
import { scenarioSchema } from './scenarioSchema.ts';
import { list } from './schemaPieces.ts';
import { sealedEveningSchema } from './sealedEvening.ts';

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
      v.strictObject(runFileOf()),
      'One run: who, when and on what, every act with its time, and the score that is claimed.',
    ),
  'evening.schema.json': () =>
    published(
      'evening:1',
      eveningSchema(scenarioSchema, receiverSchema),
      'The sheet of an evening: several scenarios in an order, whole inside, with the receivers that they need.',
      { notes: 'anywhere' },
    ),
  'sealed-evening.schema.json': () =>
    published('sealed:1', sealedEveningSchema, 'The sheet of an exam, sealed by a phrase.'),
  'runs.schema.json': () =>
    published(
      'runs:1',
      v.strictObject({ ...runsFileSchema.entries, runs: list(v.strictObject(runFileOf()), 0, 60) }),
      'All the runs of one candidate, as they are handed in after an exam.',
    ),
  'certificate.schema.json': () =>
    published(
      'certificate:1',
      certificateSchema,
      'What the certifier found of one scenario: that it can be done, by which route, and what par is.',
    ),
} as const;

/** A run file with its insides in full. */
function runFileOf() {
  return { ...runFileSchema.entries, scenario: scenarioSchema, events: list(timedEventSchema, 0, MOST_EVENTS) };
}

/** What needs no further text. */
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
  const kind = name.split(':')[0]!;
  const title = `Haystack ${kind}`;
  describeKeys(rest as Node, kind);
  return { $schema, $id: `urn:haystack:${name}`, title, description, ...(examples ? { examples } : {}), ...rest };
}

/** Puts to every key what it says. `parent`: the key that the node stands under, lists between them not counted. */
function describeKeys(node: Node, parent: string): void {
  for (const [key, inside] of Object.entries((node.properties ?? {}) as Readonly<Record<string, Node>>)) {
    // A scenario inside a run is described as one by itself.
    const above =
      (parent === 'run' && key === 'scenario') || (parent === 'evening' && key === 'scenarios')
        ? 'scenario'
        : parent === 'runs' && key === 'runs'
          ? 'run'
          : key;
    const description = parent === 'controls' ? controlDescription(key) : keyDescription(parent, key);
    if (description !== undefined && inside !== NOTE) inside.description = description;
    const example = keyExample(inside, parent, key);
    if (example !== undefined && inside !== NOTE) inside.examples = [example];
    describeKeys(inside, above);
  }
  for (const key of ['items', 'anyOf', 'oneOf', 'additionalProperties']) {
    const inside = node[key];
    for (const one of Array.isArray(inside) ? inside : [inside]) {
      if (typeof one === 'object' && one !== null) describeKeys(one as Node, parent);
    }
  }
}

const UNITS: Readonly<Partial<Record<string, string>>> = {
  hz: 'hertz',
  hzWide: 'hertz',
  hzOff: 'hertz',
  db: 'decibels',
  degrees: 'degrees',
  divisions: 'divisions of the tube',
  volts: 'volts',
  unsignedVolts: 'volts',
  voltsPerDiv: 'volts a division',
};

/** From its row, as the rest of what is known of a control. */
function controlDescription(id: string): string | undefined {
  const row = (CONTROL_ROWS as Readonly<Record<string, (typeof CONTROL_ROWS)[keyof typeof CONTROL_ROWS]>>)[id];
  if (row === undefined) return keyDescription('controls', id);
  const unit = 'unit' in row ? UNITS[row.unit] : undefined;
  const what = row.kind === 'switch' ? 'A switch' : row.kind === 'positions' ? 'A switch of positions' : 'A knob';
  return `${what} of the bench${unit === undefined ? '' : `, ${unit}`}. At rest: ${row.resting}.`;
}

const NOTE = {
  ...{ type: 'string', maxLength: 1000, description: 'For people; not read.' },
  examples: ['Measured again in March.'],
};

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
