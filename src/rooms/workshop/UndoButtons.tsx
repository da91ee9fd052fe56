/** Back and on again, with how many steps there are, in the header; each step is said aloud. */
import { useMemo } from 'preact/hooks';
import { useWords } from '../../kit/hooks/useWords.ts';
import { Button, Ink } from '../../kit/theme/art.tsx';
import { C } from '../../kit/theme/ink.ts';
import { StepsTold, type StepsToldProps } from './StepsTold.tsx';

const BACK = `<path d="M4 7H12Q17 7 17 11.5Q17 15 12 15H8" fill="none" stroke="${C.ink}" stroke-width="1.9"/><path d="M8 2L3 7l5 5" fill="none" stroke="${C.ink}" stroke-width="1.9" stroke-linejoin="round"/>`;
const ON = `<g transform="translate(20 0) scale(-1 1)">${BACK}</g>`;

export interface UndoButtonsProps extends Omit<StepsToldProps, 'now'> {
  /** what is open, as it stands; left out: steps are said elsewhere */
  readonly now?: unknown;
  /** of what is open: another begins anew */
  readonly of: string;
  readonly undo: () => void;
  readonly redo: () => void;
}

export function UndoButtons({ of, now, undo, redo, ...steps }: UndoButtonsProps) {
  const { workshop: say } = useWords();
  const { undoSteps, redoSteps } = steps;
  // While something is dragged the desk is drawn at every frame, and the count stays.
  const [undoLabel, redoLabel] = useMemo(
    () => [say.undoSteps(undoSteps), say.redoSteps(redoSteps)],
    [say, undoSteps, redoSteps],
  );
  return (
    <>
      <Button class="desk-undo" label={undoLabel} idle={undoSteps === 0} onClick={undo}>
        <Ink svg={BACK} width={20} height={18} />
        {undoSteps}
      </Button>
      <Button class="desk-redo" label={redoLabel} idle={redoSteps === 0} onClick={redo}>
        <Ink svg={ON} width={20} height={18} />
        {redoSteps}
      </Button>
      {now === undefined ? null : <StepsTold key={of} now={now} {...steps} />}
    </>
  );
}
