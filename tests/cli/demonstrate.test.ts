/** `demonstrate`: the technician's run as a file that `regrade` verifies, and what is said of a file that is no scenario. */
import { afterAll, describe, expect, it } from 'vitest';
import { inside, scratch } from './commandLine.ts';

const files = scratch();
afterAll(files.remove);

describe('demonstrate', () => {
  it('writes a run that is verified as passed, and says the same score', () => {
    const run = files.place('run.json');
    const said = inside('demonstrate', 'scenarios/sound-fm/zero.json', '--out', run);
    expect(said.code).toBe(0);
    const score = /^zero: (\d+) of 100/.exec(said.out)?.[1];
    expect(Number(score)).toBeGreaterThanOrEqual(70);
    const again = inside('regrade', run);
    expect(again.code).toBe(0);
    expect(again.out).toContain(`${score} points`);
  });

  it('says what a file is that is no scenario', () => {
    const { code, err } = inside('demonstrate', 'scenarios/receivers/loose-can-10m7/receiver.json');
    expect(code).toBe(1);
    expect(err).toContain('haystack-scenario');
  });
});
