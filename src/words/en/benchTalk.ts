/** What the bench says: refusals, what is still missing, dialogs, cautions, keys. */
import type { Refusal } from '../../bench/benchEvent.ts';
import type { BenchDisplay } from '../../bench/display.ts';
import { format } from './numbers.ts';

const { counted, list } = format;

/** Why an act was impossible, said where it was tried. */
export const refusalWords: Readonly<Record<Refusal, string>> = {
  runIsOver: 'This run is signed off. Nothing more can change.',
  noSuchLead: 'There is no such lead on this bench.',
  noSuchPoint: 'There is no such point on this chassis.',
  pointRefusesLead: 'That lead does not go to that point.',
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
  slugCracked: 'This slug is cracked and no longer turns.',
  noTurn: 'That is not a turn.',
  noSuchPart: 'There is no such part.',
  noCapacitor: 'Only a capacitor can be bridged with a good one.',
  cautionsFirst: 'Read the cautions and tick them first.',
  alreadySo: 'It is already set that way.',
  nothingToSign:
    'There is nothing to sign off yet: no slug has been turned, and without the RF and Y leads there is no curve.',
  badTime: 'The time of this action cannot be right.',
  noHint: 'There are no more hints for this scenario.',
  alreadyBegun:
    'A helper only sets up a bench that nobody has touched. Here something has been clipped on or turned already.',
  notAsFound: 'Something in the set has been touched: it no longer stands as found.',
  nothingProved: 'That proof has not been done since the last turn.',
  alreadySaid: 'That finding is written down already.',
  notInThisScenario: 'That is not used in this scenario.',
  technicianAtBench: 'The technician is at the bench. Take over here, and it is yours.',
  logFull: 'The run has grown as long as a run may be. It can only be signed off now.',
};

export const dialogWords = {
  close: 'Close',
  briefing: {
    /** for those who see the room for the first time */
    room: 'On the bench are the service sheet, the tube with its instruments, and the set with its slugs. Set up a true picture, turn the slugs until the curve matches the sheet, prove it and sign off.',
    begin: 'Begin',
    helper: 'Have it set up',
    /** `times`: set-ups of this kind that the learner has passed without help */
    helperOffer: (times: number, minutes: number): string =>
      `You have set up a bench like this ${counted(times, { one: 'time', other: 'times' })} without help, so a helper may do it now: the set made safe, leads clipped, source, markers and picture as the sheet says. You then get no points for the set-up, and it counts as ${counted(minutes, { one: 'minute', other: 'minutes' })} of your time. Aligning and proving are still yours.`,
    lesson: 'What it teaches',
    conditions: 'Conditions',
    par: (turns: string, time: string): string => `Par: ${turns} and ${time}.`,
    limit: (time: string): string => `Time limit: ${time}.`,
    sealed:
      'Sealed run: no hints, no wax marks, no numbers on the pips, and you tick the sheet yourself. Par is told with the report.',
    practice: (hints: boolean, wax: boolean): string => {
      if (hints && wax) return 'Practice: hints and wax marks may be used.';
      if (hints) return 'Practice: hints may be used, but no wax marks.';
      return wax ? 'Practice: wax marks may be used, but no hints.' : 'No hints, no wax marks.';
    },
    cautions: 'Before you touch it',
    acknowledge: 'I have read these cautions and will work by them.',
    acknowledgeFirst: 'Tick the cautions to begin.',
  },
  /** what holds for every set on the mains; which of them a set needs, the receiver knows */
  standingCautions: {
    isolate: (_volts: number): string =>
      'The chassis may be live: one side of the mains can reach it. Work only from the isolating transformer.',
    discharge: (volts: number): string =>
      `The fenced corner carries ${volts} V and stays charged after the set is switched off. Discharge the capacitors, then check with a meter.`,
    pictureTube: (_volts: number): string =>
      'The picture tube and its supply keep a lethal charge, and the tube can implode. High-voltage regulators can give off X-rays.',
    oneHand: (_volts: number): string =>
      'Work with one hand and insulated tools, wear no jewellery, and have somebody within call.',
    practice: (_volts: number): string =>
      'This bench is for practice. Work on real sets only under local codes, and only if you are qualified or with somebody who is.',
  },
  signOff: {
    title: 'Sign off this set?',
    ready: 'Every phase is done. Signing ends the run and grades it.',
    missing: 'Something is still missing. You may sign off all the same, but the set may not pass.',
    sealed:
      'This scenario is sealed: you are not told what is done or missing before you sign. The report tells you everything.',
    parts: 'Parts are not checked here: only the report will say whether everything that had failed was replaced.',
    sign: 'Sign off',
    keep: 'Keep working',
    timeUp: 'The time is up. Sign off to see the report.',
    learner: 'Your name or number, for the run file (optional)',
  },
  suspended: {
    title: 'The bench is covered',
    body: 'The clock has stopped and everything stays where it is.',
    resume: 'Take the cover off',
    leave: 'To the course',
  },
  stopped: {
    title: 'Stop: the chassis was live',
    body: 'Power or a lead was put on a chassis that was not isolated from the mains. On a real set this can kill. The run ends here.',
    next: 'What to do: switch off at the wall, put the isolating transformer in, measure from chassis to earth, and only then clip on the first lead.',
    again: 'To the report',
  },
  help: {
    title: 'Keys and help',
    intro:
      'Everything can be done from the keyboard. Tab goes through the header, the sheet, the tube, the sweep, rack and bias panels, the slugs by letter and the tools.',
    keys: [
      ['Arrows', 'one step of a knob; with shift a small part of it'],
      ['Page up, page down', 'ten steps'],
      ['Home, end', 'the limits of a knob'],
      ['Return', 'on a knob: type a value; on a jack: lift or drop the lead\u2019s end'],
      ['Backspace', 'the resting value of a knob'],
      ['Space', 'flips a switch, plugs or lifts a crystal'],
      ['Left, right', 'walk along the crystals'],
      ['A, B, C and so on', 'choose a slug by its letter'],
      ['[ and ]', 'turn the chosen slug 1/8 out or in; with shift 1/32'],
      ['1, 2, 3', 'take a tool: hexagon, blade, steel'],
      ['W, then 1 to 4', 'in the card after a proof: choose what you saw'],
      [
        '. and ,',
        'to the part of the bench where the work is now, then on to the next part, or back; with the guide, . goes to what is lit; while the technician works, one step on, or back',
      ],
      ['S', 'opens or closes the service sheet'],
      ['I', 'opens the circuit diagram; on it, P goes to the next part along the signal, with shift back'],
      [
        'T',
        'plays the curve from left to right, higher for more, a click at each pip; then, in a reedier tone, the curve that the sheet asks for',
      ],
      ['V', 'goes to what the tube shows as a table, for a screen reader: the height at each pip'],
      ['?', 'this list'],
    ] as const,
    singleKeys: 'Single letters, digits and brackets act anywhere on the bench',
    mouse:
      'Drag up or down on a knob; shift, or a second finger, for a tenth; the wheel goes one step, with shift a small one. Centre and span go by round figures: the narrower the sweep, the smaller the step.',
  },
  hints: {
    title: 'Hints',
    none: 'No hint taken yet.',
    take: 'Take the next hint',
    last: 'That was the last hint.',
    cost: 'Hints are free in practice; the report counts them.',
    number: (n: number): string => `Hint ${n}`,
  },
  abandon: {
    title: 'Clear the bench?',
    body: 'The run is thrown away: nothing is graded and nothing is kept.',
    yes: 'Clear the bench',
    no: 'Keep working',
  },
} as const;

