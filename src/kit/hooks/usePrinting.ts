/** Whether the page is being printed: for what is drawn on paper alone. */
import { flushSync } from 'preact/compat';
import { useEffect, useState } from 'preact/hooks';

/** True from when the browser is about to print until it has. */
export function usePrinting(): boolean {
  const [printing, setPrinting] = useState(false);
  useEffect(() => {
    // The browser takes the page as it stands when the event is over.
    const before = (): void => flushSync(() => setPrinting(true));
    const after = (): void => setPrinting(false);
    addEventListener('beforeprint', before);
    addEventListener('afterprint', after);
    return () => {
      removeEventListener('beforeprint', before);
      removeEventListener('afterprint', after);
    };
  }, []);
  return printing;
}
