/** The name that runs are handed in under: what was typed, as far as a run file takes it, remembered where there is storage. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { readRunFile } from '../../../src/files/runFileSchema.ts';
import { createRun } from '../../../src/run/runLog.ts';
import { serialiseRunFile, toRunFile } from '../../../src/run/serialise.ts';
import { createLearnerMemory, learnerName } from '../../../src/services/store/learnerMemory.ts';
import { stripSetup } from '../../session/setups.ts';

function shelf() {
  const kept = new Map<string, string>();
  return {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
  };
}

describe('the name', () => {
  it('is there again when the page is opened anew, and may be taken out', () => {
    const storage = shelf();
    const first = createLearnerMemory(() => storage);
    expect(first.read()).toBeNull();
    first.write('  Ines of the harbour ');
    expect(createLearnerMemory(() => storage).read()).toBe('Ines of the harbour');
    first.write('   ');
    expect(first.read()).toBeNull();
    expect(createLearnerMemory(() => storage).read()).toBeNull();
  });

  it('lasts as long as the page where there is no storage', () => {
    const memory = createLearnerMemory(() => {
      throw new Error('no storage');
    });
    memory.write('17');
    expect(memory.read()).toBe('17');
  });

  it.each([
    ['one\u0000two\u202ethree', 'one two three'],
    ['tab\tand\nline', 'tab and line'],
    [`${'x'.repeat(79)}\u{1F4FB}`, 'x'.repeat(79)],
    ['\u200f', null],
    ['Søren Ø.', 'Søren Ø.'],
  ])('%j is taken as %j, which a run file takes', (typed, name) => {
    expect(learnerName(typed)).toBe(name);
    const file = toRunFile(createRun(stripSetup(), learnerName(typed)), null);
    expect(readRunFile(serialiseRunFile(file), 'run.json')).toMatchObject({ ok: true, value: { learner: name } });
  });
});
