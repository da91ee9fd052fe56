/** The row of the workshop's places; with one alone there is no row. */
import { useWords } from '../../kit/hooks/useWords.ts';
import { OPEN_PLACES, type WorkshopPlace } from './places.ts';
import '../../kit/tabs/tabs.css';

export interface PlaceTabsProps {
  readonly current: WorkshopPlace | null;
  readonly onPlace: (place: WorkshopPlace | null) => void;
}

export function PlaceTabs({ current, onPlace }: PlaceTabsProps) {
  const { workshop: say } = useWords();
  if (OPEN_PLACES.length < 2) return null;
  return (
    <nav class="tabs workshop-places" aria-label={say.places}>
      {OPEN_PLACES.map((place) => (
        <button key={place} type="button" aria-pressed={place === current} onClick={() => onPlace(place)}>
          {say[place ?? 'scenario'].tab}
        </button>
      ))}
    </nav>
  );
}
