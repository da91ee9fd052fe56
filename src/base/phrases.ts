/**
 * What may stand in a file, and what was wanted there, as data: a kind with its numbers. No room that reads files has a sentence of its own; a language makes one
 * of each kind (`src/words/phraseWords.ts`).
 *
 * Over 300 lines: it is one table, a line for each kind.
 */

/** What an amount is measured in, as files have it: SI units and the trade's own. '' is a number by itself. */
export type Unit = '' | 'Hz' | 'F' | 'H' | '\u03a9' | 'S' | 'A' | 'V' | 'dB' | 'turns' | 'seconds' | 'degrees';

/** A phrase inside another. */
export interface Inner {
  readonly phrase: Phrase;
}

type Choices = readonly (string | number)[];
type Names = readonly string[];

/** Of any value. */
interface ValuePhrases {
  nothing: [];
  none: [];
  /** in quotes, as JSON writes it */
  named: [text: string];
  /** as it stands in a deck */
  quoted: [text: string];
  /** as it stands in the file: true, null, a hash */
  written: [text: string];
  amount: [value: number, unit: Unit];
  stretch: [from: number, to: number, unit: Unit];
  listOf: [count: number];
  anObject: [];
  characters: [count: number];
  moreProblems: [];
  twice: [of: Inner];
  eachOnce: [];
  oneOf: [choices: Choices, unit: Unit];
  /** already put into words by whoever asks */
  said: [text: string];
}

/** What the shape of a file wants. */
interface ShapePhrases {
  from: [least: number, most: number, unit: Unit];
  wholeFrom: [least: number, most: number, unit: Unit];
  multipleOf: [step: number, unit: Unit];
  yesOrNo: [];
  text: [most: number];
  noteText: [];
  fileId: [];
  shortId: [];
  elementName: [];
  nodeName: [];
  languageTag: [];
  languagesAtMost: [most: number];
  deckFile: [];
  listFrom: [least: number, most: number];
  oneForEach: [count: number];
  minutesTogether: [minutes: number];
  minutesAtMost: [minutes: number];
  atMost: [most: number];
  slugsAtMost: [most: number];
  cardCode: [];
  hash: [];
  seal: [];
  twoHashes: [];
  isoDay: [];
  controlValue: [];
  anotherValue: [];
  key: [key: string];
  keyTwice: [key: string];
  anotherKey: [];
  formatKeys: [keys: Names];
  valueFor: [key: string];
  keys: [count: number];
  longKey: [characters: number];
  moreValues: [most: number];
  deeper: [];
  levelsAtMost: [most: number];
  charactersAtMost: [most: number];
  aList: [];
  kindOfValue: [type: string];
}

/** Of the format and the version that a file says it has. */
interface FormatPhrases {
  ofFormat: [format: string];
  noFormat: [];
  noVersion: [];
  version: [version: number];
  versionAtMost: [version: number];
  versionAtLeast: [version: number];
}

/** Of JSON text. */
interface JsonPhrases {
  endOfText: [];
  sign: [sign: string];
  moreInString: [most: number];
  shorter: [];
  restOfString: [];
  fourHex: [];
  knownEscape: [];
  wholeSign: [];
  digit: [];
  heldNumber: [];
  value: [];
  listLonger: [most: number];
  shorterList: [];
  objectLonger: [most: number];
  fewerKeys: [];
  keyInQuotes: [];
  colon: [];
  commaOrListEnd: [];
  commaOrObjectEnd: [];
  smallerFile: [];
  moreLevels: [most: number];
  flatterFile: [];
  nothingAfter: [];
  moreSuchKeys: [];
}

export type ElementLetter = 'R' | 'L' | 'C' | 'K' | 'G' | 'I';
/** Why a number of a deck may not be what it seems. */
export type NumberHint = 'none' | 'mil' | 'atto';

