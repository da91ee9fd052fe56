/** A note as it is written: kept from letter to letter. */
import { useState } from 'preact/hooks';
import type { ClassRow } from '../../judge/classList.ts';
import type { NotesPort } from './classPort.ts';

const MOST_CHARS = 2000;

interface NoteFieldProps {
  readonly id: string;
  readonly notes: NotesPort;
  /** null: the note on the whole class */
  readonly row: ClassRow | null;
}

export function NoteField({ id, notes, row }: NoteFieldProps) {
  const [text, setText] = useState(() => notes.of(row));
  return (
    <textarea
      id={id}
      class="written"
      rows={4}
      maxLength={MOST_CHARS}
      value={text}
      onInput={({ currentTarget: { value } }) => {
        setText(value);
        notes.write(row, value);
      }}
    />
  );
}
