/** The workshop's place for the sheet of an evening: what its page may ask of the rest. */
import { EveningPage } from '../../rooms/workshop/evening/EveningPage.tsx';
import type { RoomProps } from '../roomProps.ts';
import { useRoomLinks } from '../useRoomLinks.ts';

export default function EveningRoom({ logbook, go }: RoomProps) {
  const links = useRoomLinks('workshop', { logbook, go });
  return <EveningPage links={links} onPlace={(place) => go({ page: 'workshop', place })} />;
}
