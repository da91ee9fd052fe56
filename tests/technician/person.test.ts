/** The person at the bench sees only what a person sees: its files import the shape of the display and of the sheet, as types, and nothing that computes. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { importsOf } from '../roomLaw.ts';

const HOME = 'src/technician/person';
const FILES = readdirSync(HOME).map((name) => `${HOME}/${name}`);
/** What lies open to the eye: face and dials, knobs and leads, the words for acts, and the printed sheet with its demands. */
const SEEN = [
  'bench/display.ts',
  'bench/benchEvent.ts',
  'bench/benchState.ts',
  'receiver/receiver.ts',
  'receiver/specification.ts',
];

describe('the person', () => {
  it.each(FILES)('%s imports nothing that knows the answer', (file) => {
    const text = readFileSync(file, 'utf8');
    for (const line of importLines(text)) {
      if (line.from.startsWith('./')) continue;
      expect(
        SEEN.map((name) => `../../${name}`),
        `${file} imports ${line.from}`,
      ).toContain(line.from);
      expect(line.typeOnly, `${file} runs ${line.from}`).toBe(true);
    }
    expect(importsOf(text, file).length).toBe(importLines(text).length);
  });
});

function importLines(text: string): readonly { readonly from: string; readonly typeOnly: boolean }[] {
  return [...text.matchAll(/^import\s+(type\s+)?(?:[^'"]*?\s+from\s+)?'([^']+)';/gms)].map((match) => ({
    typeOnly: match[1] !== undefined,
    from: match[2]!,
  }));
}