/** Of a circuit deck. */
interface DeckPhrases {
  valueOfType: [type: string];
  deckText: [];
  charactersInLine: [most: number];
  plusFirst: [];
  lineToContinue: [];
  afterEnd: [text: string];
  commentsAfterEnd: [];
  nothingAfterEnd: [];
  publishedSubset: [];
  deckCutOff: [];
  deckEnd: [];
  noElements: [];
  someElement: [];
  /** a node with nothing on it but one end of a part */
  looseNode: [node: string, element: string];
  twoOnNode: [];
  dotLines: [];
  secondAcLine: [];
  oneAcLine: [];
  acWords: [count: number];
  acShape: [];
  pointsFrom: [least: number, most: number];
  hertzAboveZero: [];
  hertzNotBelow: [];
  nothingAfterPrint: [];
  printShape: [];
  noOutputs: [];
  outputAfter: [command: string];
  outputShape: [];
  elementInOutput: [name: string, output: string];
  nodeInOutput: [name: string, output: string];
  elementOfDeck: [];
  nodeOfDeck: [];
  elements: [count: number];
  veryMany: [];
  nodesBesides: [count: number];
  secondElement: [name: string];
  coilNamed: [name: string];
  inductorOfDeck: [];
  coilWithItself: [name: string];
  twoCoils: [];
  secondCoupling: [one: string, other: string];
  pairOnce: [];
  negativeEnergy: [coils: Names];
  positiveDefinite: [];
  anElement: [];
  elementLetters: [];
  endOfLineAfter: [text: string];
  elementShape: [letter: ElementLetter, hint: NumberHint];
  nothingMore: [letter: ElementLetter];
  nodeLetters: [];
  deckValue: [least: number, most: number, unit: Unit, hint: NumberHint];
  deckSiemens: [least: number, most: number, hint: NumberHint];
  deckCoupling: [hint: NumberHint];
  directAmps: [hint: NumberHint];
  alternatingAmps: [hint: NumberHint];
  phase: [hint: NumberHint];
  floating: [nodes: Names, more: boolean];
  pathToGround: [];
  notFixed: [node: string];
  oneSolution: [];
}

/** Of a receiver, its deck and its design. */
interface ReceiverPhrases {
  ground: [node: string];
  notGround: [];
  nodeOf: [deck: string];
  ofDeck: [letter: ElementLetter];
  namedKind: [name: string, letter: ElementLetter];
  partOfDeck: [];
  elementAtNode: [node: string];
  atControlOf: [stage: string];
  namedValue: [name: string, value: number, unit: Unit];
  moreThanBias: [least: number];
  moreThanBiasOf: [least: number, stage: string];
  nothingAbout: [name: string];
  stageForEvery: [];
  valueInDeck: [value: number, unit: Unit, element: string];
  couplingOf: [coil: string];
  ownCoupling: [];
  shareBelowOne: [coupling: string];
  beside: [id: string, other: string];
  moreThanCapitals: [];
  slugs: [count: number];
  slugsForLetters: [most: number];
  threeHenries: [least: number, nominal: number, most: number];
  nominalBetween: [];
  trapFrequency: [];
  noTrap: [];
  windingTwice: [element: string];
  windingOnce: [];
  earths: [count: number];
  exactlyOne: [];
  reservedEnd: [];
  deckNode: [];
  nullForFm: [];
  nullForRole: [role: string];
  noReservoir: [];
  fmPointsOnly: [];
  signalOnly: [];
  wayIn: [];
  detectorName: [];
  lawFor: [line: string];
  stageOnLine: [];
  voltsWithSign: [];
  noLawFor: [line: string];
  lawForEvery: [];
  outOfOrder: [];
  rising: [];
  sCurveWanted: [];
  noSign: [];
  sCurve: [];
  signOf: [volts: number];
  videoCarrier: [];
  nullForSweep: [];
  noVideoFeed: [];
  asConverter: [value: Inner];
  oscillatorNodeOnly: [];
  insideSweep: [least: number, most: number];
  showsNode: [node: string, point: string];
  lessNode: [plus: string, minus: string];
  twoNodesOf: [point: string];
  reservoir: [];
  noReservoirWanted: [];
  noStepFor: [slugs: Names];
  everySlug: [];
  spot: [x: number, y: number];
  onPlan: [width: number, height: number];
  trapSharesCan: [];
  bothCans: [];
  secondHole: [hole: string];
  topAndBottom: [];
  holesApart: [distance: number];
  holesAtLeast: [distance: number];
  liveCorner: [];
  noMains: [];
  drawnOver: [one: DrawnThing, oneName: string, other: DrawnThing, otherName: string];
  freePlace: [];
  lowerFirst: [];
  targetBetween: [low: number, high: number];
  widthAboveNothing: [];
  levelAboveNothing: [];
  toleranceAboveNothing: [];
  halfCentre: [];
  wholeCentre: [];
  weightsOfNothing: [];
  someWeight: [];
  levelFromNothing: [];
  noRoom: [];
  lowBelowHigh: [];
  nothingOnSCurve: [];
  demands: [];
  emptyOnSCurve: [];
  partFor: [letter: ElementLetter, least: number, most: number, unit: Unit, lowHz: number, highHz: number];
  detuned: [coil: string, henries: number, across: Names, farads: readonly number[], hz: number];
  tunedFrom: [least: number, most: number];
  designGives: [line: SheetLine, hz: number, toHz: number | null, measured: number, unit: Unit];
  designMeets: [low: number | null, high: number | null, unit: Unit];
  designAbove: [line: SheetLine, hz: number, measured: number, unit: Unit, spareDb: number];
  /** null: there is no limit that it meets */
  canFail: [mostDb: number | null];
  alwaysMet: [line: SheetLine, hz: number];
  trapUnseen: [hz: number];
  trapTakesNothing: [hz: number, slug: string];
  notchFrequency: [];
  /** `lag`: of the curve's narrowest width */
  sweepLate: [spanHz: number, lag: number];
  /** `slow`: the sheet asks for the slow sweep already */
  calmSweep: [mostHz: number, slow: boolean];
}

