/** Words of the endless track: what a scenario says that nobody has written, and the place on the course where one is asked for. */
import type { Receiver } from '../../receiver/receiver.ts';
import type { ScenarioWords } from '../../scenario/scenario.ts';

const BRIEFS = {
  1: 'One or two slugs are off. The bench is set up and tells the truth.',
  2: 'About half of the slugs are off, and the bench is as the last people left it.',
  3: 'Every slug is off, nothing is connected, and there are no hints. A part may have failed as well.',
} as const;

export const endlessWords = {
  trackTitle: 'Endless',
  blurb: 'Scenarios without end, each made from a word. The same word makes the same scenario for everybody.',
  title: (receiver: Receiver, seed: string): string => `${receiver.setName}, ${seed}`.slice(0, 60),
  words: (receiver: Receiver, difficulty: 1 | 2 | 3): ScenarioWords => ({
    brief: BRIEFS[difficulty],
    story: `Another ${receiver.setName} has been left at the club\u2019s door. Nobody knows what has been done to it, and the sheet is on the table.`,
    lesson: 'What you have learnt on the course works on any set.',
  }),
  difficulty: 'How hard',
  levels: { 1: 'Gentle', 2: 'Middling', 3: 'Hard' } as const,
  seed: 'Seed word',
  seedNote: 'Up to twelve small letters and digits. Tell a friend: the same word makes the same scenario.',
  open: 'Put it on the bench',
  another: 'Another word',
  making: 'A scenario is being made and tried out, to be sure that it can be done.',
  failed: 'This word makes no scenario that can be done. Try another.',
  badSeed: 'Use one to twelve small letters and digits, and nothing else.',
} as const;
