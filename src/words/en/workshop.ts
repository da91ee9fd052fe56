/** Words of the workshop, where an instructor makes scenarios. */

import type { FaultKind } from '../../receiver/faults/fault.ts';
import type { SpecItemKind } from '../../receiver/specification.ts';
import type { CardUnit } from '../../workshop/faultCards.ts';
import type { FlawId } from '../../workshop/flaws.ts';
import { eveningWords } from './evening.ts';
import { format } from './numbers.ts';
import { workshopFormWords } from './workshopForm.ts';
import { workshopProofWords } from './workshopProof.ts';

const { counted, quantity, atMost, knob } = format;
const LINES = { one: 'line', other: 'lines' };
const STEPS = { one: 'step', other: 'steps' };
const THINGS = { one: 'thing', other: 'things' };

const faultNames: Readonly<Record<FaultKind, string>> = {
  openResistor: 'Resistor open',
  wrongLoad: 'Resistor of wrong value',
  driftedCapacitor: 'Capacitor drifted',
  openCapacitor: 'Capacitor open',
  shortedTrap: 'Turns shorted',
  openWinding: 'Winding broken',
  crackedSlug: 'Core cracked',
  openCoupling: 'Coupling open',
  swappedTraps: 'Capacitors swapped',
  intermittentJoint: 'Joint comes and goes',
  coldJoint: 'Joint opens when warm',
  weakStage: 'Stage tired',
  leakyCoupling: 'Coupling leaks',
  gassyValve: 'Valve gassy',
  openBypass: 'Bypass open',
  openDecoupling: 'Decoupling open',
  missingShield: 'Screen left off',
  leakyBiasLine: 'Bias line leaks',
  openAgcFilter: 'Bias filter open',
  reversedDiode: 'Diode reversed',
  leakyDiode: 'Diode leaks',
  shortedDiode: 'Diode shorted',
  wrongDetectorLoad: 'Detector load wrong',
  screwedIn: 'All slugs screwed in',
  looseEarth: 'Earth strap loose',
  unmatchedLead: 'RF lead makes no contact',
};

const flawNames: Readonly<Record<FlawId, { readonly name: string; readonly amount: string }>> = {
  phaseLag: { name: 'Sweep lags', amount: 'Lag' },
  xSwapped: { name: 'X lead reversed', amount: '' },
  dialError: { name: 'Marker dial reads low', amount: 'By' },
  centreError: { name: 'Centre dial reads low', amount: 'By' },
  steelIn: { name: 'Steel left in a slug', amount: 'Slug' },
  cold: { name: 'Set is cold', amount: '' },
  noise: { name: 'Noise', amount: 'Times the usual' },
  drift: { name: 'Valves drift as they warm', amount: 'Input capacitance, by' },
  biasHum: { name: 'Hum on the bias', amount: 'Peak' },
  supplyHum: { name: 'Hum on the supply', amount: 'Of the gain' },
  uneven: { name: 'Source uneven', amount: 'By' },
  leakage: { name: 'Source leaks', amount: 'Under full output' },
  harmonic: { name: 'Second harmonic', amount: 'Under the carrier' },
  hand: { name: 'Hand capacitance', amount: 'At the tool' },
  biasKnob: { name: 'Bias knobs read wrong', amount: 'By' },
  yGain: { name: 'Y gain reads wrong', amount: 'By' },
  biasOhms: { name: 'Bias supply soft', amount: 'Its resistance' },
  crystalHarmonics: { name: 'Crystals have harmonics', amount: 'Over the pip itself' },
  strapHum: { name: 'Hum without the strap', amount: 'Volts, peak' },
};

const fieldNames: Readonly<Record<string, string>> = {
  element: 'Part',
  first: 'First part',
  second: 'Second part',
  slug: 'Slug',
  at: 'Line',
  detector: 'Detector',
  from: 'From node',
  to: 'To node',
  ohms: 'Resistance',
  farads: 'Capacitance',
  factor: 'Times',
  volts: 'Volts',
  amps: 'Current',
  seconds: 'Each spell lasts',
  afterSeconds: 'Opens after',
};

