/** The workshop's place for receivers of one's own: what its page may ask of the rest. */
import { ReceiverPage } from '../../rooms/workshop/receiver/ReceiverPage.tsx';
import type { RoomProps } from '../roomProps.ts';
import { useRoomLinks } from '../useRoomLinks.ts';

export default function ReceiverRoom({ logbook, go }: RoomProps) {
  const links = useRoomLinks('workshop', { logbook, go });
  return <ReceiverPage links={links} onPlace={(place) => go({ page: 'workshop', place })} />;
}
