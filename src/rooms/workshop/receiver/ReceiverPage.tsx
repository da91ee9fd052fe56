/** The workshop's place for receivers of one's own. */
import { usePageTitle } from '../../../kit/hooks/usePageTitle.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import type { RoomLink } from '../../../kit/theme/art.tsx';
import type { PlaceTabsProps } from '../PlaceTabs.tsx';
import { WorkshopFrame } from '../WorkshopFrame.tsx';

export interface ReceiverPageProps extends Pick<PlaceTabsProps, 'onPlace'> {
  readonly links: readonly RoomLink[];
}

export function ReceiverPage({ links, onPlace }: ReceiverPageProps) {
  const { shell, workshop: say } = useWords();
  usePageTitle(say.receiver.tab, shell.workshop);
  return (
    <WorkshopFrame current="receiver" onPlace={onPlace} links={links}>
      <h1>{say.receiver.title}</h1>
    </WorkshopFrame>
  );
}
