/**
 * The meter's prods across one part. Power off: ohms, with all that stands in parallel in the set, so that across a coil every part reads next to nothing. A diode is read
 * both ways round, by a cell of 1.5 V behind a kilohm (common practice, no source). Power on: volts where the model knows them, which is on the bias lines and on the grids
 * and bases that they feed. Touching a part with prods changes nothing, and is no breach of care: they are made for it.
 *
 * A grid that a leaky coupling drags stands at what its line gives and that much more. The leak: what drags a grid behind a line's own resistance so far from a plate of
 * 150 V (common practice, no source).
 */
import { findElement } from '../physics/deck.ts';
import { directOhms } from '../receiver/directOhms.ts';
import type { FaultMark } from '../receiver/faults/faultRow.ts';
import { type Part, partsTray } from '../receiver/faults/partsTray.ts';
import { offersParts } from '../scenario/diagnosis.ts';
import type { Applied } from './benchEvent.ts';
import type { BenchState } from './benchState.ts';
import { clampedVolts } from './biasLine.ts';
import type { LineVolts } from './conditions.ts';
import type { FaultsNow } from './faultsNow.ts';
import { AGC_LINE_OHMS } from './instruments.ts';
import { done, refused } from './outcome.ts';
import { type BenchSetup, designOf } from './setup.ts';

export type PartReading =
  /** beyond the scale where the way is open */
  | { readonly kind: 'ohms'; readonly ohms: number }
  /** with the red prod where the signal comes in, and the other way round */
  | { readonly kind: 'diode'; readonly ohms: number; readonly turnedOhms: number }
  | { readonly kind: 'volts'; readonly volts: number }
  /** nothing that direct current could tell of it, or nothing that is known */
  | { readonly kind: 'nothing' };

/** The end of the highest range. */
const OPEN_OHMS = 20e6;
const CELL_VOLTS = 1.5;
const CELL_OHMS = 1e3;
const PLATE_VOLTS = 150;

export function meterPart(setup: BenchSetup, state: BenchState, name: string): Applied {
  const { scenario, receiver, deck } = setup;
  if (!offersParts(scenario)) return refused('notInThisScenario');
  if (!partsTray(receiver, deck).some((p) => p.name === name)) return refused('noSuchPart');
  if (receiver.mains !== null && !state.cautionsAcknowledged) return refused('cautionsFirst');
  return done(state);
}

/** A lid has no two ends to put the prods on. */
export const canBeMetered = ({ kind }: Pick<Part, 'kind'>): boolean => kind !== 'shield';

/** `now`: the set with what has failed in it. `lineVolts`: the volts where the prods are on a line. */
export function partReading(
  whole: BenchSetup,
  now: FaultsNow,
  state: BenchState,
  name: string,
  lineVolts: (prodsOn: string) => LineVolts,
): PartReading {
  const part = partsTray(whole.receiver, whole.deck).find((p) => p.name === name);
  if (part === undefined) return { kind: 'nothing' };
  const { marks } = now.effects;
  const live = whole.receiver.mains !== null && state.powered;
  if (part.kind === 'line') {
    if (live || clampedVolts(name, state) !== null) return { kind: 'volts', volts: lineVolts(name)[name] ?? 0 };
    return ohmsOf(lineOhms(now, name));
  }
  if (live) {
    const stage = gridOf(whole, part);
    return stage === null ? { kind: 'nothing' } : { kind: 'volts', volts: gridVolts(stage, marks, lineVolts) };
  }
  switch (part.kind) {
    case 'diode':
      return diodeReading(whole, now, name);
    case 'coupling':
      return ohmsOf(parallel(AGC_LINE_OHMS, leakOhms(draggedBy(marks, part.at ?? ''))));
    case 'resistor':
    case 'capacitor':
    case 'coil': {
      // Its ends are where the sheet has them, whatever has come off.
      const element = findElement(designOf(whole).deck, name);
      if (element === undefined || element.kind === 'K') return { kind: 'nothing' };
      return ohmsOf(directOhms(now.setup.receiver, now.setup.deck, ...element.nodes));
    }
    default:
      return { kind: 'nothing' };
  }
}

