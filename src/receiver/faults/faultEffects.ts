/** What the faults of a scenario do together: the deck as they leave it, and what no deck can hold. */
import type { Deck } from '../../physics/deck.ts';
import { editDeck } from '../../physics/editDeck.ts';
import type { BiasLine, Detector, Receiver } from '../receiver.ts';
import { isCured } from './cure.ts';
import { FAULT_KINDS, type Fault, faultRowOf } from './fault.ts';
import type { FaultySet } from './faultPlaces.ts';
import type { BenchTime, FaultMark } from './faultRow.ts';

export interface LineFault {
  /** to earth, ohms; infinite where it does not leak */
  readonly leakOhms: number;
  /** nothing of the set's own feeds it */
  readonly open: boolean;
  /** drawn out of it by a grid */
  readonly amps: number;
}

export interface FaultEffects {
  readonly deck: Deck;
  /** what no deck can hold, of each fault that is there */
  readonly marks: readonly FaultMark[];
  /** the receiver with its diodes, their loads and the lines that follow them as they are */
  readonly receiver: Receiver;
  /** by test point; those with nothing wrong are not named */
  readonly lines: Readonly<Record<string, LineFault>>;
  readonly earthLoose: boolean;
  readonly leadUnmatched: boolean;
}

/** `cured`: see `isCured`. `now`: left out, faults that come and go are all there. */
export function faultEffects(
  receiver: Receiver,
  deck: Deck,
  faults: readonly Fault[],
  cured: readonly string[],
  now: BenchTime | null = null,
): FaultEffects {
  const active = faults.filter((fault) => !isCured(fault, receiver, deck, cured) && isPresent(fault, now));
  const ordered = [...active].sort((a, b) => FAULT_KINDS.indexOf(a.kind) - FAULT_KINDS.indexOf(b.kind));
  let edited = deck;
  for (const fault of ordered) {
    edited = editDeck(edited, faultRowOf(fault).edits?.(fault, { receiver, deck: edited }) ?? []);
  }
  const marks = faultMarks(ordered, { receiver, deck });
  const noContact = (lead: 'earth' | 'rf'): boolean =>
    marks.some((mark) => mark.kind === 'noContact' && mark.lead === lead);
  return {
    deck: edited,
    marks,
    receiver: receiverWith(receiver, marks),
    lines: lineFaults(marks),
    earthLoose: noContact('earth'),
    leadUnmatched: noContact('rf'),
  };
}

export function isPresent(fault: Fault, now: BenchTime | null): boolean {
  return now === null || (faultRowOf(fault).present?.(fault, now) ?? true);
}

/** What no deck can hold, of every fault. */
export function faultMarks(faults: readonly Fault[], set: FaultySet): readonly FaultMark[] {
  return faults.flatMap((fault) => faultRowOf(fault).marks?.(fault, set) ?? []);
}

function lineFaults(marks: readonly FaultMark[]): FaultEffects['lines'] {
  const lines: Record<string, LineFault> = {};
  const change = (at: string, more: Partial<LineFault>): void => {
    lines[at] = { leakOhms: Number.POSITIVE_INFINITY, open: false, amps: 0, ...lines[at], ...more };
  };
  for (const mark of marks) {
    if (mark.kind === 'lineLeak')
      change(mark.at, { leakOhms: Math.min(mark.ohms, lines[mark.at]?.leakOhms ?? mark.ohms) });
    if (mark.kind === 'lineOpen') change(mark.at, { open: true });
    if (mark.kind === 'lineCurrent') change(mark.at, { amps: mark.amps + (lines[mark.at]?.amps ?? 0) });
  }
  return lines;
}

/** A diode of next to no current at any volts that occur: neither load nor volts come of it. */
const NO_DIODE = { saturationAmps: 1e-15, emissionVolts: 1e3 } as const;

function receiverWith(receiver: Receiver, marks: readonly FaultMark[]): Receiver {
  const detectors = receiver.detectors.map((detector) =>
    marks.reduce((one, mark) => ('detector' in mark && mark.detector === one.id ? marked(one, mark) : one), detector),
  );
  if (detectors.every((detector, i) => detector === receiver.detectors[i])) return receiver;
  const turned = marks.flatMap((mark) => (mark.kind === 'reversed' ? [mark.detector] : []));
  const biasLines = receiver.biasLines.map(
    (line): BiasLine =>
      line.follows !== null && turned.includes(line.follows)
        ? { ...line, unclampedVoltsPerDetectedVolt: -line.unclampedVoltsPerDetectedVolt }
        : line,
  );
  return { ...receiver, detectors, biasLines };
}

function marked(detector: Detector, mark: FaultMark): Detector {
  switch (mark.kind) {
    case 'reversed':
      if (detector.kind !== 'envelope') return detector;
      return { ...detector, polarity: detector.polarity === 'negative' ? 'positive' : 'negative' };
    case 'shorted':
      return { ...detector, ...NO_DIODE };
    case 'detectorLoad':
      return detector.kind === 'envelope'
        ? { ...detector, loadOhms: mark.ohms }
        : { ...detector, loadOhms: mark.ohms, minusLoadOhms: mark.ohms };
    case 'detectorLeak': {
      const loadOhms = (detector.loadOhms * mark.ohms) / (detector.loadOhms + mark.ohms);
      // Of two diodes the first leaks (rows/detectorRows.ts).
      return detector.kind === 'envelope'
        ? { ...detector, loadOhms }
        : { ...detector, loadOhms, minusLoadOhms: detector.loadOhms };
    }
    default:
      return detector;
  }
}
