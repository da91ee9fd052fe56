/** Writes a set on the bench as a SPICE deck for a time run: stages that saturate, real diodes, the Y lead; `out` is the end of the lead. */
import type { LineVolts } from '../bench/conditions.ts';
import { ISOLATING_OHMS, Y_LEAD_FARADS } from '../bench/instruments.ts';
import type { Observation } from '../bench/observation.ts';
import { type Deck, type DeckElement, nodeKey } from '../physics/deck.ts';
import { RESERVE } from '../physics/fmDetector.ts';
import { BENCH_PROBE } from '../receiver/benchProbe.ts';
import type { Stage, TestPoint } from '../receiver/receiver.ts';
import type { TerminalWords } from '../words/words.ts';
import { type DeckDiode, LACKING, type Settling } from './settling.ts';

export interface Mixer {
  readonly from: string;
  /** current source that it drives */
  readonly into: string;
  /** amps of the difference frequency per volt */
  readonly siemens: number;
  readonly oscillatorHz: number;
}

export interface StandingSet {
  readonly set: string;
  readonly scenario: string;
  readonly number: number | null;
  readonly standing: string;
  readonly response: string;
  readonly levelDb: number;
  readonly hz: number;
  /** every part at its value */
  readonly deck: Deck;
  readonly stages: readonly Stage[];
  readonly drive: string;
  readonly amps: number;
  readonly lineVolts: LineVolts;
  readonly mixer: Mixer | null;
  readonly diodes: readonly DeckDiode[];
  readonly point: TestPoint;
  readonly observation: Observation;
  /** of an FM detector, both halves together; 0 of all others */
  readonly heldVolts: number;
  readonly settling: Settling;
}

/** kT/q at 27 C, which is ngspice's own temperature, volts. */
const K_T_PER_Q = (1.380649e-23 * 300.15) / 1.602176634e-19;

/** Fewest steps in a period of the highest frequency in the deck, an oscillator's included. */
const LEAST_STEPS = 96;
/** How far the steps may move a circuit, as a share of its half width. */
const MOVED = 5e-3;
/** After this many time constants of a load less than a thousandth is missing. */
const LOAD_CONSTANTS = 7;
/** The last tenth of the run, which stands still. */
const STANDS = 0.9;

export function deckText(say: TerminalWords['cli']['deck'], set: StandingSet): string {
  const { hz, settling } = set;
  const seconds = (settling.circuitSeconds + LOAD_CONSTANTS * settling.loadSeconds) / STANDS;
  const steps = stepsPerPeriod(set);
  const step = 1 / (set.hz * steps);
  const leaks = leaksIn(set);
  const bias = Object.entries(set.lineVolts).map(([line, volts]) => say.bias(line, volts));
  const lines = [
    `* ${say.title(set.set, set.scenario)}`,
    `* ${set.number === null ? say.design : say.number(set.number)}; ${set.standing === 'best' ? say.best : say.found}`,
    `* ${say.setUp(set.response, set.levelDb, hz)}`,
    ...bias.map((line) => `* ${line}`),
    // Tolerances far below what a curve shows.
    '.options reltol=1e-4 vntol=1e-10 abstol=1e-15 chgtol=1e-20',
    `* ${say.parts}`,
    ...set.deck.elements
      .filter(({ name }) => !leaks.has(name.toLowerCase()))
      .flatMap((element) => elementLine(say, set, element)),
    ...diodeLines(say, set),
    ...leadLines(say, set),
    `* ${say.length(settling.circuitSeconds, LACKING, LOAD_CONSTANTS, settling.loadSeconds)}`,
    `* ${say.steps(steps)}`,
    `.tran ${step} ${seconds} 0 ${step} uic`,
    '.print tran v(out)',
    '.end',
  ];
  return `${lines.map(plain).join('\n')}\n`;
}

/**
 * Steps a period of the carrier. The trapezoidal rule sees every circuit as if the frequency were higher by (w h)^2 / 12, which must be little against the circuits' width: as they
 * lack a thousandth after T, their time constant is about T over LOAD_CONSTANTS, and their half width one over that. Source: the rule's tan(w h / 2), any numerics text (from memory).
 */
