/**
 * The published schemas as others read them: by a general-purpose JSON Schema validator (Ajv, draft 2020-12), which finds every shipped file good, broken ones bad, and a
 * description and a good example at every key.
 */
import { readdirSync, readFileSync } from 'node:fs';
import Ajv from 'ajv/dist/2020.js';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Certificate } from '../../src/certify/certificate.ts';
import { SCHEMA_FILES } from '../../src/files/jsonSchema.ts';
import { serialiseRunFile, toRunFile } from '../../src/run/serialise.ts';
import { demonstrate } from '../../src/technician/atBench.ts';
import { finishedFile, runOf } from '../run/runs.ts';
import { canSetup, stripSetup } from '../session/setups.ts';
import { setupOf } from '../technician/oneScenario.ts';
import { shippedTexts } from './shipped.ts';

type Node = Readonly<Record<string, unknown>>;
const NAMES = Object.keys(SCHEMA_FILES) as (keyof typeof SCHEMA_FILES)[];
const read = (name: string): Node => JSON.parse(shippedTexts()[`schema/${name}`]!) as Node;

function reader(name: keyof typeof SCHEMA_FILES): (value: unknown) => string[] {
  const validate = new Ajv({ strict: false, validateFormats: false, allErrors: true }).compile(read(name));
  return (value) => (validate(value) ? [] : validate.errors!.map((e) => `${e.instancePath} ${e.message}`));
}

/** Path of every key of ours, and its schema. */
function keysOf(value: unknown, path: string): [string, Node][] {
  if (typeof value !== 'object' || value === null) return [];
  if (Array.isArray(value)) return value.flatMap((one) => keysOf(one, path));
  const { properties, examples: _, ...rest } = value as Record<string, unknown>;
  const own = Object.entries((properties ?? {}) as Readonly<Record<string, Node>>);
  return [
    ...own.flatMap(([key, inside]): [string, Node][] => [
      [`${path}/${key}`, inside],
      ...keysOf(inside, `${path}/${key}`),
    ]),
    ...Object.values(rest).flatMap((inside) => keysOf(inside, path)),
  ];
}

describe.each(NAMES)('%s', (name) => {
  it('has a name of its own and says of every key what it is', () => {
    const schema = read(name);
    expect(schema.$id).toMatch(/^urn:haystack:[a-z]+:\d+$/);
    expect(schema.description).toMatch(/\.$/);
    const keys = keysOf(schema, '');
    // A sealed sheet says little in the open.
    expect(keys.length).toBeGreaterThan(name === 'sealed-evening.schema.json' ? 12 : 20);
    const silent = keys.filter(([, { description: said }]) => typeof said !== 'string' || !said.endsWith('.'));
    expect(silent.map(([key]) => key)).toEqual([]);
  });

  it('shows of every key an example, which is a good one', () => {
    const keys = keysOf(read(name), '');
    expect(
      keys.filter(([, { examples }]) => !Array.isArray(examples) || examples.length === 0).map(([k]) => k),
    ).toEqual([]);
    const ajv = new Ajv({ strict: false, validateFormats: false, allErrors: true });
    const bad = keys.filter(([, schema]) => !(schema.examples as unknown[]).every((one) => ajv.validate(schema, one)));
    expect(bad.map(([key, { examples }]) => [key, examples])).toEqual([]);
  });
});

describe('shipped files, read by Ajv', () => {
  const texts = Object.entries(shippedTexts());
  const receivers = texts.filter(([file]) => file.endsWith('/receiver.json'));
  const scenarios = texts.filter(([file]) => /^(?!receivers\/|schema\/)[^/]+\/[^/]+\.json$/.test(file));
  let check: Record<'receiver' | 'scenario' | 'certificate' | 'run', (value: unknown) => string[]>;
  beforeAll(() => {
    check = {
      receiver: reader('receiver.schema.json'),
      scenario: reader('scenario.schema.json'),
      certificate: reader('certificate.schema.json'),
      run: reader('run.schema.json'),
    };
  });

  it('finds every receiver and every scenario good', () => {
    expect([receivers.length, scenarios.length > 70]).toEqual([13, true]);
    for (const [file, text] of receivers) expect(check.receiver(JSON.parse(text)), file).toEqual([]);
    for (const [file, text] of scenarios) expect(check.scenario(JSON.parse(text)), file).toEqual([]);
  });

  it('finds every certificate good, and one with a key too many or too few bad', () => {
    const names = readdirSync('certificates').filter((name) => name.endsWith('.json'));
    expect(names.length).toBeGreaterThan(70);
    const all = names.map((name) => JSON.parse(readFileSync(`certificates/${name}`, 'utf8')) as Certificate);
    for (const one of all) expect(check.certificate(one), one.scenario).toEqual([]);
    const { par: _, ...short } = all[0]!;
    expect(check.certificate(short)).toHaveLength(1);
    expect(check.certificate({ ...all[0], grade: 1 })).toHaveLength(1);
  });

  it('finds runs good that were really done, and one that was altered in its shape bad', () => {
    const setups = [stripSetup(), canSetup()];
    const runs = [
      ...setups.map((setup) => finishedFile(setup)),
      toRunFile(runOf(canSetup(), []), null),
      toRunFile(demonstrate(setupOf('first-curve')), null),
    ].map((file) => JSON.parse(serialiseRunFile(file)) as Record<string, unknown>);
    for (const run of runs) expect(check.run(run)).toEqual([]);
    const [run] = runs;
    const { seal: _, ...unsealed } = run!;
    expect(check.run(unsealed)).toHaveLength(1);
    expect(check.run({ ...run, stamp: 1 })).toHaveLength(1);
    const [first, ...more] = run!.events as readonly object[];
    expect(check.run({ ...run, events: [{ ...first, atMs: -1 }, ...more] })).not.toEqual([]);
    expect(check.run({ ...run, scenario: { ...(run!.scenario as object), order: 0 } })).not.toEqual([]);
  });

  it('finds broken ones bad', () => {
    const [, text] = scenarios[0]!;
    const good = JSON.parse(text) as Record<string, unknown>;
    expect(check.scenario({ ...good, order: 0 })).toEqual(['/order must be >= 1']);
    expect(check.scenario({ ...good, surprise: 1 })).toHaveLength(1);
    const receiver = JSON.parse(receivers[0]![1]) as Record<string, unknown>;
    expect(check.receiver({ ...receiver, adjusters: [] })).not.toEqual([]);
  });
});
