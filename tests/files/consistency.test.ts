/** What no schema can say: names that refer to each other, sums, orders, a receiver that its deck bears out, a scenario that can be played. */
import { describe, expect, it } from 'vitest';
import { checkReceiver } from '../../src/files/checkReceiver.ts';
import { checkScenario } from '../../src/files/checkScenario.ts';
import { bringForward } from '../../src/files/migrations.ts';
import { parseReceiver } from '../../src/files/receiverSchema.ts';
import { parseScenario } from '../../src/files/scenarioSchema.ts';
import { readDeck } from '../../src/physics/readDeck.ts';
import { saidOf } from './said.ts';
import { shippedJson, shippedReceiver, shippedTexts } from './shipped.ts';

const STRIP = 'receivers/video-valve-45m';
const COLD = 'vision-if/from-cold.json';

// biome-ignore lint/suspicious/noExplicitAny: tests break files on purpose, anywhere
type Break = (json: any) => void;

const S_CURVE = {
  centreHz: 44e6,
  risesWithFrequency: true,
  zero: { toleranceHz: 1e4, weight: 1 },
  separation: { minHz: 1e5, maxHz: 2e5, weight: 1 },
  symmetry: { low: 0.9, high: 1.1, weight: 1 },
  linearity: null,
};
const FM = {
  id: 'sound',
  plus: 'det',
  minus: 'p2',
  saturationAmps: 1e-6,
  emissionVolts: 0.03,
  loadOhms: 1e4,
  loadFarads: 1e-10,
  carrierHz: 10.7e6,
};
const MIXER = {
  from: 'det',
  into: 'Isig',
  siemens: 1e-3,
  oscillator: { node: 'mix', drive: 'Isig', fromHz: 40e6, toHz: 50e6 },
};