function stepsPerPeriod({ hz, mixer, settling: { circuitSeconds } }: StandingSet): number {
  const seenHz = mixer === null ? hz : Math.abs(mixer.oscillatorHz - hz);
  const narrow = 2 * Math.PI * Math.sqrt((2 * Math.PI * seenHz * circuitSeconds) / LOAD_CONSTANTS / 12 / MOVED);
  const highestHz = Math.max(hz, mixer?.oscillatorHz ?? 0);
  return Math.ceil(Math.max(narrow * seenHz, LEAST_STEPS * highestHz) / hz);
}

/** A line for a reader that may know no more than ASCII. */
function plain(line: string): string {
  return line
    .replace(/[\u2018\u2019]/g, "'")
    .replace(/[\u201c\u201d]/g, '"')
    .replace(/[^\x20-\x7e]/g, '?');
}

/** A node of the set; `out` and names that begin like the bench's own make way for those. */
const own = (node: string): string => (/^(?:out|bench_.*)$/.test(nodeKey(node)) ? `set_${node}` : node);
const volts = (node: string): string => (nodeKey(node) === '0' ? '0' : `v(${own(node)})`);

function elementLine(
  say: TerminalWords['cli']['deck'],
  { stages, drive, amps, hz, mixer }: StandingSet,
  element: DeckElement,
): string[] {
  const { name, value } = element;
  if (element.kind === 'K') return [`${name} ${element.coils.join(' ')} ${value}`];
  const nodes = element.nodes.map(own).join(' ');
  const is = (other: string): boolean => name.toLowerCase() === other.toLowerCase();
  switch (element.kind) {
    case 'I': {
      if (is(drive)) return [`${name} ${nodes} sin(0 ${amps} ${hz})`];
      if (mixer === null || !is(mixer.into)) return [];
      const product = `${2 * mixer.siemens}*${volts(mixer.from)}*cos(${2 * Math.PI * mixer.oscillatorHz}*time)`;
      return [`* ${say.mixer(mixer.oscillatorHz)}`, `B${name} ${nodes} I = ${product}`];
    }
    case 'G': {
      const limit = stages.find((stage) => is(stage.element))?.saturationVolts;
      const [plus, minus] = element.control.map(volts);
      if (limit === undefined) return [`${name} ${nodes} ${element.control.map(own).join(' ')} ${value}`];
      return [`B${name} ${nodes} I = ${value * limit}*tanh((${plus}-${minus})/${limit})`];
    }
    default:
      return [`${name} ${nodes} ${value}`];
  }
}

const diodeModel = (id: string, saturationAmps: number, emissionVolts: number): string =>
  `.model ${id} d(is=${saturationAmps} n=${emissionVolts / K_T_PER_Q} rs=0 cjo=0 tt=0)`;

/** Where the volts of a detector's load stand; an FM detector has two. */
const loadNode = (k: number, half: 'a' | 'b' | '' = ''): string => `bench_load${k}${half}`;

/** A diode's leak as the bench reckons with it: beside the load for direct current, and for the carrier a branch of its own in the deck. Here it lies across the diode. */
const leakParts = ({ detector }: DeckDiode): readonly string[] =>
  ['Rleak', 'Rload', 'Cload'].map((part) => `${part}_${detector.id}`.toLowerCase());

function leakOf({ deck: { elements } }: StandingSet, diode: DeckDiode): number | null {
  const [leak] = leakParts(diode);
  return elements.find(({ name }) => name.toLowerCase() === leak)?.value ?? null;
}

/** The parts of the deck that stand for leaks of diodes. */
function leaksIn(set: StandingSet): ReadonlySet<string> {
  return new Set(set.diodes.flatMap((one) => (leakOf(set, one) === null ? [] : leakParts(one))));
}

