/** A small field over a knob: a value typed with its unit. Return takes it, escape or leaving puts it away. */

import { useId, useLayoutEffect, useRef, useState } from 'preact/hooks';
import { useWords } from '../hooks/useWords.ts';
import './widgets.css';
import './knob.css';

export interface EntryFieldProps {
  readonly label: string;
  readonly start: string;
  readonly example: string;
  readonly parse: (typed: string) => number | null;
  /** null: nothing was taken */
  readonly onDone: (value: number | null) => void;
}

export function EntryField({ label, start, example, parse, onDone }: EntryFieldProps) {
  const { knob: knobWords } = useWords();
  const field = useRef<HTMLInputElement>(null);
  const hint = useId();
  const [unread, setUnread] = useState(false);
  useLayoutEffect(() => field.current?.select(), []);
  const key = (event: KeyboardEvent): void => {
    event.stopPropagation();
    if (event.key === 'Escape') {
      event.preventDefault();
      onDone(null);
    }
    if (event.key !== 'Enter') return;
    event.preventDefault();
    const value = parse(field.current?.value ?? '');
    if (value === null) setUnread(true);
    else onDone(value);
  };
  return (
    <span class="entry" onPointerDown={(event) => event.stopPropagation()}>
      <input
        ref={field}
        type="text"
        class="m"
        inputMode="text"
        defaultValue={start}
        aria-label={label}
        aria-describedby={hint}
        aria-invalid={unread}
        onKeyDown={key}
        onBlur={() => onDone(null)}
      />
      <span id={hint} class={unread ? 'entry-hint' : 'unseen'} role={unread ? 'alert' : undefined}>
        {unread ? knobWords.unread(example) : knobWords.typeHint(example)}
      </span>
    </span>
  );
}
