/** The workshop's place for receivers of one's own: a deck comes in, a receiver goes out. */
import { useFileDrop } from '../../../kit/hooks/useFileDrop.ts';
import { usePageTitle } from '../../../kit/hooks/usePageTitle.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import type { RoomLink } from '../../../kit/theme/art.tsx';
import type { PlaceTabsProps } from '../PlaceTabs.tsx';
import { useUndoKeys } from '../scenario/useUndoKeys.ts';
import { WorkshopFrame } from '../WorkshopFrame.tsx';
import { BeginPanel } from './BeginPanel.tsx';
import { DeckPanel } from './DeckPanel.tsx';
import { MakingBar } from './MakingBar.tsx';
import { NetworkPanel } from './NetworkPanel.tsx';
import { PlanPanel } from './PlanPanel.tsx';
import { ResponsePanel } from './ResponsePanel.tsx';
import type { ReceiverPort } from './receiverPort.ts';
import { SavePanel } from './SavePanel.tsx';
import { StepRail } from './StepRail.tsx';
import './receiver.css';
import './network.css';
import './response.css';

export interface ReceiverPageProps extends Pick<PlaceTabsProps, 'onPlace'> {
  readonly links: readonly RoomLink[];
  readonly port: ReceiverPort;
}

export function ReceiverPage({ links, onPlace, port }: ReceiverPageProps) {
  const { shell, workshop: say } = useWords();
  usePageTitle(say.receiver.tab, shell.workshop);
  useUndoKeys(port);
  const over = useFileDrop(({ files }) => port.bring([...files]));
  const { making, standing } = port;
  return (
    <WorkshopFrame
      current="receiver"
      onPlace={onPlace}
      links={links}
      title={say.receiver.title}
      right={standing === null ? undefined : <StepRail port={port} />}
    >
      <div class={over ? 'made-drop over' : 'made-drop'}>
        {making === null || standing === null ? (
          <BeginPanel port={port} />
        ) : (
          <>
            <MakingBar key={port.openKey} port={port} />
            <div class="made-desk" key={port.openKey}>
              <div class="made-left">
                <DeckPanel port={port} making={making} standing={standing} />
              </div>
              <div class="made-middle">
                <NetworkPanel port={port} making={making} standing={standing} />
                <ResponsePanel port={port} making={making} standing={standing} />
              </div>
              <div class="made-right">
                <PlanPanel port={port} making={making} standing={standing} />
                <SavePanel port={port} making={making} />
              </div>
            </div>
          </>
        )}
      </div>
    </WorkshopFrame>
  );
}
