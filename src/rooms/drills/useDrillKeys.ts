/** The keys of a look: 1 to 4 choose, H halves the level, Return says that it is right now, and then takes the next look. */
import { useKeyDown } from '../../kit/hooks/useKeyDown.ts';
import { singleKeysAct } from '../../kit/singleKeys.ts';
import type { LookActs, Looked } from './useLook.ts';

export interface DrillKeys {
  readonly looked: Looked;
  readonly acts: LookActs;
  readonly choose: (at: number) => void;
  /** the level can be halved */
  readonly half: boolean;
}

export function useDrillKeys({ looked, acts, choose, half }: DrillKeys): void {
  useKeyDown((event) => {
    if (event.defaultPrevented || event.ctrlKey || event.altKey || event.metaKey || event.repeat) return;
    if (event.key.length === 1 && !singleKeysAct()) return;
    const act = actOf(event.key, event.target instanceof Element && event.target.closest('button, a') !== null);
    if (act === null) return;
    event.preventDefault();
    act();
  });
  function actOf(pressed: string, onButton: boolean): (() => void) | null {
    const { ask } = looked.question;
    const asking = looked.answer === null;
    if (ask.kind === 'choice' && asking && /^[1-9]$/.test(pressed)) {
      const at = Number(pressed) - 1;
      return at < ask.choices.length ? () => choose(at) : null;
    }
    if (half && pressed.toLowerCase() === 'h') return () => acts.halve();
    // A button or a link that has the focus takes Return for itself.
    if (pressed !== 'Enter' || onButton) return null;
    if (!asking) return () => acts.next();
    return ask.kind === 'turn' ? () => acts.answer({ kind: 'turned', state: looked.state }) : null;
  }
}
