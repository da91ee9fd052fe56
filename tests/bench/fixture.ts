/** Two small invented receivers built in code: a loose trainer can and a three-stage valve strip on a live chassis. */
import { applyEvent } from '../../src/bench/applyEvent.ts';
import type { Applied, BenchEvent, Refusal } from '../../src/bench/benchEvent.ts';
import type { BenchState } from '../../src/bench/benchState.ts';
import { type BenchSetup, initialState } from '../../src/bench/setup.ts';
import { sheetControls } from '../../src/bench/sheetSetUp.ts';
import { readDeck } from '../../src/physics/readDeck.ts';
import type { Adjuster, Receiver, Specification, TestPoint } from '../../src/receiver/receiver.ts';
import { mainResponse } from '../../src/receiver/responses.ts';
import { NO_LIFE } from '../../src/scenario/life.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';

const CAN_DECK = `* one double-tuned 10.7 MHz transformer
Isig 0 gen AC 1m
Rsrc gen 0 75
Rser gen pri 22k
C1 pri 0 56p
L1 pri 0 3.951u
RQ1 pri 0 20k
C2 sec 0 47p
Cprobe sec 0 10p
L2 sec 0 3.882u
RQ2 sec 0 24k
K1 L1 L2 0.021
.end
`;

const STRIP_DECK = `* three-stage valve strip at 45.75 MHz
Isig 0 mix AC 1u
Cmix mix 0 10p
Lmix mix 0 1.301u
RQmix mix 0 33k
Rmix mix 0 18k
Lin g1 0 1.044u
Cin g1 0 12p
RQin g1 0 27k
Rgin g1 0 12k
Rin g1 0 22k
Kin Lmix Lin 0.161
L39 t39 0 340.6n
C39 t39 0 47p
R39 t39 0 12.8k
K39 Lmix L39 0.112
L47 t47 0 242.1n
C47 t47 0 47p
R47 t47 0 10.7k
K47 Lin L47 0.13
G1 p1 0 g1 0 5m
Lp1 p1 0 1.197u
Cp1 p1 0 12p
RQp1 p1 0 27k
Rgp1 p1 0 12k
Rp1 p1 0 12k
L41 t41 0 316.2n
C41 t41 0 47p
R41 t41 0 12.3k
K41 Lp1 L41 0.039
G2 p2 0 p1 0 5m
Lp2 p2 0 1.072u
Cp2 p2 0 12p
RQp2 p2 0 27k
Rgp2 p2 0 12k
Rp2 p2 0 9.1k
G3 p3 0 p2 0 9m
Lp3 p3 0 1.252u
Cp3 p3 0 10p
RQp3 p3 0 33k
Rp3 p3 0 18k
Ldet det 0 1.083u
Cdet det 0 12p
RQdet det 0 27k
Kdet Lp3 Ldet 0.034
.end
`;

function slug(id: string, element: string, henries: number, extra: Partial<Adjuster> = {}): Adjuster {
  return {
    id,
    label: id,
    kind: 'slug',
    element,
    ganged: [],
    nominalHenries: henries,
    minHenries: 0.82 * henries,
    maxHenries: 1.22 * henries,
    travelTurns: 20,
    backlashTurns: 0.02,
    head: 'hex',
    trapHz: null,
    does: 'moves a hump',
    plan: { x: 0, y: 0, can: id, shape: 'can', hole: 'top' },
    ...extra,
  };
}

function point(id: string, node: string | null, role: TestPoint['role'], extra: Partial<TestPoint> = {}): TestPoint {
  return {
    id,
    label: id,
    node,
    role,
    inject: null,
    detector: null,
    dcVolts: 0,
    note: '',
    plan: { x: 0, y: 0 },
    ...extra,
  };
}

const NO_SPEC = {
  points: [],
  windows: [],
  tilts: [],
  traps: [],
  skirts: [],
  bandwidths: [],
  peaks: [],
  sCurve: null,
  gain: null,
} satisfies Partial<Specification>;

