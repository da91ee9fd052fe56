/** A shipped receiver on the bench as its sheet asks for one response, slugs where they belong; and the plain arithmetic that its picture is held against. */
import { type Bench, createBench } from '../../src/bench/bench.ts';
import type { BenchEvent, ControlId } from '../../src/bench/benchEvent.ts';
import type { BenchState, LeadId } from '../../src/bench/benchState.ts';
import type { BenchSetup } from '../../src/bench/setup.ts';
import { admittanceAtHz } from '../../src/physics/admittance.ts';
import { type Deck, findElement, nodeKey } from '../../src/physics/deck.ts';
import type { DiodeLaw } from '../../src/physics/diodeLaw.ts';
import { type DeckEdit, editDeck } from '../../src/physics/editDeck.ts';
import { detectorDiode, detectorLoads } from '../../src/receiver/diodes.ts';
import type { PathLoad } from '../../src/receiver/pathLoad.ts';
import type { Receiver, SheetResponse } from '../../src/receiver/receiver.ts';
import { mainResponse, responseById } from '../../src/receiver/responses.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { shippedLibrary } from '../files/shipped.ts';
import { fullSolve } from '../laws/fullSolve.ts';
import { play, SCENARIO, sheetStart } from './fixture.ts';
import { type Spot, spots } from './look.ts';

const library = shippedLibrary();

export interface OnBench {
  readonly setup: BenchSetup;
  readonly bench: Bench;
  readonly response: SheetResponse;
  readonly deck: Deck;
  /** the sheet's set-up, with these acts after it */
  after(...acts: BenchEvent[]): BenchState;
  /** volts at the Y input of trace and retrace after these acts: divisions times the gain, less the position */
  volts(...acts: BenchEvent[]): { readonly trace: Spot[]; readonly retrace: Spot[] };
}

export function onBench(receiver: string, id?: string, bench: Partial<Scenario['bench']> = {}): OnBench {
  const loaded = library.receivers.get(receiver)!;
  const response = id === undefined ? mainResponse(loaded.receiver) : responseById(loaded.receiver, id);
  const bare: BenchSetup = { ...loaded, scenario: { ...SCENARIO, receiver, responses: [response.id] } };
  const start = sheetStart(bare, response);
  const { mainsHz } = response.setUp;
  const setup = { ...bare, scenario: { ...bare.scenario, start, bench: { ...SCENARIO.bench, mainsHz, ...bench } } };
  const made = createBench(setup);
  // A lead that is to go where it stands already is left there.
  const after = (...acts: BenchEvent[]): BenchState =>
    acts.reduce(
      (state, act) =>
        act.type === 'leadConnected' && state.leads[act.lead] === act.to ? state : play(setup, [act], state),
      play(setup, []),
    );
  return {
    setup,
    bench: made,
    response,
    deck: loaded.deck,
    after,
    volts(...acts) {
      const state = after(...acts);
      const { yVoltsPerDiv, yPositionDiv } = state.controls;
      const all = spots(made.display(state)).map(({ x, y }) => ({ x, y: (y - yPositionDiv) * yVoltsPerDiv }));
      return { trace: all.slice(0, all.length / 2), retrace: all.slice(all.length / 2) };
    },
  };
}

export const set = (control: ControlId, value: number | boolean | string): BenchEvent => ({
  type: 'controlSet',
  control,
  value,
});
export const clip = (lead: LeadId, to: string): BenchEvent => ({ type: 'leadConnected', lead, to });
export const lift = (lead: LeadId): BenchEvent => ({ type: 'leadRemoved', lead });

/** The carrier itself on the tube, at a gain that holds it. */
export const RAW = set('yInput', 'raw');
export const gain = (voltsPerDiv: number): BenchEvent => set('yVoltsPerDiv', voltsPerDiv);

/** Frequency that a place of the trace stands for: the sweep is a sine, and so is X. */
export function hzAt({ response }: OnBench, x: number): number {
  return response.setUp.centreHz + (response.setUp.spanHz / 2) * (x / 5);
}
export function xAt({ response }: OnBench, hz: number): number {
  return (5 * (hz - response.setUp.centreHz)) / (response.setUp.spanHz / 2);
}

export type Complex = readonly [re: number, im: number];

/** The diodes on a receiver's nodes when nothing but its own loads hangs on them. */
export function ownLoads({ receiver, deck }: BenchSetup): readonly PathLoad[] {
  return receiver.detectors.flatMap((detector) => detectorLoads(detector, detectorDiode(deck, detector)));
}

