/** English: everything that the command line says of its own accord, beside what the pages say. */

import { en } from './index.ts';
import { format } from './numbers.ts';

const ELEMENTS = { one: 'element', other: 'elements' };
const NODES = { one: 'node', other: 'nodes' };
const SLUGS = { one: 'slug', other: 'slugs' };
const EVENTS = { one: 'event', other: 'events' };
const TURNS = { one: 'turn', other: 'turns' };
const ACTS = { one: 'action', other: 'actions' };
const TOLERANCES = { one: 'tolerance', other: 'tolerances' };

const programWords = {
  summary: 'Haystack without the page: the same circuits, checks and grading from a terminal.',
  exitCodes:
    'Exit codes: 0 all well; 1 a file has problems, or a run is not verified; 2 the command was used wrongly, or a file that it names is not there.',
  help: 'shows this help',
  helpOf: 'shows help for one command',
  error: (message: string): string => `error: ${message}`,
  unknownCommand: (given: string, known: readonly string[]): string =>
    `unknown command "${given}", wanted one of ${known.join(', ')}`,
  unknownOption: (command: string, given: string, known: readonly string[]): string =>
    `${command}: unknown option "${given}", wanted one of ${known.join(', ')}`,
  missingArgument: (command: string, wanted: string): string => `${command}: found no argument, wanted ${wanted}`,
  bareOption: (command: string, wanted: string): string =>
    `${command}: found an option without its value, wanted ${wanted}`,
  missingOption: (command: string, wanted: string): string =>
    `${command}: an option that it needs is missing, wanted ${wanted}`,
  tooManyArguments: (command: string, given: number, wanted: readonly string[]): string =>
    wanted.length === 0
      ? `${command}: found too many arguments (${given}), wanted none`
      : `${command}: found too many arguments (${given}), wanted ${wanted.join(' ')} alone`,
  otherUse: (message: string): string => message,
} as const;

const responseWords = {
  summary: 'solves a deck and prints the response at a node as CSV: hz,re,im (volts, 12 significant digits)',
  deck: 'circuit deck',
  node: 'node of the deck at which to look',
  from: 'lowest frequency, hertz; SPICE suffixes such as 41meg may be used (default: the deck’s .ac line)',
  to: 'highest frequency (default: the deck’s .ac line)',
  points: 'number of frequencies, evenly spaced (default: the deck’s .ac line)',
  noAcLine: 'The deck has no .ac line: give --from, --to and --points.',
  badHz: (option: string, given: string): string =>
    `${option} takes a frequency above zero and up to 1e12 hertz, such as 455k or 45.75e6, not "${given}".`,
  badPoints: (most: number, given: string): string =>
    `--points takes a whole number from 1 to ${most}, not "${given}".`,
  tooManyPoints: (points: number, most: number): string =>
    `The deck’s .ac line asks for ${points} points; at most ${most} are solved. Give --points.`,
  backwards: (fromHz: number, toHz: number): string =>
    `--from must not lie above --to: ${fromHz} is above ${toHz} hertz.`,
  onePoint: (fromHz: number, toHz: number): string =>
    `With one point, --from and --to must be the same, not ${fromHz} and ${toHz} hertz.`,
} as const;

const checkWords = {
  summary: 'reads decks, receivers, scenarios, run files and certificates and lists every problem in them',
  files: 'files to read, and folders of them; in a folder the scenarios are held against each other, too',
  nothing: 'no deck and no .json file in this folder',
  something: 'decks, receivers, scenarios, run files or certificates',
  uncertified: (file: string): string => `note  ${file}  (no certificate: haystack certify --write ${file} makes one)`,
  deck: (elements: number, nodes: number): string =>
    `deck, ${format.counted(elements, ELEMENTS)}, ${format.counted(nodes, NODES)}`,
  receiver: (slugs: number): string => `receiver, ${format.counted(slugs, SLUGS)}`,
  scenario: (receiver: string): string => `scenario on ${receiver}`,
  sealedEvening: (scenarios: number): string =>
    `sealed evening sheet, ${format.counted(scenarios, { one: 'scenario', other: 'scenarios' })}`,
  runs: (runs: number): string => `runs of an exam, ${format.counted(runs, { one: 'run', other: 'runs' })}`,
  evening: (scenarios: number): string =>
    `evening sheet, ${format.counted(scenarios, { one: 'scenario', other: 'scenarios' })}`,
  certificate: (scenario: string): string => `certificate of ${scenario}`,
  run: (events: number, scenario: string): string => `run file, ${format.counted(events, EVENTS)} on ${scenario}`,
  ok: (file: string, what: string): string => `ok  ${file}  (${what})`,
} as const;

