/** What the bench says: refusals, what is still missing, dialogs, cautions, keys. */
import type { Refusal } from '../../bench/benchEvent.ts';
import type { BenchDisplay } from '../../bench/display.ts';
import type { MissingCode } from '../../session/missing.ts';
import { frequency } from './benchFigures.ts';

/** Why an act was impossible, said where it was tried. */
export const refusalWords: Readonly<Record<Refusal, string>> = {
  runIsOver: 'This run is signed off. Nothing more can change.',
  noSuchLead: 'There is no such lead on this bench.',
  noSuchPoint: 'There is no such point on this chassis.',
  pointRefusesLead: 'This lead has no business at that point.',
  pointTaken: 'The other bias output is there already. Two outputs would fight.',
  leadNotConnected: 'That lead is in the tray already.',
  noSuchControl: 'There is no such control.',
  valueOutOfRange: 'The control does not go that far.',
  noSuchCrystal: 'That crystal is not in this box.',
  crystalAlreadyIn: 'That crystal is in its socket already.',
  crystalNotIn: 'That crystal is not in the rack.',
  rackFull: 'All eight sockets are taken. Lift a crystal first.',
  noSuchSlug: 'There is no such slug.',
  noToolInHand: 'Take a trimming tool first.',
  slugCracked: 'This slug is cracked and turns no more.',
  noTurn: 'That is no turn.',
  noSuchPart: 'There is no such part.',
  cautionsFirst: 'Read the cautions and say so first.',
  alreadySo: 'It stands so already.',
  nothingToSign: 'There is nothing to sign yet.',
  badTime: 'The clock and the act do not agree.',
  noHint: 'There are no more hints for this job.',
  notInThisScenario: 'This job has no use for that.',
  logFull: 'The run has grown too long for its log. It can only be signed off now.',
};

/** What still keeps a phase from being done. */
export const missingWords: Readonly<Record<MissingCode, string>> = {
  cautionsNotRead: 'The cautions have not been acknowledged.',
  notIsolated: 'The isolating transformer is not in.',
  rfNotConnected: 'The RF lead is in the tray.',
  rfWrongPoint: 'The RF lead is not where the sheet asks for it.',
  rfNotTerminated: 'The RF lead is not terminated.',
  yWrongPoint: 'The Y lead is not where the sheet asks for it.',
  yWrongTip: 'The Y lead has not the tip that the sheet asks for.',
  xNotConnected: 'The X lead does not reach the tube.',
  notEarthed: 'The earth strap is off.',
  biasNotConnected: 'The bias lead is not on its line.',
  powerOff: 'The set is switched off.',
  notSweeping: 'The source does not sweep.',
  sweepTooNarrow: 'The sweep does not cover the band.',
  phaseOff: 'Trace and retrace do not lie on each other: set the phasing.',
  blankingOff: 'The retrace is not blanked.',
  biasOff: 'The bias is not what the sheet asks for.',
  overloaded: 'A stage is overloaded: lower the level.',
  tooWeak: 'The curve is too weak: raise the level.',
  markersMissing: 'Crystals that the sheet asks for are not in the rack.',
  markersThroughSet: 'The markers go through the set.',
  pipsTooHigh: 'The pips are so high that they bend what they mark.',
  pipsTooLow: 'The pips are too low to be seen.',
  xReversed: 'Low frequency is at the wrong side.',
  traceOffScreen: 'Part of the trace is off the graticule.',
  traceTooLow: 'The trace does not fill the graticule.',
  noSlugTurned: 'No slug has been turned yet.',
  slugTurning: 'A slug has only just been turned.',
  levelNotHalved: 'The level has not been halved and put back since a slug moved.',
  markersNotSwitched: 'The markers have not been silenced and put back since a slug moved.',
  earthNotTouched: 'The earth strap has not been lifted and put back since a slug moved.',
  phaseNotSwung: 'The phasing has not been swung and put back since a slug moved.',
  skirtsNotSeen: 'The skirts have not been looked at with more gain since a slug moved.',
};

export function missingWord(code: string): string {
  return (missingWords as Readonly<Record<string, string>>)[code] ?? code;
}

