/** Words for run files that are handed in: what the check found, told apart. */
import type { Refusal } from '../../bench/benchEvent.ts';
import type { PaceLimit } from '../../run/pace.ts';
import type { ForeignPart, Verdict } from '../../run/verify.ts';
import { format } from './numbers.ts';

const POINTS = { one: 'point', other: 'points' };
const SECONDS = { one: 'second', other: 'seconds' };
const ACTIONS = { one: 'action', other: 'actions' };

export const verdictTitles: Readonly<Record<Verdict['kind'], string>> = {
  verified: 'Verified',
  unclaimed: 'Not signed off',
  scoreDiffers: 'The score differs',
  claimMissing: 'The score was taken out',
  eventsChanged: 'Events changed',
  headChanged: 'Name or date changed',
  truncated: 'Cut short',
  reordered: 'Out of order',
  foreign: 'Not from this bench',
  impossibleEvent: 'It cannot have happened',
  tooFast: 'Faster than hands can work',
  unreadable: 'Cannot be read',
};

const foreignParts: Readonly<Record<ForeignPart, (found: string, wanted: string) => string>> = {
  version: (found, wanted) => `The file is ${found}; this bench reads ${wanted}.`,
  engine: (found, wanted) =>
    `The run was made on version ${found} of the bench; this is ${wanted}. Grade it on that version.`,
  rules: (found, wanted) => `The run was graded by version ${found} of the rules; this bench grades by ${wanted}.`,
  noReceiver: (found) => `There is no receiver called “${found}” here.`,
  receiver: () => 'The run was made on a receiver that differs from the one of that name here.',
  scenario: () => 'The scenario inside is not the one that was handed out.',
};

const paceWords: Readonly<Record<PaceLimit, (found: string) => string>> = {
  acts: (found) => `${found} actions`,
  turns: (found) => `${found} turns of slugs`,
  things: (found) => `${found} different knobs, slugs, leads, crystals and tools`,
  moves: (found) => `${found} moves of the hand to another place`,
};

export const verdictSentences = {
  verified: (total: number, passed: boolean): string =>
    `Every action was repeated and gives the same ${format.counted(total, POINTS)}: ${passed ? 'passed' : 'not passed'}.`,
  unclaimed: (total: number): string =>
    `All in order, but the run was never signed off. As it is, it earns ${format.counted(total, POINTS)}.`,
  scoreDiffers: (claimed: number, recomputed: number): string =>
    claimed === recomputed
      ? `The total of ${claimed} is right, but it is not made up as the file says.`
      : `The file claims ${format.counted(claimed, POINTS)}; the same actions earn ${recomputed}.`,
  claimMissing: (total: number): string =>
    `The run was signed off, but its score was taken out of the file. The actions earn ${format.counted(total, POINTS)}.`,
  lineDiffers: (id: string, claimed: string, recomputed: string): string =>
    `${id}: claimed ${claimed}, recomputed ${recomputed}`,
  lineAbsent: 'no such line',
  eventsChanged: 'An action was changed, added or replaced after the run was saved: the seal no longer fits.',
  headChanged:
    'The actions are whole, but the name, the date or another entry at the head of the file was changed after the run was saved.',
  cutOff: (found: number, recorded: number): string =>
    `Only ${found} of ${format.counted(recorded, ACTIONS)} ${format.plural(found, { one: 'is', other: 'are' })} left in the file.`,
  neverSigned: (found: number): string =>
    `A score is claimed, but the ${format.counted(found, ACTIONS)} in the file ${format.plural(found, { one: 'does', other: 'do' })} not go as far as signing off.`,
  reordered: 'The actions are all there, but not in the order in which they were done.',
  reorderedAt: (number: number): string =>
    `Action ${number} comes after a later one: they are not in the order in which they were done.`,
  foreign: (part: ForeignPart, found: string, wanted: string): string => foreignParts[part](found, wanted),
  impossibleEvent: (number: number, time: string, act: string, reason: string): string =>
    `Action ${number}, at ${time} (${act}), cannot have happened. ${reason}`,
  tooFast: (limit: PaceLimit, found: number, most: number, seconds: number, time: string): string =>
    `At ${time} there are ${paceWords[limit](format.atMost(found, 1))} within ${format.counted(seconds, SECONDS)}; no hand does more than ${format.atMost(most, 1)}.`,
  unreadable: (count: number): string =>
    format.plural(count, {
      one: 'The file has a problem. Nothing of it was loaded.',
      other: `The file has ${count} problems. Nothing of it was loaded.`,
    }),
} as const;

export const actNames = {
  cautionsAcknowledged: 'cautions read',
  isolationSwitched: 'isolation switched',
  powerSwitched: 'power switched',
  leadConnected: 'lead connected',
  leadRemoved: 'lead taken off',
  controlSet: 'control set',
  crystalPlugged: 'crystal plugged in',
  crystalPulled: 'crystal lifted',
  toolTaken: 'tool taken',
  toolPlaced: 'tool placed',
  slugTurned: 'slug turned',
  readingTaken: 'reading taken',
  partReplaced: 'part replaced',
  partBridged: 'part bridged',
  partMetered: 'part metered',
  findingStated: 'finding stated',
  asFoundRecorded: 'recorded as found',
  diagnosisStated: 'diagnosis stated',
  hintAsked: 'hint asked for',
  setUpByHelper: 'set up by a helper',
  signedOff: 'signed off',
} as const;

/** Times that run backwards are the one refusal that only a file can bring about. */
export const badTimeInFile: Readonly<Partial<Record<Refusal, string>>> = {
  badTime: 'Its time is before that of the action before it.',
};
