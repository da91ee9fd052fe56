/** How far the receiver is: it reports, it does not navigate. */

import { useWords } from '../../../kit/hooks/useWords.ts';
import { Disc } from '../../../kit/PlateTitle.tsx';
import { stepsDone } from './areas.ts';
import type { ReceiverPort } from './receiverPort.ts';

export function StepRail({ port }: { readonly port: ReceiverPort }) {
  const { ownReceiver: say } = useWords();
  const done = stepsDone(port);
  const now = done.find(([, is]) => !is)?.[0];
  return (
    <ol class="made-steps" aria-label={say.stepList}>
      {done.map(([step, is], i) => (
        <li key={step} class={is ? 'done' : step === now ? 'now' : undefined}>
          <Disc>{is ? '\u2713' : i + 1}</Disc>
          <span aria-hidden="true">{say.steps[step]}</span>
          <span class="unseen">{say.stepState(say.steps[step], is)}</span>
        </li>
      ))}
    </ol>
  );
}
