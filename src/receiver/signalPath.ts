/**
 * From the RF lead's current to the volts at any node of a receiver, through a mixer and into the video part where the receiver has them.
 *
 * Plain: every node of the driven part at the sweep's frequencies f.
 * Converter: the part behind the mixer is solved at |f_LO - f|, driven by siemens * V(from); f_LO is where the oscillator's tank has its peak. With the
 * oscillator above the signal the difference turns the spectrum round, so amplitudes go over as their conjugates.
 * Video: a carrier f_p of `amps` stands still and is modulated by the sweep f_v. Small depth and linear envelope detection give at the
 * detector's node a modulation of  | H(f_p + f_v) e^{-ja} + conj(H(f_p - f_v)) e^{+ja} | / 2,  a = arg H(f_p), per amp and unit depth; it drives the video part
 * at f_v with `siemens` times that. The stages' gains are those that the standing carrier leaves them (a describing function has no small-signal gain of its own, so
 * a limiter's effect on the sidebands is not modelled). Source: envelope of a carrier with two unequal sidebands, e.g. Terman (from memory).
 *
 * Over 300 lines: sweep, mixer and video share solvers and buffers that no second file should hold.
 */
import { problemLine } from '../base/result.ts';
import { buildNetwork } from '../physics/buildNetwork.ts';
import type { Chirp } from '../physics/chirp.ts';
import type { Deck } from '../physics/deck.ts';
import { nodeKey } from '../physics/deck.ts';
import { fundamentalGain } from '../physics/describingFunction.ts';
import type { DiodeLaw } from '../physics/diodeLaw.ts';
import { createSolver, type NodeLoad, type Solver } from '../physics/solver.ts';
import { envelopeModulation } from '../physics/videoEnvelope.ts';
import { type ChirpedNodes, solveChirped } from './chirpedPart.ts';
import { deckParts } from './deckParts.ts';
import type { ElementValue } from './elementValues.ts';
import { createOscillator, type Oscillator, tankOf } from './oscillator.ts';
import type { PathLoad } from './pathLoad.ts';
import type { Receiver } from './receiver.ts';
import { meetModulation, standingLoads } from './sidebandLoads.ts';
import { LOWEST_HZ } from './sourceLevel.ts';

/** `sweep`: the source is the signal. `video`: it modulates a carrier that stands at `carrierHz`; `depth` 1 is full modulation. */
export type SourceKind =
  | { readonly kind: 'sweep' }
  | { readonly kind: 'video'; readonly carrierHz: number; readonly depth: number };

export const PLAIN_SWEEP: SourceKind = { kind: 'sweep' };

/** Level at a frequency of the source, over the level that is asked for. */
export type LevelShare = (hz: number) => number;

export interface SignalPath {
  /** R ohm, L henry, C farad, G siemens */
  setValue(value: ElementValue): void;
  /** volts peak at which a G element's tanh has argument 1; null makes it linear */
  setSaturation(element: string, volts: number | null): void;
  /** the diodes that hang on nodes of the deck, all of them anew; none on a node that the deck does not have */
  setLoads(loads: readonly PathLoad[]): void;
  /**
   * Brings all nodes up to date. `drive` is a current source of the deck, `amps` peak; every other source is off. `hz` has the sweep's frequencies,
   * each above 0. `share` makes the amps depend on the source's frequency; null: the same everywhere.
   */
  solve(hz: Float64Array, drive: string, amps: number, source: SourceKind, share?: LevelShare | null): void;
  /** The same under a swept source through the driven part alone, whose nodes can be asked for; nothing else can be read after it (chirpedPart.ts). */
  solveChirped(hz: Float64Array, drive: string, amps: number, along: Float64Array, chirp: Chirp): ChirpedNodes;
  /** volts of a node at each of the sweep's frequencies, views until the next solve; a node that no signal reaches has none */
  real(node: string): Float64Array;
  imag(node: string): Float64Array;
  magnitude(node: string, out: Float64Array): Float64Array;
  /** at which frequencies the last solve has it, of a video sweep the one of its carrier; a view until the next; null where no signal reaches it */
  hzAt(node: string): Float64Array | null;
  /** what a diode of a pair goes by there over its carrier, by frequency, as the last solve left it; a view until the next; null where there is none */
  crestAt(node: string): Float64Array | null;
  /**
   * worst compression of a stage on the way to `node` (its part of the deck and those before it; left out: everywhere), decibels; `except` names stages that
   * are meant to saturate
   */
  compressionDb(except?: readonly string[], node?: string): number;
  /** see `Solver.stageGain`, as the last solve left the stage; of one that no signal reached 1 */
  stageGain(element: string, gain: Float64Array, ofChange: Float64Array): void;
  /** the one diode on a node that has no other load in its block, and what one amp drawn there brings about without it, as the last solve left them; null where it is otherwise */
  loneLoad(node: string): LoneLoad | null;
  /** where the oscillator runs; null where the set has none */
  oscillatorHz(): number | null;
  /** what the last solve used for the part of the deck that `element` lies in, for sensitivities; each null where it was not needed */
  solversOf(element: string): PartSolvers;
}

