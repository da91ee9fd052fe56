/** For tests that see the page as it is by default, with all that moves: the others ask for less motion (`playwright.config.ts`). */
export const MOVING = { contextOptions: { reducedMotion: 'no-preference' } } as const;
