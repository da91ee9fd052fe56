/** Words of the parts tray. */
import type { OwnPartKind } from '../../receiver/faults/fault.ts';
import type { Part } from '../../receiver/faults/partsTray.ts';
import { format } from './figures.ts';

const KINDS: Readonly<Record<Part['kind'], string>> = {
  resistor: 'Resistors',
  capacitor: 'Capacitors',
  coil: 'Coils with their cores',
  stage: 'Valves and transistors',
  diode: 'Diodes with their loads',
  line: 'Parts of a bias line',
  shield: 'Screening',
};

/** Parts that are neither of the deck nor a detector or a line, by name. */
const OWN: Readonly<Record<OwnPartKind, string>> = { shield: 'Screening lid' };

export const partsWords = {
  title: 'Parts tray',
  menu: 'Parts tray',
  kinds: KINDS,
  own: OWN,
  intro:
    'A spare for every part of the set. A new part is good; a coil comes with its core half way in. Replacing a part that was good costs points.',
  live: 'The set is on. Switch it off before you solder.',
  /** `letter`: of the slug that the coil carries */
  name: ({ kind, name, value }: Part, letter: string | null): string => {
    if (kind === 'coil') return letter === null ? name : `${name}, slug ${letter}`;
    if (Object.hasOwn(OWN, kind)) return OWN[kind as OwnPartKind];
    if (value === null) return name;
    return `${name}, ${format.prefixed(value, kind === 'resistor' ? '\u03a9' : 'F')}`;
  },
  replaced: 'new',
  ask: (name: string): string => `Replace ${name}?`,
  replace: 'Replace it',
  keep: 'Leave it',
  done: (name: string): string => `${name}: a new part is in.`,
} as const;