const sheetWords = {
  summary:
    'makes a service sheet from a deck and what a receiver file says of slugs and test points, as the workshop does, and prints the receiver file to be kept',
  deck: 'circuit deck',
  receiver:
    'receiver file, which may leave out whatever can be worked out (default: receiver.json beside the deck; without one, what the deck says alone)',
} as const;

const upgradeWords = {
  summary: 'writes scenario files of an older version anew, as files of today',
  files: 'scenario files',
  done: (file: string): string => `upgraded  ${file}`,
  already: (file: string): string => `as it is  ${file}`,
} as const;

const regradeWords = {
  summary: 'repeats runs from their events and compares each with the score that it claims',
  run: 'run files, and folders of them; - takes one run, or one file name, a line and answers with one line of JSON each',
  csv: 'print a table: file,learner,scenario,verdict,passed,points,reason,sameAs',
  jsonl: 'print one line of JSON for each run',
  json: 'print one JSON value and nothing else',
  scenario:
    'the scenario as it was handed out, its file or its id (default: the one that each run names, as it is in scenarios/)',
  besideOption:
    'receivers, scenarios and evening sheets of your own that were handed out, a file or a folder; give it once for each',
  phraseOption:
    'the phrase that opens a sealed sheet among them; give it once for each, or set HAYSTACK_PHRASE, so that it stands in no list of commands',
  sealedSheet: 'a sealed sheet',
  wrongPhrase: 'a sealed sheet that the phrase does not open, or a file that was changed on its way',
  phraseWanted: 'its phrase, by --phrase or in HAYSTACK_PHRASE',
  notBeside: 'none of these',
  beside: 'a receiver, a scenario or an evening sheet',
  jobs: 'number of processes (default: one for each processor)',
  oneForm: 'Give one of --csv, --jsonl and --json.',
  badJobs: (given: string): string => `--jobs takes a whole number from 1 to 99, not "${given}".`,
  linesAlone: 'With - there are no other files, and the answer is always one line of JSON for each run.',
  noScenario: (given: string): string =>
    `--scenario takes a file, or the id of a scenario in scenarios/: there is neither called "${given}".`,
  noRuns: 'no .json file in this folder',
  runs: 'run files',
  giveScenario: 'Give the one that was handed out by --scenario, or what was handed out by --beside.',
  line: (number: number): string => `line ${number}`,
  progress: (done: number, all: number): string => `${done} of ${all}`,
} as const;

const curveWords = {
  summary: 'draws the response of a scenario as found, or of a run as found and as left, relative to its own peak',
  file: 'scenario or run file',
  response: 'which response of the service sheet (default: the first that the scenario is about)',
  oneOf: (known: string): string => `one of ${known}`,
  svg: 'write a drawing to this file',
  csv: 'write a table to this file: hz,start,after,wanted (levels to 1, an S-curve with its sign; a scenario has no after). Without --svg and --csv it is printed',
  impossible: (index: number, reason: string): string => `event ${index + 1}, which the bench refuses (${reason})`,
  possible: 'events that can happen on this bench',
  start: 'as found',
  after: 'as left',
  wanted: 'as designed',
  megahertz: 'MHz',
  kilohertz: 'kHz',
  volts:
    'print hz,volts instead: the volts at the Y lead with the bench set up as the sheet says and the source standing still at each frequency of --hz (scenarios only)',
  voltsHz: 'with --volts: frequencies in hertz, separated by commas; SPICE suffixes such as 10.7meg may be used',
  voltsNeedHz: '--volts needs --hz with one or more frequencies.',
  onlyWithVolts: '--hz, --seed and --standing go with --volts.',
  notOfRun: '--receiver goes with a scenario; a run file names the receiver that it was made on.',
  notWithVolts: '--response, --svg and --csv do not go with --volts, which prints its table.',
  tooManyHz: (most: number, given: number): string => `--hz takes at most ${most} frequencies, not ${given}.`,
} as const;

