/**
 * Failed parts that edit no deck, or not the deck alone, against ngspice (as packaged in eecircuit-engine), the circuit written out by hand: a diode the wrong way
 * round, a diode that leaks or has another load, a bias line that leaks with a meter on it. A period of the carrier is held against a circuit at rest, which has no step
 * of time to be wrong by: one diode for each of so many instants of the period, each on the volts of its instant, all on the one load that keeps its volts meanwhile. The diode is
 * written out there as its exponential, for the simulator's own is another below -3 nVt, which makes some 1e-5.
 */
import { describe, expect, it, test } from 'vitest';
import { asSheetSays } from '../../../src/bench/asSheetSays.ts';
import { createBench } from '../../../src/bench/bench.ts';
import type { BenchEvent } from '../../../src/bench/benchEvent.ts';
import { connectionsOf } from '../../../src/bench/connections.ts';
import { createFaultBook } from '../../../src/bench/faultsNow.ts';
import { AGC_LINE_OHMS, METER_OHMS_PER_VOLT } from '../../../src/bench/instruments.ts';
import { diodesNow } from '../../../src/bench/loads.ts';
import { firstResponse } from '../../../src/bench/setup.ts';
import { detectEnvelope, diodeConductance } from '../../../src/physics/diode.ts';
import type { Fault } from '../../../src/receiver/faults/fault.ts';
import { faultEffects } from '../../../src/receiver/faults/faultEffects.ts';
import type { Detector } from '../../../src/receiver/receiver.ts';
import { play, readySetup, stripSetup } from '../../bench/fixture.ts';
import { shippedReceiver } from '../../files/shipped.ts';
import { keptMeans, WHOLE } from '../../physics/keptSpice.ts';
import { DIODE_SETTINGS, K_T_PER_Q, runRest } from '../../physics/ngspice.ts';
import { setupOf } from '../../technician/oneScenario.ts';

const meansOf = keptMeans('faultsAtBench');

/** Mean volts at the node `o` over the last 20 us. */
async function settledVolts(lines: readonly string[], seconds: number): Promise<number> {
  const text = ['circuit', DIODE_SETTINGS, ...lines, `.tran 20n ${seconds} ${seconds - 20e-6} 20n`, '.end'];
  return (await meansOf(text.join('\n'), ['o'], [WHOLE]))[0]![0]!;
}

/** What our side makes of the detector that the fault leaves, for a carrier of some volts from a source without resistance. */
function ours(fault: Fault, volts: number) {
  const { receiver, deck } = shippedReceiver('video-valve-45m');
  const [detector] = faultEffects(receiver, deck, [fault], []).receiver.detectors;
  if (detector?.kind !== 'envelope') throw new Error('a single diode is wanted');
  return (detector.polarity === 'negative' ? -1 : 1) * detectEnvelope(volts, detector);
}

describe('the diode of the valve strip on a carrier of 1 MHz, smoothed by 0.1 uF', () => {
  const { receiver } = shippedReceiver('video-valve-45m');
  const [sound] = receiver.detectors;
  if (sound?.kind !== 'envelope') throw new Error('a single diode is wanted');
  const model = `.model dd d(is=${sound.saturationAmps} n=${sound.emissionVolts / K_T_PER_Q})`;
  const load = [`R1 o 0 ${sound.loadOhms}`, 'C1 o 0 0.1u'];

  test.each([0.5, 2])('%d V peak, the wrong way round: as much the other way (within 0.05 %)', async (volts) => {
    // The strip's own diode gives negative volts: turned round, its anode is at the coil.
    expect(sound.polarity).toBe('negative');
    const mean = await settledVolts([`V1 a 0 sin(0 ${volts} 1meg)`, model, 'D1 a o dd', ...load], 4e-3);
    expect(ours({ kind: 'reversedDiode', detector: sound.id }, volts) / mean).toBeGreaterThan(0.9995);
    expect(ours({ kind: 'reversedDiode', detector: sound.id }, volts) / mean).toBeLessThan(1.0005);
  });

  test.each([0.5, 2])(
    '%d V peak, 800 ohms across it: what it lets back counts as load (within 0.1 %)',
    async (volts) => {
      const lines = [`V1 a 0 sin(0 ${volts} 1meg)`, model, 'D1 o a dd', 'Rleak o a 800', ...load];
      const mean = await settledVolts(lines, 4e-3);
      const law = ours({ kind: 'leakyDiode', detector: sound.id, ohms: 800 }, volts);
      expect(law / mean).toBeGreaterThan(0.999);
      expect(law / mean).toBeLessThan(1.001);
      expect(Math.abs(mean)).toBeLessThan(0.99 * detectEnvelope(volts, sound));
    },
  );
});

