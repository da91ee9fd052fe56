/** Device pixels per CSS pixel, followed when the page is zoomed or moved to another screen. */
import { useEffect, useState } from 'preact/hooks';

export function useResolution(): number {
  const [ratio, setRatio] = useState(window.devicePixelRatio);
  useEffect(() => {
    const query = window.matchMedia(`(resolution: ${ratio}dppx)`);
    const look = (): void => setRatio(window.devicePixelRatio);
    query.addEventListener('change', look);
    return () => query.removeEventListener('change', look);
  }, [ratio]);
  return ratio;
}