export type DrawnThing =
  | ('valve' | 'electrolytic' | 'can' | 'transformer' | 'box' | 'resistor')
  | ('slugCan' | 'trap' | 'letter' | 'testPoint');

/** A line of a sheet by what it asks. */
export type SheetLine =
  | ('point' | 'window' | 'tilt' | 'trap' | 'notch' | 'skirt' | 'bandwidth' | 'centre' | 'peak')
  | ('gain' | 'zero' | 'separation' | 'symmetry' | 'linearity' | 'polarity');

/** Of a scenario, its receiver and its folder. */
interface ScenarioPhrases {
  weightsSum: [sum: number];
  weightsWanted: [];
  noProof: [];
  otherScenarios: [];
  aidsSealed: [];
  bothFalse: [];
  onlySealedWithSet: [];
  noHints: [];
  someHint: [];
  atLeastPar: [seconds: number];
  /** a level of the file, what a certificate may say of it, and what it says */
  difficultyBeside: [level: number, least: number, most: number, certified: number];
  ownLanguage: [];
  otherLanguages: [];
  texts: [count: number];
  textsAsOwn: [count: number];
  nothingFor: [id: string];
  textForEach: [];
  idsOfFile: [];
  anotherChoice: [];
  insideTravel: [least: number, most: number];
  atMostRoom: [turns: number];
  lineBeside: [lead: string];
  noPart: [fault: string, part: string];
  partInTray: [];
  faultTwice: [fault: string, part: string | null];
  faultOnce: [];
  faultBeside: [fault: string, other: string];
  oneOfTheTwo: [];
  faultOfNothing: [fault: string];
  faultThatChanges: [];
  bypassAsFeedback: [];
  bypassOrShield: [];
  faultAdds: [fault: string, element: string];
  deckWithout: [element: string];
  noCircuit: [because: Inner];
  stillCircuit: [];
  noSuchFile: [];
  deckNamedBy: [file: string];
  folderName: [];
  idInTrack: [id: string, track: string];
  fileNamed: [name: string];
  attempt: [];
  idOfCourse: [id: string];
  linkOfOtherKind: [];
  linkSigns: [];
  linkBroken: [];
  moreUnpacked: [bytes: number];
  wholeLink: [];
  idOfOwn: [];
  courseChanged: [id: string];
  base64Url: [];
  dealOfCandidate: [candidate: string];
  asCourse: [];
  receiverOfBench: [id: string];
  receiverAsBench: [];
  laterScenario: [id: string];
  lowerOrder: [];
  comesAfterThis: [id: string];
  noRound: [];
  orderIn: [order: number, track: string];
  setMisses: [set: number, draws: number, line: SheetLine, hz: number, toHz: number | null, response: string];
  setThatAligns: [];
  attemptFails: [attempt: number, ideas: number];
  anotherNumber: [];
  certifiable: [];
  receiverHere: [];
}

export interface Phrases
  extends ValuePhrases,
    ShapePhrases,
    FormatPhrases,
    JsonPhrases,
    DeckPhrases,
    ReceiverPhrases,
    ScenarioPhrases {}

export type PhraseKind = keyof Phrases;
export type Phrase = { readonly [K in PhraseKind]: readonly [kind: K, ...of: Phrases[K]] }[PhraseKind];
