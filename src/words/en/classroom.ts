/** Words of the class room: run files that learners handed in, graded again and listed. */
import type { VerdictId } from '../../grading/report.ts';
import type { Outcome } from '../../judge/outcome.ts';
import type { SkillId } from '../../judge/skills.ts';
import { format } from './numbers.ts';

const { counted, plural, atMost, clock, percent } = format;
const FILES = { one: 'file', other: 'files' };
const LEARNERS = { one: 'learner', other: 'learners' };
const RUNS = { one: 'run', other: 'runs' };

const outcomeNames: Readonly<Record<Outcome, string>> = {
  verified: 'verified',
  altered: 'altered',
  unfinished: 'unfinished',
  otherScenario: 'other scenario',
  otherRules: 'other rules',
  impossible: 'impossible pace or action',
  unreadable: 'not ours',
};

const skillNames: Readonly<Record<SkillId, string>> = {
  safe: 'Make safe',
  leads: 'Connect',
  setUp: 'Set-up, level',
  traps: 'Traps',
  curve: 'Shape of the curve',
  faults: 'Fault finding',
  proofs: 'Proofs',
  slugs: 'Care of slugs',
  economy: 'Turns and time',
};

const verdictNames: Readonly<Record<VerdictId, string>> = {
  aligned: 'Aligned',
  true: 'True',
  proved: 'Proved',
  safe: 'Safe',
};

