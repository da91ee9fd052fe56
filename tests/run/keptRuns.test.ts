/**
 * Run files that were handed out by an earlier bench, whose curves were others: each still reads whole, its events replay, and it is told for what it is,
 * never taken for a changed or broken file.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { ENGINE } from '../../src/base/engine.ts';
import { readRunFile } from '../../src/files/runFileSchema.ts';
import { judgeText } from '../../src/judge/judgeRun.ts';
import { replay } from '../../src/run/replay.ts';
import { shippedLibrary } from '../files/shipped.ts';

const FOLDER = new URL('../fixtures/runs/', import.meta.url);
const { receivers } = shippedLibrary();

describe('a run file of before', () => {
  const files = readdirSync(FOLDER);
  it('is there', () => expect(files.length).toBeGreaterThanOrEqual(6));
  it.each(files)('%s', (file) => {
    const text = readFileSync(new URL(file, FOLDER), 'utf8');
    const read = readRunFile(text, file);
    expect(read.ok).toBe(true);
    if (!read.ok) return;
    const { scenario, events, engine } = read.value;
    const design = receivers.get(scenario.receiver)!;
    const { refused, state } = replay({ ...design, scenario }, events);
    // What was a part then, a coil's own loss, is none any more: its act is refused, and told as that.
    if (file === 'one-hump-gone.json') expect(refused).toMatchObject({ reason: 'noSuchPart' });
    else expect([refused, state.signedOff]).toEqual([null, true]);
    const { verdict } = judgeText(text, file, () => ({ ok: true, value: { ...design, scenarioHash: null } }));
    expect(verdict).toEqual({ kind: 'foreign', part: 'engine', found: engine, wanted: ENGINE });
  });
});
