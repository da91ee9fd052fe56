/** At the right of the header: which draft is open, whether it is kept, undo and redo. */
import { useWords } from '../../../kit/hooks/useWords.ts';
import { Button } from '../../../kit/theme/art.tsx';
import { UndoButtons } from '../UndoButtons.tsx';
import type { WorkshopPort } from './workshopPort.ts';

export function HeaderTools({ port }: { readonly port: WorkshopPort }) {
  const { workshop: say } = useWords();
  const { draft, isKept, undoSteps, redoSteps } = port;
  return (
    <>
      <span class="desk-open">
        <span class="l2">{isKept ? say.kept : say.notKept}</span>
        <b>{say.named(draft.code, draft.title === '' ? say.untitled : draft.title)}</b>
      </span>
      <UndoButtons of={port.openKey} {...{ undoSteps, redoSteps }} undo={port.undo} redo={port.redo} />
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