describe('a receiver in itself', () => {
  it.each<[string, Break, string]>([
    ['two slugs of one name', (r) => (r.adjusters[1].id = 'T1'), '/adjusters/1/id'],
    ['a nominal beyond the stop', (r) => (r.adjusters[0].nominalHenries = 2e-6), '/adjusters/0/nominalHenries'],
    ['one winding on two slugs', (r) => (r.adjusters[1].ganged = ['lmix']), '/adjusters/1'],
    ['a trap without a frequency', (r) => (r.adjusters[2].trapHz = null), '/adjusters/2/trapHz'],
    ['a slug with one', (r) => (r.adjusters[0].trapHz = 4e7), '/adjusters/0/trapHz'],
    ['two earths', (r) => (r.testPoints[5].role = 'earth'), '/testPoints'],
    ['a point named like an end of the bench', (r) => (r.testPoints[0].id = 'tube'), '/testPoints/0/id'],
    ['a signal point without a node', (r) => (r.testPoints[1].node = null), '/testPoints/1/node'],
    ['an RF lead into earth', (r) => (r.testPoints[6].inject = { kind: 'node' }), '/testPoints/6/inject'],
    ['a detector that is not there', (r) => (r.testPoints[4].detector = 'sound'), '/testPoints/4/detector'],
    [
      'a probe that rests nowhere',
      (r) => (r.probeInDeck = { testPoint: 'AGC', elements: ['Cdet'] }),
      '/probeInDeck/testPoint',
    ],
    ['controlled stages without a law', (r) => (r.biasLines = []), '/biasLines'],
    [
      'a law without a controlled stage',
      (r) => (r.stages = r.stages.map((s: object) => ({ ...s, agc: null }))),
      '/biasLines/0',
    ],
    ['a bias at the detector', (r) => (r.responses[0].setUp.biases[0].at = 'TP1'), '/responses/0/setUp/biases/0/at'],
    [
      'a bias of the other sign',
      (r) => (r.responses[0].setUp.biases[0].volts = 3),
      '/responses/0/setUp/biases/0/volts',
    ],
    [
      'a sheet that injects at the detector',
      (r) => (r.responses[0].setUp.injectAt = 'TP1'),
      '/responses/0/setUp/injectAt',
    ],
    [
      'a sheet that looks at a grid without the probe',
      (r) => (r.responses[0].setUp.observeAt = 'TP2'),
      '/responses/0/setUp/observeAt',
    ],
    [
      'a curve of another node than the one looked at',
      (r) => (r.responses[0].quantity.node = 'p2'),
      '/responses/0/quantity/node',
    ],
    [
      'a marker that is not in the box',
      (r) => (r.responses[0].setUp.markersHz[0] = 40e6),
      '/responses/0/setUp/markersHz/0',
    ],
    ['a marker outside the sweep', (r) => (r.responses[0].setUp.spanHz = 4e6), '/responses/0/setUp/markersHz/0'],
    ['crystals out of order', (r) => r.crystalsHz.reverse(), '/crystalsHz'],
    [
      'a target outside its window',
      (r) => (r.responses[0].specification.points[0].target = 0.9),
      '/responses/0/specification/points/0/target',
    ],
    [
      'a point named twice',
      (r) => (r.responses[0].specification.points[1].hz = 45750000),
      '/responses/0/specification/points/1/hz',
    ],
    [
      'a trap outside the sheet',
      (r) => (r.responses[0].specification.traps[0].hz = 60e6),
      '/responses/0/specification/traps/0/hz',
    ],
    [
      'a window that runs backwards',
      (r) => (r.responses[0].specification.windows[0].toHz = 42e6),
      '/responses/0/specification/windows/0/toHz',
    ],
    [
      'a tilt that runs backwards',
      (r) => (r.responses[0].specification.tilts[0].highHz = 42e6),
      '/responses/0/specification/tilts/0/highHz',
    ],
    [
      'half a demand on the centre',
      (r) =>
        r.responses[0].specification.bandwidths.push({
          levelDb: -3,
          minHz: 1e6,
          maxHz: 2e6,
          centreHz: 44e6,
          centreToleranceHz: null,
          weight: 1,
        }),
      '/responses/0/specification/bandwidths/0',
    ],
    [
      'a sheet that weighs nothing',
      (r) => {
        for (const key of ['points', 'windows', 'tilts', 'traps', 'skirts'])
          for (const item of r.responses[0].specification[key]) item.weight = 0;
        r.responses[0].specification.gain.weight = 0;
      },
      '/responses/0/specification',
    ],
    ['a line that no stage follows twice', (r) => r.biasLines.push({ ...r.biasLines[0] }), '/biasLines/1/at'],
    ['a stage on a line that is not there', (r) => (r.stages[0].agc = 'AGC2'), '/stages/0/agc'],
    ['a line that follows no detector', (r) => (r.biasLines[0].follows = 'sound'), '/biasLines/0/follows'],
    ['two responses of one name', (r) => r.responses.push(structuredClone(r.responses[0])), '/responses/1/id'],
    ['a video sweep without a video part', (r) => (r.responses[0].setUp.source = 'video'), '/responses/0/setUp/source'],
    ['a carrier for a plain sweep', (r) => (r.responses[0].setUp.carrierHz = 45e6), '/responses/0/setUp/carrierHz'],
    [
      'a video feed from no detector',
      (r) => (r.videoFeed = { detector: 'x', into: 'Isig', siemens: 1e-4 }),
      '/videoFeed/detector',
    ],
    [
      'a difference of a diode that stands alone',
      (r) => (r.responses[0].quantity = { kind: 'difference', plus: 'det', minus: 'p2', per: 'g1' }),
      '/responses/0/quantity',
    ],
    [
      'an S-curve of a level',
      (r) => (r.responses[0].specification.sCurve = S_CURVE),
      '/responses/0/specification/sCurve',
    ],
    [
      'ripple on an S-curve',
      (r) => (r.responses[0].specification.sCurve = S_CURVE),
      '/responses/0/specification/windows',
    ],
    [
      'a level below nothing',
      (r) => (r.responses[0].specification.points[0].low = -0.1),
      '/responses/0/specification/points/0/low',
    ],
    ['a loop on the detector', (r) => (r.testPoints[4].looseLoop = true), '/testPoints/4/looseLoop'],
    ['a tap of a diode that stands alone', (r) => (r.testPoints[4].tap = 'sum'), '/testPoints/4/tap'],
    [
      'a ratio detector without its reservoir',
      (r) => r.detectors.push({ ...FM, kind: 'ratio', reservoirFarads: null }),
      '/detectors/1/reservoirFarads',
    ],
    ['a step about a response that is not there', (r) => (r.procedure[2].response = 's'), '/procedure/2/response'],
    ['a step that sweeps the detector', (r) => (r.procedure[5].at = 'TP1'), '/procedure/5/at'],
    ['a step about a slug that is not there', (r) => r.procedure[0].slugs.push('T9'), '/procedure/0/slugs/0'],
    ['a slug without a step', (r) => (r.procedure[5].slugs = ['A1', 'A2']), '/procedure'],
    ['a hole off the plan', (r) => (r.adjusters[0].plan.x = 500), '/adjusters/0/plan'],
    ['two holes too near', (r) => (r.adjusters[5].plan.y = 260), '/adjusters/5/plan'],
    ['two top holes', (r) => (r.adjusters[5].plan.hole = 'top'), '/adjusters/5/plan/hole'],
    ['a round trap in a can of two', (r) => (r.adjusters[5].plan.shape = 'trap'), '/adjusters/5/plan/shape'],
    ['a live corner on a set without mains', (r) => (r.mains = null), '/plan/hot'],
    ['a part off the plan', (r) => (r.plan.parts[4].x = 400), '/plan/parts/4'],
  ])('may not have %s', (_, breakIt, place) => {
    const json = shippedJson(`${STRIP}/receiver.json`);
    breakIt(json);
    expect(saidOf(parseReceiver(json, 'r.json')).map((p) => p.place)).toContain(place);
  });
});