/**
 * Phasors at the nodes for so many amps in one source, every stage saturating and every diode drawing what it draws at that carrier: a resistor and a capacitor stand
 * for each diode, the stages' gains are scaled, all of it solved by the dense route and put right again until nothing moves.
 */
export function worked(
  deck: Deck,
  edits: readonly DeckEdit[],
  source: string,
  amps: number,
  hz: number,
  stages: Receiver['stages'],
  loads: readonly PathLoad[],
): ((node: string) => Complex) & { crest(node: string): number } {
  const others = deck.elements.filter((e) => e.kind === 'I' && e.name.toLowerCase() !== source.toLowerCase());
  const standing = editDeck(deck, [
    ...others.map((e): DeckEdit => ({ kind: 'set', name: e.name, value: 0 })),
    ...edits,
    { kind: 'set', name: source, value: amps },
  ]);
  const levels = loads.map(() => 0.1);
  const gains = stages.map(() => 1);
  const y = new Float64Array(4);
  const crests = [...levels];
  for (let round = 0; round < 400; round++) {
    const parts = loads.flatMap(({ node, law }, k): DeckEdit[] => {
      admittanceAtHz(law.admittance, hz, crests[k]!, y);
      const share = levels[k]! > 0 ? crests[k]! / levels[k]! : 1;
      const susceptance = (share * y[1]!) / (2 * Math.PI * hz);
      const draws = [resistor(`Rworked${k}`, node, 1 / (share * y[0]!))];
      return susceptance > 0
        ? [...draws, capacitor(`Cworked${k}`, node, susceptance)]
        : [...draws, coil(k, node, hz, -share * y[1]!)];
    });
    const scaled = stages.map((stage, k): DeckEdit => ({ kind: 'scale', name: stage.element, factor: gains[k]! }));
    const solved = fullSolve(editDeck(standing, [...parts, ...scaled]), hz);
    const size = (node: string): number => (nodeKey(node) === '0' ? 0 : Math.hypot(...solved.get(nodeKey(node))!));
    let moved = 0;
    for (const [k, { node }] of loads.entries()) {
      // Where no signal comes, nothing has to settle.
      if (size(node) > 0) moved = Math.max(moved, Math.abs(size(node) / levels[k]! - 1));
      levels[k] = size(node) > 0 ? (levels[k]! + size(node)) / 2 : 0;
    }
    for (const [k, stage] of stages.entries()) {
      const g = findElement(standing, stage.element)!;
      const next = g.kind === 'G' ? tanhGain(size(g.control[0]) / stage.saturationVolts) : 1;
      moved = Math.max(moved, Math.abs(next - gains[k]!));
      gains[k] = next;
    }
    for (const [k, { node, law }] of loads.entries()) {
      const other = loads.findIndex((one, j) => j !== k && one.law.admittance.mutual === law.admittance.mutual);
      const pulses = law.admittance.mutual === null ? null : loads[other]!.law;
      const dent =
        pulses === null ? 0 : dentOf(solved.get(nodeKey(node))!, solved.get(nodeKey(loads[other]!.node))!, law, pulses);
      const next = levels[k]! + dent;
      moved = Math.max(moved, levels[k]! > 0 ? Math.abs(next - crests[k]!) / levels[k]! : 0);
      crests[k] = next;
    }
    if (moved < 1e-5) {
      const at = (node: string): Complex => solved.get(nodeKey(node))!;
      return Object.assign(at, { crest: (node: string) => crests[loads.findIndex((one) => one.node === node)]! });
    }
  }
  throw new Error(`no standing state at ${hz} Hz`);
}

/** What the pulses of the other of two diodes do to one's crest, volts: the sum of diodePulses.ts written out for phasors. */
function dentOf([ar, ai]: Complex, [br, bi]: Complex, law: DiodeLaw, other: DiodeLaw): number {
  const [a, b] = [Math.hypot(ar, ai), Math.hypot(br, bi)];
  if (a === 0 || b === 0) return 0;
  const { re, im } = law.admittance.mutual!;
  const lead = Math.atan2(bi, br) - Math.atan2(ai, ar);
  const spread = law.diode.emissionVolts / a + other.diode.emissionVolts / b;
  const amps = other.detect(b) / other.diode.loadOhms;
  const terms = re.map((r, k) => {
    const h = k + 2;
    return Math.exp((-h * h * spread) / 2) * (r * Math.cos(h * lead) - im[k]! * Math.sin(h * lead));
  });
  return -2 * amps * terms.reduce((sum, term) => sum + term, 0);
}

