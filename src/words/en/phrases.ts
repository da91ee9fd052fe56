/**
 * English: what stood in a file and what was wanted there.
 * Over 300 lines: it is one table, a line for each kind of phrase.
 */
import type { DrawnThing, ElementLetter, NumberHint, SheetLine, Unit } from '../../base/phrases.ts';
import type { PhraseWords } from '../phraseWords.ts';
import { format } from './numbers.ts';

const TURNS = { one: 'turn', other: 'turns' };
const MINUTES = { one: 'minute', other: 'minutes' };
const SECONDS = { one: 'second', other: 'seconds' };
const SLUGS = { one: 'slug', other: 'slugs' };
const KEYS = { one: 'key', other: 'keys' };
const VALUES = { one: 'value', other: 'values' };
const CHARACTERS = { one: 'character', other: 'characters' };
const LEVELS = { one: 'level', other: 'levels' };
const ELEMENTS = { one: 'element', other: 'elements' };
const NODES = { one: 'node', other: 'nodes' };
const POINTS = { one: 'point', other: 'points' };
const [CHOICES_SHOWN, KEYS_SHOWN] = [40, 8];

const inQuotes = (text: string): string => JSON.stringify(text);
/** A bare number is written as in the file, so that it can be found there. */
function amount(value: number, unit: Unit): string {
  switch (unit) {
    case '':
      return String(value);
    case 'turns':
      return format.counted(value, TURNS);
    case 'seconds':
      return format.counted(value, SECONDS);
    case 'degrees':
      return `${format.notNought(value, 2)}\u00b0`;
    case 'dB':
      return `${format.notNought(value, 2)} dB`;
    default:
      return format.quantity(value, unit);
  }
}
/** Where both ends always have the same unit, it is written once. */
function stretch(least: number, most: number, unit: Unit): string {
  const once = unit === 'dB' || unit === 'turns' || unit === 'seconds' || unit === 'degrees';
  return `${once ? format.atMost(least, 3) : amount(least, unit)} to ${amount(most, unit)}`;
}
/** A number that was worked out, to so many digits. */
const about = (value: number, unit: Unit, digits: number): string => amount(Number(value.toPrecision(digits)), unit);
/** A level or a distance that was measured. */
const measured = (value: number, unit: Unit): string =>
  unit === 'Hz' ? about(value, unit, 5) : unit === '' ? format.atMost(value, 3) : amount(value, unit);

const KINDS: Readonly<Record<ElementLetter, string>> = {
  R: 'a resistor',
  L: 'an inductor',
  C: 'a capacitor',
  K: 'a coupling',
  G: 'a transconductance',
  I: 'a current source',
};
const SHAPES: Readonly<Record<ElementLetter, string>> = {
  R: 'R<name> node node ohms',
  L: 'L<name> node node henries',
  C: 'C<name> node node farads',
  K: 'K<name> coil coil coupling',
  G: 'G<name> node node control control siemens',
  I: 'I<name> node node [[DC] amps] [AC [amps [degrees]]]',
};
const HINTS: Readonly<Record<NumberHint, string>> = {
  none: '',
  mil: ' (mil, a thousandth of an inch, is outside the subset)',
  atto: ' (after a number SPICE reads the letter a as 1e-18; it is outside the subset)',
};
const THINGS: Readonly<Record<DrawnThing, string>> = {
  valve: 'the valve',
  electrolytic: 'the electrolytic',
  can: 'the can',
  transformer: 'the transformer',
  box: 'the box',
  resistor: 'the resistor',
  slugCan: 'the can',
  trap: 'the trap',
  letter: 'the letter of',
  testPoint: 'the test point',
};
const LINES: Readonly<Record<SheetLine, string>> = {
  point: 'point',
  window: 'window',
  tilt: 'tilt',
  trap: 'trap',
  notch: 'notch',
  skirt: 'skirt',
  bandwidth: 'bandwidth',
  centre: 'centre',
  peak: 'peak',
  gain: 'gain',
  zero: 'zero',
  separation: 'separation',
  symmetry: 'symmetry',
  linearity: 'straightness',
  polarity: 'sense',
};
const thing = (what: DrawnThing, name: string): string => (name === '' ? THINGS[what] : `${THINGS[what]} ${name}`);
const lineAt = (line: SheetLine, hz: number, toHz: number | null): string =>
  `${LINES[line]} at ${amount(hz, 'Hz')}${toHz === null ? '' : ` to ${amount(toHz, 'Hz')}`}`;