export interface LoneLoad {
  readonly law: DiodeLaw;
  /** volts an amp by frequency, views until the next solve */
  readonly re: Float64Array;
  readonly im: Float64Array;
}

export interface PartSolvers {
  readonly main: Solver | null;
  /** the standing carrier of a video sweep: one frequency */
  readonly carrier: Solver | null;
  /** its sidebands: all upper ones, then all lower ones */
  readonly sidebands: Solver | null;
}

interface Part {
  readonly nodes: ReadonlySet<string>;
  readonly elements: ReadonlySet<string>;
  readonly sources: readonly string[];
  readonly fresh: (hz: Float64Array) => Solver;
  /** values, saturations and loads that solvers of this part must have */
  readonly values: Map<string, number>;
  readonly saturations: Map<string, number>;
  loads: readonly PathLoad[];
  main: Solver | null;
  carrier: Solver | null;
  sidebands: Solver | null;
}

/** What is known of a part after a solve: its solver and how to read it. */
type Reading =
  | { readonly kind: 'swept'; readonly solver: Solver }
  | { readonly kind: 'standing'; readonly solver: Solver }
  | null;

export function createSignalPath(receiver: Receiver, deck: Deck): SignalPath {
  const parts = deckParts(deck).map((part) => makePart(receiver, part.deck, part.nodes));
  const { converter, videoFeed } = receiver;
  const partOfNode = (node: string): Part | undefined => parts.find((p) => p.nodes.has(nodeKey(node)));
  const partOfElement = (name: string): Part => {
    const found = parts.find((p) => p.elements.has(name.toLowerCase()));
    if (found === undefined) throw new Error(`the deck has no element ${name}`);
    return found;
  };
  const tank = tankOf(receiver);
  const oscillator: Oscillator | null = tank === null ? null : createOscillator(tank);
  const readings = new Map<Part, Reading>();
  let count = 0;
  let empty = new Float64Array(0);
  let mapped = new Float64Array(0);
  let fedRe = new Float64Array(0);
  let fedIm = new Float64Array(0);
  let standing = new Map<string, { re: Float64Array; im: Float64Array }>();

  const resize = (n: number): void => {
    if (n === count) return;
    count = n;
    empty = new Float64Array(n);
    mapped = new Float64Array(n);
    fedRe = new Float64Array(n);
    fedIm = new Float64Array(n);
    standing = new Map();
  };
  const fed = (part: Part): boolean =>
    converter !== null && part.nodes.has(nodeKey(converter.from)) && partOfElement(converter.into) !== part;

  const oscillatorHz = (): number | null => {
    if (oscillator === null || tank === null) return null;
    const part = partOfNode(tank.node);
    return part === undefined ? null : oscillator.hz(part.fresh, part.values);
  };

  /** The mixer's product of `solver`'s part into the next; returns the part that was driven. */
  const convert = (from: Solver, hz: Float64Array): { readonly part: Part; readonly hz: Float64Array } => {
    const { from: node, into, siemens } = converter!;
    const lo = oscillatorHz()!;
    const re = from.real(node);
    const im = from.imag(node);
    const target = hz.length === count ? mapped : new Float64Array(hz.length);
    const [outRe, outIm] =
      hz.length === count ? [fedRe, fedIm] : [new Float64Array(hz.length), new Float64Array(hz.length)];
    for (let i = 0; i < hz.length; i++) {
      const above = lo > hz[i]!;
      target[i] = Math.max(Math.abs(lo - hz[i]!), LOWEST_HZ);
      outRe[i] = siemens * re[i]!;
      outIm[i] = above ? -siemens * im[i]! : siemens * im[i]!;
    }
    const part = partOfElement(into);
    return { part, hz: target };
  };

  const sweepThrough = (start: Part, hz: Float64Array, drive: string, amps: number, share: LevelShare | null): void => {
    const solver = ready(start, 'main', hz);
    silence(solver, start, drive);
    driveWith(solver, drive, amps, share);
    solver.solve();
    readings.set(start, { kind: 'swept', solver });
    if (!fed(start)) return;
    const next = convert(solver, hz);
    const behind = ready(next.part, 'main', next.hz);
    silence(behind, next.part, converter!.into);
    behind.setDriveSpectrum(converter!.into, fedRe, fedIm);
    behind.solve();
    readings.set(next.part, { kind: 'swept', solver: behind });
  };

  /** Carrier and sidebands through one part; `spectrum` gives the drive at [carrier] and at [upper..., lower...]. */
  const modulatedThrough = (
    part: Part,
    driven: string,
    carrierHz: number,
    bands: Float64Array,
    set: (solver: Solver, which: 'carrier' | 'sidebands') => void,
  ): { readonly carrier: Solver; readonly sidebands: Solver } => {
    const carrier = ready(part, 'carrier', Float64Array.of(carrierHz));
    silence(carrier, part, driven);
    set(carrier, 'carrier');
    carrier.solve();
    const sidebands = ready(part, 'sidebands', bands);
    silence(sidebands, part, driven);
    for (const [stage, volts] of part.saturations) {
      const gain = fundamentalGain(controlVolts(carrier, stage) / volts);
      sidebands.setSaturation(stage, null);
      sidebands.setValue(stage, (part.values.get(stage) ?? carrier.value(stage)) * gain);
    }
    sidebands.setLoads(standingLoads(part.loads, carrier));
    set(sidebands, 'sidebands');
    sidebands.solve();
    readings.set(part, { kind: 'standing', solver: carrier });
    return { carrier, sidebands };
  };

  const videoThrough = (
    start: Part,
    hz: Float64Array,
    drive: string,
    amps: number,
    { carrierHz, depth }: { readonly carrierHz: number; readonly depth: number },
    share: LevelShare | null,
  ): void => {
    const n = hz.length;
    const bands = new Float64Array(2 * n);
    for (let i = 0; i < n; i++) {
      bands[i] = carrierHz + hz[i]!;
      bands[n + i] = Math.max(Math.abs(carrierHz - hz[i]!), LOWEST_HZ);
    }
    let last = modulatedThrough(start, drive, carrierHz, bands, (solver) => driveWith(solver, drive, amps, share));
    let part = start;
    if (fed(start)) {
      const lo = oscillatorHz()!;
      const { from, into, siemens } = converter!;
      const turned = lo > carrierHz;
      const through = (source: Solver, solver: Solver): void => {
        const re = source.real(from);
        const im = source.imag(from);
        // What was above the carrier comes out below it.
        const place = (i: number): number => (turned && re.length > 1 ? (i + n) % (2 * n) : i);
        const outRe = new Float64Array(re.length);
        const outIm = new Float64Array(re.length);
        for (let i = 0; i < re.length; i++) {
          outRe[place(i)] = siemens * re[i]!;
          outIm[place(i)] = (turned ? -siemens : siemens) * im[i]!;
        }
        solver.setDriveSpectrum(into, outRe, outIm);
      };
      const before = last;
      const behindHz = Math.abs(lo - carrierHz);
      const behind = new Float64Array(2 * n);
      for (let i = 0; i < n; i++) {
        behind[i] = behindHz + hz[i]!;
        behind[n + i] = Math.max(Math.abs(behindHz - hz[i]!), LOWEST_HZ);
      }
      part = partOfElement(into);
      last = modulatedThrough(part, into, behindHz, behind, (solver, which) => through(before[which], solver));
    }
    if (videoFeed === null) return;
    const node = detectorNode(receiver, videoFeed.detector);
    if (!part.nodes.has(nodeKey(node))) return;
    const carrierRe = last.carrier.real(node)[0]!;
    const carrierIm = last.carrier.imag(node)[0]!;
    const { sidebands } = last;
    const modulated = videoFeed.siemens * depth;
    envelopeModulation(carrierRe, carrierIm, sidebands.real(node), sidebands.imag(node), modulated, fedRe, fedIm);
    const own = part.loads.find((load) => nodeKey(load.node) === nodeKey(node));
    if (own !== undefined) meetModulation(own, last.carrier, sidebands, hz, fedRe, fedIm);
    const video = partOfElement(videoFeed.into);
    const solver = ready(video, 'main', hz);
    silence(solver, video, videoFeed.into);
    solver.setDriveSpectrum(videoFeed.into, fedRe, fedIm);
    solver.solve();
    readings.set(video, { kind: 'swept', solver });
  };

  const read = (node: string, which: 're' | 'im'): Float64Array => {
    const part = partOfNode(node);
    const reading = part === undefined ? null : (readings.get(part) ?? null);
    if (reading === null) return empty;
    if (reading.kind === 'swept') return which === 're' ? reading.solver.real(node) : reading.solver.imag(node);
    const kept = standing.get(node) ?? { re: new Float64Array(count), im: new Float64Array(count) };
    standing.set(node, kept);
    return kept[which].fill((which === 're' ? reading.solver.real(node) : reading.solver.imag(node))[0]!);
  };

  return {
    setValue({ element, value }) {
      const part = partOfElement(element);
      part.values.set(element, value);
      for (const solver of [part.main, part.carrier, part.sidebands]) solver?.setValue(element, value);
    },
    setSaturation(element, volts) {
      const part = partOfElement(element);
      if (volts === null) part.saturations.delete(element);
      else part.saturations.set(element, volts);
      for (const solver of [part.main, part.carrier]) solver?.setSaturation(element, volts);
    },
    setLoads(loads) {
      for (const part of parts) {
        const own = loads.filter(({ node }) => part.nodes.has(nodeKey(node)));
        if (sameLoads(part.loads, own)) continue;
        part.loads = own;
        for (const solver of [part.main, part.carrier]) solver?.setLoads(nodeLoads(own));
      }
    },
    solve(hz, drive, amps, source, share = null) {
      resize(hz.length);
      readings.clear();
      const start = partOfElement(drive);
      if (source.kind === 'sweep') sweepThrough(start, hz, drive, amps, share);
      else videoThrough(start, hz, drive, amps, source, share);
    },
    solveChirped(hz, drive, amps, along, chirp) {
      resize(hz.length);
      readings.clear();
      const start = partOfElement(drive);
      const solver = ready(start, 'main', hz);
      silence(solver, start, drive);
      const carriers = solveChirped(solver, drive, amps, along, chirp);
      return (node) => (partOfNode(node) === start ? carriers(node) : null);
    },
    real: (node) => read(node, 're'),
    imag: (node) => read(node, 'im'),
    magnitude(node, out) {
      const part = partOfNode(node);
      const reading = part === undefined ? null : (readings.get(part) ?? null);
      if (reading === null) return out.fill(0);
      if (reading.kind === 'swept') return reading.solver.magnitude(node, out);
      return out.fill(Math.hypot(reading.solver.real(node)[0]!, reading.solver.imag(node)[0]!));
    },
    hzAt(node) {
      const part = partOfNode(node);
      return (part === undefined ? null : readings.get(part))?.solver.hz ?? null;
    },
    crestAt(node) {
      const part = partOfNode(node);
      const reading = part === undefined ? null : (readings.get(part) ?? null);
      return reading?.kind === 'swept' ? (reading.solver.drawnAt(node)?.crest ?? null) : null;
    },
    compressionDb(except = [], node) {
      const last = node === undefined ? undefined : partOfNode(node);
      let worst = 0;
      // In the order in which the signal went through them.
      for (const [part, reading] of readings) {
        if (reading !== null) worst = Math.max(worst, reading.solver.worstCompressionDb(except));
        if (part === last) break;
      }
      return worst;
    },
    stageGain(element, gain, ofChange) {
      const reading = readings.get(partOfElement(element)) ?? null;
      gain.fill(1);
      ofChange.fill(1);
      if (reading?.kind === 'swept') reading.solver.stageGain(element, gain, ofChange);
    },
    loneLoad(node) {
      const part = partOfNode(node);
      const reading = part === undefined ? null : (readings.get(part) ?? null);
      if (part === undefined || reading?.kind !== 'swept') return null;
      const [one, ...more] = part.loads.filter((load) => nodeKey(load.node) === nodeKey(node));
      const drawn = one === undefined || more.length > 0 ? null : reading.solver.drawnAt(node);
      return drawn?.alone ? { law: one!.law, re: drawn.re, im: drawn.im } : null;
    },
    oscillatorHz,
    solversOf(element) {
      const part = partOfElement(element);
      const reading = readings.get(part) ?? null;
      if (reading === null) return { main: null, carrier: null, sidebands: null };
      if (reading.kind === 'swept') return { main: part.main, carrier: null, sidebands: null };
      return { main: null, carrier: part.carrier, sidebands: part.sidebands };
    },
  };
}

