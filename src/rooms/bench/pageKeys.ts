/** Keys that the bench takes from anywhere on its page: whose press is free, and the letters of the page itself. None is the letter of a slug of any receiver: `tests/rooms/pageKeys.test.ts`. */

import { singleKeysAct } from '../../kit/singleKeys.ts';

export const PAGE_KEYS = {
  sheet: 's',
  circuit: 'i',
  tones: 't',
  pipTable: 'v',
  whatYouSaw: 'w',
  onward: '.',
  backward: ',',
} as const;

/** Whether the key pressed is this one, in either case. */
export function isPageKey(event: { readonly key: string }, name: keyof typeof PAGE_KEYS): boolean {
  return event.key.toLowerCase() === PAGE_KEYS[name];
}

/** True where a key press belongs to something being written or chosen. */
export function isWriting(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  // Knobs, switches and positions are inputs too, and nothing is written into those.
  if (target instanceof HTMLInputElement) return !/^(range|checkbox|radio)$/.test(target.type);
  return target.isContentEditable || /^(SELECT|TEXTAREA)$/.test(target.tagName);
}

/** A press that nobody else wants: no modifier, nothing being written, no dialog open, which has the keys to itself. */
export function isFreeKey(event: KeyboardEvent): boolean {
  if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey || isWriting(event.target)) return false;
  // Return, arrows and the like are nobody's by accident; a single letter can be switched off.
  if (event.key.length === 1 && !singleKeysAct()) return false;
  return document.querySelector('dialog[open]') === null;
}
