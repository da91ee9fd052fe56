/** The workshop's place for the sheet of an evening. */
import { usePageTitle } from '../../../kit/hooks/usePageTitle.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { Header, type RoomLink, Rooms } from '../../../kit/theme/art.tsx';
import { PlaceTabs, type PlaceTabsProps } from '../PlaceTabs.tsx';

export interface EveningPageProps extends Pick<PlaceTabsProps, 'onPlace'> {
  readonly links: readonly RoomLink[];
}

export function EveningPage({ links, onPlace }: EveningPageProps) {
  const { shell, workshop: say } = useWords();
  usePageTitle(say.evening.title);
  return (
    <div class="room-workshop">
      <Header product={shell.product}>
        <Rooms name={shell.rooms} links={links} />
      </Header>
      <PlaceTabs current="evening" onPlace={onPlace} />
      <main class="workshop-main">
        <h1>{say.evening.title}</h1>
      </main>
    </div>
  );
}