function makePart(receiver: Receiver, deck: Deck, nodes: ReadonlySet<string>): Part {
  const built = buildNetwork(deck, receiver.deck);
  if (!built.ok) throw new Error(built.problems.map(problemLine).join('\n'));
  const names = deck.elements.map((e) => e.name);
  return {
    nodes,
    elements: new Set(names.map((name) => name.toLowerCase())),
    sources: deck.elements.filter((e) => e.kind === 'I').map((e) => e.name),
    fresh: (hz) => createSolver(built.value, hz),
    values: new Map(),
    saturations: new Map(),
    loads: [],
    main: null,
    carrier: null,
    sidebands: null,
  };
}

function driveWith(solver: Solver, drive: string, amps: number, share: LevelShare | null): void {
  if (share === null) solver.setDrive(drive, amps);
  else
    solver.setDriveSpectrum(
      drive,
      solver.hz.map((hz) => amps * share(hz)),
      new Float64Array(solver.hz.length),
    );
}

/** Every source off but the one that is to be driven. */
function silence(solver: Solver, part: Part, driven: string): void {
  for (const name of part.sources) if (name.toLowerCase() !== driven.toLowerCase()) solver.setDrive(name, 0);
}

/** The part's solver for one purpose, at the frequencies asked for, with every value that has been set. */
function ready(part: Part, which: 'main' | 'carrier' | 'sidebands', hz: Float64Array): Solver {
  const known = part[which];
  if (known !== null) {
    if (!sameFrequencies(known.hz, hz)) known.setFrequencies(hz);
    return known;
  }
  const solver = part.fresh(hz);
  for (const [element, value] of part.values) solver.setValue(element, value);
  if (which !== 'sidebands') {
    for (const [element, volts] of part.saturations) solver.setSaturation(element, volts);
    solver.setLoads(nodeLoads(part.loads));
  }
  part[which] = solver;
  return solver;
}

function sameLoads(a: readonly PathLoad[], b: readonly PathLoad[]): boolean {
  return a.length === b.length && a.every((one, i) => one.node === b[i]!.node && one.law === b[i]!.law);
}

function nodeLoads(loads: readonly PathLoad[]): NodeLoad[] {
  return loads.map(({ node, law }) => ({ node, admittance: law.admittance }));
}

function controlVolts(solver: Solver, stage: string): number {
  const { network } = solver;
  const element = network.elements[network.elementIndex.get(stage.toLowerCase())!]!;
  const volts = (at: number, of: (node: string) => Float64Array): number =>
    at < 0 ? 0 : of(network.nodeNames[at]!)[0]!;
  const { controlPlus: p, controlMinus: m } = element;
  return Math.hypot(volts(p, solver.real) - volts(m, solver.real), volts(p, solver.imag) - volts(m, solver.imag));
}

function detectorNode({ id, detectors }: Receiver, name: string): string {
  const detector = detectors.find((d) => d.id === name);
  if (detector?.kind !== 'envelope')
    throw new Error(`${id}: the video feed's detector ${name} is no envelope detector`);
  return detector.node;
}

function sameFrequencies(a: Float64Array, b: Float64Array): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}