describe('the same diode, instant by instant in ngspice at rest', () => {
  const { receiver } = shippedReceiver('video-valve-45m');
  const [sound] = receiver.detectors;
  if (sound?.kind !== 'envelope') throw new Error('a single diode is wanted');
  const INSTANTS = 128;
  /** Far below what is compared. */
  const AT_REST = '.options temp=26.85 tnom=26.85 reltol=1e-10 vntol=1e-14 abstol=1e-20 gmin=1e-20';

  /** Volts on the load and conductance to the carrier; `ways` = 1: anode to the circuit. What lies across the diode lies there at every instant. */
  async function atRest(
    volts: number,
    ways: 1 | -1,
    loadOhms: number,
    acrossOhms: number | null,
    diode: Pick<Detector, 'saturationAmps' | 'emissionVolts'> = sound!,
  ) {
    const lines = Array.from({ length: INSTANTS }, (_, k) => {
      const at = volts * Math.cos((2 * Math.PI * k) / INSTANTS);
      const [anode, cathode] = ways === 1 ? [`a${k}`, 'o'] : ['o', `a${k}`];
      const law = `${diode.saturationAmps / INSTANTS}*(exp(v(${anode},${cathode})/${diode.emissionVolts})-1)`;
      return [
        `V${k} a${k} 0 ${at}`,
        `B${k} ${anode} ${cathode} I=${law}`,
        ...(acrossOhms === null ? [] : [`Ra${k} a${k} o ${acrossOhms * INSTANTS}`]),
      ];
    });
    // It begins where a diode without a drop would end: an exponential that is overshot comes back slowly.
    const load = [`R1 o 0 ${loadOhms}`, `.nodeset v(o)=${ways * volts}`];
    const text = ['circuit', AT_REST, ...lines.flat(), ...load, '.op', '.end'].join('\n');
    const rest = await runRest(text);
    const siemens = Array.from({ length: INSTANTS }, (_, k) => {
      const drawn = -rest.get(`i(v${k})`)!;
      return (2 * drawn * Math.cos((2 * Math.PI * k) / INSTANTS)) / volts;
    }).reduce((sum, g) => sum + g, 0);
    return { load: rest.get('o')!, siemens };
  }

  const own = sound.loadOhms;
  const faults: readonly (readonly [Fault, 1 | -1, number, number | null])[] = [
    [{ kind: 'reversedDiode', detector: sound.id }, 1, own, null],
    [{ kind: 'leakyDiode', detector: sound.id, ohms: 800 }, -1, own, 800],
    [{ kind: 'wrongDetectorLoad', detector: sound.id, ohms: 470 }, -1, 470, null],
    [{ kind: 'wrongDetectorLoad', detector: sound.id, ohms: 47e3 }, -1, 47e3, null],
  ];
  const AMPLITUDES = [0.03, 0.5, 2];
  it.each(faults.flatMap((one) => AMPLITUDES.map((volts) => [...one, volts] as const)))(
    '%o at %d, %d, %s: the volts on its load at %d V peak (within 1e-6)',
    async (fault, ways, loadOhms, acrossOhms, volts) => {
      const { load } = await atRest(volts, ways, loadOhms, acrossOhms);
      expect(Math.abs(load)).toBeGreaterThan(1e-4);
      expect(Math.abs(ours(fault, volts) / load - 1)).toBeLessThan(1e-6);
    },
  );

  it.each([
    [0.5, 0.4],
    [1, 2],
  ])(
    'of an FM detector whose first diode leaks each half has the volts of its own, at %d and %d V (within 1e-6)',
    async (plusVolts, minusVolts) => {
      const plain = setupOf('buzz');
      const detector = plain.receiver.detectors.find(({ kind }) => kind !== 'envelope');
      if (detector === undefined) throw new Error('two diodes are wanted');
      const fault: Fault = { kind: 'leakyDiode', detector: detector.id, ohms: 9e3 };
      const setup = { ...plain, scenario: { ...plain.scenario, faults: [fault] } };
      const state = asSheetSays(setup, firstResponse(setup), {});
      const now = createFaultBook(setup)(state).setup;
      const [first, second] = diodesNow(
        now,
        now.receiver.detectors.find(({ id }) => id === detector.id)!,
        state,
        connectionsOf(now, state),
      );
      const spice = async (volts: number, acrossOhms: number | null): Promise<number> =>
        (await atRest(volts, 1, detector.loadOhms, acrossOhms, detector)).load;
      const [leaking, whole] = [await spice(plusVolts, fault.ohms), await spice(minusVolts, null)];
      expect(detectEnvelope(plusVolts, first!) / leaking - 1).toBeCloseTo(0, 6);
      expect(detectEnvelope(minusVolts, second!) / whole - 1).toBeCloseTo(0, 6);
      expect(Math.abs(detectEnvelope(minusVolts, first!) / whole - 1)).toBeGreaterThan(0.01);
    },
  );

  it.each([0.5, 2])('with 470 ohm behind it its circuit meets a harder load at %d V (within 1e-6)', async (volts) => {
    const meets = async (ohms: number): Promise<number> => {
      const { siemens } = await atRest(volts, -1, ohms, null);
      expect(Math.abs(diodeConductance(volts, { ...sound, loadOhms: ohms }) / siemens - 1)).toBeLessThan(1e-6);
      return siemens;
    };
    expect(await meets(470)).toBeGreaterThan(1.2 * (await meets(own)));
  });
});

