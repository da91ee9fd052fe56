/** The workshop's place for receivers of one's own. */
import { usePageTitle } from '../../../kit/hooks/usePageTitle.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { Header, type RoomLink, Rooms } from '../../../kit/theme/art.tsx';
import { PlaceTabs, type PlaceTabsProps } from '../PlaceTabs.tsx';

export interface ReceiverPageProps extends Pick<PlaceTabsProps, 'onPlace'> {
  readonly links: readonly RoomLink[];
}

export function ReceiverPage({ links, onPlace }: ReceiverPageProps) {
  const { shell, workshop: say } = useWords();
  usePageTitle(say.receiver.title);
  return (
    <div class="room-workshop">
      <Header product={shell.product}>
        <Rooms name={shell.rooms} links={links} />
      </Header>
      <PlaceTabs current="receiver" onPlace={onPlace} />
      <main class="workshop-main">
        <h1>{say.receiver.title}</h1>
      </main>
    </div>
  );
}
