/** At the right of the header: which draft is open, whether it is kept, undo and redo. */
import { useWords } from '../../../kit/hooks/useWords.ts';
import { Button, Ink } from '../../../kit/theme/art.tsx';
import { C } from '../../../kit/theme/ink.ts';
import { StepsTold } from '../StepsTold.tsx';
import type { WorkshopPort } from './workshopPort.ts';

const BACK = `<path d="M4 7H12Q17 7 17 11.5Q17 15 12 15H8" fill="none" stroke="${C.ink}" stroke-width="1.9"/><path d="M8 2L3 7l5 5" fill="none" stroke="${C.ink}" stroke-width="1.9" stroke-linejoin="round"/>`;
const ON = `<g transform="translate(20 0) scale(-1 1)">${BACK}</g>`;

export function HeaderTools({ port }: { readonly port: WorkshopPort }) {
  const { workshop: say } = useWords();
  const { draft, isKept, undoSteps, redoSteps } = port;
  return (
    <>
      <span class="desk-open">
        <span class="l2">{isKept ? say.kept : say.notKept}</span>
        <b>{say.named(draft.code, draft.title === '' ? say.untitled : draft.title)}</b>
      </span>
      <Button class="desk-undo" label={say.undoSteps(undoSteps)} idle={undoSteps === 0} onClick={port.undo}>
        <Ink svg={BACK} width={20} height={18} />
        {undoSteps}
      </Button>
      <Button class="desk-redo" label={say.redoSteps(redoSteps)} idle={redoSteps === 0} onClick={port.redo}>
        <Ink svg={ON} width={20} height={18} />
        {redoSteps}
      </Button>
      <StepsTold key={port.openKey} now={draft} {...{ undoSteps, redoSteps }} />
      <Button
        label={port.tryIt === null ? `${say.tryIt}: ${say.tryNot}` : say.tryLong}
        disabled={port.tryIt === null}
        onClick={() => port.tryIt?.()}
      >
        {say.tryIt}
      </Button>
    </>
  );
}