const deckWords = {
  summary:
    'prints the set on the bench, connected as its sheet says, as a SPICE deck for ngspice -b; out is the end of the Y lead',
  file: 'scenario file',
  hz: 'where the source stands still, hertz; SPICE suffixes such as 10.7meg may be used',
  seed: 'number of the set of this design to put on the bench (default: the one that the scenario names)',
  standing:
    'found: as the scenario starts, with its faults; best: nothing failed and every slug where this set wants it (default: found)',
  badHz: (given: string, least: number, most: number): string =>
    `--hz takes frequencies that the source of the bench reaches, from ${least} to ${most} hertz, such as 455k or 45.75e6, not "${given}".`,
  badSeed: (given: string, most: number): string => `--seed takes a whole number from 0 to ${most}, not "${given}".`,
  badStanding: (given: string, known: readonly string[]): string =>
    `--standing takes ${known.join(' or ')}, not "${given}".`,
  videoSweep: (title: string): string => `"${title}", which is measured with a modulated carrier`,
  plainSweep: 'a response that is measured with a plain carrier',
  nothingSeen: (title: string): string => `"${title}", whose leads bring nothing to the tube`,
  something: 'a response that the tube can show',
  title: (set: string, scenario: string): string => `${set}, scenario ${scenario}`,
  number: (set: number): string => `set number ${set} of the design`,
  design: 'the design itself, every part as printed',
  found: 'as found: slugs as the scenario starts, with its faults',
  best: 'at its best: nothing failed, every slug where this set wants it',
  setUp: (title: string, levelDb: number, hz: number): string =>
    `Sheet: ${title}; attenuator at ${levelDb} dB, source standing still at ${hz} Hz`,
  bias: (line: string, volts: number): string => `Bias: ${line} at ${volts} V`,
  parts:
    'The set and what the leads put across it. A stage gives Is tanh(v / Vs), with Is the gm at this bias times Vs.',
  mixer: (oscillatorHz: number): string =>
    `Mixer: signal times oscillator at ${oscillatorHz} Hz. A product holds half in the difference and half in the sum, so the factor 2 makes the difference come out whole.`,
  diode: (id: string): string => `Detector ${id}: diode without series resistance or capacitance, and its load`,
  difference: 'FM detector: the difference of its two halves',
  reservoir: (seconds: number): string =>
    `Ratio detector: half the held sum times difference over sum. The reservoir, ${seconds} s here as 1 ohm and a capacitor, begins full: the run is too short to fill it.`,
  loop: 'A loose loop: it sees the node without loading it.',
  probe: 'The probe: its diode and load; out is what it hands to the tube.',
  tip: 'The Y lead: isolating resistor in its tip, capacitance of its cable',
  length: (circuits: number, lacking: number, constants: number, load: number): string =>
    `Length: after ${circuits} s the circuits lack less than ${lacking} of the highest carrier; then ${constants} time constants of the slowest load (${load} s); the last tenth of the run stands still.`,
  steps: (steps: number): string =>
    `Steps: ${steps} a period of the carrier, so that the trapezoidal rule moves the circuits by little against their width.`,
} as const;

type LineUnit = 'ratio' | 'db' | 'hz';

/** What a line of the sheet measures, to four figures. */
const ofLine = (value: number, unit: LineUnit): string =>
  unit === 'hz'
    ? format.quantity(value, 'Hz', 4)
    : `${format.atMost(Number(value.toPrecision(4)), 6)}${unit === 'db' ? ' dB' : ''}`;