/** What the bench answers in practice to what has just been done. */
export const answerWords = {
  /** steps of the sheet, from 1 */
  steps: (steps: readonly number[]): string =>
    steps.length === 1 ? `Step ${steps[0]} is done.` : `Steps ${list(steps.map(String))} are done.`,
  /** lines of the sheet that have come inside their limits, and those still outside */
  lines: (came: number, outside: number): string => {
    if (outside === 0) return 'Every line of the sheet is inside its limits.';
    const inside = counted(came, {
      one: 'more line is inside its limits',
      other: 'more lines are inside their limits',
    });
    return `${inside}, ${outside} still outside.`;
  },
  finding: 'That is right: the tube showed just that.',
  spent: 'That does not fit either. Do the act again, and look while it is done.',
  part: (called: string): string => `Replaced: ${called}.`,
  /** what care of the set forbids, and nothing else on the bench tells of */
  care: {
    wrongPowerOrder: 'The set is on: a fault of care. Switch it off before you touch that.',
    beforeEarth: 'The earth strap was not on yet: a fault of care. It goes on before every other lead.',
    hotTouch: 'That is the high tension. On a real set this can kill.',
  },
  phases: (names: readonly string[]): string => names.map((name) => `${name}: done.`).join(' '),
};

export const liveWords = {
  curveGone: 'No curve is left.',
  /** to whoever has the curve played */
  sheetAlone: 'There is no curve on the tube. What you hear is the one that the sheet asks for.',
  /** after a slug was turned; lengths in divisions */
  curveChanged: (
    height: string,
    wasHeight: string,
    moved: { readonly by: string; readonly toRight: boolean } | null,
  ): string => {
    const tall = height === wasHeight ? `still ${height}` : `${height}, was ${wasHeight}`;
    const top =
      moved === null
        ? 'the top where it was'
        : `the top ${moved.by} divisions further ${moved.toRight ? 'right' : 'left'}`;
    return `Height ${tall} divisions; ${top}.`;
  },
} as const;

/** Beside the tube: what is laid on a dark or empty face, and the table of pips for those who do not see them. */
export const tubeTalk = {
  name: 'Tube face',
  note: {
    noX: 'No X drive: the X lead is off',
    noY: 'Nothing on the Y input',
    noSignal: 'No signal',
    powerOff: 'The set is off',
    heating: 'The heaters are warming up',
    offScreen: 'The trace is off the graticule',
  } satisfies Record<Exclude<BenchDisplay['note'], 'none'>, string>,
  table: 'Pips on the tube',
  columns: { pip: 'Pip', level: 'Level' },
  /** a name that runs on in a sentence ends here */
  row: (pip: string): string => pip.replace(/,$/, ''),
  level: (share: number | null): string =>
    share === null ? 'off the sweep' : `${format.percent(share)} of the height`,
} as const;
