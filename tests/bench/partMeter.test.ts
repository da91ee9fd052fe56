/**
 * The meter across a part. Ohms are held against ngspice at rest (`.op`) on the receiver's own deck, with stages and losses taken out, the wire of each coil worked out here
 * from Wheeler's formula (Proc. IRE October 1928), and an ampere sent through the part; a diode against ngspice's own. What the trade says is common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import { createBench } from '../../src/bench/bench.ts';
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import { AGC_LINE_OHMS, METER_OHMS_PER_VOLT } from '../../src/bench/instruments.ts';
import { type BenchSetup, initialState } from '../../src/bench/setup.ts';
import type { Fault } from '../../src/receiver/faults/fault.ts';
import { replay } from '../../src/run/replay.ts';
import { appendEvent, createRun } from '../../src/run/runLog.ts';
import { shippedReceiver, shippedTexts } from '../files/shipped.ts';
import { DIODE_SETTINGS, K_T_PER_Q, runRest } from '../physics/ngspice.ts';
import { play, readySetup, refusal, SCENARIO, stripSetup } from './fixture.ts';

const off: BenchEvent = { type: 'powerSwitched', on: false };
const on: BenchEvent = { type: 'powerSwitched', on: true };
const meter = (element: string): BenchEvent => ({ type: 'partMetered', element });
const strip = (...faults: readonly Fault[]): BenchSetup => readySetup(stripSetup, { faults });
const shipped = (id: string, fault: Fault): BenchSetup => {
  const loaded = shippedReceiver(id);
  return {
    ...loaded,
    scenario: { ...SCENARIO, receiver: id, faults: [fault] },
  };
};
/** Nobody has switched it on. */
const cold = (setup: BenchSetup, part: string) => {
  const state = initialState(setup);
  return createBench(setup).partReading({ ...state, leads: { ...state.leads, biasA: null, biasB: null } }, part);
};
const GOOD: Fault = { kind: 'looseEarth' };

/** 6.35 mm across, 12.7 mm long: a = 0.125 in, b = 0.5 in. */
const wire = (microhenry: number): number =>
  (Math.sqrt(microhenry * (9 * 0.125 + 10 * 0.5)) / 0.125) * Math.PI * 6.35e-3 * (17.24e-9 / (Math.PI * 0.1e-3 ** 2));

/** Ohms between two nodes at rest. `change` is what has failed, as the text of the deck has it. */
async function restOhms(id: string, from: string, to: string, change: (text: string) => string): Promise<number> {
  const { receiver } = shippedReceiver(id);
  const none = new Set((receiver.notParts ?? []).map((name) => name.toLowerCase()));
  const { deck } = shippedReceiver(id);
  const lines = change(shippedTexts()[`receivers/${id}/network.cir`]!)
    .split('\n')
    .filter((line) => !/^[GIK.*]/i.test(line))
    .filter((line) => !(/^R/i.test(line) && none.has(line.split(/\s+/)[0]!.toLowerCase())))
    .map((line) => {
      const [name = '', a, b] = line.split(/\s+/);
      const coil = deck.elements.find((e) => e.kind === 'L' && e.name === name);
      return coil === undefined ? line : `R${name} ${a} ${b} ${wire(coil.value * 1e6)}`;
    });
  const text = ['rest', '.options rshunt=1e12', ...lines, `Iprods ${to} ${from} 1`, '.op', '.end'].join('\n');
  const volts = await runRest(text);
  const at = (node: string): number => (node === '0' ? 0 : volts.get(node)!);
  return at(from) - at(to);
}

const OHMS: readonly (readonly [string, string, Fault, string, string, string, (t: string) => string])[] = [
  ['a resistor across its coil', 'video-valve-45m', GOOD, 'Rp1', 'p1', '0', (t) => t],
  ['a coil', 'am-455k', GOOD, 'L1p', 'mix', '0', (t) => t],
  [
    'a winding that is broken: what damps it is left',
    'fm-10m7',
    { kind: 'openWinding', slug: 'T2B' },
    'L2p',
    'p1',
    '0',
    (t) => t.replace(/^L2p p1 0 /im, 'L2p p1 broken ').replace(/^C2p/im, 'Rbroken broken 0 10meg\nC2p'),
  ],
  ['a resistor that stands by itself', 'video-solid-45m', GOOD, 'R47', 'm47', '0', (t) => t],
  ['a capacitor between two coils', 'video-solid-45m', GOOD, 'C39a', 'x1', 'm39', (t) => t],
  [
    'a resistor of another value',
    'video-solid-45m',
    { kind: 'wrongLoad', element: 'R39', ohms: 330 },
    'R39',
    'm39',
    '0',
    (t) => t.replace(/^(R39 m39 0) 1.2k/im, '$1 330'),
  ],
];