const certifyWords = {
  summary: 'says whether a scenario can be solved through the bench, by which route, and what par is',
  files: 'scenario files',
  json: 'print one JSON array and nothing else',
  write:
    'put the certificate, with the measured par in it, into certificates/, and that par into the scenario file where it has one',
  scenarioOnly: 'haystack-scenario',
  ok: (file: string, turns: number, seconds: number, difficulty: number, line: string): string =>
    `ok  ${file}  (par ${format.counted(turns, TURNS)}, ${seconds} s; difficulty ${difficulty}; ${line})`,
  narrowest: (response: string, line: string, spare: number): string =>
    `narrowest line ${response} ${line}, ${spare} of a tolerance inside`,
  lineAt: (response: string, line: string, measured: number, unit: LineUnit): string =>
    `${response} ${line} at ${ofLine(measured, unit)}`,
  between: (low: number | null, high: number | null, excess: number, unit: LineUnit): string =>
    `${low === null ? '' : `at least ${ofLine(low, unit)}`}${low === null || high === null ? '' : ' and '}${high === null ? '' : `at most ${ofLine(high, unit)}`} (${format.counted(excess, TOLERANCES)} outside)`,
  nominal: (line: string): string => `a sound set at its nominal slugs with ${line}`,
  reach: (line: string): string => `no slug setting nearer than ${line}`,
  noSymptom: (part: string): string => `${part}, which slugs alone can make up for`,
  symptom: 'a failed part that shows',
  nothingToDo: 'a set that meets its sheet as it is found, or with an eighth of a turn on one slug',
  somethingToDo: 'something to put right',
  refusal: (act: string, reason: string): string => `the action ${act}, which the bench refuses (${reason})`,
  possible: 'a route of actions that can happen',
  lost: (line: string, share: number): string => `score line ${line} at ${share} of its points by the best route`,
  whole: 'every line of the score within reach',
} as const;

const demonstrateWords = {
  summary: 'does a scenario as a careful technician would, by tube and knobs alone, and grades the run',
  file: 'scenario file',
  out: 'write the run to this file',
  score: (id: string, total: number, word: string, events: number): string =>
    `${id}: ${total} of 100, ${word} (${format.counted(events, ACTS)})`,
  notPassed: 'below the pass line',
} as const;

const fileWords = {
  missing: 'no such file',
  folder: 'a folder',
  special: 'something that is not a plain file',
  unwritable: (reason: string): string => `a place that cannot be written (${reason})`,
  file: 'a file',
  writable: 'a place that can be written',
  neither: 'neither a deck nor JSON',
  known: 'a deck (.cir) or a JSON file of a receiver, scenario, run or certificate',
  format: (format: string): string => `format ${format}`,
  noFormat: 'no format',
  formats:
    'haystack-receiver, haystack-scenario, haystack-run, haystack-runs, haystack-evening, haystack-sealed-evening or haystack-certificate',
  scenarioOnly: 'haystack-scenario',
  curveFormats: 'haystack-scenario or haystack-run',
  receiverOption:
    'the receiver file of the scenario\u2019s set, with its deck beside it (default: the one of that name in scenarios/receivers)',
  passedOver: (file: string, id: string, used: boolean): string =>
    `note  ${file}  (a receiver "${id}"${used ? ', other than the one in scenarios/receivers, which is used' : ''}: --receiver ${file} takes it)`,
  noReceivers: 'no receivers in scenarios/receivers',
  noReceiver: (id: string): string => `receiver "${id}"`,
  receivers: (ids: readonly string[]): string => `one of those in scenarios/receivers: ${ids.join(', ')}`,
  node: (node: string): string => `node "${node}"`,
  nodes: (names: readonly string[]): string => `one of ${names.join(', ')}`,
} as const;

export const terminal = {
  ...en,
  cli: {
    program: programWords,
    response: responseWords,
    check: checkWords,
    sheet: sheetWords,
    upgrade: upgradeWords,
    regrade: regradeWords,
    curve: curveWords,
    deck: deckWords,
    certify: certifyWords,
    demonstrate: demonstrateWords,
    files: fileWords,
  },
} as const;

export default terminal;
