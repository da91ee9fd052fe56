/** An instructor's notes: kept, bounded, and never in the way where the storage is refused or holds rubbish. */
import { expect, it } from 'vitest';
import { CLASS_NOTE, createClassNotes, NOTE_CHARS } from '../../../src/services/classroom/classNotes.ts';

function storage(first: string | null = null) {
  let held = first;
  return {
    getItem: () => held,
    setItem: (_: string, text: string) => {
      held = text;
    },
  };
}

it('are there again after the page was closed, and in another tab at once', () => {
  const place = storage();
  const notes = createClassNotes(() => place);
  const other = createClassNotes(() => place);
  expect(notes.write('a', 'A fine top.')).toBe(true);
  expect(other.write(CLASS_NOTE, 'Thursday')).toBe(true);
  const later = createClassNotes(() => place);
  expect([later.of('a'), later.of(CLASS_NOTE), later.of('b')]).toEqual(['A fine top.', 'Thursday', '']);
  notes.write('a', ' ');
  expect(createClassNotes(() => place).of('a')).toBe('');
});

it('are cut where they are too long, and the oldest go where there are too many', () => {
  const place = storage();
  const notes = createClassNotes(() => place);
  notes.write('long', 'x'.repeat(NOTE_CHARS + 1));
  expect(notes.of('long')).toHaveLength(NOTE_CHARS);
  const many = storage(JSON.stringify(Array.from({ length: 2000 }, (_, i) => [`k${i}`, 'n'])));
  const full = createClassNotes(() => many);
  full.write('new', 'n');
  expect([full.of('k0'), full.of('k1'), full.of('new')]).toEqual(['', 'n', 'n']);
});

it.each(['{', '{"a":1}', '[1,["a"],["b",2],["c","kept"]]'])('begin anew where the storage holds %s', (rubbish) => {
  const notes = createClassNotes(() => storage(rubbish));
  expect([notes.of('a'), notes.of('b')]).toEqual(['', '']);
  expect(notes.of('c')).toBe(rubbish.includes('kept') ? 'kept' : '');
});

it('are there as long as the page where the storage is refused', () => {
  const notes = createClassNotes(() => {
    throw new Error('refused');
  });
  expect(notes.write('a', 'note')).toBe(false);
  expect(notes.of('a')).toBe('note');
});