/** The needle on the strip's own line at rest, nothing clamping it, and the meter's range. */
function lineNeedle(fault: Fault, range: number): number {
  const setup = readySetup(stripSetup, { faults: [fault] });
  const acts: BenchEvent[] = [
    { type: 'powerSwitched', on: false },
    { type: 'leadRemoved', lead: 'rf' },
    { type: 'leadRemoved', lead: 'biasA' },
    { type: 'leadConnected', lead: 'meter', to: 'AGC' },
    { type: 'powerSwitched', on: true },
    { type: 'controlSet', control: 'meterRangeVolts', value: range },
  ];
  return createBench(setup).display(play(setup, acts)).meterVolts;
}

describe('a bias line with something the matter', () => {
  const rest = shippedReceiver('video-valve-45m').receiver.biasLines[0]!.unclampedRestVolts;
  const faults: readonly (readonly [string, Fault, readonly string[]])[] = [
    [
      'leaks',
      { kind: 'leakyBiasLine', at: 'AGC', ohms: 150e3 },
      [`V1 a 0 ${rest}`, `Rline a o ${AGC_LINE_OHMS}`, 'Rleak o 0 150k'],
    ],
    // a gassy grid: current into the line, which goes home through the line's own resistance
    [
      'feeds a gassy grid',
      { kind: 'gassyValve', element: 'G1', amps: 5e-6 },
      [`V1 a 0 ${rest}`, `Rline a o ${AGC_LINE_OHMS}`, 'Igrid 0 o 5u'],
    ],
    // nothing but the meter from the line to earth
    ['is open', { kind: 'openAgcFilter', at: 'AGC' }, [`V1 a 0 ${rest}`, 'Rnone o 0 1g']],
  ];
  it.each(faults)('%s: what the meter reads on three ranges (within 1e-6)', async (_, fault, lines) => {
    for (const range of [3, 10, 30]) {
      const spice = await settledVolts([...lines, `Rmeter o 0 ${METER_OHMS_PER_VOLT * range}`], 40e-6);
      const needle = lineNeedle(fault, range);
      expect(Math.abs(needle - spice)).toBeLessThan(1e-6 * Math.abs(spice) + 1e-12);
    }
  });
});

describe('a detector with another load', () => {
  const { receiver } = shippedReceiver('video-valve-45m');
  const [sound] = receiver.detectors;
  if (sound?.kind !== 'envelope') throw new Error('a single diode is wanted');
  const model = `.model dd d(is=${sound.saturationAmps} n=${sound.emissionVolts / K_T_PER_Q})`;

  test.each([0.5, 2])('%d V peak into 470 ohm (within 0.05 %)', async (volts) => {
    const mean = await settledVolts(
      [`V1 a 0 sin(0 ${volts} 1meg)`, model, 'D1 o a dd', 'R1 o 0 470', 'C1 o 0 1u'],
      6e-3,
    );
    const law = ours({ kind: 'wrongDetectorLoad', detector: sound.id, ohms: 470 }, volts);
    expect(law / mean).toBeGreaterThan(0.9995);
    expect(law / mean).toBeLessThan(1.0005);
  });

  test('a shorted diode gives nothing', () => {
    expect(Math.abs(ours({ kind: 'shortedDiode', detector: sound.id }, 2))).toBeLessThan(1e-5);
  });
});

describe('a diode the wrong way round', () => {
  it('drives the line that follows it the wrong way: less bias for more signal', () => {
    const faults: readonly Fault[] = [{ kind: 'reversedDiode', detector: 'D1' }];
    const volts = (set: readonly Fault[], levelDb: number): number => {
      const setup = readySetup(stripSetup, { faults: set });
      const acts: BenchEvent[] = [
        { type: 'powerSwitched', on: false },
        { type: 'leadRemoved', lead: 'biasA' },
        { type: 'leadConnected', lead: 'meter', to: 'AGC' },
        { type: 'powerSwitched', on: true },
        { type: 'controlSet', control: 'meterRangeVolts', value: 30 },
        { type: 'controlSet', control: 'levelDb', value: levelDb },
      ];
      return createBench(setup).display(play(setup, acts)).meterVolts;
    };
    expect(volts([], -40)).toBeLessThan(volts([], -60));
    expect(volts(faults, -40)).toBeGreaterThan(volts(faults, -60));
    expect(volts(faults, -40)).toBeGreaterThan(0);
  });
});
