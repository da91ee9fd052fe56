/** Size of the window in whole CSS pixels, without a scroll bar where there is one. */
import { useEffect, useState } from 'preact/hooks';

export function useWindowSize(): { readonly width: number; readonly height: number } {
  const [size, setSize] = useState(read);
  useEffect(() => {
    const look = (): void => {
      setSize((old) => {
        const now = read();
        return old.width === now.width && old.height === now.height ? old : now;
      });
    };
    look();
    addEventListener('resize', look);
    return () => removeEventListener('resize', look);
  }, []);
  return size;
}

function read(): { width: number; height: number } {
  const { clientWidth } = document.documentElement;
  return { width: clientWidth, height: innerHeight };
}