function ohmsOf(ohms: number): PartReading {
  return { kind: 'ohms', ohms: ohms > OPEN_OHMS ? Number.POSITIVE_INFINITY : ohms };
}

function parallel(a: number, b: number): number {
  return 1 / (1 / a + 1 / b);
}

function lineOhms({ effects }: FaultsNow, at: string): number {
  const { leakOhms: leak, open } = effects.lines[at] ?? { leakOhms: Number.POSITIVE_INFINITY, open: false };
  return parallel(open ? Number.POSITIVE_INFINITY : AGC_LINE_OHMS, leak);
}

interface Grid {
  readonly element: string;
  readonly line: string;
}

/** The grid or base that a valve, or the coupling capacitor before it, has on a bias line. */
function gridOf({ receiver }: BenchSetup, { kind, name, at }: Part): Grid | null {
  const element = kind === 'stage' ? name : kind === 'coupling' ? at : null;
  const stage = receiver.stages.find((one) => one.element.toLowerCase() === element?.toLowerCase());
  const line = receiver.biasLines.find((one) => one.at === stage?.agc)?.at;
  return stage === undefined || line === undefined ? null : { element: stage.element, line };
}

function gridVolts({ element, line }: Grid, marks: readonly FaultMark[], volts: (prodsOn: string) => LineVolts) {
  return (volts('')[line] ?? 0) + draggedBy(marks, element);
}

function draggedBy(marks: readonly FaultMark[], element: string): number {
  const one = marks.find((mark) => mark.kind === 'gridDragged' && mark.element.toLowerCase() === element.toLowerCase());
  return one?.kind === 'gridDragged' ? one.volts : 0;
}

function leakOhms(volts: number): number {
  return volts === 0 ? Number.POSITIVE_INFINITY : AGC_LINE_OHMS * (PLATE_VOLTS / volts - 1);
}

/** Of two diodes that belong together the one that counts positive. */
function diodeReading(whole: BenchSetup, { effects, setup }: FaultsNow, id: string): PartReading {
  const { receiver, deck } = designOf(whole);
  const detector = receiver.detectors.find((one) => one.id === id);
  if (detector === undefined) return { kind: 'nothing' };
  const of = effects.marks.filter((mark) => 'detector' in mark && mark.detector === id);
  if (of.some(({ kind }) => kind === 'shorted')) return { kind: 'diode', ohms: 0, turnedOhms: 0 };
  const node = detector.kind === 'envelope' ? detector.node : detector.plus;
  const wrong = of.find((mark) => mark.kind === 'detectorLoad');
  const load = wrong?.kind === 'detectorLoad' ? wrong.ohms : detector.loadOhms;
  const leak = of.find((mark) => mark.kind === 'detectorLeak');
  const beside = parallel(
    load + directOhms(receiver, deck, node, '0'),
    leak?.kind === 'detectorLeak' ? leak.ohms : Number.POSITIVE_INFINITY,
  );
  const now = setup.receiver.detectors.find((one) => one.id === id) ?? detector;
  const inwards = now.kind === 'envelope' && now.polarity === 'negative';
  const [ohms, turnedOhms] = [1, -1].map((way) => cellOhms(detector, beside, inwards ? -way : way)) as [number, number];
  return { kind: 'diode', ohms, turnedOhms };
}

/** What the scale shows, which is volts over current; found by bisection, as the current rises with the volts. */
function cellOhms(
  { saturationAmps, emissionVolts }: { readonly saturationAmps: number; readonly emissionVolts: number },
  beside: number,
  way: number,
): number {
  const amps = (volts: number): number =>
    way * saturationAmps * Math.expm1((way * volts) / emissionVolts) + volts / beside;
  let [low, high] = [0, CELL_VOLTS];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (amps(middle) > (CELL_VOLTS - middle) / CELL_OHMS) high = middle;
    else low = middle;
  }
  return low / amps(low);
}
