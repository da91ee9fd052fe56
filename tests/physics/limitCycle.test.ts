/**
 * A loop that sings, against ngspice in time (as packaged in eecircuit-engine): stages written there as currents Is tanh(v / Vs), left to themselves from a small push
 * until they stand. Frequency from zero crossings, size from the fundamental by Fourier's integral over whole periods.
 */
import { describe, expect, it, test } from 'vitest';
import { createLimitCycleFinder, meanOfTwo, weakGain } from '../../src/physics/limitCycle.ts';
import { readDeck } from '../../src/physics/readDeck.ts';
import { faultEffects } from '../../src/receiver/faults/faultEffects.ts';
import { shippedReceiver, shippedTexts } from '../files/shipped.ts';
import { runTransient } from './ngspice.ts';

const CAN = { ohms: 5e3, farads: 12e-12, siemens: 5e-3, hz: 45.94e6 };
const henries = 1 / ((2 * Math.PI * CAN.hz) ** 2 * CAN.farads);
const circuit = (n: string): string[] => [
  `L${n} ${n} 0 ${henries}`,
  `C${n} ${n} 0 ${CAN.farads}`,
  `R${n} ${n} 0 ${CAN.ohms}`,
];
const canLines = (feedback: number): string[] => [...circuit('g'), ...circuit('p'), `Ccan g p ${feedback}`];

function finder(feedback: number, volts = 1) {
  const text = ['can', 'I1 0 g AC 1u', ...canLines(feedback), `Gm p 0 g 0 ${CAN.siemens}`, '.end'].join('\n');
  const deck = readDeck(text, 'can.cir');
  if (!deck.ok) throw new Error(JSON.stringify(deck.problems));
  return createLimitCycleFinder(deck.value, new Map([['Gm', volts]]));
}

/** Frequency and peak of each node over the last fifth of one run. */
async function standing(lines: readonly string[], nodes: readonly string[], seconds: number, stepSeconds: number) {
  const text = ['song', '.options reltol=1e-5 abstol=1e-12 vntol=1e-9 method=gear', ...lines];
  const run = await runTransient(
    [...text, `.tran ${stepSeconds} ${seconds} ${0.8 * seconds} ${stepSeconds} uic`, '.end'].join('\n'),
    nodes,
  );
  return nodes.map((node) => ({ node, ...sine(run.seconds, run.nodes.get(node)!) }));
}

function sine(t: Float64Array, v: Float64Array): { readonly hz: number; readonly volts: number } {
  const crossings: number[] = [];
  for (let i = 1; i < v.length; i++) {
    if (v[i - 1]! < 0 && v[i]! >= 0)
      crossings.push(t[i - 1]! + (v[i - 1]! / (v[i - 1]! - v[i]!)) * (t[i]! - t[i - 1]!));
  }
  const [from, to] = [crossings[0]!, crossings.at(-1)!];
  const hz = (crossings.length - 1) / (to - from);
  let [re, im] = [0, 0];
  for (let i = 1; i < v.length; i++) {
    if (t[i - 1]! < from || t[i]! > to) continue;
    const middle = (t[i]! + t[i - 1]!) / 2;
    const area = ((v[i]! + v[i - 1]!) / 2) * (t[i]! - t[i - 1]!);
    re += area * Math.cos(2 * Math.PI * hz * middle);
    im += area * Math.sin(2 * Math.PI * hz * middle);
  }
  return { hz, volts: (2 * Math.hypot(re, im)) / (to - from) };
}

