/** Words of the parts tray. */
import type { OwnPartKind } from '../../receiver/faults/fault.ts';
import type { Part } from '../../receiver/faults/partsTray.ts';
import { format } from './numbers.ts';

const KINDS: Readonly<Record<Part['kind'], string>> = {
  resistor: 'Resistors',
  capacitor: 'Capacitors',
  coil: 'Coils with their cores',
  stage: 'Valves and transistors',
  diode: 'Diodes with their loads',
  line: 'Parts of a bias line',
  bypass: 'Bypass capacitors',
  decoupling: 'Supply decouplings',
  coupling: 'Coupling capacitors',
  shield: 'Screening',
};

/** Names of parts that are no element of the deck, no detector and no line. */
const OWN: Readonly<Record<OwnPartKind, string>> = {
  shield: 'Screening lid',
  bypass: 'Bypass of',
  decoupling: 'Decoupling of',
  coupling: 'Coupling to',
};

/** As on a scale. */
const ohmsRead = (ohms: number): string => (ohms < 0.05 ? '0 \u03a9' : format.quantity(ohms, '\u03a9', 2));

export const partsWords = {
  title: 'Parts tray',
  kinds: KINDS,
  own: OWN,
  intro:
    'A spare for every part of the set. A new part is good; a coil comes with its core half way in. Replacing a part that was good costs points. A capacitor can first be bridged with a good one while the set is on, which costs nothing but time: one that is open shows itself, one that leaks does not. The meter reads a part where it stands: ohms with the set off, with everything that lies across it, and with the set on the volts of a bias line or a grid.',
  live: 'The set is on. Switch it off before you solder.',
  /** `letter`: of the slug that the coil carries */
  name: ({ kind, name, value, at }: Part, letter: string | null): string => {
    if (kind === 'coil') return letter === null ? name : `${name}, slug ${letter}`;
    if (Object.hasOwn(OWN, kind)) {
      const own = OWN[kind as OwnPartKind];
      return at === null ? own : `${own} ${at}`;
    }
    // The tray says over them that they are diodes with their loads; elsewhere a detector's bare name says nothing.
    if (kind === 'diode') return `${name} detector`;
    if (value === null) return name;
    return `${name}, ${format.quantity(value, kind === 'resistor' ? '\u03a9' : 'F', 3)}`;
  },
  /** as a sentence names a part, by its name in the log; `detector`: it is a detector of the set, whose bare name says nothing */
  called: (part: string, detector: boolean): string => {
    if (detector) return `the ${part} detector`;
    const [kind = '', at] = part.split(':');
    if (!Object.hasOwn(OWN, kind)) return part;
    const own = OWN[kind as OwnPartKind];
    const low = `the ${own.charAt(0).toLowerCase()}${own.slice(1)}`;
    return at === undefined ? low : `${low} ${at}`;
  },
  replaced: 'new',
  ask: (name: string): string => `${name}: what will you do?`,
  meter: 'Meter it',
  ohms: (name: string, ohms: number): string =>
    Number.isFinite(ohms) ? `${name}: the meter reads ${ohmsRead(ohms)}.` : `${name}: the needle does not move.`,
  /** with the red prod where the signal comes in, and turned round */
  bothWays: (name: string, ohms: number, turnedOhms: number): string =>
    `${name}: ${ohmsRead(ohms)} with the red prod at the coil, ${ohmsRead(turnedOhms)} the other way round.`,
  volts: (name: string, volts: number): string =>
    `${name}: the meter reads ${format.written(volts, 1)} V to the chassis.`,
  nothing: (name: string): string => `${name}: the meter says nothing about it here.`,
  nothingLive: (name: string): string => `${name}: no volts that tell anything. Ohms are read with the set off.`,
  bridge: 'Bridge it',
  unbridge: 'Take the bridge off',
  bridged: 'bridged',
  bridgeOn: (name: string): string => `A good capacitor is clipped across ${name}.`,
  bridgeOff: (name: string): string => `${name}: the bridge is off.`,
  replace: 'Replace it',
  keep: 'Leave it',
  done: (name: string): string => `${name}: a new part is in.`,
} as const;
