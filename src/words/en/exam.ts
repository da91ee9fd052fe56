/** Words of an exam: its page, its gate before the bench, its clock. */
import { format } from './figures.ts';

const MINUTES = { one: 'minute', other: 'minutes' };
const RUNS = { one: 'run', other: 'runs' };
const SCENARIOS = { one: 'scenario', other: 'scenarios' };

export const examWords = {
  eyebrow: 'Exam',
  sealed: (count: number, minutes: number | null): string =>
    `Sealed. ${format.counted(count, SCENARIOS)}${minutes === null ? ', without a limit of time' : `, ${minutes} minutes in all`}.`,
  by: (author: string): string => `By ${author}.`,
  number: 'Your number',
  name: 'Your name',
  badNumber: 'A number from 1 to 999.',
  phrase: 'The phrase',
  open: 'Open',
  opening: 'Opening…',
  openNote:
    'Opening it starts the clock, and closes every other run of these scenarios that lies open in this browser.',
  wrongPhrase: 'This phrase does not open the sheet, or the file was changed on its way.',
  noCrypto:
    'This browser gives the page no cryptography here, so a sealed sheet cannot be opened. Open the page from the memory stick or over a secure address, or use another browser.',
  notGoingOn: 'Another exam is still open in this browser. Hand that one in first.',
  candidate: (candidate: string): string => `Candidate ${candidate}`,
  handedInCount: (signed: number, all: number): string => `${signed} of ${all} signed off`,
  left: 'Time left for all',
  noLimit: 'no limit of time',
  clockOnBench: (time: string): string => `This scenario: ${time} left`,
  clock: (time: string): string => `Exam: ${time} left`,
  items: 'Scenarios of the exam',
  states: {
    open: 'Open',
    onBench: 'On the bench',
    signed: 'Signed off',
    timeUp: 'The time is up',
    handedIn: 'Handed in',
  },
  waits: (code: string): string => `Opens when ${code} is signed off`,
  toBench: 'To the bench',
  toBenchNamed: (title: string): string => `To the bench: ${title}`,
  lastCall: 'Hand in as it stands',
  several: 'Each may be done as often as time allows. Every run is handed in.',
  once: 'Each may be done once.',
  handIn: 'Hand in',
  handInNote:
    'All signed runs go into one file, which you give to your instructor. After that nothing more can be done.',
  sure: (signed: number, all: number): string =>
    `${signed} of ${all} are signed off. Once handed in, nothing more can be done.`,
  yes: 'Yes, hand in',
  no: 'Not yet',
  done: 'Handed in. The file is in your downloads: give it to your instructor.',
  saveAgain: 'Save the file once more',
  minutes: (minutes: number): string => `${format.counted(minutes, MINUTES)} on the bench`,
  toPass: (mark: number, all: number): string =>
    mark === all ? 'All have to be passed.' : `${mark} of ${all} have to be passed.`,
  atEnd: 'What each run was worth is told when you hand in.',
  whole: {
    title: 'Report of the whole exam',
    working: 'Grading your runs once more…',
    standing: { passed: 'Passed.', missed: 'Not passed.', unsure: 'Not settled.', noMark: 'Handed in.' },
    passedOf: (passed: number, all: number): string => `${passed} of ${format.counted(all, SCENARIOS)} passed.`,
    passedShort: (passed: number, all: number): string => `${passed} of ${all}`,
    mark: (mark: number): string => `Pass mark: ${mark}.`,
    scenario: 'Scenario',
    points: 'Points',
    time: 'Time',
    result: 'Result',
    all: 'Whole exam',
    mean: (points: number): string => `${format.atMost(points, 1)} on average`,
    given: (minutes: number): string => `of ${format.counted(minutes, MINUTES)}`,
    passed: 'Passed',
    notPassed: 'Not passed',
    late: 'Over its time',
    missing: (tries: number): string => (tries === 0 ? 'Not signed off' : 'No run that counts'),
    tries: (tries: number): string => `best of ${format.counted(tries, RUNS)}`,
    doubted: (runs: number): string => `${format.counted(runs, RUNS)} left out`,
    report: 'Report',
    reportOf: (title: string): string => `Report of ${title}`,
    print: 'Print the report',
    paperNote:
      'Worked out in the candidate’s own browser. What counts is the same table in the instructor’s class list.',
    sign: 'Seen by the instructor',
  },
  gone: 'This exam is not in this browser.',
  notNow: 'This scenario belongs to an exam that is going on',
  notShown: 'This scenario is not shown while the exam is going on',
  workshopShut: 'The workshop is closed while an exam is going on',
  notTold: 'What this run was worth is told when the exam is handed in',
  toExam: 'To the exam',
} as const;
