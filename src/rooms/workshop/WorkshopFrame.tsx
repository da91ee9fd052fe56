/** What every place of the workshop has round it: header, rooms, and one row with its title and the tabs of all places. */
import type { ComponentChildren } from 'preact';
import { useMemo, useRef } from 'preact/hooks';
import { useFocusKept } from '../../kit/hooks/useFocusKept.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { Header, type RoomLink, Rooms } from '../../kit/theme/art.tsx';
import { PlaceTabs, type PlaceTabsProps } from './PlaceTabs.tsx';
import './workshop.css';

export interface WorkshopFrameProps extends PlaceTabsProps {
  readonly links: readonly RoomLink[];
  readonly title: string;
  readonly children: ComponentChildren;
  /** what stands at the right of the header */
  readonly right?: ComponentChildren;
}

export function WorkshopFrame({ links, current, onPlace, title, children, right }: WorkshopFrameProps) {
  const { shell } = useWords();
  const room = useRef<HTMLDivElement>(null);
  useFocusKept(room);
  const header = useMemo(
    () => (
      <Header product={shell.product} right={right}>
        <Rooms name={shell.rooms} links={links} />
      </Header>
    ),
    [shell, right, links],
  );
  return (
    <div class="room-workshop" ref={room}>
      {header}
      <main class="workshop-main">
        <div class="workshop-head">
          <h1>{title}</h1>
          <PlaceTabs current={current} onPlace={onPlace} />
        </div>
        {children}
      </main>
    </div>
  );
}
