/** Things that may be added, as chips: the first few, and the rest when they are asked for. */
import { useState } from 'preact/hooks';
import { useWords } from '../../../kit/hooks/useWords.ts';

export interface Chip {
  readonly key: string;
  readonly name: string;
  readonly act: () => void;
}

interface ChipsProps {
  /** heard with "7 more": of what */
  readonly of: string;
  readonly chips: readonly Chip[];
}

const FIRST = 7;

export function Chips({ of, chips }: ChipsProps) {
  const { workshop: say } = useWords();
  const [open, setOpen] = useState(false);
  // One more is no fewer than the button that would show it.
  const few = chips.length <= FIRST + 1;
  const shown = open || few ? chips : chips.slice(0, FIRST);
  return (
    <div class="chips">
      {shown.map(({ key, name, act }) => (
        <button key={key} type="button" class="chip" onClick={act}>
          <span aria-hidden="true">+</span> {name}
        </button>
      ))}
      {few ? null : (
        <button
          type="button"
          class="link chips-more"
          aria-expanded={open}
          aria-label={open ? say.fewerOf(of) : say.moreOf(chips.length - FIRST, of)}
          onClick={() => setOpen(!open)}
        >
          {open ? say.fewer : say.more(chips.length - FIRST)}
        </button>
      )}
    </div>
  );
}
