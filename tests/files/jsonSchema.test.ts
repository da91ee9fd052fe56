/** The published schemas: up to date, and without a number, text, list or object that has no bound. */
import { describe, expect, it } from 'vitest';
import { SCHEMA_FILES, schemaText } from '../../src/files/jsonSchema.ts';
import { shippedTexts } from './shipped.ts';

type Node = Readonly<Record<string, unknown>>;
const NAMES = Object.keys(SCHEMA_FILES) as (keyof typeof SCHEMA_FILES)[];

function nodes(value: unknown): Node[] {
  if (typeof value !== 'object' || value === null) return [];
  return [...(Array.isArray(value) ? [] : [value as Node]), ...Object.values(value).flatMap(nodes)];
}

describe.each(NAMES)('%s', (name) => {
  it('is published as the validators have it', () => {
    expect(shippedTexts()[`schema/${name}`], 'write it anew: npm run schemas').toBe(schemaText(name));
  });

  it('bounds everything', () => {
    const all = nodes(JSON.parse(schemaText(name)));
    const open = all.filter((node) => {
      if (node.enum !== undefined || node.const !== undefined) return false;
      if (node.type === 'number' || node.type === 'integer')
        return node.minimum === undefined || node.maximum === undefined;
      if (node.type === 'string') return node.maxLength === undefined && node.pattern === undefined;
      if (node.type === 'array') return node.maxItems === undefined;
      if (node.type === 'object')
        return (
          node.additionalProperties !== false && (node.maxProperties === undefined || node.propertyNames === undefined)
        );
      return false;
    });
    expect(open).toEqual([]);
    // A sealed sheet says little in the open.
    const least = name === 'sealed-evening.schema.json' ? 10 : 50;
    expect(all.filter((node) => node.type !== undefined).length).toBeGreaterThan(least);
  });
});
