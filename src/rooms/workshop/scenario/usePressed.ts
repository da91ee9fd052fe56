/** Whether a button is being pressed, by pointer: what stands over it must keep its height until then, or the button slips away and the press is lost. */
import { useLayoutEffect, useRef } from 'preact/hooks';

const ENDS = ['pointerup', 'pointercancel', 'blur'] as const;

export function usePressed(): { readonly current: boolean } {
  const pressed = useRef(false);
  useLayoutEffect(() => {
    let timer: ReturnType<typeof setTimeout>;
    const press = ({ target }: Event): void => {
      pressed.current = target instanceof Element && target.closest('button') !== null;
    };
    // The click comes after the pointer has been lifted.
    const letGo = ({ type, target }: Event): void => {
      // A field that loses the focus is no window that does.
      if (type === 'blur' && target !== window) return;
      clearTimeout(timer);
      timer = setTimeout(() => {
        pressed.current = false;
      });
    };
    addEventListener('pointerdown', press, true);
    for (const end of ENDS) addEventListener(end, letGo, true);
    return () => {
      clearTimeout(timer);
      removeEventListener('pointerdown', press, true);
      for (const end of ENDS) removeEventListener(end, letGo, true);
    };
  }, []);
  return pressed;
}
