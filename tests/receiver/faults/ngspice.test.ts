/**
 * Failed parts against ngspice (as packaged in eecircuit-engine): the fault is written into the text of the deck by hand here, and by `faultEffects` on our side; every
 * node must agree. Kinds that edit no deck (a diode the wrong way round, a leaking bias line, a bad contact) are in
 * ngspiceBench.test.ts and at the bench in tests/bench/parts.test.ts; of those that move cores, the cores are moved.
 */
import { describe, expect, it } from 'vitest';
import { buildNetwork } from '../../../src/physics/buildNetwork.ts';
import { createSolver } from '../../../src/physics/solver.ts';
import { slugValues } from '../../../src/receiver/elementValues.ts';
import { cureOf } from '../../../src/receiver/faults/cure.ts';
import { FAULT_KINDS, type Fault } from '../../../src/receiver/faults/fault.ts';
import { faultEffects } from '../../../src/receiver/faults/faultEffects.ts';
import { shippedReceiver, shippedTexts } from '../../files/shipped.ts';
import { runSpice } from '../../physics/ngspice.ts';

type Edit = (text: string) => string;
const valued = (name: string, change: (value: string) => string): Edit => {
  const nodes = /^G/i.test(name) ? 4 : 2;
  const line = new RegExp(`^(${name}(?:\\s+\\S+){${nodes}}\\s+)(\\S+)`, 'im');
  return (text) => {
    if (!line.test(text)) throw new Error(`no line of ${name}`);
    return text.replace(line, (_, head: string, value: string) => head + change(value));
  };
};
const added =
  (line: string): Edit =>
  (text) =>
    text.replace(/^\.ac /im, `${line}\n.ac `);

