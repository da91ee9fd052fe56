/** Words of the endless track: what a scenario says that nobody has written, and the place on the course where one is asked for. */
import type { Receiver } from '../../receiver/receiver.ts';
import type { ScenarioWords } from '../../scenario/scenario.ts';

const BRIEFS = {
  1: 'One or two slugs are off. The bench is ready and tells the truth.',
  2: 'About half of the slugs are off, and the bench is as the last pair left it.',
  3: 'Every slug is off, the bench is bare, the card is sealed. There may be a part that no slug cures.',
} as const;

export const endlessWords = {
  trackTitle: 'Endless',
  blurb: 'Sets that nobody has written a card for. The same word makes the same set for everybody.',
  title: (receiver: Receiver, seed: string): string => `${receiver.setName}, ${seed}`.slice(0, 60),
  words: (receiver: Receiver, difficulty: 1 | 2 | 3): ScenarioWords => ({
    brief: BRIEFS[difficulty],
    story: `Another ${receiver.setName} has been left at the club\u2019s door. Nobody knows what has been done to it, and the sheet is on the table.`,
    lesson: 'What has been learnt on the cards holds for a set without one.',
  }),
  difficulty: 'How hard',
  levels: { 1: 'Gentle', 2: 'Middling', 3: 'Hard' } as const,
  seed: 'Seed word',
  seedNote: 'Letters and figures, twelve at most. Tell it to a friend: the same word is the same set.',
  open: 'Set it on the bench',
  another: 'Another word',
  making: 'A set is being chosen and tried, so that it can be done.',
  failed: 'This word makes no set that can be done. Try another.',
  badSeed: 'Only small letters and figures, one to twelve of them.',
} as const;
