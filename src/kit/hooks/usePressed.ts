/** Where the last act was tried: the pointer's last press or turn of the wheel, or the focused control when the keyboard came after it. */
import { useCallback, useEffect, useRef } from 'preact/hooks';

export function usePressed(): () => { x: number; y: number } {
  const last = useRef<{ x: number; y: number } | null>(null);
  useEffect(() => {
    const point = (event: MouseEvent): void => {
      last.current = { x: event.clientX, y: event.clientY };
    };
    const key = (): void => {
      last.current = null;
    };
    addEventListener('pointerdown', point, { capture: true, passive: true });
    addEventListener('pointerup', point, { capture: true, passive: true });
    addEventListener('wheel', point, { capture: true, passive: true });
    addEventListener('keydown', key, { capture: true, passive: true });
    return () => {
      removeEventListener('pointerdown', point, { capture: true });
      removeEventListener('pointerup', point, { capture: true });
      removeEventListener('wheel', point, { capture: true });
      removeEventListener('keydown', key, { capture: true });
    };
  }, []);
  return useCallback(() => {
    if (last.current !== null) return last.current;
    const box = document.activeElement?.getBoundingClientRect();
    if (box === undefined || document.activeElement === document.body) return { x: innerWidth / 2, y: innerHeight / 3 };
    return { x: box.left + box.width / 2, y: box.top + box.height / 2 };
  }, []);
}