export const phraseWords: PhraseWords = {
  nothing: () => 'nothing',
  none: () => 'none',
  named: inQuotes,
  quoted: (text) => `\`${text}\``,
  written: (text) => text,
  amount,
  stretch,
  listOf: (count) => `a list of ${count}`,
  anObject: () => 'an object',
  characters: (count) => format.counted(count, CHARACTERS),
  moreProblems: () => 'more problems than are listed',
  twice: (of) => `${of} a second time`,
  eachOnce: () => 'each once',
  oneOf: (choices, unit) => {
    if (choices.length === 0) return 'nothing here: there is none to choose';
    const shown = choices.map((one) => (typeof one === 'string' ? inQuotes(one) : amount(one, unit)));
    if (shown.length === 1) return shown[0]!;
    return `one of ${shown.slice(0, CHOICES_SHOWN).join(', ')}${shown.length > CHOICES_SHOWN ? ', ...' : ''}`;
  },
  said: (text) => text,

  from: (least, most, unit) => `${unit === '' ? 'a number from' : 'from'} ${stretch(least, most, unit)}`,
  wholeFrom: (least, most, unit) => `a whole number from ${stretch(least, most, unit)}`,
  multipleOf: (step, unit) => `a multiple of ${amount(step, unit)}`,
  yesOrNo: () => 'true or false',
  noteText: () => 'text, as a note is for people to read',
  text: (most) => `text of 1 to ${most} characters without control characters, not blank`,
  fileId: () => 'lower-case letters and digits in words joined by hyphens, at most 40',
  shortId: () => 'a letter, then letters and digits, at most 12',
  elementName: () => 'the name of a deck element, such as "L1"',
  nodeName: () => 'the name of a deck node',
  languageTag: () => 'the tag of a language, such as "en" or "pt-BR"',
  languagesAtMost: (most) => `at most ${most} languages`,
  deckFile: () => 'the name of a deck beside this file, such as "network.cir"',
  listFrom: (least, most) => (least === most ? `a list of ${least}` : `a list of ${least} to ${most}`),
  oneForEach: (count) => `one for each of the ${count} scenarios`,
  minutesTogether: (minutes) => format.counted(minutes, MINUTES),
  minutesAtMost: (minutes) => `at most ${format.counted(minutes, MINUTES)}`,
  atMost: (most) => `at most ${most}`,
  slugsAtMost: (most) => `at most ${format.counted(most, SLUGS)}`,
  cardCode: () => 'one to three capitals, a hyphen and two digits, such as "S-01"',
  hash: () => '64 hexadecimal digits',
  seal: () => 'a count and three hashes, joined by colons',
  twoHashes: () => 'a count and two hashes',
  isoDay: () => 'a day such as "2026-05-31"',
  controlValue: () => 'a number, true or false, or a short word',
  anotherValue: () => 'another value',
  key: (key) => `the key ${inQuotes(key)}`,
  keyTwice: (key) => `the key ${inQuotes(key)} a second time`,
  anotherKey: () => 'another key',
  formatKeys: (keys) =>
    keys.length > KEYS_SHOWN ? 'only keys that the format has' : `no other keys here than ${format.list(keys)}`,
  valueFor: (key) => `a value for ${inQuotes(key)}`,
  keys: (count) => format.counted(count, KEYS),
  longKey: (characters) => `a key of ${format.counted(characters, CHARACTERS)}`,
  moreValues: (most) => `more than ${format.counted(most, VALUES)}`,
  deeper: () => 'something nested deeper still',
  levelsAtMost: (most) => `at most ${format.counted(most, LEVELS)}`,
  charactersAtMost: (most) => `at most ${format.counted(most, CHARACTERS)}`,
  aList: () => 'a list',
  kindOfValue: (type) => `a value of type ${type}`,

  ofFormat: (name) => `a file of format ${inQuotes(name)}`,
  noFormat: () => 'a file that does not say its format',
  noVersion: () => 'no version that counts',
  version: (version) => `version ${version}`,
  versionAtMost: (version) => `version ${version} or older; this file was made for a newer bench`,
  versionAtLeast: (version) => `version ${version} or newer; older files are no longer read`,

  endOfText: () => 'the end of the text',
  sign: inQuotes,
  moreInString: (most) => `more than ${format.counted(most, CHARACTERS)} in a string`,
  shorter: () => 'a shorter one',
  restOfString: () => 'the rest of a string and its closing quote',
  fourHex: () => 'four hexadecimal digits after \\u',
  knownEscape: () => 'a known escape after the backslash',
  wholeSign: () => 'both halves of a surrogate pair',
  digit: () => 'a digit',
  heldNumber: () => 'a number that can be held',
  value: () => 'a value',
  listLonger: (most) => `a list of more than ${most}`,
  shorterList: () => 'a shorter list',
  objectLonger: (most) => `an object of more than ${format.counted(most, KEYS)}`,
  fewerKeys: () => 'fewer keys',
  keyInQuotes: () => 'a key in double quotes',
  colon: () => 'a colon after the key',
  commaOrListEnd: () => 'a comma or the end of the list',
  commaOrObjectEnd: () => 'a comma or the end of the object',
  smallerFile: () => 'a smaller file',
  moreLevels: (most) => `more than ${format.counted(most, LEVELS)}`,
  flatterFile: () => 'a flatter file',
  nothingAfter: () => 'nothing more after the value',
  moreSuchKeys: () => 'still more such keys',

  valueOfType: (type) => `a value of type ${type}`,
  deckText: () => 'the text of a deck',
  charactersInLine: (most) => `at most ${most} in a line`,
  plusFirst: () => '`+` with no line before it',
  lineToContinue: () => 'a line that it continues',
  afterEnd: (text) => `\`${text}\` after .end`,
  commentsAfterEnd: () => 'nothing but comments after .end',
  nothingAfterEnd: () => 'nothing after .end',
  publishedSubset: () => 'a deck in the published subset',
  deckCutOff: () => 'a deck that does not say where it ends, and may have been cut off',
  deckEnd: () => 'a last line `.end`',
  noElements: () => 'no elements',
  someElement: () => 'at least one element',
  looseNode: (node, element) => `node \`${node}\`, which only ${element} joins`,
  twoOnNode: () => 'at least two parts on every node: is its name misspelt?',
  dotLines: () => 'one of .ac, .print, .save, .end',
  secondAcLine: () => 'a second .ac line',
  oneAcLine: () => 'one .ac line',
  acWords: (count) => `${format.counted(count, { one: 'word', other: 'words' })} after .ac`,
  acShape: () => '.ac lin|dec|oct points from-hertz to-hertz',
  pointsFrom: (least, most) => `a whole number of points, ${least} to ${most}`,
  hertzAboveZero: () => 'a frequency above zero',
  hertzNotBelow: () => 'a frequency not below the first',
  nothingAfterPrint: () => 'nothing after .print',
  printShape: () => '.print ac outputs',
  noOutputs: () => 'no outputs',
  outputAfter: (command) => `at least one output such as v(node) after ${command}`,
  outputShape: () => 'an output such as v(node), vm(node), vp(node), vdb(node) or i(element)',
  elementInOutput: (name, output) => `element \`${name}\` in \`${output}\``,
  nodeInOutput: (name, output) => `node \`${name}\` in \`${output}\``,
  elementOfDeck: () => 'an element of this deck',
  nodeOfDeck: () => 'a node of this deck',
  elements: (count) => format.counted(count, ELEMENTS),
  veryMany: () => 'very many elements',
  nodesBesides: (count) => `${format.counted(count, NODES)} besides ground`,
  secondElement: (name) => `a second element ${name}`,
  coilNamed: (name) => `coil \`${name}\``,
  inductorOfDeck: () => 'the name of an inductor of this deck',
  coilWithItself: (name) => `coil ${name} coupled with itself`,
  twoCoils: () => 'two different coils',
  secondCoupling: (one, other) => `a second coupling of ${one} and ${other}`,
  pairOnce: () => 'each pair of coils coupled once',
  negativeEnergy: (coils) => `couplings of ${coils.join(', ')} that store negative energy`,
  positiveDefinite: () => 'a positive definite inductance matrix',
  anElement: () => 'an element R, L, C, K, G or I',
  elementLetters: () => 'a name of letters, digits and _ . : # - (at most 64)',
  endOfLineAfter: (text) => `the end of the line after \`${text}\``,
  elementShape: (letter, hint) => `${SHAPES[letter]}${HINTS[hint]}`,
  nothingMore: (letter) => `nothing more: ${SHAPES[letter]}`,
  nodeLetters: () => 'a node name of letters, digits and _ . : # + -',
  deckValue: (_least, _most, unit, hint) => `a value above zero that a part can have, in ${unit}${HINTS[hint]}`,
  deckSiemens: (_least, _most, hint) =>
    `a value above zero that a part can have, in S (for the other sign change the nodes round)${HINTS[hint]}`,
  deckCoupling: (hint) => `a coupling between \u22121 and 1${HINTS[hint]}`,
  directAmps: (hint) => `direct current in amps${HINTS[hint]}`,
  alternatingAmps: (hint) => `alternating current in amps, not below zero${HINTS[hint]}`,
  phase: (hint) => `a phase in degrees${HINTS[hint]}`,
  floating: (nodes, more) =>
    `${nodes.length === 1 ? 'node' : 'nodes'} ${nodes.map((node) => `\`${node}\``).join(', ')}${more ? ' and more' : ''} with no path to ground`,
  pathToGround: () => 'a resistor, coil or capacitor from every part of the circuit to node 0',
  notFixed: (node) => `node \`${node}\`, whose voltage the circuit does not fix`,
  oneSolution: () => 'a circuit with one solution (does a G element cancel a resistor?)',

  ground: (node) => `${inQuotes(node)}, which is ground`,
  notGround: () => 'a node that is not ground',
  nodeOf: (deck) => `a node of the deck ${deck}`,
  ofDeck: (letter) => `${KINDS[letter]} of the deck`,
  namedKind: (name, letter) => `${inQuotes(name)}, ${KINDS[letter]}`,
  partOfDeck: () => 'a resistor or capacitor of the deck',
  elementAtNode: (node) => `an element at node ${node}, where the probe rests`,
  atControlOf: (stage) => `an element at the control node of ${stage}`,
  namedValue: (name, value, unit) => `${name} of ${amount(value, unit)}`,
  moreThanBias: (least) =>
    `more than capacitanceFarads of its bias line, ${amount(least, 'F')}, which may go out of it`,
  moreThanBiasOf: (least, stage) => `more than the ${amount(least, 'F')} that the bias of ${stage} may take out of it`,
  nothingAbout: (name) => `nothing about ${name}`,
  stageForEvery: () => 'a stage for every G element of the deck',
  valueInDeck: (value, unit, element) => `${amount(value, unit)}, the value of ${element} in the deck`,
  couplingOf: (coil) => `a coupling (K) of ${coil}`,
  ownCoupling: () => 'a coupling that no other slug moves',
  shareBelowOne: (coupling) => `a share that leaves ${coupling} below 1`,
  beside: (id, other) => `${inQuotes(id)} beside ${inQuotes(other)}`,
  moreThanCapitals: () => 'names that differ in more than capitals',
  slugs: (count) => format.counted(count, SLUGS),
  slugsForLetters: (most) => `at most ${most}: there are no more letters`,
  threeHenries: (least, nominal, most) => [least, nominal, most].map((henries) => amount(henries, 'H')).join(', '),
  nominalBetween: () => 'minHenries below nominalHenries below maxHenries',
  trapFrequency: () => 'the frequency that the trap takes out',
  noTrap: () => 'null, as this slug is no trap',
  windingTwice: (element) => `${element} on a second slug`,
  windingOnce: () => 'each winding on one slug only',
  earths: (count) => `${format.counted(count, POINTS)} of role earth`,
  exactlyOne: () => 'exactly one',
  reservedEnd: () => 'another name: this one means an end of the bench',
  deckNode: () => 'the deck node',
  nullForFm: () => 'null, as an FM detector has two',
  nullForRole: (role) => `null for role ${role}`,
  noReservoir: () => '"output" or "sum", as no reservoir is there to open',
  fmPointsOnly: () => 'nothing: it is for the points of FM detectors',
  signalOnly: () => 'nothing, save for role signal',
  wayIn: () => 'a way in for the RF lead',
  detectorName: () => 'the name of a detector',
  lawFor: (line) => `a law for ${line}`,
  stageOnLine: () => 'at least one stage whose agc names it',
  voltsWithSign: () => 'a voltage with a sign',
  noLawFor: (line) => `no law for ${line}`,
  lawForEvery: () => 'one for every line',
  outOfOrder: () => 'frequencies out of order',
  rising: () => 'rising frequencies',
  sCurveWanted: () => 'an S-curve, as the quantity is a difference',
  noSign: () => 'null, as the quantity has no sign',
  sCurve: () => 'an S-curve',
  signOf: (volts) => `the sign of referenceVolts, ${amount(volts, 'V')}`,
  videoCarrier: () => 'the carrier that the video sweep modulates',
  nullForSweep: () => 'null for source sweep',
  noVideoFeed: () => '"sweep", as there is no videoFeed',
  asConverter: (value) => `${value}, as converter.oscillator says`,
  oscillatorNodeOnly: () => 'nothing, save where the quantity is the carrier at the node of the set’s oscillator',
  insideSweep: (least, most) =>
    `a frequency inside the sweep of the sheet, between ${amount(least, 'Hz')} and ${amount(most, 'Hz')}`,
  showsNode: (node, point) => `${inQuotes(node)}, which ${point} shows`,
  lessNode: (plus, minus) => `${plus} less ${minus}`,
  twoNodesOf: (point) => `the two nodes of the FM detector whose output ${point} shows`,
  reservoir: () => 'the capacitor that holds the sum',
  noReservoirWanted: () => 'null for a discriminator',
  noStepFor: (slugs) => `no step for ${slugs.join(', ')}`,
  everySlug: () => 'every slug in a step',
  spot: (x, y) => `${x}, ${y}`,
  onPlan: (width, height) => `a place on the plan, ${width} by ${height}`,
  trapSharesCan: () => 'a trap that shares a can',
  bothCans: () => 'shape can for both',
  secondHole: (hole) => `a second ${hole} hole`,
  topAndBottom: () => 'top and bottom',
  holesApart: (distance) => `holes ${format.atMost(distance, 1)} apart`,
  holesAtLeast: (distance) => `holes at least ${distance} apart`,
  liveCorner: () => 'a live corner',
  noMains: () => 'null, as the receiver has no mains',
  drawnOver: (one, oneName, other, otherName) => `${thing(one, oneName)} drawn over ${thing(other, otherName)}`,
  freePlace: () => 'a place where nothing else is drawn',
  lowerFirst: () => 'the lower first',
  targetBetween: (low, high) => `a target between low and high, from ${low} to ${high}`,
  widthAboveNothing: () => 'a width above 0, or null',
  levelAboveNothing: () => 'a level above 0',
  toleranceAboveNothing: () => 'a tolerance above 0',
  halfCentre: () => 'half of a demand on the centre',
  wholeCentre: () => 'centreHz and centreToleranceHz, or null for both',
  weightsOfNothing: () => 'weights that sum to 0',
  someWeight: () => 'some weight above 0',
  levelFromNothing: () => 'a level from 0, as this is no S-curve',
  noRoom: () => 'no room',
  lowBelowHigh: () => 'low below high',
  nothingOnSCurve: () => 'nothing, on an S-curve',
  demands: () => 'demands',
  emptyOnSCurve: () => 'an empty list, on an S-curve',
  partFor: (letter, least, most, unit, lowHz, highHz) =>
    `${KINDS[letter]} from ${stretch(least, most, unit)} in a set for ${stretch(lowHz, highHz, 'Hz')}`,
  detuned: (coil, henries, across, farads, hz) => {
    const parts = across.map((name, i) => `${name} (${amount(farads[i]!, 'F')})`);
    return `${coil} (${amount(henries, 'H')}) with ${format.list(parts)}, tuned to ${about(hz, 'Hz', 3)}`;
  },
  tunedFrom: (least, most) =>
    `a tuned circuit from ${about(least, 'Hz', 3)} to ${about(most, 'Hz', 3)}: is a value a thousand times out?`,
  designGives: (line, hz, toHz, value, unit) => `a design whose ${lineAt(line, hz, toHz)} is ${measured(value, unit)}`,
  designMeets: (low, high, unit) => {
    const [least, most] = [low, high].map((one) => measured(one ?? 0, unit));
    const limits = low === null ? `at most ${most}` : high === null ? `at least ${least}` : `${least} to ${most}`;
    return `a design that meets its own sheet: ${limits}`;
  },
  designAbove: (line, hz, value, unit, spareDb) =>
    `a design whose ${lineAt(line, hz, null)} is ${measured(value, unit)}, ${measured(spareDb, 'dB')} above its limit`,
  canFail: (db) => `a line that can fail${db === null ? '' : `: a limit at most ${amount(db, 'dB')} below the design`}`,
  alwaysMet: (line, hz) => `a line that every curve meets: ${lineAt(line, hz, null)}`,
  trapUnseen: (hz) => `${amount(hz, 'Hz')}, which no response of the sheet shows`,
  trapTakesNothing: (hz, slug) => `${amount(hz, 'Hz')}, where ${slug} takes nothing out`,
  notchFrequency: () => 'the frequency of a notch that the trap makes',
  sweepLate: (spanHz, lag) =>
    `${amount(spanHz, 'Hz')}, over which the sweep goes so fast that it shows the curve late by ${format.percent(lag)} of its width`,
  calmSweep: (mostHz, slow) => `at most ${amount(mostHz, 'Hz')}${slow ? '' : ', or the slow sweep'}`,

  weightsSum: (sum) => `a sum of ${format.atMost(sum, 4)}`,
  weightsWanted: () => 'weights that sum to 100',
  noProof: () => '0, as no proof is asked for',
  otherScenarios: () => 'scenarios other than itself',
  aidsSealed: () => 'aids in a sealed scenario',
  bothFalse: () => 'both false',
  onlySealedWithSet: () => 'only in a sealed scenario with `set`',
  noHints: () => 'no hints',
  someHint: () => 'at least one, as aids.hints is true',
  difficultyBeside: (level, least, most, certified) =>
    `${level}, which goes with ${least} to ${most} of 10, where the certificate says ${format.atMost(certified, 1)}`,
  atLeastPar: (seconds) => `at least par, ${amount(seconds, 'seconds')}`,
  ownLanguage: () => 'the language of the file itself',
  otherLanguages: () => 'other languages',
  texts: (count) => format.counted(count, { one: 'text', other: 'texts' }),
  textsAsOwn: (count) => `${count}, as many as the file has itself`,
  nothingFor: (id) => `nothing for ${inQuotes(id)}`,
  textForEach: () => 'a text for each',
  idsOfFile: () => 'ids of this file',
  anotherChoice: () => 'another choice, as the receiver has no part for it',
  insideTravel: (least, most) =>
    `from ${stretch(Number(least.toFixed(2)), most, 'turns')}, so that it stands inside its travel`,
  atMostRoom: (turns) => `at most ${amount(turns, 'turns')}, the room to the nearer stop`,
  lineBeside: (lead) => `another line than ${lead}`,
  noPart: (fault, part) => `${inQuotes(fault)} of ${part}, which is no part of the set`,
  partInTray: () => 'a fault of a part in the tray',
  faultTwice: (fault, part) => `${inQuotes(fault)}${part === null ? '' : ` of ${part}`} a second time`,
  faultOnce: () => 'each kind of fault once for a part',
  faultBeside: (fault, other) => `${inQuotes(fault)} beside ${inQuotes(other)} of the same part`,
  oneOfTheTwo: () => 'one of the two: a part cannot fail in both ways at once',
  faultOfNothing: (fault) => `${inQuotes(fault)} where it changes nothing`,
  faultThatChanges: () => 'a fault that changes the circuit',
  bypassAsFeedback: () => 'an open bypass that feeds back, as earlier files had it',
  bypassOrShield: () => '"ohms" for a bypass that is open, or for such feedback a "missingShield" between its nodes',
  faultAdds: (fault, element) => `${inQuotes(fault)}, which adds ${element} to a deck that has one`,
  deckWithout: (element) => `a deck without an element ${element}`,
  noCircuit: (because) => `a set that is no circuit any more (${because})`,
  stillCircuit: () => 'faults that leave a circuit',
  noSuchFile: () => 'no such file',
  deckNamedBy: (file) => `the deck that ${file} names`,
  folderName: () => 'the name of its folder',
  idInTrack: (id, track) => `id ${inQuotes(id)} in track ${inQuotes(track)}`,
  fileNamed: (name) => `a file named ${name}`,
  attempt: () => 'none: each attempt has its own',
  linkOfOtherKind: () => 'a link that is not packed in a way that this page knows',
  linkSigns: () => 'signs that do not belong in a link',
  linkBroken: () => 'a link that breaks off or was changed on its way',
  moreUnpacked: (bytes) => `more than ${bytes} bytes once unpacked`,
  wholeLink: () => 'the whole link as it was copied',
  idOfCourse: (id) => `${inQuotes(id)}, which is the id of a scenario of the course`,
  base64Url: () => 'letters, digits, - and _ of base64url, of the right length',
  dealOfCandidate: (candidate) => `a number that candidate ${inQuotes(candidate)} was dealt`,
  courseChanged: (id) => `${inQuotes(id)}, a scenario of the course, but changed`,
  asCourse: () => 'the scenario as the course has it, or another id',
  receiverOfBench: (id) =>
    `${inQuotes(id)}, the name of a receiver that comes with this page, with something in it changed`,
  receiverAsBench: () => 'that receiver as the page has it, or another short name for this one',
  idOfOwn: () => 'an id that no scenario of the course has',
  laterScenario: (id) => `${inQuotes(id)}, which comes later`,
  lowerOrder: () => 'scenarios with a lower order',
  comesAfterThis: (id) => `${inQuotes(id)}, which comes after this one`,
  noRound: () => 'scenarios that do not come after this one',
  orderIn: (order, track) => `order ${order} in ${track}`,
  setMisses: (set, draws, line, hz, toHz, response) =>
    `set ${set}, of which none of ${draws} draws can be aligned; the narrowest line is the ${lineAt(line, hz, toHz)} of ${inQuotes(response)}`,
  attemptFails: (attempt, ideas) => `attempt ${attempt}, of which ${ideas} ideas cannot be certified`,
  anotherNumber: () => 'another number',
  setThatAligns: () => 'the number of a set that can be aligned',
  certifiable: () => 'a scenario that can be certified',
  receiverHere: () => 'a receiver that is here',
};