describe('ohms of a part in a set that is off', () => {
  it.each(OHMS)('%s, of %s: as in ngspice at rest (within 1e-6)', async (_, id, fault, part, from, to, change) => {
    const read = cold(shipped(id, fault), part);
    if (read.kind !== 'ohms') throw new Error(read.kind);
    const ohms = await restOhms(id, from, to, change);
    expect(read.ohms / ohms).toBeGreaterThan(1 - 1e-6);
    expect(read.ohms / ohms).toBeLessThan(1 + 1e-6);
  });

  it('an open resistor is found by itself, and not across a coil; an open capacitor not at all', () => {
    const alone = (fault: Fault) => cold(shipped('video-solid-45m', fault), 'R47');
    expect(alone(GOOD)).toMatchObject({ ohms: expect.closeTo(1200, 0) });
    // 12 megohm, ten thousand times its value.
    expect(alone({ kind: 'openResistor', element: 'R47' })).toMatchObject({ ohms: expect.closeTo(12e6, -3) });
    const across = (fault: Fault) => cold(shipped('video-valve-45m', fault), 'Rp1');
    expect(across({ kind: 'openResistor', element: 'Rp1' })).toMatchObject({ ohms: expect.closeTo(wire(1.197), 3) });
    const capacitor = (fault: Fault) => cold(shipped('video-valve-45m', fault), 'C39');
    expect(capacitor({ kind: 'driftedCapacitor', element: 'C39', factor: 1.6 })).toEqual(capacitor(GOOD));
  });

  it.each(['bypass:G2', 'decoupling:Lp2', 'shield', 'G3'])('of %s it tells nothing, good or bad', (part) => {
    expect(cold(strip(GOOD), part)).toEqual({ kind: 'nothing' });
    expect(cold(strip({ kind: 'openBypass', element: 'G2', ohms: 180 }), part)).toEqual({ kind: 'nothing' });
  });

  it('what a failed bypass or decoupling does for the signal is no ohms beside a coil', () => {
    const sound = cold(strip(GOOD), 'Lp2');
    expect(cold(strip({ kind: 'openDecoupling', first: 'Lp1', second: 'Lp2', ohms: 0.5 }), 'Lp2')).toEqual(sound);
    expect(cold(strip({ kind: 'openBypass', element: 'G2', ohms: 180 }), 'Lp2')).toEqual(sound);
  });

  it('of a bias line: its own resistance and a leak side by side; with its filter open the needle stays', () => {
    const line = (fault: Fault) => cold(shipped('video-valve-45m', fault), 'AGC');
    expect(line(GOOD)).toMatchObject({ kind: 'ohms', ohms: expect.closeTo(AGC_LINE_OHMS, 6) });
    const leak = 150e3;
    expect(line({ kind: 'leakyBiasLine', at: 'AGC', ohms: leak })).toMatchObject({
      ohms: expect.closeTo((AGC_LINE_OHMS * leak) / (AGC_LINE_OHMS + leak), 3),
    });
    expect(line({ kind: 'openAgcFilter', at: 'AGC' })).toEqual({ kind: 'ohms', ohms: Number.POSITIVE_INFINITY });
  });
});

describe('a diode, both ways round', () => {
  const [detector] = shippedReceiver('video-valve-45m').receiver.detectors;
  if (detector?.kind !== 'envelope') throw new Error('a single diode is wanted');
  const model = `.model dd d(is=${detector.saturationAmps} n=${detector.emissionVolts / K_T_PER_Q})`;
  const scale = async (diode: readonly string[], red: 'a' | 'b', loadOhms = detector.loadOhms): Promise<number> => {
    const black = red === 'a' ? 'b' : 'a';
    const cell = [`Vcell hot ${black} 1.5`, `Rcell hot ${red} 1k`, `R1 b low ${loadOhms}`, `R2 low a ${wire(1.083)}`];
    const volts = await runRest(
      ['ohmmeter', DIODE_SETTINGS, model, ...diode, ...cell, 'Rearth b 0 1', '.op', '.end'].join('\n'),
    );
    const across = volts.get(red)! - volts.get(black)!;
    return across / ((1.5 - across) / 1e3);
  };

  it.each([
    ['good: its cathode is at the coil', GOOD, ['D1 b a dd'], undefined],
    ['the wrong way round', { kind: 'reversedDiode', detector: 'D1' }, ['D1 a b dd'], undefined],
    ['leaking', { kind: 'leakyDiode', detector: 'D1', ohms: 800 }, ['D1 b a dd', 'Rleak a b 800'], undefined],
    ['with a load of another value', { kind: 'wrongDetectorLoad', detector: 'D1', ohms: 470 }, ['D1 b a dd'], 470],
  ] as const)('%s: as in ngspice (within 1e-4)', async (_, fault, diode, load) => {
    const read = cold(
      shipped('video-valve-45m', { ...fault, ...('detector' in fault ? { detector: detector.id } : {}) }),
      detector.id,
    );
    if (read.kind !== 'diode') throw new Error(read.kind);
    expect(read.ohms / (await scale(diode, 'a', load))).toBeCloseTo(1, 4);
    expect(read.turnedOhms / (await scale(diode, 'b', load))).toBeCloseTo(1, 4);
  });

  it('a piece of wire reads nothing either way', () => {
    const fault: Fault = { kind: 'shortedDiode', detector: detector.id };
    expect(cold(shipped('video-valve-45m', fault), detector.id)).toEqual({ kind: 'diode', ohms: 0, turnedOhms: 0 });
  });
});

