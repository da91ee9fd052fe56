/** The workshop's place for the sheet of an evening. */
import { usePageTitle } from '../../../kit/hooks/usePageTitle.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import type { RoomLink } from '../../../kit/theme/art.tsx';
import type { PlaceTabsProps } from '../PlaceTabs.tsx';
import { WorkshopFrame } from '../WorkshopFrame.tsx';

export interface EveningPageProps extends Pick<PlaceTabsProps, 'onPlace'> {
  readonly links: readonly RoomLink[];
}

export function EveningPage({ links, onPlace }: EveningPageProps) {
  const { shell, workshop: say } = useWords();
  usePageTitle(say.evening.tab, shell.workshop);
  return (
    <WorkshopFrame current="evening" onPlace={onPlace} links={links}>
      <h1>{say.evening.title}</h1>
    </WorkshopFrame>
  );
}
