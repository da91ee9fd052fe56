/** Letters that the bench page takes for itself. None is the letter of a slug of any receiver: `tests/rooms/pageKeys.test.ts`. */

export const PAGE_KEYS = { sheet: 's', circuit: 'i', whatYouSaw: 'w' } as const;

/** Whether the key pressed is this one, in either case. */
export function isPageKey(event: { readonly key: string }, name: keyof typeof PAGE_KEYS): boolean {
  return event.key.toLowerCase() === PAGE_KEYS[name];
}
