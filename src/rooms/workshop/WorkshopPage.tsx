/** The workshop's desk for scenarios. */
import { usePageTitle } from '../../kit/hooks/usePageTitle.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import type { RoomLink } from '../../kit/theme/art.tsx';
import type { PlaceTabsProps } from './PlaceTabs.tsx';
import { WorkshopFrame } from './WorkshopFrame.tsx';

export interface WorkshopPageProps extends Pick<PlaceTabsProps, 'onPlace'> {
  readonly links: readonly RoomLink[];
}

export function WorkshopPage({ links, onPlace }: WorkshopPageProps) {
  const { shell, workshop: say } = useWords();
  usePageTitle(say.scenario.tab, shell.workshop);
  return (
    <WorkshopFrame current={null} onPlace={onPlace} links={links}>
      <h1>{say.scenario.title}</h1>
    </WorkshopFrame>
  );
}