const lineKinds: Readonly<Record<SpecItemKind, string>> = {
  point: 'level',
  window: 'ripple',
  tilt: 'tilt',
  trap: 'trap',
  notch: 'notch',
  skirt: 'skirt',
  bandwidth: 'width',
  centre: 'middle',
  gain: 'gain',
  peak: 'top',
  zero: 'zero',
  polarity: 'sense',
  separation: 'peaks apart',
  symmetry: 'symmetry',
  linearity: 'straightness',
};

export const workshopWords = {
  places: 'Parts of the workshop',
  scenario: { tab: 'Scenario', title: 'A scenario of your own' },
  receiver: { tab: 'Receiver', title: 'A receiver of your own' },
  evening: eveningWords,

  what: 'Set the slugs off, add what is wrong, and watch what the learner will see. What you save is the file that learners open.',
  untitled: 'Untitled',
  named: (code: string, title: string): string => `${code} ${title}`,
  kept: 'Draft kept in this browser',
  notKept: 'This browser stores no draft. Save the file before you leave.',
  undo: 'Undo',
  redo: 'Redo',
  undoSteps: (steps: number): string => `Undo, ${counted(steps, STEPS)} back`,
  redoSteps: (steps: number): string => `Redo, ${counted(steps, STEPS)} on`,
  undone: (steps: number): string => `Undone. ${counted(steps, STEPS)} more to undo.`,
  redone: (steps: number): string => `Done again. ${counted(steps, STEPS)} more to do again.`,
  drafts: 'Draft',
  newDraft: 'New draft',
  removeDraft: 'Delete',
  removeAsk: (name: string): string => `Delete ${name}? Its file, if you have saved one, stays.`,
  remove: 'Delete it',
  keepIt: 'Keep it',
  copyOf: 'Begin from a shipped scenario',
  chooseShipped: 'Choose a scenario',
  openFile: 'Open file',
  saveFile: 'Save file',
  saveLong: (file: string): string => `Save file ${file}`,

  setTitle: 'Receiver and slugs',
  receiverField: 'Receiver',
  reading: 'Laying out the set',
  cannotRead: 'This set cannot be laid out.',
  planOf: (set: string): string => `Chassis of ${set}, seen from above`,
  planHow: 'Drag in a circle round a slug, or use the arrow keys: up turns it in, right goes to the next.',
  /** `turns`: the amount without its sign */
  offBy: (turns: string, isIn: boolean): string => `${isIn ? '+' : '\u2212'}${turns}`,
  faultAt: (no: number, fault: string, place: string): string => `${atMost(no, 0)}: ${fault}, at ${place}`,
  step: { in: '1/8 in', out: '1/8 out' },
  stepOf: (slug: string, way: 'in' | 'out'): string => `1/8 ${way}: slug ${slug}`,
  slugsOf: (count: number): string => counted(count, { one: 'slug', other: 'slugs' }),
  setNumber: 'Parts of the set',
  setDesign: 'as printed',
  setDealt: 'dealt from a number',
  setField: 'Set number',
  scatter: 'Scatter',
  scatterNone: 'none',
  scatterTurns: (turns: string): string => `\u00b1 ${turns}`,
  seed: 'Seed',
  anotherSeed: 'Another seed',
  anotherSet: 'Another set',
  slug: (letter: string, label: string): string => `${letter}: ${label}`,
  /** `turns`: the amount without its sign */
  turned: (turns: string, way: 'in' | 'out' | 'none'): string =>
    way === 'none' ? 'right' : way === 'in' ? `${turns} in` : `${turns} out`,
  byScatter: 'by the scatter',
  byHand: 'by hand',
  putRight: 'Put right',
  toScatter: 'Scatter again',
  putRightOf: (slug: string): string => `Put right: slug ${slug}`,
  toScatterOf: (slug: string): string => `Scatter again: slug ${slug}`,

  wrongTitle: 'What is wrong with it',
  inSet: 'In the set',
  inBench: 'On the bench',
  /** a card at nought, of what a usual bench has a little of */
  stilled: 'None at all. A usual bench has a little.',
  nothingWrong: 'Nothing yet, but for how the slugs stand.',
  cardsNow: (names: string): string => `What is wrong with it now: ${names}.`,
  addCard: 'Add a card',
  addToSet: 'To the set',
  addToBench: 'To the bench',
  asLeft: 'As the bench is left',
  addAsLeft: 'How the bench is left',
  addControl: 'A knob or switch',
  chooseControl: 'Choose one',
  leadLeft: (lead: string): string => `${lead.charAt(0).toUpperCase()}${lead.slice(1)} left elsewhere`,
  controlLeft: (panel: string, control: string): string => `${panel}: ${control}`,
  leftAt: 'Left at',
  inTray: 'in the tray',
  more: (count: number): string => `${atMost(count, 0)} more`,
  moreOf: (count: number, of: string): string => `${atMost(count, 0)} more: ${of}`,
  fewer: 'Fewer',
  fewerOf: (of: string): string => `Fewer: ${of}`,
  mostFaults: (most: number): string => `${most} faults in the set: a scenario has no more.`,
  noPlace: (name: string): string => `${name}: beside what is wrong already, this set has no place for it.`,
  takeOff: (name: string): string => `Take off: ${name}`,
  faults: faultNames,
  flaws: flawNames,
  fields: fieldNames,
  value: (name: string): string => `${name}, figure`,
  badAmount: (least: string, most: string): string => `Write a number from ${least} to ${most}, such as 47k or 4.5.`,
  amount: (value: number, unit: CardUnit): string => {
    switch (unit) {
      case '°':
        return knob.degrees(value);
      case '×':
        return `\u00d7 ${atMost(value, 4)}`;
      case 'share':
        return format.percent(value, 1);
      case 'div':
        return `${atMost(value, 2)} div`;
      case 'dB':
        return `${atMost(value, 1)} dB`;
      default:
        return quantity(value, unit, 4);
    }
  },

  seenTitle: 'What the learner will see',
  seenWhen: 'connected and set as the sheet says',
  asHandedOut: 'as handed out',
  asWanted: 'as the sheet wants',
  tube: (wrong: number, all: number): string =>
    `The tube as the set is handed out: ${atMost(wrong, 0)} of ${counted(all, LINES)} of the sheet are wrong. The dashed curve is the one that the sheet wants.`,
  notShown: 'The tube cannot show this draft yet. The reasons are listed below.',
  curve: 'Curve',
  wrongCount: (wrong: number, all: number): string =>
    `${atMost(wrong, 0)} of ${counted(all, LINES)} of the sheet will be wrong`,
  noneWrong: 'Every line of the sheet is met as it is handed out.',
  lineKinds,
  tooLow: 'too low',
  tooHigh: 'too high',
  wants: (limits: string): string => `wants ${limits}`,
  between: (low: string, high: string): string => `${low} to ${high}`,
  atMost: (high: string): string => `${high} at most`,
  atLeast: (low: string): string => `${low} at least`,
  columns: { line: 'Line', where: 'Where', measured: 'Is', wants: 'Wants' },
  level: (ratio: number): string => format.percent(ratio),
  /** of an S-curve, which goes through its zero one way or the other */
  senseWrong: 'the wrong way',
  senseRight: 'the way that the sheet shows',
  decibels: (db: number): string => `${atMost(db, 1)} dB`,
  hertz: (hz: number): string => knob.offset(hz),

  proof: workshopProofWords,
  form: workshopFormWords,

  tryIt: 'Try it',
  tryLong: 'Try it now on the bench, as a scenario of your own',
  tryNot: 'Fix what the file lacks first',

  /** what the workshop calls a place in the file */
  problemFields: {
    '/title': 'Title',
    '/words/brief': 'Brief',
    '/words/story': 'Story',
    '/words/lesson': 'Lesson',
    '/hints': 'Hints',
    '/id': 'Name of the file',
    '/code': 'Card code',
    '/track': 'Track',
    '/author': 'Author',
    '/language': 'Language of the texts',
    '/order': 'Place in the track',
    '/recommendedAfter': 'Best done after',
    '/weights': 'Points',
    '/proofs': 'Proofs',
    '/timeLimitSeconds': 'Time limit',
    '/receiver': 'Receiver',
    '/set': 'Set number',
    '/faults': 'What is wrong with it',
    '/start/slugs': 'Slugs',
  } as Readonly<Record<string, string>>,
  problemIn: (field: string): string => `${field}:`,
  unwritten: 'still to be written',
  problemsTitle: 'What the file lacks',
  noProblems: 'Nothing: the command line will take this file as it is.',
  problemCount: (count: number): string => `${counted(count, THINGS)} to fix before anybody can do it.`,
  brought: (file: string): string => `${file} cannot be opened:`,
} as const;
