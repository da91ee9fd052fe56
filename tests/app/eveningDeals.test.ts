/** What the workshop says that each candidate of an exam is dealt. Source: docs/evening-sheet.md (the first 8 hexadecimal digits of a SHA-256, its upper bit left out), worked out here by Node's own cryptography. */
import 'fake-indexeddb/auto';
import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { dealsOf, fileOf, runsFileName } from '../../src/app/workshop/eveningFile.ts';
import type { EveningDraft, ExamTerms } from '../../src/rooms/workshop/evening/eveningPort.ts';
import { en } from '../../src/words/en/index.ts';
import { setupOf } from '../technician/oneScenario.ts';
import { browser } from './harbourCan.ts';

const terms: ExamTerms = { candidates: 'numbers', attempts: 'one', ownDeal: true, results: 'atEnd' };
const draft: EveningDraft = {
  ...{ title: 'Second Thursday', author: '', minutes: 90, order: 'listed', minutesEach: {}, passMark: null },
  ...{ scenarios: ['first-curve', 'can-examined'], exam: terms },
};
const sha256 = (text: string): string => createHash('sha256').update(text).digest('hex');

async function room() {
  const { library } = await browser();
  return { ...library, setup: async (id: string) => ({ ok: true as const, value: setupOf(id) }) };
}

describe('the deals of an exam', () => {
  it('are those of the sheet as it is handed out; what is not sealed is the same for all', async () => {
    const library = await room();
    const text = await fileOf(en, library, draft, terms);
    if (typeof text !== 'string') throw new Error(text.join('\n'));
    const deals = await dealsOf(en, library, draft, terms, ['1', '7']);
    if (!('rows' in deals)) throw new Error(deals.join('\n'));
    const dealt = (candidate: string): number => {
      const place = JSON.stringify([sha256(JSON.stringify(text)), candidate, 'can-examined', 0]);
      return Number.parseInt(sha256(place).slice(0, 8), 16) & 0x7fffffff;
    };
    expect(deals.rows).toEqual([
      { candidate: '1', numbers: [null, dealt('1')] },
      { candidate: '7', numbers: [null, dealt('7')] },
    ]);
    const later = await dealsOf(en, library, { ...draft, title: 'Third Thursday' }, terms, ['1']);
    expect('rows' in later && later.rows[0]!.numbers[1]).not.toBe(dealt('1'));
  });

  it('are not told where no file could be made, with the reason', async () => {
    const library = { ...(await room()), setup: async () => null };
    expect(await dealsOf(en, library, draft, terms, ['1'])).toEqual([en.workshop.evening.gone('first-curve')]);
  });
});

// Common practice, no source: whoever collects files tells them apart by their names.
describe('the file that a candidate hands in', () => {
  it('is called by sheet and candidate, in whatever script the name is written', () => {
    expect(runsFileName('Harbour night', '11')).toBe('evening-harbour-night-11-runs.json');
    expect(runsFileName('Harbour night', 'Zo\u00eb / 3')).toBe('evening-harbour-night-zo\u00eb-3-runs.json');
    const [one, other] = ['\u0418\u043d\u0435\u0441', '\u042f\u043d\u0430'].map((name) =>
      runsFileName('Harbour night', name),
    );
    expect(one).not.toBe(other);
    expect(runsFileName('Harbour night', '../..')).toBe('evening-harbour-night-candidate-runs.json');
  });
});