const CASES: readonly (readonly [string, Fault, readonly Edit[]])[] = [
  ['video-valve-45m', { kind: 'openResistor', element: 'Rp1' }, [valued('Rp1', () => '120meg')]],
  ['chroma-3m58', { kind: 'wrongLoad', element: 'R2', ohms: 820 }, [valued('R2', () => '820')]],
  // gm to 0.35; C2 less 2 pF (1 - sqrt 0.35), as the bias law of the receiver has it
  [
    'video-early-25m',
    { kind: 'weakStage', element: 'G2', factor: 0.35 },
    [valued('G2', () => '1.75m'), valued('C2', () => `${20 - 2 * (1 - Math.sqrt(0.35))}p`)],
  ],
  // of a stage whose input loading is known, that too; of one without a bias line, gm and loading
  [
    'video-valve-45m',
    { kind: 'weakStage', element: 'G1', factor: 0.5 },
    [valued('G1', () => '2.5m'), valued('Cin', () => `${12 - 2 * (1 - Math.sqrt(0.5))}p`), valued('Rgin', () => '24k')],
  ],
  [
    'video-valve-45m',
    { kind: 'weakStage', element: 'G3', factor: 0.5 },
    [valued('G3', () => '4.5m'), valued('Rgp2', () => '24k')],
  ],
  // a transistor: capacitance in step with gm
  [
    'video-solid-45m',
    { kind: 'weakStage', element: 'G1', factor: 0.5 },
    [valued('G1', (was) => `${Number.parseFloat(was) / 2}m`), valued('Cb1', () => '38p'), valued('Rb1', () => '1.12k')],
  ],
  ['fm-10m7', { kind: 'openCapacitor', element: 'C2p', farads: 8e-12 }, [valued('C2p', () => '8p')]],
  [
    'fm-10m7',
    { kind: 'openWinding', slug: 'T2B' },
    [(t) => t.replace(/^L2p p1 0 /im, 'L2p p1 open_T2B '), added('Ropen open_T2B 0 10meg')],
  ],
  // dragged from -3 V to 1 V: gm exp(3/5) / (1 + 1/1.5), loading exp(3/5) + 1/0.15, 2 pF (exp(3/10) - 1) more
  [
    'video-valve-45m',
    { kind: 'leakyCoupling', element: 'G2', volts: 4 },
    [
      valued('G2', () => `${(5 * Math.exp(0.6)) / (1 + 1 / 1.5)}m`),
      valued('Cp1', () => `${12 + 2 * (Math.exp(0.3) - 1)}p`),
      valued('Rgp1', () => `${12 / (Math.exp(0.6) + 1 / 0.15)}k`),
    ],
  ],
  ['video-valve-45m', { kind: 'intermittentJoint', element: 'Rp2', seconds: 20 }, [valued('Rp2', () => '91meg')]],
  ['fm-10m7', { kind: 'coldJoint', element: 'C2s', afterSeconds: 60 }, [valued('C2s', () => '0.56p')]],
  ['video-solid-45m', { kind: 'driftedCapacitor', element: 'C39a', factor: 1.6 }, [valued('C39a', () => '256p')]],
  [
    'video-valve-45m',
    { kind: 'shortedTrap', slug: 'A2' },
    [added(`Lone turn_A2 0 ${242.1 / 60}n\nRone turn_A2 0 0.02\nKone L47 Lone 0.8`)],
  ],
  [
    'video-valve-45m',
    { kind: 'openBypass', element: 'G2', ohms: 180 },
    [
      (t) =>
        t
          .replace(/^G2 p2 0 p1 0 /im, 'G2 p2 cathode_G2 p1 cathode_G2 ')
          .replace(/^Rgp1 p1 0 /im, 'Rgp1 p1 cathode_G2 '),
      added('Rk cathode_G2 0 180'),
    ],
  ],
  [
    'video-valve-45m',
    { kind: 'openDecoupling', first: 'Lp1', second: 'Lp2', ohms: 0.5 },
    [(t) => t.replace(/^(Lp[12] p[12]) 0 /gim, '$1 supply_Lp2 '), added('Rhot supply_Lp2 0 0.5')],
  ],
  ['video-solid-45m', { kind: 'missingShield', from: 'c3', to: 'b2', farads: 2e-13 }, [added('Cair c3 b2 0.2p')]],
  [
    'video-early-25m',
    { kind: 'leakyDiode', detector: 'video', ohms: 800 },
    [added('Rleaks det leak_video 800\nRload leak_video 0 4.7k\nCload leak_video 0 8p')],
  ],
  ['video-early-25m', { kind: 'shortedDiode', detector: 'video' }, [added('Rload det 0 4.7k\nCload det 0 8p')]],
  ['fm-10m7', { kind: 'openCoupling', element: 'K2' }, [valued('K2', () => '2.4e-5')]],
  // a capacitor that couples: what is left of it is a hundredth
  ['sound-4m5', { kind: 'openCoupling', element: 'Cto' }, [valued('Cto', () => '0.056p')]],
  ['video-solid-45m', { kind: 'openCoupling', element: 'C2a' }, [valued('C2a', () => '0.15p')]],
  // across one diode of two: from its end of the coil to its own load
  [
    'fm-10m7',
    { kind: 'leakyDiode', detector: 'ratio', ohms: 5000 },
    [added('Rleaks a leak_ratio 5k\nRload leak_ratio 0 23.5k\nCload leak_ratio 0 330p')],
  ],
  [
    'aft-45m75',
    { kind: 'leakyDiode', detector: 'aft', ohms: 5000 },
    [added('Rleaks a leak_aft 5k\nRload leak_aft 0 47k\nCload leak_aft 0 100p')],
  ],
  [
    'video-solid-45m',
    { kind: 'swappedTraps', first: 'C39a', second: 'C47a' },
    [valued('C39a', () => '130p'), valued('C47a', () => '160p')],
  ],
];