describe('an open can about one stage', () => {
  it('sings from the capacitance where the eigenvalues of the pair cross into growth, 0.0574 pF (tests/oracles/feedback.test.ts)', () => {
    expect(finder(0.0569e-12)!.find(30e6, 70e6)).toBeNull();
    expect(finder(0.0579e-12)!.find(30e6, 70e6)).not.toBeNull();
  });

  it.each([0.08, 0.15, 0.4])(
    'of %d pF stands as in ngspice: frequency within 0.1 %, volts within 2 %',
    async (picofarads) => {
      const cycle = finder(picofarads * 1e-12)!.find(30e6, 70e6)!;
      const lines = [
        ...canLines(picofarads * 1e-12),
        `Bm p 0 I=${CAN.siemens}*tanh(v(g))`,
        'Ipush 0 g PULSE(0 1m 0 1n 1n 5n 1)',
      ];
      for (const { node, hz, volts } of await standing(lines, ['g', 'p'], 10e-6, 0.15e-9)) {
        expect(Math.abs(cycle.hz / hz - 1)).toBeLessThan(1e-3);
        expect(Math.abs(cycle.volts(node) / volts - 1)).toBeLessThan(0.02);
      }
    },
  );

  it('grows with what the stage can take, in step', () => {
    const [one, three] = [finder(0.15e-12, 1)!, finder(0.15e-12, 3)!].map((f) => f.find(30e6, 70e6)!);
    expect(three!.volts('g') / one!.volts('g')).toBeCloseTo(3, 6);
    expect(three!.hz / one!.hz).toBeCloseTo(1, 9);
  });

  it('has no loop without its capacitance', () => {
    const deck = readDeck(['two', ...circuit('g'), ...circuit('p'), 'Gm p 0 g 0 5m', '.end'].join('\n'), 'two.cir');
    expect(deck.ok && createLimitCycleFinder(deck.value, new Map([['Gm', 1]]))).toBeNull();
  });
});

it('two stages of the transistor strip under no lid stand as in ngspice: frequency within 0.2 %, volts within 4 %', async () => {
  const id = 'video-solid-45m';
  const { receiver, deck } = shippedReceiver(id);
  const effects = faultEffects(receiver, deck, [{ kind: 'missingShield', from: 'c3', to: 'b2', farads: 1.5e-12 }], []);
  const saturations = new Map(receiver.stages.map((s) => [s.element, s.saturationVolts]));
  const cycle = createLimitCycleFinder(effects.deck, saturations)!.find(25e6, 80e6)!;
  const lines = shippedTexts()
    [`receivers/${id}/network.cir`]!.split('\n')
    .filter((line) => /^[RLCKG]/i.test(line))
    .map((line) => {
      const [name = '', a, b, p, m] = line.split(/\s+/);
      if (!/^G/i.test(name)) return line.replace(/;.*/, '');
      const volts = saturations.get(name)!;
      const siemens = receiver.stages.find((s) => s.element === name)!.gmSiemens;
      return `B${name} ${a} ${b} I=${siemens * volts}*tanh(v(${p},${m})/${volts})`;
    });
  const push = 'Ipush 0 b2 PULSE(0 0.1m 0 1n 1n 5n 1)';
  const looped = [...lines, 'Cair c3 b2 1.5p', push];
  for (const { node, hz, volts } of await standing(looped, ['b2', 'c3', 'det'], 8e-6, 0.25e-9)) {
    expect(Math.abs(cycle.hz / hz - 1)).toBeLessThan(2e-3);
    expect(Math.abs(cycle.volts(node) / volts - 1)).toBeLessThan(0.04);
  }
});

test('a weak signal beside the song meets the mean slope of tanh', () => {
  for (const a of [0, 0.3, 1, 2.5, 8]) {
    let sum = 0;
    for (let i = 0; i < 4000; i++) sum += 1 / Math.cosh(a * Math.sin((2 * Math.PI * (i + 0.5)) / 4000)) ** 2;
    expect(weakGain(a)).toBeCloseTo(sum / 4000, 5);
  }
});

test('two carriers: the mean of their envelope is that of all phases', () => {
  expect(meanOfTwo(0, 0)).toBe(0);
  // Equal carriers: 4 / pi of one.
  expect(meanOfTwo(1, 1)).toBeCloseTo(4 / Math.PI, 12);
  for (const [a, b] of [
    [1, 0],
    [1, 0.2],
    [0.5, 1],
    [3, 2.9],
  ] as const) {
    let sum = 0;
    for (let i = 0; i < 20000; i++) {
      const phase = (2 * Math.PI * (i + 0.5)) / 20000;
      sum += Math.hypot(a + b * Math.cos(phase), b * Math.sin(phase));
    }
    expect(meanOfTwo(a, b)).toBeCloseTo(sum / 20000, 7);
  }
});
