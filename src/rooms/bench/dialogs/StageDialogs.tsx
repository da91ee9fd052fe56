/** The dialog that the session's stage asks for, if any. */

import { usePort } from '../../../kit/hooks/usePort.ts';
import type { BenchPort } from '../../../present/ports.ts';
import { Briefing } from './Briefing.tsx';
import { SignOff, Stopped, Suspended } from './stages.tsx';

export function StageDialogs({ port, onLeave }: { readonly port: BenchPort; readonly onLeave: (() => void) | null }) {
  const stage = usePort(port, () => port.session().stage);
  switch (stage) {
    case 'briefing':
      return <Briefing port={port} onLeave={onLeave} />;
    case 'signing':
      return <SignOff port={port} />;
    case 'suspended':
      return <Suspended port={port} onLeave={onLeave} />;
    case 'stopped':
      return <Stopped port={port} />;
    default:
      return null;
  }
}
