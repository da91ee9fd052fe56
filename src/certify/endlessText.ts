/**
 * What the file of an endless scenario says of itself, in English. It is part of the scenario's fingerprint and therefore never changes, or runs of before would no
 * longer be known; the page says its own words in their place (`endless` in the words).
 */
import type { Receiver } from '../receiver/receiver.ts';
import type { EndlessDifficulty } from '../scenario/endlessId.ts';
import type { ScenarioWords } from '../scenario/scenario.ts';

const BRIEFS: Readonly<Record<EndlessDifficulty, string>> = {
  1: 'One or two slugs are off. The bench is ready and tells the truth.',
  2: 'About half of the slugs are off, and the bench is as the last pair left it.',
  3: 'Every slug is off, the bench is bare, the card is sealed. There may be a part that no slug cures.',
};

export function endlessTitle({ setName }: Receiver, seed: string): string {
  return `${setName}, ${seed}`.slice(0, 60);
}

export function endlessText({ setName }: Receiver, difficulty: EndlessDifficulty): ScenarioWords {
  return {
    brief: BRIEFS[difficulty],
    story: `Another ${setName} has been left at the club\u2019s door. Nobody knows what has been done to it, and the sheet is on the table.`,
    lesson: 'What has been learnt on the cards holds for a set without one.',
  };
}
