/** Words of the workshop's certification: what is being done, what came of it, why not. */
import { format } from './numbers.ts';

const { counted, atMost } = format;
const TOLERANCES = { one: 'tolerance', other: 'tolerances' };

export const workshopProofWords = {
  title: 'Certify',
  why: 'so that nobody is given a scenario that cannot be done',
  start: 'Certify',
  again: 'Certify again',
  cancel: 'Cancel',
  steps: {
    certify: '1 of 2: is there a way, and how long is it?',
    technician: '2 of 2: a technician tries it, by tube, meter and dials alone',
    nearest: 'Looking for the nearest that works',
  },
  free: 'You can go on working meanwhile.',
  first: 'Fix what the file lacks first; it is listed below.',
  unwritten: (texts: string): string => `Still to be written: ${texts}.`,
  write: 'Write them',
  plain: 'Plain words for now',
  /** for a draft that nobody has written anything to yet: true of every set */
  plainTexts: (set: string) => ({
    title: set,
    brief: 'A set on the bench that does not do what its sheet asks.',
    story: 'Nobody says what was done to it. Set it up by its sheet, look at what it does, and put it right.',
    lesson: 'What the tube shows comes first, the tool after it.',
  }),
  idle: 'Not certified yet.',
  stale: 'The draft has changed since.',
  noWorker: 'This browser does not let the page work in the background. Certify the file on the command line.',
  threw: 'The certifier failed on this draft. Save its file, and try it on the command line.',
  passedTitle: 'The certificate',
  met: 'Every line can be met',
  worst: (line: string, spare: number): string => `nearest ${line}, ${atMost(spare, 2)} of a tolerance to spare`,
  route: 'Route',
  routeOf: (letters: readonly string[]): string => (letters.length === 0 ? 'no slug at all' : letters.join(', ')),
  parts: 'Parts to replace',
  noParts: 'none',
  difficulty: 'Difficulty',
  ofTen: (figure: number): string => `${atMost(figure, 1)} of 10`,
  /** the difficulty that the file gives the scenario, 1 to 3, is not among those that go with so much work */
  levelBeside: (level: number, fitting: readonly number[]): string =>
    `The card says difficulty ${level}. So much work goes with ${fitting.join(' or ')}: change it under \u201cFile and card\u201d.`,
  technician: 'Technician',
  trying: 'trying it',
  notTried: 'stopped before the end',
  passed: (points: number): string => `passed, ${atMost(points, 0)} points`,
  failed: (points: number): string => `did not pass, ${atMost(points, 0)} points`,
  failedNote:
    'It can be done, but the technician, who sees no more than a learner, did not pass. Make it easier, or take care whom you give it to.',
  solvable: 'Solvable',
  par: (turns: string, minutes: number): string => `par ${turns}, ${atMost(minutes, 1)} min`,
  saveCertificate: 'Save certificate',
  handOut: {
    title: 'Hand out',
    file: 'File',
    link: 'Link',
    evening: 'Add to the evening sheet',
    linkReady: 'The whole scenario is in this link. Copy it.',
    linkLong: 'The whole scenario is in this link. It is long: some mail programs cut such a link short.',
    needsReceiver:
      'Whoever opens it needs the two files of your receiver as well; an evening sheet brings the receiver along.',
    told: {
      onSheet: 'It is on your evening sheet.',
      sheetFull: 'Your evening sheet is full.',
      notTaken: 'It could not be added. Save its file, and check that.',
    },
    hash: 'Hash of the scenario, as its certificate has it:',
  },
  refusedTitle: 'Why not',
  reasons: {
    nominalOutside: (line: string, off: string): string =>
      `The sound set itself misses its sheet with every slug in place: ${line}, ${off} outside.`,
    outOfReach: (line: string, off: string): string =>
      `With every part replaced, no setting of the slugs meets the sheet. The nearest leaves ${line}, ${off} outside.`,
    nothingToSee: (part: string): string =>
      `The slugs alone make up for ${part}: nobody could tell that it has failed.`,
    nothingToDo:
      'There is nothing to do: the set meets its sheet as it is handed out, or with an eighth of a turn on one slug.',
    refused: (reason: string): string => `The best route cannot be done at this bench. ${reason}`,
    lineLost: (line: string, share: string): string =>
      `The best route cannot earn all points of \u201c${line}\u201d: ${share} of them is the most.`,
  },
  off: (tolerances: number): string => counted(Number(tolerances.toPrecision(2)), TOLERANCES),
  lineIs: (kind: string, at: string, measured: string): string => `the ${kind} at ${at} is ${measured}`,
  nearest: 'Nearest that works',
  none: 'No change to a single number of the draft was found that works.',
  changes: {
    scatter: (from: string, to: string): string => `scatter of ${to} instead of ${from}`,
    slug: (slug: string, to: string): string => `slug ${slug} at ${to}`,
    amount: (fault: string, field: string, from: string, to: string): string =>
      `${fault}, ${field}: ${to} instead of ${from}`,
    tolerance: (from: string, to: string): string => `tolerances times ${to} instead of ${from}`,
    set: (from: number, to: number): string => `set number ${to} instead of ${from}`,
  },
  take: 'Take it',
} as const;
