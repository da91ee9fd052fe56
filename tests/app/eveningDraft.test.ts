/** The evening sheet that is being made is there at the next visit, and rubbish in its place costs nothing. Source: the house's own promises. */
import { describe, expect, it } from 'vitest';
import { readDraft, writeDraft } from '../../src/app/workshop/eveningDraft.ts';
import type { EveningDraft } from '../../src/rooms/workshop/evening/eveningPort.ts';

const draft: EveningDraft = {
  title: 'Thursday',
  author: 'Ines',
  minutes: 90,
  order: 'any',
  scenarios: ['first-curve', 'flat-top'],
  exam: { candidates: 'names', attempts: 'several', ownDeal: false, results: 'each' },
  minutesEach: { 'flat-top': 40 },
  passMark: 2,
};

function storage(held: Record<string, string> = {}) {
  return () => ({
    getItem: (key: string) => held[key] ?? null,
    setItem: (key: string, text: string) => {
      held[key] = text;
    },
  });
}

describe('the draft of an evening', () => {
  it('is there again as it was', () => {
    const kept = storage();
    expect(writeDraft(kept, draft)).toBe(true);
    expect(readDraft(kept)).toEqual(draft);
  });

  it.each(['', '{', 'null', '5', '[]', '{"scenarios":{"length":9}}', '{"title":5,"minutes":"x","order":{}}'])(
    'begins anew where storage holds %s',
    (text) => {
      const { title, order, scenarios, minutes } = readDraft(storage({ 'haystack.evening': text }));
      expect({ title, order, scenarios, minutes }).toEqual({
        title: '',
        order: 'listed',
        scenarios: [],
        minutes: null,
      });
    },
  );

  it('says so where this browser keeps nothing', () => {
    const blocked = (): never => {
      throw new DOMException('blocked', 'SecurityError');
    };
    expect(writeDraft(blocked, draft)).toBe(false);
    expect(readDraft(blocked).title).toBe('');
  });
});
