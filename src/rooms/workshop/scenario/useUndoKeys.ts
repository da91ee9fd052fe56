/** Ctrl+Z and Ctrl+Shift+Z (with the command key on its keyboards, and Ctrl+Y): back and on again, but not while somebody types, where they belong to the field. */
import { useKeyDown } from '../../../kit/hooks/useKeyDown.ts';
import type { WorkshopPort } from './workshopPort.ts';

const TYPED = 'input:not([type=range], [type=checkbox], [type=radio]), textarea, [contenteditable]';

export function useUndoKeys(port: Pick<WorkshopPort, 'undo' | 'redo'>): void {
  useKeyDown((event) => {
    if (event.defaultPrevented || event.altKey || !(event.ctrlKey || event.metaKey)) return;
    if (event.target instanceof Element && event.target.closest(`${TYPED}, dialog`) !== null) return;
    const letter = event.key.toLowerCase();
    if (letter !== 'z' && letter !== 'y') return;
    event.preventDefault();
    if (letter === 'y' || event.shiftKey) port.redo();
    else port.undo();
  });
}
