/** How many slips, and the button that prints them. */
import { createPortal } from 'preact/compat';
import { useEffect, useRef, useState } from 'preact/hooks';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { Button } from '../../../kit/theme/art.tsx';
import { SlipsPaper, type SlipsPaperProps } from './SlipsPaper.tsx';

export interface SlipsFieldProps extends Omit<SlipsPaperProps, 'count'> {
  readonly typed: string;
  readonly type: (typed: string) => void;
  readonly disabled: boolean;
}

const MOST_SLIPS = 60;
export const USUAL_SLIPS = 12;

/** null: no such number of slips can be printed. */
export const slipsIn = (typed: string): number | null =>
  /^[1-9]\d?$/.test(typed) && Number(typed) <= MOST_SLIPS ? Number(typed) : null;

export function SlipsField({ disabled, typed, type, ...of }: SlipsFieldProps) {
  const { slips: say } = useWords().workshop.evening;
  const [printing, setPrinting] = useState(false);
  // Beside the desk, which is not printed.
  const field = useRef<HTMLDivElement>(null);
  const main = field.current?.closest('main') ?? null;
  const count = slipsIn(typed);
  useEffect(() => {
    if (!printing) return;
    const done = (): void => setPrinting(false);
    addEventListener('afterprint', done);
    print();
    return () => removeEventListener('afterprint', done);
  }, [printing]);
  return (
    <>
      <div class="evening-slips" ref={field}>
        <label>
          <span class="l">{say.count}</span>
          <input
            class="written"
            type="number"
            min={1}
            max={MOST_SLIPS}
            value={typed}
            onInput={({ currentTarget }) => type(currentTarget.value)}
          />
        </label>
        <Button disabled={disabled || count === null} onClick={() => setPrinting(true)}>
          {say.print}
        </Button>
      </div>
      <p class="evening-note">{count === null ? say.most(MOST_SLIPS) : say.note}</p>
      {printing && count !== null && main !== null ? createPortal(<SlipsPaper {...of} count={count} />, main) : null}
    </>
  );
}
