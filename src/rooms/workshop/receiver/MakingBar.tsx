/** Which receiver in the making is open, back and on again, and the way to throw one away. */
import { useState } from 'preact/hooks';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { Button } from '../../../kit/theme/art.tsx';
import { DiscardQuestion } from '../DiscardQuestion.tsx';
import { StepsTold } from '../StepsTold.tsx';
import type { ReceiverPort } from './receiverPort.ts';

export function MakingBar({ port }: { readonly port: ReceiverPort }) {
  const { workshop: say, ownReceiver } = useWords();
  const { makings, openKey, undoSteps, redoSteps, isKept } = port;
  const [asking, setAsking] = useState(false);
  const name = makings.find(({ key }) => key === openKey)?.name ?? '';
  return (
    <div class="made-row made-bar">
      <label>
        <span class="l">{say.drafts}</span>
        <select class="written" value={openKey ?? ''} onChange={({ currentTarget: { value } }) => port.choose(value)}>
          {makings.map((one) => (
            <option key={one.key} value={one.key}>
              {one.name}
            </option>
          ))}
        </select>
      </label>
      <Button class="made-undo" label={say.undoSteps(undoSteps)} idle={undoSteps === 0} onClick={port.undo}>
        {ownReceiver.begin.back(undoSteps)}
      </Button>
      <Button class="made-redo" label={say.redoSteps(redoSteps)} idle={redoSteps === 0} onClick={port.redo}>
        {ownReceiver.begin.on(redoSteps)}
      </Button>
      <StepsTold now={port.making} {...{ undoSteps, redoSteps }} />
      <Button onClick={() => setAsking(true)}>{say.removeDraft}</Button>
      <span class="l2">{isKept ? say.kept : ownReceiver.begin.notKept}</span>
      {asking ? (
        <DiscardQuestion
          name={name}
          onDiscard={() => {
            setAsking(false);
            if (openKey !== null) port.discard(openKey);
          }}
          onKeep={() => setAsking(false)}
        />
      ) : null}
    </div>
  );
}
