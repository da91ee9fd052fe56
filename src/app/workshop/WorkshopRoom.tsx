/** The workshop's desk for scenarios: what its page may ask of the rest. */
import { WorkshopPage } from '../../rooms/workshop/WorkshopPage.tsx';
import type { RoomProps } from '../roomProps.ts';
import { useRoomLinks } from '../useRoomLinks.ts';

export default function WorkshopRoom({ logbook, go }: RoomProps) {
  const links = useRoomLinks('workshop', { logbook, go });
  return <WorkshopPage links={links} onPlace={(place) => go({ page: 'workshop', place })} />;
}
