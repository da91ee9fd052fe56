/** The deck that `haystack deck` prints of a shipped scenario, for tests that run it in time. */
import path from 'node:path';
import { expect } from 'vitest';
import { inside, PROJECT } from './commandLine.ts';

/** The source stands still at `hz`. */
export function writtenDeck(track: string, id: string, hz: number): string {
  const { out, err, code } = inside('deck', path.join(PROJECT, 'scenarios', track, `${id}.json`), '--hz', `${hz}`);
  expect([err, code]).toEqual(['', 0]);
  return out;
}