describe('a receiver and its deck', () => {
  const { receiver, deck } = shippedReceiver('video-valve-45m');
  const deckText = shippedTexts()[`${STRIP}/network.cir`]!;

  it('fit as shipped', () => {
    expect(checkReceiver(receiver, deck, 'r.json')).toEqual([]);
  });

  it.each<[string, Break, string]>([
    ['a coil that is not in the deck', (r) => (r.adjusters[0].element = 'Lx'), '/adjusters/0/element'],
    ['a coil that is a capacitor', (r) => (r.adjusters[0].element = 'Cmix'), '/adjusters/0/element'],
    ['a ganged coil that is not there', (r) => (r.adjusters[0].ganged = ['Ly']), '/adjusters/0/ganged/0'],
    ['another nominal than the deck', (r) => (r.adjusters[0].nominalHenries = 1.318e-6), '/adjusters/0/nominalHenries'],
    ['a node that is not in the deck', (r) => (r.testPoints[1].node = 'g9'), '/testPoints/1/node'],
    ['a test point on ground', (r) => (r.testPoints[1].node = '0'), '/testPoints/1/node'],
    ['a source that is a coil', (r) => (r.testPoints[0].inject.element = 'Lmix'), '/testPoints/0/inject/element'],
    ['another gm than the deck', (r) => (r.stages[0].gmSiemens = 0.006), '/stages/0/gmSiemens'],
    ['an input capacitor elsewhere', (r) => (r.stages[0].inputCapacitor = 'Cdet'), '/stages/0/inputCapacitor'],
    ['an input resistor elsewhere', (r) => (r.stages[0].inputResistor = 'Rdio'), '/stages/0/inputResistor'],
    [
      'more capacitance in the law than in the deck',
      (r) => (r.biasLines[0].capacitanceFarads = 12e-12),
      '/stages/0/inputCapacitor',
    ],
    ['a valve that nothing is said of', (r) => r.stages.pop(), '/stages'],
    [
      'an FM detector on no node',
      (r) => r.detectors.push({ ...FM, plus: 'x', kind: 'discriminator', reservoirFarads: null }),
      '/detectors/1/plus',
    ],
    ['a quantity at no node', (r) => (r.responses[0].quantity.node = 'x'), '/responses/0/quantity/node'],
    ['a mixer into no source', (r) => (r.converter = { ...MIXER, into: 'Ix' }), '/converter/into'],
    ['a mixer from no node', (r) => (r.converter = { ...MIXER, from: 'x' }), '/converter/from'],
    [
      'an oscillator on no node',
      (r) => (r.converter = { ...MIXER, oscillator: { ...MIXER.oscillator, node: 'x' } }),
      '/converter/oscillator/node',
    ],
    [
      'a video feed into no source',
      (r) => (r.videoFeed = { detector: 'video', into: 'Cdet', siemens: 1e-4 }),
      '/videoFeed/into',
    ],
    ['a detector on no node', (r) => (r.detectors[0].node = 'x'), '/detectors/0/node'],
    ['a probe elsewhere', (r) => (r.probeInDeck = { testPoint: 'TP2', elements: ['Cdet'] }), '/probeInDeck/elements/0'],
  ])('may not have %s', (_, breakIt, place) => {
    const json = structuredClone(receiver);
    breakIt(json);
    expect(checkReceiver(json, deck, 'r.json').map((p) => p.place)).toContain(place);
  });

  it('compare names as the deck does, without case', () => {
    const json = structuredClone(receiver) as unknown as { adjusters: { element: string }[] };
    json.adjusters[0]!.element = 'LMIX';
    const upper = readDeck(deckText.replaceAll('g1', 'G1N'), 'd.cir');
    expect(upper.ok).toBe(true);
    expect(checkReceiver(json as unknown as typeof receiver, deck, 'r.json')).toEqual([]);
  });
});

