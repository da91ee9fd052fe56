/** One word for what to make of a run file that was handed in: what a list of many is sorted by. The verdict says the rest. */
import { hashOf } from '../files/hash.ts';
import type { ClaimedScore, TimedEvent } from '../files/runFile.ts';
import { readSeal } from '../files/seal.ts';
import type { Judgement } from './judgeRun.ts';

export const OUTCOMES = [
  /** whole, on the scenario that was handed out, and worth what it claims */
  'verified',
  /** changed after it was saved, or claiming what its acts do not earn */
  'altered',
  /** in order, but never signed off */
  'unfinished',
  /** done on another scenario or receiver than the one that is known here */
  'otherScenario',
  /** graded by rules, or made on a bench, of another version */
  'otherRules',
  /** it cannot have happened, or not by hand */
  'impossible',
  'unreadable',
] as const;
export type Outcome = (typeof OUTCOMES)[number];

export function outcomeOf({ verdict, run, scenarioKnown, underToday }: Judgement): Outcome {
  switch (verdict.kind) {
    case 'verified':
      if (!scenarioKnown) return 'otherScenario';
      return underToday === undefined ? 'verified' : 'otherRules';
    case 'unclaimed':
      return scenarioKnown ? 'unfinished' : 'otherScenario';
    case 'foreign':
      if (verdict.part === 'version') return 'unreadable';
      if (verdict.part === 'engine' || verdict.part === 'rules') return 'otherRules';
      // The scenario inside is not even the one that the file itself says it is.
      return verdict.part === 'scenario' && verdict.wanted === run?.scenarioHash ? 'altered' : 'otherScenario';
    case 'impossibleEvent':
    case 'tooFast':
      return 'impossible';
    case 'unreadable':
      return 'unreadable';
    default:
      return 'altered';
  }
}

/** What the acts earn; null where they were not graded. */
export function scoreOf({ verdict }: Judgement): ClaimedScore | null {
  if (verdict.kind === 'verified' || verdict.kind === 'unclaimed' || verdict.kind === 'claimMissing')
    return verdict.score;
  return verdict.kind === 'scoreDiffers' ? verdict.recomputed : null;
}

/** Whether the name and the day stand under the seal: in files of the first version they do not. */
export function headIsSealed(seal: string): boolean {
  return readSeal(seal)?.head !== null;
}

/** So many acts with all their figures are never alike by chance; of fewer the times must be alike, too. */
const TELLING_ACTS = 20;

/** The same for the same acts, whoever they are said to be by and whatever clock they were put to; null where there is too little to compare. */
export function actsHash(events: readonly TimedEvent[]): string | null {
  const first = events[0];
  if (first === undefined || events.length < 2) return null;
  if (events.length >= TELLING_ACTS) return hashOf(events.map(({ atMs: _, ...act }) => act));
  return hashOf(events.map((event) => ({ ...event, atMs: event.atMs - first.atMs })));
}
