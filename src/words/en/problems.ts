/** Words for run files that are handed in: what the check found, told apart. */
import type { Refusal } from '../../bench/benchEvent.ts';
import type { ForeignPart, Verdict } from '../../run/verify.ts';

export const verdictTitles: Readonly<Record<Verdict['kind'], string>> = {
  verified: 'Verified',
  unclaimed: 'Not signed off',
  scoreDiffers: 'The score differs',
  eventsChanged: 'Events changed',
  truncated: 'Cut short',
  reordered: 'Out of order',
  foreign: 'Not from this bench',
  impossibleEvent: 'It cannot have happened',
  unreadable: 'Not readable',
};

const foreignParts: Readonly<Record<ForeignPart, (found: string, wanted: string) => string>> = {
  format: (found, wanted) => `This is no run file: ${found}, wanted ${wanted}.`,
  version: (found, wanted) => `The file is ${found}; this bench reads ${wanted}.`,
  engine: (found, wanted) =>
    `The run was made on version ${found} of the bench, this is ${wanted}. Grade it on that one.`,
  receiver: () => 'The run was made on another receiver than the one of that name here.',
  scenario: () => 'The scenario inside is not the one that was handed out.',
};

export const verdictSentences = {
  verified: (total: number, passed: boolean): string =>
    `Every act was done again and gives the same ${total} points: ${passed ? 'passed' : 'not passed'}.`,
  unclaimed: (total: number): string =>
    `All in order, but the run was never signed off. As it stands it earns ${total} points.`,
  scoreDiffers: (claimed: number, recomputed: number): string =>
    claimed === recomputed
      ? `The total of ${claimed} is right, but it is made up otherwise than the file says.`
      : `The file claims ${claimed} points; the same acts earn ${recomputed}.`,
  lineDiffers: (id: string, claimed: string, recomputed: string): string =>
    `${id}: claimed ${claimed}, recomputed ${recomputed}`,
  lineAbsent: 'no such line',
  eventsChanged:
    'An act was changed, added or put in place of another after the run was kept: the seal no longer fits.',
  cutOff: (found: number, recorded: number): string => `Only ${found} of ${recorded} acts are left in the file.`,
  neverSigned: (found: number): string =>
    `A score is claimed, but the ${found} acts in the file do not reach the signing off.`,
  reordered: 'The acts are all there, but not in the order in which they were done.',
  reorderedAt: (number: number): string =>
    `Act ${number} stands after a later one: the order is not that in which they were done.`,
  foreign: (part: ForeignPart, found: string, wanted: string): string => foreignParts[part](found, wanted),
  impossibleEvent: (number: number, time: string, act: string, reason: string): string =>
    `Act ${number}, at ${time} (${act}), cannot have happened. ${reason}`,
  unreadable: (count: number): string =>
    count === 1
      ? 'The file has a problem. Nothing of it was loaded.'
      : `The file has ${count} problems. Nothing of it was loaded.`,
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
  hintAsked: 'hint asked for',
  signedOff: 'signed off',
} as const;

/** Times that run backwards are the one refusal that only a file can bring about. */
export const badTimeInFile: Readonly<Partial<Record<Refusal, string>>> = {
  badTime: 'Its time lies before that of the act before it.',
};