describe('a scenario in itself', () => {
  it.each<[string, Break, string]>([
    [
      'weights that miss 100',
      (s) => (s.weights = { response: 50, truth: 20, proofs: 10, care: 11, economy: 10 }),
      '/weights',
    ],
    ['a proof twice', (s) => (s.proofs = ['skirts', 'skirts']), '/proofs/1'],
    ['points for no proof', (s) => (s.proofs = []), '/weights/proofs'],
    ['itself before it', (s) => (s.recommendedAfter = ['from-cold']), '/recommendedAfter/0'],
    ['help in a sealed run', (s) => (s.sealed = true), '/aids'],
    ['faults that are dealt in practice', (s) => (s.dealsFaults = true), '/dealsFaults'],
    ['hints promised but none given', (s) => (s.hints = []), '/hints'],
    [
      'less time than par',
      (s) => Object.assign(s, { timeLimitSeconds: 600, par: { turns: 9, seconds: 601 } }),
      '/timeLimitSeconds',
    ],
    ['the same preparation twice', (s) => (s.start.prepared = ['safe', 'safe']), '/start/prepared/1'],
  ])('may not have %s', (_, breakIt, place) => {
    const json = shippedJson(COLD);
    breakIt(json);
    expect(saidOf(parseScenario(json, 's.json')).map((p) => p.place)).toContain(place);
  });
});

