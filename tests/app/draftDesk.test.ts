/** The desk of the workshop: drafts that stay, each with its own undo, and a browser that keeps nothing. */
import { describe, expect, it } from 'vitest';
import { createDraftDesk } from '../../src/app/workshop/draftDesk.ts';
import { createDraftShelf } from '../../src/services/store/draftShelf.ts';
import { newDraft } from '../../src/workshop/draft.ts';
import { heldParts, storage } from './heldPlace.ts';

function deskOn(place: Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>) {
  const { later, ...parts } = heldParts();
  const receiver = () => 'loose-can-10m7';
  return { desk: createDraftDesk({ shelf: createDraftShelf(() => place), receiver, ...parts }), later };
}

const refusing = {
  getItem: () => null,
  setItem: () => {
    throw new Error('full');
  },
  removeItem: () => {},
};

describe('the desk of drafts', () => {
  it('keeps what was changed, and nothing of a draft that nobody touched', () => {
    const place = storage();
    const first = deskOn(place);
    expect(first.desk.open().history.now).toEqual(newDraft('loose-can-10m7', 1));
    expect(place.kept.size).toBe(0);
    first.desk.change({ ...first.desk.open().history.now, title: 'Kept' });
    first.later();
    expect(deskOn(place).desk.open().history.now.title).toBe('Kept');
  });

  it('has an undo for each draft, and the last one used is open the next time', () => {
    const place = storage();
    const { desk, later } = deskOn(place);
    const { key } = desk.open();
    desk.change({ ...desk.open().history.now, title: 'One' });
    desk.add((no) => ({ ...newDraft('loose-can-10m7', no), title: 'Two' }));
    expect(desk.drafts().map((one) => one.history.now.id)).toEqual(['own-scenario-1', 'own-scenario-2']);
    desk.change({ ...desk.open().history.now, title: 'Two, better' });
    desk.undo();
    expect(desk.open().history.now.title).toBe('Two');
    desk.choose(key);
    desk.undo();
    expect(desk.open().history.now.title).toBe('');
    desk.redo();
    later();
    const again = deskOn(place).desk;
    expect(again.open().history.now.title).toBe('One');
    expect(again.drafts()).toHaveLength(2);
  });

  it('throws one away for good, and begins anew when none is left', () => {
    const place = storage();
    const { desk, later } = deskOn(place);
    desk.change({ ...desk.open().history.now, title: 'Gone' });
    later();
    desk.remove(desk.open().key);
    later();
    expect(desk.open().history.now.title).toBe('');
    expect(deskOn(place).desk.drafts()).toHaveLength(1);
    expect(JSON.stringify([...place.kept])).not.toContain('Gone');
  });

  it('says so where the browser keeps nothing, and goes on', () => {
    const { desk, later } = deskOn(refusing);
    expect(desk.isKept()).toBe(true);
    desk.change({ ...desk.open().history.now, title: 'Here' });
    later();
    expect(desk.isKept()).toBe(false);
    expect(desk.open().history.now.title).toBe('Here');
  });

  it('takes nothing out of a spoilt shelf that is no draft', () => {
    const place = storage();
    place.kept.set('haystack.drafts', '["a", 7, "b", "../c"]');
    place.kept.set('haystack.draft.a', '{');
    place.kept.set('haystack.draft.b', '{"format":"haystack-run"}');
    expect(deskOn(place).desk.open().history.now).toEqual(newDraft('loose-can-10m7', 1));
  });
});