export const classroomWords = {
  title: 'Class',
  what: 'Run files of a whole class, graded again here and listed: who passed, what each lost, and which file is not what it says.',
  how: 'Learners save theirs with Export run file on the report. Drop the files below, or the folder they are in; nothing is sent anywhere.',
  handedIn: (files: number, learners: number): string => `${counted(files, FILES)}, ${counted(learners, LEARNERS)}`,
  csv: 'CSV',
  csvLong: 'Save the table as a CSV file',
  csvName: 'class.csv',
  print: 'Print',
  add: 'Add run files',

  files: 'Run files',
  drop: 'Drop run files here',
  dropMore: 'or a folder of them',
  chooseFiles: 'Choose files',
  chooseFolder: 'Choose a folder',
  grading: (done: number, all: number): string => `Grading again: ${done} of ${all}`,
  gradingNow: (file: string): string => `${file}, repeating every action`,
  graded: (all: number): string => `${counted(all, FILES)} graded.`,
  stop: 'Stop',
  goOn: 'Go on',
  stopped: (left: number): string => `Stopped. ${counted(left, FILES)} still to be graded.`,
  clear: 'Clear the list',
  toldApart: 'By state',
  note: 'Nothing leaves this browser. Every run is graded again from its actions; the points in the file are not believed.',
  tooMany: (given: number, most: number): string =>
    `${counted(given, FILES)} at once is more than this page can take. Bring at most ${most}.`,
  leftAlone: (count: number, names: readonly string[]): string =>
    `${counted(count, FILES)} in the folder ${plural(count, { one: 'does', other: 'do' })} not end in .json and ${plural(count, { one: 'was', other: 'were' })} left alone: ${names.join(', ')}${names.length < count ? ' and more' : ''}.`,
  noRuns: (folder: string): string => `${folder}: no .json file in this folder.`,
  notFiles: 'What was dropped is not a file. Drop run files, or the folder they are in.',
  notHad: (reason: string): string => `A file could not be read (${reason}). Bring it once more.`,
  hereAlready: (count: number): string =>
    `${counted(count, FILES)} ${plural(count, { one: 'is', other: 'are' })} here already.`,

  strangers: (count: number, names: readonly string[]): string =>
    `${counted(count, FILES)} in the folder ${plural(count, { one: 'is a scenario, a sheet or a receiver', other: 'are scenarios, sheets or receivers' })}, not a run: ${names.join(', ')}${names.length < count ? ' and more' : ''}. Files among the runs may come from anybody. If you handed it out yourself, bring it separately.`,
  handedOut: 'Handed out by you',
  takeBackNamed: (title: string): string => `Remove ${title}`,
  whatToDrop:
    'A run on a scenario of the course is checked against the course only. If you handed this one out yourself, bring its file here separately, or the sheet it was on; a receiver of your own comes inside the sheet, or as its two files. The run is then graded once more.',
  sealed: {
    title: 'Sealed sheets',
    why: 'Type the phrase that the sheet was sealed with. What is inside then counts as handed out by you. The phrase is not kept.',
  },
  deckMissing: (deck: string): string => `A receiver comes with its deck. Bring ${deck} along with it.`,
  receiverMissing: 'A deck alone is no receiver. Bring its receiver file along with it.',

  exams: {
    title: 'Exams',
    columns: {
      candidate: 'Candidate',
      exam: 'Exam',
      passed: 'Passed',
      mark: 'Pass mark',
      whole: 'Whole exam',
      points: 'Points',
    },
    standing: { passed: 'passed', missed: 'not passed', unsure: 'see same actions', noMark: 'no mark' },
    late: 'a run over its time',
    byFile: 'as the file says',
    byFileNote:
      'Scenarios, times and pass mark are taken from the candidate’s own file. Bring the sheet here separately, and they are taken from that.',
    noTerms: 'This file does not say what the sheet asks. Bring the sheet here separately.',
  },

  outcomes: outcomeNames,
  sameActs: 'same actions',
  sameAs: (no: number): string => `same actions as ${no}`,
  waiting: 'waiting',

  runs: 'Runs',
  allLearners: 'All learners',
  allScenarios: 'All scenarios',
  learnerFilter: 'Whose runs',
  scenarioFilter: 'Which scenario',
  best: 'Best of each',
  everyRun: 'Every run',
  shown: (shown: number, all: number): string =>
    shown === all ? counted(all, FILES) : `${shown} of ${counted(all, FILES)} shown`,
  rowsFrom: (from: number, to: number, all: number): string => `${from} to ${to} of ${all}`,
  earlier: 'Rows before',
  later: 'Rows after',
  none: 'No run files yet.',
  nobody: 'no name',
  columns: {
    no: 'No.',
    learner: 'Learner',
    scenario: 'Scenario',
    points: 'Points',
    turns: 'Turns',
    time: 'Time',
    state: 'State',
    note: 'Note',
  },
  sortBy: (column: string): string => `Sort by ${column}`,
  verdicts: verdictNames,
  yes: 'yes',
  no: 'no',
  notJudged: 'not judged',
  ofPar: (ratio: number): string => `\u00d7${format.written(ratio, 1)}`,
  clock,
  open: (learner: string, no: number): string => `Row ${no}, ${learner}: open`,

  lost: (points: number): string => `Lost: ${atMost(points, 1)} ${plural(points, { one: 'point', other: 'points' })}`,
  lostLine: (points: number): string => `\u2212${atMost(points, 1)}`,
  looking: 'Grading the run to draw it…',
  tubeAtEnd: 'The tube as the bench was left.',
  nothingLost: 'No line lost a point.',
  lineAt: (label: string, frequency: string): string => `${label}, ${frequency}`,
  report: 'Report and replay',
  saveFile: 'Save the file',
  takeAway: 'Remove',
  yourNote: (learner: string): string => `Your note on ${learner}`,
  noteKept: 'Kept in this browser and printed with the list.',
  file: 'File',
  day: 'Signed off on',

  skills: 'Skills',
  average: 'average of the runs listed',
  skillNames,
  share: (share: number): string => percent(share),
  noAverage: 'No verified run to make an average of.',
  counted: (runs: number): string =>
    `Over ${counted(runs, RUNS)}: those verified or graded by other rules, with copies counted once.`,
  commonest: 'Commonest lost lines',
  lostOf: (lost: number, all: number): string => `${lost} of ${all}`,
  noneLost: 'No line is lost yet.',
  evening: 'Notes on the class',
  eveningKept: 'kept in this browser',

  paperTitle: 'Class list',
  passed: 'Passed',
  reportOf: (file: string): string => `From the class: ${file}`,
  neverSigned: 'Never signed off, so not passed, whatever its points.',
  backToClass: 'Back to the class',
  keepRun: 'Keep in my logbook',
  kept: 'Kept in your logbook.',
  gone: 'This file is not here any more: the list of a class is kept only while the page is open. Bring the file once more.',
} as const;
