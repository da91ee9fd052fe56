/** Files may be dropped anywhere on a page: a browser that is not told otherwise would leave the page for them. */
import { useEffect, useRef, useState } from 'preact/hooks';

/** True while some are held over the page. Folders are in the `DataTransfer` alone. `whatever`: what is no file is taken too, by a page that says so in words. */
export function useFileDrop(take: (dropped: DataTransfer) => void, whatever = false): boolean {
  const [over, setOver] = useState(false);
  const taking = useRef(take);
  taking.current = take;
  useEffect(() => {
    const isTaken = ({ dataTransfer }: DragEvent): boolean =>
      whatever || dataTransfer?.types.includes('Files') === true;
    const hold = (event: DragEvent): void => {
      if (!isTaken(event)) return;
      event.preventDefault();
      setOver(true);
    };
    const leave = (event: DragEvent): void => {
      if (event.relatedTarget === null) setOver(false);
    };
    const drop = (event: DragEvent): void => {
      setOver(false);
      if (!isTaken(event)) return;
      event.preventDefault();
      if (event.dataTransfer !== null) taking.current(event.dataTransfer);
    };
    addEventListener('dragover', hold);
    addEventListener('dragleave', leave);
    addEventListener('drop', drop);
    return () => {
      removeEventListener('dragover', hold);
      removeEventListener('dragleave', leave);
      removeEventListener('drop', drop);
    };
  }, []);
  return over;
}