/** A susceptance below zero. */
function coil(k: number, node: string, hz: number, siemens: number): DeckEdit {
  const value = 1 / (2 * Math.PI * hz * Math.max(siemens, 1e-12));
  return { kind: 'add', element: { kind: 'L', name: `Lworked${k}`, nodes: [node, '0'], value } };
}

/** |V| at a node for an ampere in one source, by the dense route; no diodes, no stage gives way. */
export function level(deck: Deck, edits: readonly DeckEdit[], source: string, node: string, hz: number): number {
  const others = deck.elements.filter((e) => e.kind === 'I' && e.name.toLowerCase() !== source.toLowerCase());
  const only = editDeck(deck, [
    ...others.map((e): DeckEdit => ({ kind: 'set', name: e.name, value: 0 })),
    ...edits,
    { kind: 'set', name: source, value: 1 },
  ]);
  const [re, im] = fullSolve(only, hz).get(nodeKey(node))!;
  return Math.hypot(re, im);
}

export const scale = (name: string, factor: number): DeckEdit => ({ kind: 'scale', name, factor });
export const setTo = (name: string, value: number): DeckEdit => ({ kind: 'set', name, value });
export const deckValueOf = (deck: Deck, name: string): number => findElement(deck, name)!.value;
export function resistor(name: string, node: string, ohms: number): DeckEdit {
  return { kind: 'add', element: { kind: 'R', name, nodes: [node, '0'], value: ohms } };
}
export function capacitor(name: string, node: string, farads: number): DeckEdit {
  return { kind: 'add', element: { kind: 'C', name, nodes: [node, '0'], value: farads } };
}
/** A current into a node, and nothing else there. */
export function driveWithout(node: string): DeckEdit[] {
  return [
    { kind: 'add', element: { kind: 'I', name: 'Itest', nodes: ['0', node], value: 1, phaseDegrees: 0, dcAmps: 0 } },
  ];
}
/** The bench's source on a node: two times 75 ohm across it, and its Norton current. */
export function driveAt(node: string): DeckEdit[] {
  return [
    { kind: 'add', element: { kind: 'I', name: 'Itest', nodes: ['0', node], value: 1, phaseDegrees: 0, dcAmps: 0 } },
    resistor('Rtest', node, 37.5),
  ];
}

/** Volts of the source, peak, open circuit: 0 dB is 2 V. */
export const sourceVolts = (levelDb: number): number => 2 * 10 ** (levelDb / 20);

/** Fundamental of tanh(a sin t) over a: the describing function by plain summing (Gelb and Vander Velde, from memory). */
export function tanhGain(a: number): number {
  if (a < 1e-6) return 1;
  let sum = 0;
  for (let i = 0; i < 2000; i++) {
    const s = Math.sin((Math.PI * (i + 0.5)) / 2000);
    sum += Math.tanh(a * s) * s;
  }
  return sum / (1000 * a);
}

/** Output of an exponential diode into a load, by bisection on equal mean currents: I0(A/v) = (1 + V/(R Is)) exp(V/v) (Knight). */
export function diodeVolts(amplitude: number, saturationAmps: number, emissionVolts: number, loadOhms: number): number {
  const a = amplitude / emissionVolts;
  let mean = 0;
  // exp(a (cos t - 1)) averaged: I0 without its exponential growth.
  for (let i = 0; i < 4000; i++) mean += Math.exp(a * (Math.cos((Math.PI * (i + 0.5)) / 4000) - 1)) / 4000;
  const wanted = Math.log(mean) + a;
  let [low, high] = [0, amplitude];
  for (let i = 0; i < 60; i++) {
    const v = (low + high) / 2;
    if (Math.log1p(v / (loadOhms * saturationAmps)) + v / emissionVolts < wanted) low = v;
    else high = v;
  }
  return low;
}

/** Each raw point is an edge of the carrier's band: heights without sign, hum and position taken out by pairs. */
export function rawHeights(half: readonly Spot[]): Spot[] {
  const out: Spot[] = [];
  for (let i = 1; i < half.length; i += 2) {
    const [a, b] = [half[i - 1]!, half[i]!];
    out.push({ x: (a.x + b.x) / 2, y: Math.abs(a.y - b.y) / 2 });
  }
  return out;
}
