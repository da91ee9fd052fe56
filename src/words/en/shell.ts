/** Words that every page shares: the product's name, the rooms, the phases, the tube's tags. */

import type { Phase } from '../../session/phase.ts';
import { format } from './numbers.ts';

export const shellWords = {
  product: 'Haystack',
  home: 'Haystack, to the course',
  rooms: 'Rooms',
  course: 'Course',
  drills: 'Drills',
  handbook: 'Handbook',
  bench: 'Bench',
  workshop: 'Workshop',
  classroom: 'Class',
  reports: 'Report',
  noSuchScenario: 'There is no scenario of that name in this course.',
  grading: 'Grading the run…',
  noSuchRun: 'This run is no longer stored here. If you exported its run file, you still have that.',
  /** one thing wrong with a file */
  problem: (where: string, found: string, wanted: string): string => `${where}: found ${found}, wanted ${wanted}`,
  inText: (line: number, column: number): string => `line ${line}, column ${column}`,
  inFile: (file: string, place: string): string => `${file}, ${place}`,
  noSuchReceiver: 'This run was made on a set that this page does not have.',
} as const;

export const phaseNames: Readonly<Record<Phase, string>> = {
  safe: 'Make safe',
  connect: 'Connect',
  setUp: 'Set up',
  align: 'Align',
  prove: 'Prove',
};

/** "45.75" or "455": what fits on a small paper tag; the unit is understood at the bench. */
export const tubeWords = {
  tunable: 'tunable',
  frequency: (hz: number): string =>
    hz < 2e6 ? format.atMost(hz / 1e3, 1) : format.written(hz / 1e6, hz % 10e3 === 0 ? 2 : 3),
} as const;