describe('a scenario and its receiver', () => {
  const { receiver, deck } = shippedReceiver('video-valve-45m');
  const read = (breakIt: Break) => {
    const json = shippedJson(COLD);
    breakIt(json);
    const parsed = parseScenario(json, 's.json');
    if (!parsed.ok) throw new Error('the scenario should be whole in itself');
    return checkScenario(parsed.value, { receiver, deck }, 's.json').map((p) => p.place);
  };

  it.each<[string, Break, string]>([
    ['another receiver', (s) => (s.receiver = 'loose-can-10m7'), '/receiver'],
    ['a slug that is not there', (s) => (s.start.slugs.T9 = 1), '/start/slugs/T9'],
    ['an RF lead on a point that takes none', (s) => (s.start.leads = { rf: 'TP1' }), '/start/leads/rf'],
    ['a Y lead on a point that is not there', (s) => (s.start.leads = { y: 'TP99' }), '/start/leads/y'],
    ['a strap on a grid', (s) => (s.start.leads = { earth: 'TP2' }), '/start/leads/earth'],
    ['two bias leads on one line', (s) => (s.start.leads = { biasA: 'AGC', biasB: 'AGC' }), '/start/leads/biasB'],
    ['a start beyond the outer stop', (s) => (s.start.slugs.T1 = -9.5), '/start/slugs/T1'],
    ['a start beyond the inner stop', (s) => (s.start.slugs.T1 = 10.8), '/start/slugs/T1'],
    [
      'a scatter beyond a stop',
      (s) => {
        s.start.randomTurns = 9.5;
        delete s.start.slugs.T1;
      },
      '/start/randomTurns',
    ],
    [
      'a fault of a part that nobody knows',
      (s) => (s.faults = [{ kind: 'openResistor', part: 'Rx' }]),
      '/faults/0/part',
    ],
    ['a fault twice', (s) => (s.faults = [{ kind: 'screwedIn' }, { kind: 'screwedIn' }]), '/faults/1'],
    [
      'a weak stage that is no stage',
      (s) => (s.faults = [{ kind: 'weakStage', part: 'Cin', factor: 0.5 }]),
      '/faults/0/part',
    ],
    ['a cracked slug that is no slug', (s) => (s.faults = [{ kind: 'crackedSlug', part: 'T9' }]), '/faults/0/part'],
    ['a leak on no line', (s) => (s.faults = [{ kind: 'leakyBiasLine', part: 'TP1', ohms: 1e5 }]), '/faults/0/part'],
    ['a diode that is none', (s) => (s.faults = [{ kind: 'reversedDiode', part: 'x' }]), '/faults/0/part'],
    [
      'a shield between nothing',
      (s) => (s.faults = [{ kind: 'missingShield', parts: ['det', 'x'], farads: 1e-13 }]),
      '/faults/0/parts/1',
    ],
  ])('may not have %s', (_, breakIt, place) => {
    expect(read(breakIt)).toEqual([place]);
  });

  it('may go to the very stops, and scatter where nothing is scattered', () => {
    expect(read((s) => (s.start.slugs.T1 = -9.2))).toEqual([]);
    expect(read((s) => (s.start.randomTurns = 30))).toEqual([]);
  });
});

describe('format and version', () => {
  it.each([
    [[], '', 'a list', 'an object'],
    ['text', '', 'a value of type string', 'an object'],
    [null, '', 'null', 'an object'],
    [{}, '/format', 'a file that does not say its format', '"haystack-scenario"'],
    [{ format: 'haystack-receiver' }, '/format', 'a file of format "haystack-receiver"', '"haystack-scenario"'],
    [{ format: 'haystack-scenario' }, '/version', 'no version that counts', 'a whole number from 1 to 2'],
    [{ format: 'haystack-scenario', version: '1' }, '/version', 'no version that counts', 'a whole number from 1 to 2'],
    [
      { format: 'haystack-scenario', version: 3 },
      '/version',
      'version 3',
      'version 2 or older; this file was made for a newer bench',
    ],
  ])('of %j are told in words', (json, place, found, wanted) => {
    expect(saidOf(parseScenario(json, 's.json'))).toEqual([{ file: 's.json', place, found, wanted }]);
  });

  it('bring an old file forward step by step, or say that it is too old', () => {
    const history = {
      format: 'haystack-scenario',
      current: 4,
      migrations: {
        2: (old: Readonly<Record<string, unknown>>) => ({ ...old, trail: `${old.trail}b` }),
        3: (old: Readonly<Record<string, unknown>>) => ({ ...old, trail: `${old.trail}c` }),
      },
    };
    const old = { format: 'haystack-scenario', version: 2, trail: 'a' };
    expect(bringForward(old, history, 's.json')).toEqual({ ok: true, value: { ...old, version: 4, trail: 'abc' } });
    expect(old.trail).toBe('a');
    const tooOld = bringForward({ ...old, version: 1 }, history, 's.json');
    expect(saidOf(tooOld).map((p) => p.wanted)).toEqual(['version 2 or newer; older files are no longer read']);
  });
});