describe('volts with the set on', () => {
  const live = (setup: BenchSetup, part: string, acts: readonly BenchEvent[] = [off, on]) =>
    createBench(setup).partReading(play(setup, acts), part);
  const volts = (setup: BenchSetup, part: string, acts?: readonly BenchEvent[]): number => {
    const read = live(setup, part, acts);
    if (read.kind !== 'volts') throw new Error(read.kind);
    return read.volts;
  };

  it('of a line: what the needle shows there, with the prods as its load', () => {
    const free: BenchEvent[] = [off, { type: 'leadRemoved', lead: 'biasA' }, { type: 'leadRemoved', lead: 'rf' }, on];
    const setup = strip({ kind: 'leakyBiasLine', at: 'AGC', ohms: 150e3 });
    const needle = createBench(setup).display(
      play(setup, [...free, { type: 'leadConnected', lead: 'meter', to: 'AGC' }]),
    ).meterVolts;
    expect(volts(setup, 'AGC', free)).toBeCloseTo(needle, 9);
    // Ohm's law: leak and meter side by side below the line's own resistance.
    const below = 1 / (1 / 150e3 + 1 / (METER_OHMS_PER_VOLT * play(setup, free).controls.meterRangeVolts));
    const rest = setup.receiver.biasLines[0]!.unclampedRestVolts;
    expect(volts(setup, 'AGC', free)).toBeCloseTo((rest * below) / (below + AGC_LINE_OHMS), 3);
  });

  it('a grid that a leaky coupling drags stands above its line, and its neighbour does not', () => {
    const setup = strip({ kind: 'leakyCoupling', element: 'G2', volts: 4 });
    const line = volts(setup, 'AGC');
    expect(line).toBeCloseTo(-3, 1);
    for (const part of ['coupling:G2', 'G2']) expect(volts(setup, part)).toBeCloseTo(line + 4, 9);
    expect(volts(setup, 'G1')).toBeCloseTo(line, 9);
    const cured = play(setup, [off, { type: 'partReplaced', element: 'coupling:G2' }, on]);
    expect(createBench(setup).partReading(cured, 'G2')).toMatchObject({ volts: expect.closeTo(line, 9) });
  });

  it('of anything else it knows none', () => {
    for (const part of ['Rp1', 'C39', 'Lp1', 'G3', 'D1', 'bypass:G1']) {
      expect(live(strip(GOOD), part)).toEqual({ kind: 'nothing' });
    }
  });

  it('a clamped line is read in volts with the set off as well: the bias supply is on', () => {
    expect(live(strip(GOOD), 'AGC', [off])).toMatchObject({ kind: 'volts', volts: expect.closeTo(-3, 1) });
  });
});

describe('the act', () => {
  it('takes parts of the tray, changes nothing, is no incident and plays again', () => {
    const setup = strip({ kind: 'openResistor', element: 'Rp1' });
    expect(refusal(strip(), play(strip(), [off]), meter('Rp1'))).toBe('notInThisScenario');
    expect(refusal(setup, play(setup, [off]), meter('K39'))).toBe('noSuchPart');
    const before = play(setup, [off, on]);
    const after = play(setup, [meter('Rp1')], before);
    expect({ ...after, seconds: 0 }).toEqual({ ...before, seconds: 0 });
    let run = createRun(setup, null);
    for (const [i, act] of [meter('Rp1'), off, meter('AGC')].entries()) {
      const appended = appendEvent(run, act, 1000 * i);
      if (appended.ok) run = appended.run;
    }
    expect(run.events.map(({ type }) => type)).toEqual(['partMetered', 'powerSwitched', 'partMetered']);
    expect(replay(setup, run.events).state).toEqual(run.state);
  });
});
