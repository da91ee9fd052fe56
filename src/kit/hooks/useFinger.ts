/** Whether the pointer at hand is a finger, for which targets are 44 px and more. */
import { useEffect, useState } from 'preact/hooks';

const COARSE = '(pointer: coarse)';

export function useFinger(): boolean {
  const [finger, setFinger] = useState(() => matchMedia(COARSE).matches);
  useEffect(() => {
    const list = matchMedia(COARSE);
    const look = (): void => setFinger(list.matches);
    list.addEventListener('change', look);
    return () => list.removeEventListener('change', look);
  }, []);
  return finger;
}
