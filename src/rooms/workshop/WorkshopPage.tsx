/** The workshop's desk for scenarios. */
import { usePageTitle } from '../../kit/hooks/usePageTitle.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { Header, type RoomLink, Rooms } from '../../kit/theme/art.tsx';
import { PlaceTabs, type PlaceTabsProps } from './PlaceTabs.tsx';

export interface WorkshopPageProps extends Pick<PlaceTabsProps, 'onPlace'> {
  readonly links: readonly RoomLink[];
}

export function WorkshopPage({ links, onPlace }: WorkshopPageProps) {
  const { shell, workshop: say } = useWords();
  usePageTitle(shell.workshop);
  return (
    <div class="room-workshop">
      <Header product={shell.product}>
        <Rooms name={shell.rooms} links={links} />
      </Header>
      <PlaceTabs current={null} onPlace={onPlace} />
      <main class="workshop-main">
        <h1>{say.scenario.title}</h1>
      </main>
    </div>
  );
}
