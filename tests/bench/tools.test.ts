/** Which tool turns which slug: plastic tools their own head, steel any (common practice, no source). */
import { expect, test } from 'vitest';
import { TOOL_IDS } from '../../src/bench/benchState.ts';
import { fits, steelIn, toolFor } from '../../src/bench/tools.ts';

test('a tool bites into its own head, and steel into any', () => {
  expect(TOOL_IDS.map((tool) => [tool, fits(tool, 'hex'), fits(tool, 'blade')])).toEqual([
    ['hex', true, false],
    ['blade', false, true],
    ['steel', true, true],
  ]);
});

test('the tool made for a head fits it and is not of steel', () => {
  for (const head of ['hex', 'blade'] as const) {
    expect(fits(toolFor(head), head)).toBe(true);
    expect(toolFor(head)).not.toBe('steel');
  }
});

test('steel is in a slug only while it stands there', () => {
  expect(steelIn({ tool: 'steel', toolIn: 'T1' })).toBe('T1');
  expect(steelIn({ tool: 'steel', toolIn: null })).toBeNull();
  expect(steelIn({ tool: 'blade', toolIn: 'T1' })).toBeNull();
});