async function worstDifference(id: string, faults: readonly Fault[], text: string, set: Record<string, number> = {}) {
  const { receiver, deck } = shippedReceiver(id);
  const { fromHz, toHz } = receiver.responses[0]!.specification;
  const driven = text
    .replace(/^(I\S+\s+\S+\s+\S+).*$/gim, '$1 AC 1u')
    .replace(/^\.ac .*$/im, `.ac lin 281 ${fromHz} ${toHz}`);
  const spice = await runSpice(driven);
  const network = buildNetwork(faultEffects(receiver, deck, faults, []).deck, 'faulty.cir');
  if (!network.ok) throw new Error(JSON.stringify(network.problems));
  const solver = createSolver(network.value, spice.hz);
  for (const e of deck.elements) if (e.kind === 'I') solver.setDrive(e.name, 1e-6);
  for (const [element, value] of Object.entries(set)) solver.setValue(element, value);
  solver.solve();
  let worst = 0;
  expect(spice.nodes.size).toBeGreaterThan(2);
  for (const [name, { re, im }] of spice.nodes) {
    const [a, b] = [solver.real(name), solver.imag(name)];
    for (let f = 0; f < re.length; f++) {
      const off = Math.hypot(a[f]! - re[f]!, b[f]! - im[f]!);
      if (off > 0) worst = Math.max(worst, off / Math.hypot(re[f]!, im[f]!));
    }
  }
  return worst;
}

describe('a set with a failed part', () => {
  it.each(CASES)('%s, %o: all nodes as in ngspice', async (id, fault, edits) => {
    const text = edits.reduce((t, edit) => edit(t), shippedTexts()[`receivers/${id}/network.cir`]!);
    expect(await worstDifference(id, [fault], text)).toBeLessThan(1e-9);
  });

  it('two at once are both there, whichever is named first', async () => {
    const [, first, a] = CASES[0]!;
    const [, second, b] = CASES[4]!;
    const text = [...a, ...b].reduce((t, edit) => edit(t), shippedTexts()['receivers/video-valve-45m/network.cir']!);
    expect(await worstDifference('video-valve-45m', [first, second], text)).toBeLessThan(1e-9);
    expect(await worstDifference('video-valve-45m', [second, first], text)).toBeLessThan(1e-9);
  });

  it('screwed in: every coil near its most', async () => {
    const { receiver, deck } = shippedReceiver('video-valve-45m');
    const set = Object.fromEntries(
      receiver.adjusters.flatMap((a) => slugValues(a, deck, a.travelTurns - 1).map((v) => [v.element, v.value])),
    );
    const text = Object.entries(set).reduce(
      (t, [name, value]) => valued(name, () => String(value))(t),
      shippedTexts()['receivers/video-valve-45m/network.cir']!,
    );
    expect(await worstDifference('video-valve-45m', [{ kind: 'screwedIn' }], text, set)).toBeLessThan(1e-9);
  });

  it('every kind that edits the deck is here', () => {
    const here = new Set(CASES.map(([, fault]) => fault.kind));
    const elsewhere = [
      ...['leakyBiasLine', 'openAgcFilter', 'gassyValve', 'reversedDiode', 'wrongDetectorLoad'],
      ...['crackedSlug', 'screwedIn', 'looseEarth', 'unmatchedLead'],
    ];
    expect(FAULT_KINDS.filter((kind) => !here.has(kind))).toEqual(
      FAULT_KINDS.filter((kind) => elsewhere.includes(kind)),
    );
  });
});

describe('the cure', () => {
  it.each(CASES)('of %s, %o gives the deck back as it was', (id, fault) => {
    const { receiver, deck } = shippedReceiver(id);
    const cure = cureOf(fault, receiver, deck);
    if (cure.kind !== 'replace') throw new Error('all of these are cured by a part');
    expect(faultEffects(receiver, deck, [fault], []).deck).not.toEqual(deck);
    expect(faultEffects(receiver, deck, [fault], [cure.part]).deck.elements).toEqual(deck.elements);
    expect(faultEffects(receiver, deck, [fault], ['no-such-part']).deck).not.toEqual(deck);
  });
});
