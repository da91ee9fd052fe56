/** The dialog that the session's stage asks for, if any. */

import { usePort } from '../../../kit/hooks/usePort.ts';
import type { BenchPort } from '../../../present/ports.ts';
import { Briefing, type Helper } from './Briefing.tsx';
import { type LearnerField, SignOff, Stopped, Suspended } from './stages.tsx';

interface StageDialogsProps {
  readonly port: BenchPort;
  readonly learner: LearnerField;
  readonly helper: Helper | null;
  readonly onLeave: (() => void) | null;
}

export function StageDialogs({ port, learner, helper, onLeave }: StageDialogsProps) {
  const stage = usePort(port, () => port.session().stage);
  switch (stage) {
    case 'briefing':
      return <Briefing port={port} helper={helper} onLeave={onLeave} />;
    case 'signing':
      return <SignOff port={port} learner={learner} />;
    case 'suspended':
      return <Suspended port={port} onLeave={onLeave} />;
    case 'stopped':
      return <Stopped port={port} />;
    default:
      return null;
  }
}