function diodeLines(say: TerminalWords['cli']['deck'], set: StandingSet): string[] {
  return set.diodes.flatMap((all, k) => {
    const { detector, diodes } = all;
    const model = `bench_diode${k}`;
    const leak = leakOf(set, all);
    const head = [`* ${say.diode(detector.id)}`, diodeModel(model, detector.saturationAmps, detector.emissionVolts)];
    const one = (at: string, half: 'a' | 'b' | '', turned: boolean): string[] => {
      const load = loadNode(k, half);
      const { loadOhms, loadFarads } = diodes[half === 'b' ? 1 : 0]!;
      const leaks = half !== 'b' && leak !== null;
      return [
        `Dbench${k}${half} ${turned ? `${load} ${own(at)}` : `${own(at)} ${load}`} ${model}`,
        ...(leaks ? [`Rbench_leak${k}${half} ${own(at)} ${load} ${leak}`] : []),
        `Rbench_load${k}${half} ${load} 0 ${leaks ? 1 / (1 / loadOhms - 1 / leak) : loadOhms}`,
        `Cbench_load${k}${half} ${load} 0 ${loadFarads}`,
      ];
    };
    if (detector.kind === 'envelope') return [...head, ...one(detector.node, '', detector.polarity === 'negative')];
    return [...head, ...one(detector.plus, 'a', false), ...one(detector.minus, 'b', false)];
  });
}

/** From the load, the detector's output or the probe's tip to the end of the lead. */
function leadLines(
  say: TerminalWords['cli']['deck'],
  { point, diodes, observation, heldVolts }: StandingSet,
): string[] {
  const k = diodes.findIndex(({ detector }) => detector.id === point.detector);
  const seen = diodes[k];
  if (seen === undefined) return probeLines(say, point.looseLoop === true, observation.node);
  const { at, lines } =
    seen.detector.kind === 'envelope'
      ? { at: loadNode(k), lines: [] }
      : pairLines(say, k, { pair: observation.pair, heldVolts });
  return [...lines, `* ${say.tip}`, `Rbench_tip ${at} out ${ISOLATING_OHMS}`, `Cbench_lead out 0 ${Y_LEAD_FARADS}`];
}

function probeLines(say: TerminalWords['cli']['deck'], loose: boolean, node: string): string[] {
  const { saturationAmps, emissionVolts, loadOhms, loadFarads } = BENCH_PROBE;
  // A loose loop sees what stands there without loading it.
  const loop = loose ? [`* ${say.loop}`, `Ebench_loop bench_tip 0 ${own(node)} 0 1`] : [];
  return [
    ...loop,
    `* ${say.probe}`,
    diodeModel('bench_probe', saturationAmps, emissionVolts),
    `Dbench_probe ${loose ? 'bench_tip' : own(node)} out bench_probe`,
    `Rbench_probe out 0 ${loadOhms}`,
    `Cbench_probe out 0 ${loadFarads}`,
  ];
}

/** The difference of the halves; with a reservoir, which begins full, half its volts times difference over sum. */
function pairLines(
  say: TerminalWords['cli']['deck'],
  k: number,
  { pair, heldVolts }: Pick<StandingSet, 'heldVolts'> & Pick<Observation, 'pair'>,
): { readonly at: string; readonly lines: readonly string[] } {
  const [a, b] = [`v(${loadNode(k, 'a')})`, `v(${loadNode(k, 'b')})`];
  if (pair === null || pair.kind === 'discriminator') {
    return { at: 'bench_pair', lines: [`* ${say.difference}`, `Bbench_pair bench_pair 0 V = ${a}-${b}`] };
  }
  const held = `min(v(bench_held), ${RESERVE}*v(bench_sum))`;
  const lines = [
    `* ${say.reservoir(pair.reservoirSeconds)}`,
    `Bbench_sum bench_sum 0 V = ${a}+${b}`,
    `Rbench_held bench_sum bench_held 1`,
    `Cbench_held bench_held 0 ${pair.reservoirSeconds} ic=${heldVolts}`,
    `Bbench_pair bench_pair 0 V = 0.5*${held}*(${a}-${b})/max(v(bench_sum), 1e-12)`,
  ];
  return { at: pair.tap === 'sum' ? 'bench_held' : 'bench_pair', lines };
}
