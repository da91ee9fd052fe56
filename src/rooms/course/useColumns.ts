/** How many cards stand side by side, by the width of the window; the stylesheet breaks at the same widths. */
import { useEffect, useState } from 'preact/hooks';

const WIDE = '(min-width: 1180px)';
const MIDDLE = '(min-width: 560px)';

const columnsNow = (): number => (matchMedia(WIDE).matches ? 3 : matchMedia(MIDDLE).matches ? 2 : 1);

export function useColumns(): number {
  const [columns, setColumns] = useState(columnsNow);
  useEffect(() => {
    const lists = [matchMedia(WIDE), matchMedia(MIDDLE)];
    const look = (): void => setColumns(columnsNow());
    for (const list of lists) list.addEventListener('change', look);
    return () => {
      for (const list of lists) list.removeEventListener('change', look);
    };
  }, []);
  return columns;
}