const CAN: Receiver = {
  format: 'haystack-receiver',
  version: 1,
  id: 'fixture-can',
  setName: 'Trainer can',
  title: 'One transformer',
  description: 'Two slugs.',
  deck: 'network.cir',
  mains: null,
  adjusters: [slug('T1B', 'L1', 3.951e-6), slug('T1T', 'L2', 3.882e-6, { head: 'blade' })],
  testPoints: [
    point('TP0', 'gen', 'signal', { inject: { kind: 'deckSource', element: 'Isig', siemens: 1 / 75 } }),
    point('TP1', 'sec', 'signal'),
    point('TP2', 'pri', 'signal', { inject: { kind: 'node' } }),
    point('Earth', null, 'earth'),
  ],
  probeInDeck: { testPoint: 'TP1', elements: ['Cprobe'] },
  stages: [],
  biasLines: [],
  detectors: [],
  converter: null,
  videoFeed: null,
  crystalsHz: [10.5e6, 10.6e6, 10.65e6, 10.7e6, 10.75e6, 10.8e6, 10.9e6, 11e6, 10.4e6],
  responses: [
    {
      id: 'can',
      title: 'Curve',
      quantity: { kind: 'carrier', node: 'sec' },
      setUp: {
        centreHz: 10.7e6,
        spanHz: 1e6,
        mainsHz: 60,
        injectAt: 'TP0',
        observeAt: 'TP1',
        observeWith: 'probe',
        levelDb: -2,
        biases: [],
        source: 'sweep',
        carrierHz: null,
        lowFrequencyAtLeft: true,
        markersHz: [10.6e6, 10.7e6, 10.8e6],
      },
      specification: {
        ...NO_SPEC,
        fromHz: 10.2e6,
        toHz: 11.2e6,
        points: [
          { hz: 10.5e6, target: 0.477, low: 0.387, high: 0.567, weight: 1 },
          { hz: 10.7e6, target: 1, low: 0.94, high: 1.04, weight: 1 },
          { hz: 10.9e6, target: 0.477, low: 0.387, high: 0.567, weight: 1 },
        ],
      },
    },
  ],
  procedure: [],
  cautions: [],
  plan: { width: 420, height: 384, hot: null, parts: [], path: [] },
};

const STRIP: Receiver = {
  ...CAN,
  id: 'fixture-strip',
  setName: 'Table television',
  title: 'Three-stage strip',
  description: 'Nine slugs.',
  mains: { hotChassis: true, highTensionVolts: 280, pictureTube: true },
  adjusters: [
    slug('T1', 'Lmix', 1.301e-6),
    slug('T2', 'Lin', 1.044e-6),
    slug('A1', 'L39', 340.6e-9, { kind: 'trap', trapHz: 39.75e6 }),
    slug('A2', 'L47', 242.1e-9, { kind: 'trap', trapHz: 47.25e6 }),
    slug('T3', 'Lp1', 1.197e-6),
    slug('A3', 'L41', 316.2e-9, { kind: 'trap', trapHz: 41.25e6 }),
    slug('T4', 'Lp2', 1.072e-6),
    slug('T5P', 'Lp3', 1.252e-6),
    slug('T5S', 'Ldet', 1.083e-6),
  ],
  testPoints: [
    point('TP1', 'mix', 'signal', { inject: { kind: 'deckSource', element: 'Isig', siemens: 1.4e-5 } }),
    point('TP2', 'g1', 'signal', { inject: { kind: 'node' } }),
    point('TP3', 'p2', 'signal', { inject: { kind: 'node' }, dcVolts: 120 }),
    point('TP4', 'det', 'detector', { detector: 'D1' }),
    point('AGC', null, 'agc'),
    point('Earth', null, 'earth'),
  ],
  probeInDeck: null,
  stages: [
    stage('G1', 5e-3, 2, 'AGC', 'Cin', 'Rgin'),
    stage('G2', 5e-3, 2, 'AGC', 'Cp1', 'Rgp1'),
    stage('G3', 9e-3, 1.2, null, 'Cp2', 'Rgp2'),
  ],
  biasLines: [
    {
      at: 'AGC',
      follows: 'D1',
      kind: 'exponential',
      referenceVolts: -3,
      scaleVolts: 5,
      capacitanceFarads: 2e-12,
      unclampedRestVolts: -1,
      unclampedVoltsPerDetectedVolt: -6,
    },
  ],
  detectors: [
    {
      id: 'D1',
      kind: 'envelope',
      node: 'det',
      polarity: 'negative',
      saturationAmps: 26e-6,
      emissionVolts: 0.027,
      loadOhms: 4700,
      loadFarads: 8e-12,
      carrierHz: 44e6,
    },
  ],
  crystalsHz: [39.75e6, 41.25e6, 42.17e6, 42.5e6, 43e6, 44e6, 45e6, 45.75e6, 47.25e6],
  responses: [
    {
      id: 'if',
      title: 'Curve',
      quantity: { kind: 'carrier', node: 'det' },
      setUp: {
        centreHz: 44e6,
        spanHz: 12e6,
        mainsHz: 60,
        injectAt: 'TP1',
        observeAt: 'TP4',
        observeWith: 'detectorLead',
        levelDb: -46,
        biases: [{ at: 'AGC', volts: -3, toleranceVolts: 0.2 }],
        source: 'sweep',
        carrierHz: null,
        lowFrequencyAtLeft: true,
        markersHz: [41.25e6, 42.17e6, 45.75e6, 47.25e6],
      },
      specification: {
        ...NO_SPEC,
        fromHz: 38e6,
        toHz: 52e6,
        points: [
          { hz: 45.75e6, target: 0.5, low: 0.44, high: 0.56, weight: 2 },
          { hz: 44e6, target: 1, low: 0.94, high: 1.06, weight: 1 },
          { hz: 42.17e6, target: 0.7, low: 0.62, high: 0.78, weight: 1 },
        ],
        traps: [
          { hz: 47.25e6, maxDb: -40, notchWithinHz: 120e3, weight: 1 },
          { hz: 39.75e6, maxDb: -40, notchWithinHz: 150e3, weight: 1 },
        ],
      },
    },
  ],
  cautions: ['The chassis may be live.'],
  plan: { ...CAN.plan, hot: { x: 0, y: 0, width: 100, height: 50, volts: 280 } },
};

