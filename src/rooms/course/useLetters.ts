/** Whether the letters that the page has asked for have come, or have failed to. */
import { useEffect, useState } from 'preact/hooks';

/** `asked`: everything that wants letters is on the page. Letters that are wanted later are not waited for. */
export function useLetters(asked: boolean): boolean {
  const [here, setHere] = useState(false);
  useEffect(() => {
    if (!asked) return;
    let waiting = true;
    void document.fonts.ready.then(() => {
      if (waiting) setHere(true);
    });
    return () => {
      waiting = false;
    };
  }, [asked]);
  return here;
}
