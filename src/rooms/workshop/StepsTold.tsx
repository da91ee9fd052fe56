/** Says aloud that a step was undone or done again: by keys there is nothing else to tell it by. */
import { useEffect, useRef, useState } from 'preact/hooks';
import { useWords } from '../../kit/hooks/useWords.ts';

export interface StepsToldProps {
  /** what is open, as it stands */
  readonly now: unknown;
  readonly undoSteps: number;
  readonly redoSteps: number;
}

export function StepsTold({ now, undoSteps, redoSteps }: StepsToldProps) {
  const { workshop: say } = useWords();
  const before = useRef({ now, redoSteps });
  // What was undone, the last at the end: a change that takes the place of the only step ahead is no redoing.
  const ahead = useRef<unknown[]>([]);
  const [told, setTold] = useState('');
  useEffect(() => {
    const was = before.current;
    before.current = { now, redoSteps };
    if (redoSteps > was.redoSteps) {
      ahead.current.push(was.now);
      setTold(say.undone(undoSteps));
    } else if (redoSteps < was.redoSteps && ahead.current.pop() === now) setTold(say.redone(redoSteps));
    else if (was.now !== now) setTold('');
    if (redoSteps === 0) ahead.current = [];
  }, [now, undoSteps, redoSteps]);
  return (
    <span class="unseen" role="status">
      {told}
    </span>
  );
}