function stage(
  element: string,
  gmSiemens: number,
  saturationVolts: number,
  agc: string | null,
  inputCapacitor: string,
  inputResistor: string,
): Receiver['stages'][number] {
  return {
    element,
    device: `V${element.slice(1)} pentode`,
    gmSiemens,
    saturationVolts,
    limiter: false,
    agc,
    inputCapacitor,
    inputResistor,
  };
}

export const SCENARIO: Scenario = {
  format: 'haystack-scenario',
  version: 2,
  id: 'fixture',
  code: 'X-01',
  title: 'Fixture',
  track: 'first-sweep',
  order: 1,
  difficulty: 1,
  recommendedAfter: [],
  receiver: 'fixture-can',
  words: { brief: '', story: '', lesson: '' },
  seed: 7,
  start: { slugs: {}, randomTurns: 0, controls: {}, prepared: [] },
  bench: { phaseLagDegrees: 0, xSwapped: false, mainsHz: 60, dialErrorHz: 0 },
  // What is measured here to the last digit is measured on a bench as clean as a drawing; life has tests of its own.
  life: NO_LIFE,
  faults: [],
  aids: { hints: true, toleranceMarks: false },
  sealed: false,
  timeLimitSeconds: null,
  toleranceFactor: 1,
  weights: { response: 50, truth: 20, proofs: 10, care: 10, economy: 10 },
  proofs: [],
  par: { turns: 4, seconds: 300 },
  hints: ['first hint', 'second hint'],
};

function setupOf(receiver: Receiver, deckText: string, extra: Partial<Scenario>): BenchSetup {
  const deck = readDeck(deckText, `${receiver.id}.cir`);
  if (!deck.ok) throw new Error(JSON.stringify(deck.problems));
  return { receiver, deck: deck.value, scenario: { ...SCENARIO, receiver: receiver.id, ...extra } };
}

export const canSetup = (extra: Partial<Scenario> = {}): BenchSetup => setupOf(CAN, CAN_DECK, extra);
export const stripSetup = (extra: Partial<Scenario> = {}): BenchSetup => setupOf(STRIP, STRIP_DECK, extra);

/** Everything made safe, clipped on and set up as the sheet asks; slugs at nominal. */
export function sheetStart(setup: BenchSetup, response = mainResponse(setup.receiver)): Scenario['start'] {
  const { setUp } = response;
  return {
    slugs: {},
    randomTurns: 0,
    prepared: ['safe', 'connect'],
    controls: { ...sheetControls(setUp), blanking: true },
  };
}

export function readySetup(make: (extra?: Partial<Scenario>) => BenchSetup, extra: Partial<Scenario> = {}): BenchSetup {
  return make({ start: sheetStart(make()), ...extra });
}

/** Applies events one second apart; each must be accepted. */
export function play(setup: BenchSetup, events: readonly BenchEvent[], from?: BenchState): BenchState {
  let state = from ?? initialState(setup);
  for (const event of events) state = accepted(applyEvent(setup, state, event, state.seconds + 1)).state;
  return state;
}

export function accepted(applied: Applied): Applied & { ok: true } {
  if (!applied.ok) throw new Error(`refused: ${applied.reason}`);
  return applied;
}

export function refusal(setup: BenchSetup, state: BenchState, event: BenchEvent, atSeconds?: number): Refusal | null {
  const applied = applyEvent(setup, state, event, atSeconds ?? state.seconds + 1);
  return applied.ok ? null : applied.reason;
}
