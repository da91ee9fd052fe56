/** Receivers in the making on their desk: they stay from visit to visit, each with its own undo, and rubbish in the store costs that one alone. */
import { describe, expect, it } from 'vitest';
import { createReceiverDesk } from '../../src/app/workshop/receiverDesk.ts';
import { beginWithDeck } from '../../src/making/begin.ts';
import { EXAMPLE_DECK } from '../../src/making/exampleDeck.ts';
import { makingOfRecord } from '../../src/making/makingRecord.ts';
import { createDraftShelf } from '../../src/services/store/draftShelf.ts';
import { en } from '../../src/words/en/index.ts';
import { heldParts, storage } from './heldPlace.ts';

function deskOn(place: Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>) {
  const { later, ...parts } = heldParts();
  return { desk: createReceiverDesk({ shelf: createDraftShelf(() => place, 'receiverDraft'), ...parts }), later };
}

const first = beginWithDeck({ file: 'pier.cir', text: EXAMPLE_DECK }, en.maker);
const second = beginWithDeck({ file: 'quay.cir', text: EXAMPLE_DECK }, en.maker);
const named = (setName: string) => ({ ...first, draft: { ...first.draft, setName } });

describe('the desk of receivers in the making', () => {
  it('has nothing on it at first, and brings all of it back with the one used last open', () => {
    const place = storage();
    const { desk, later } = deskOn(place);
    expect(desk.open()).toBeNull();
    desk.begin(first);
    desk.begin(second);
    desk.choose('key-1');
    desk.change(named('Pier set'));
    later();
    const { desk: next } = deskOn(place);
    expect(next.all()).toHaveLength(2);
    expect(next.open()!.history.now).toEqual(named('Pier set'));
    // Drafts of scenarios lie elsewhere.
    expect([...place.kept.keys()].every((key) => key.startsWith('haystack.receiverDraft'))).toBe(true);
  });

  it('goes back and on by steps, those of one mark together, each with its own history', () => {
    const { desk } = deskOn(storage());
    desk.begin(first);
    desk.change(named('A'), 'name');
    desk.change(named('AB'), 'name');
    desk.pause();
    desk.change(named('ABC'), 'name');
    desk.begin(second);
    expect(desk.open()!.history.past).toHaveLength(0);
    desk.choose('key-1');
    desk.undo();
    expect(desk.open()!.history.now).toEqual(named('AB'));
    desk.undo();
    expect(desk.open()!.history.now).toEqual(first);
    desk.redo();
    expect(desk.open()!.history.now).toEqual(named('AB'));
  });

  it('opens the very same instead of a second one, closes without a loss, and throws away', () => {
    const place = storage();
    const { desk } = deskOn(place);
    desk.begin(first);
    desk.choose(null);
    expect(desk.open()).toBeNull();
    desk.begin(first);
    expect(desk.all()).toHaveLength(1);
    desk.remove(desk.open()!.key);
    expect(desk.open()).toBeNull();
    expect(deskOn(place).desk.all()).toEqual([]);
  });

  it('says so when nothing can be kept', () => {
    const { desk } = deskOn({
      ...storage(),
      setItem: () => {
        throw new Error('full');
      },
    });
    desk.begin(first);
    expect(desk.isKept()).toBe(false);
    expect(desk.open()!.history.now).toEqual(first);
  });

  it('loses by rubbish in the store that one draft and no other', () => {
    const place = storage();
    const { desk } = deskOn(place);
    desk.begin(first);
    desk.begin(second);
    const whole = place.kept.get('haystack.receiverDraft.key-1')!;
    const spoil = (change: (record: { draft: Record<string, unknown>; deckText: unknown }) => void): string => {
      const record = JSON.parse(whole) as { draft: Record<string, unknown>; deckText: unknown };
      change(record);
      return JSON.stringify(record);
    };
    for (const text of [
      whole.slice(0, 40),
      '7',
      '{}',
      spoil((r) => (r.deckText = 3)),
      spoil((r) => (r.draft.adjusters = {})),
      spoil((r) => (r.draft.adjusters = [null])),
      spoil((r) => (r.draft.adjusters = [{ id: 'T1', element: 'L1' }])),
      spoil((r) => (r.draft.plan = { width: 'wide' })),
      spoil((r) => (r.draft.responses = [{}])),
      spoil((r) => (r.draft.procedure = 'none')),
    ]) {
      place.kept.set('haystack.receiverDraft.key-1', text);
      expect(
        deskOn(place)
          .desk.all()
          .map(({ history }) => history.now),
        text.slice(0, 60),
      ).toEqual([second]);
    }
    expect(makingOfRecord(JSON.parse(whole))).toEqual(first);
  });
});