export const dialogWords = {
  close: 'Close',
  briefing: {
    begin: 'Begin',
    lesson: 'What it teaches',
    conditions: 'Conditions',
    par: (turns: string, minutes: string): string => `Par: ${turns} turns and ${minutes}.`,
    limit: (time: string): string => `Time limit: ${time}.`,
    sealed: 'Sealed run: no hints, no wax marks.',
    open: 'Practice: hints and wax marks may be used.',
    cautions: 'Before you touch it',
    acknowledge: 'I have read these cautions and will work by them.',
    acknowledgeFirst: 'Tick the cautions to begin.',
    practice:
      'This bench is a practice aid. Real sets are worked on under local codes by, or with, people qualified to do it.',
  },
  /** the standing cautions of a mains set; the receiver may add its own */
  mainsCautions: (highTensionVolts: number, hotChassis: boolean, pictureTube: boolean): readonly string[] => [
    ...(hotChassis ? ['The chassis may be live: an isolating transformer first, always.'] : []),
    `High tension of ${highTensionVolts} V stays on the capacitors: discharge them and check with a meter.`,
    ...(pictureTube
      ? [
          'The picture tube\u2019s anode and its supply keep a lethal charge after switching off.',
          'A high-voltage regulator can emit X-rays, and a picture tube can implode.',
        ]
      : []),
    'One hand, insulated tools, no jewellery, and somebody within call.',
  ],
  signOff: {
    title: 'Sign off this set?',
    ready: 'Every phase is done. Signing ends the run and grades it.',
    missing: 'Still missing. You may sign all the same; it costs points.',
    sign: 'Sign off',
    keep: 'Keep working',
    timeUp: 'The time is up. The bench takes its pencil down: sign to see the report.',
  },
  suspended: {
    title: 'The bench is covered',
    body: 'The clock stands still and everything stays where it is.',
    resume: 'Take the cover off',
    leave: 'To the course',
  },
  stopped: {
    title: 'Stop: the chassis was live',
    body: 'Power or a lead met a chassis that nothing isolated. On a real set this can kill. The run ends here.',
    next: 'What to do: switch off at the wall, put the isolating transformer in, measure from pan to earth, and only then clip the first lead.',
    again: 'To the report',
  },
  help: {
    title: 'Keys and help',
    intro:
      'Everything can be done from the keyboard. Tab goes from header to sheet, tube, sweep, rack, bias, chassis by letter, tools.',
    keys: [
      ['Arrows', 'one step of a knob; with shift a tenth of it'],
      ['Page up, page down', 'ten steps'],
      ['Home, end', 'the limits of a knob'],
      ['Return', 'on a knob: type a value; on a jack: lift or drop the lead\u2019s end'],
      ['Backspace', 'the resting value of a knob'],
      ['Space', 'flips a switch, plugs or lifts a crystal'],
      ['Left, right', 'walk along the crystals'],
      ['A, B, C and so on', 'choose a slug by its letter'],
      ['[ and ]', 'turn the chosen slug 1/8 out or in; with shift 1/32'],
      ['1, 2, 3', 'take a tool: hexagon, blade, steel'],
      ['S', 'opens or closes the service sheet'],
      ['?', 'this list'],
    ] as const,
    mouse: 'Drag up or down on a knob; shift, or a second finger, for a tenth; the wheel goes one step.',
  },
  hints: {
    title: 'Hints',
    none: 'No hint taken yet.',
    take: 'Take the next hint',
    last: 'That was the last hint.',
    cost: 'Hints are free in practice; the report counts them.',
    number: (n: number): string => `Hint ${n}`,
  },
  menu: { title: 'Menu' },
  abandon: {
    title: 'Clear the bench?',
    body: 'The run is thrown away: nothing is graded and nothing kept.',
    yes: 'Clear the bench',
    no: 'Keep working',
  },
} as const;

export const liveWords = {
  plugged: 'Crystal in',
  phaseDone: (phase: string): string => `${phase}: done`,
} as const;

interface PipSaid {
  readonly kind: 'crystal' | 'tunable' | 'comb';
  readonly number: number | null;
  readonly hz: number;
  readonly xDiv: number;
}

/** The tube in words. The tunable marker's frequency is not said: it is read at its dial. */
export const tubeTalk = {
  name: 'Tube',
  note: {
    noX: 'No X drive: the X lead is off',
    noY: 'Nothing on the Y input',
    noSignal: 'No signal',
    powerOff: 'The set is off',
    offScreen: 'The trace is off the graticule',
  } satisfies Record<Exclude<BenchDisplay['note'], 'none'>, string>,
  picture: ({
    note,
    heightDiv,
    topXDiv,
    pips,
  }: {
    readonly note: BenchDisplay['note'];
    readonly heightDiv: number;
    readonly topXDiv: number;
    readonly pips: readonly PipSaid[];
  }): string => {
    if (note !== 'none') return `Tube. ${tubeTalk.note[note]}.`;
    const side =
      Math.abs(topXDiv) < 0.25
        ? 'in the middle'
        : `${Math.abs(topXDiv).toFixed(1)} divisions ${topXDiv < 0 ? 'left' : 'right'} of the middle`;
    const marks = pips.length === 0 ? 'No pips.' : pips.length === 1 ? 'One pip.' : `${pips.length} pips.`;
    return `Tube. Response curve ${heightDiv.toFixed(1)} divisions high, its top ${side}. ${marks}`;
  },
  table: 'Pips on the tube',
  columns: { pip: 'Pip', at: 'At', level: 'Level' },
  pip: (kind: PipSaid['kind'], number: number | null): string =>
    kind === 'tunable' ? 'Tunable' : kind === 'comb' ? 'Comb' : `Pip ${number ?? ''}`,
  at: ({ kind, hz, xDiv }: PipSaid): string =>
    kind === 'tunable' ? `${xDiv.toFixed(1)} divisions from the middle` : frequency(hz),
  level: (heightDiv: number | null, allDiv: number): string =>
    heightDiv === null || allDiv <= 0
      ? 'not on the trace'
      : `${heightDiv.toFixed(1)} divisions, ${Math.round((100 * heightDiv) / allDiv)}% of the height`,
} as const;
