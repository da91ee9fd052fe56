/** A small field over a knob: a value typed with its unit. Return or leaving takes it, escape puts it away. */

import { useId, useLayoutEffect, useRef, useState } from 'preact/hooks';
import { useWords } from '../hooks/useWords.ts';
import './widgets.css';
import './knob.css';

export interface EntryFieldProps {
  readonly label: string;
  readonly start: string;
  readonly example: string;
  readonly parse: (typed: string) => number | null;
  /** null: nothing was taken; `left`: the hand is elsewhere already */
  readonly onDone: (value: number | null, left: boolean) => void;
}

export function EntryField({ label, start, example, parse, onDone }: EntryFieldProps) {
  const { knob: knobWords } = useWords();
  const field = useRef<HTMLInputElement>(null);
  const hint = useId();
  const [unread, setUnread] = useState(false);
  const over = useRef(false);
  const done = (value: number | null, left: boolean): void => {
    if (over.current) return;
    over.current = true;
    onDone(value, left);
  };
  /** What was typed counts, where it can be read: a screen keyboard has no Return that everybody finds. */
  const leave = (): void => {
    const typed = field.current?.value ?? '';
    done(typed === start ? null : parse(typed), true);
  };
  useLayoutEffect(() => field.current?.select(), []);
  const key = (event: KeyboardEvent): void => {
    event.stopPropagation();
    if (event.key === 'Escape') {
      event.preventDefault();
      done(null, false);
    }
    if (event.key !== 'Enter') return;
    event.preventDefault();
    const value = parse(field.current?.value ?? '');
    if (value === null) setUnread(true);
    else done(value, false);
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
        onBlur={leave}
      />
      <span id={hint} class={unread ? 'entry-hint' : 'unseen'} role={unread ? 'alert' : undefined}>
        {unread ? knobWords.unread(example) : knobWords.typeHint(example)}
      </span>
    </span>
  );
}
