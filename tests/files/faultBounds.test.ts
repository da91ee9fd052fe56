/** Faults that cannot be had together, or that leave values no circuit can have once bias and new parts have had their say: refused when the scenario is read. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkReceiver } from '../../src/files/checkReceiver.ts';
import { checkScenario } from '../../src/files/checkScenario.ts';
import { faultToFile } from '../../src/files/faultFile.ts';
import { parseScenario } from '../../src/files/scenarioSchema.ts';
import type { Deck } from '../../src/physics/deck.ts';
import { editDeck } from '../../src/physics/editDeck.ts';
import { stageValues } from '../../src/receiver/elementValues.ts';
import type { Fault } from '../../src/receiver/faults/fault.ts';
import { faultEffects } from '../../src/receiver/faults/faultEffects.ts';
import { inEnglish } from './said.ts';
import { shippedJson, shippedLibrary, shippedReceiver } from './shipped.ts';

const { receiver, deck } = shippedReceiver('video-valve-45m');

function told(faults: readonly Fault[], set: { receiver: typeof receiver; deck: Deck } = { receiver, deck }) {
  const json = { ...shippedJson('vision-if/from-cold.json'), faults: faults.map(faultToFile) };
  const parsed = parseScenario(json, 's.json');
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  const scenario = {
    ...parsed.value,
    receiver: set.receiver.id,
    start: { ...parsed.value.start, slugs: {}, randomTurns: 0 },
  };
  return inEnglish(checkScenario(scenario, set, 's.json').filter((p) => p.place.startsWith('/faults')));
}

describe('one kind of fault, twice on one part', () => {
  it.each<[string, Fault, Fault]>([
    ['a resistor', { kind: 'wrongLoad', element: 'Rp1', ohms: 100 }, { kind: 'wrongLoad', element: 'rp1', ohms: 200 }],
    ['a stage', { kind: 'weakStage', element: 'G2', factor: 0.5 }, { kind: 'weakStage', element: 'G2', factor: 0.3 }],
    ['a bypass', { kind: 'openBypass', element: 'G2', ohms: 180 }, { kind: 'openBypass', element: 'G2', ohms: 68 }],
    [
      'a diode',
      { kind: 'leakyDiode', detector: 'video', ohms: 1e3 },
      { kind: 'leakyDiode', detector: 'video', ohms: 2e3 },
    ],
    [
      'the screen',
      { kind: 'missingShield', from: 'p1', to: 'mix', farads: 1e-13 },
      { kind: 'missingShield', from: 'p2', to: 'g1', farads: 1e-13 },
    ],
    [
      'a trap',
      { kind: 'swappedTraps', first: 'C39', second: 'C47' },
      { kind: 'swappedTraps', first: 'C41', second: 'C39' },
    ],
    ['a lead', { kind: 'looseEarth' }, { kind: 'looseEarth' }],
  ])('%s: the second is refused, by name', (_, first, second) => {
    expect(told([first])).toEqual([]);
    expect(told([second])).toEqual([]);
    expect(told([first, second])).toEqual([
      expect.objectContaining({
        file: 's.json',
        place: '/faults/1',
        found: expect.stringContaining(`"${second.kind}"`),
      }),
    ]);
  });

  it('two kinds on one part, and one kind on two parts, may stand together', () => {
    expect(
      told([
        { kind: 'weakStage', element: 'G2', factor: 0.5 },
        { kind: 'openBypass', element: 'G2', ohms: 180 },
      ]),
    ).toEqual([]);
    expect(
      told([
        { kind: 'openResistor', element: 'Rp1' },
        { kind: 'openResistor', element: 'Rp2' },
      ]),
    ).toEqual([]);
  });
});

describe('what is no part', () => {
  it.each<[string, Fault]>([
    ['the loss of a coil', { kind: 'openResistor', element: 'RQp1' }],
    ['the loading by a grid', { kind: 'wrongLoad', element: 'Rgp1', ohms: 1e3 }],
    ['the capacitance of wiring', { kind: 'driftedCapacitor', element: 'cmix', factor: 1.2 }],
  ])('%s does not fail by itself', (_, fault) => {
    expect(told([fault])).toEqual([
      expect.objectContaining({ place: '/faults/0', wanted: 'a fault of a part in the tray' }),
    ]);
  });

  it('must be in the deck to be named as none', () => {
    const wrong = { ...receiver, notParts: ['Rp1', 'Lp1', 'Rx'] };
    expect(checkReceiver(wrong, deck, 'r.json').map((p) => p.place)).toEqual(['/notParts/1', '/notParts/2']);
  });
});

describe('a fault that adds an element', () => {
  it('is refused where the deck has one of that name', () => {
    const taken = editDeck(deck, [
      { kind: 'add', element: { kind: 'C', name: 'CSTRAY_shield', nodes: ['p3', '0'], value: 1e-13 } },
    ]);
    expect(told([{ kind: 'missingShield', from: 'p1', to: 'mix', farads: 1e-13 }], { receiver, deck: taken })).toEqual([
      expect.objectContaining({ place: '/faults/0', wanted: 'a deck without an element Cstray_shield' }),
    ]);
  });
});

describe('a capacitor that bias takes from', () => {
  // V1's grid: 12 pF in the deck, of which the bias law of the receiver may take 2 pF. Nearly all of it is valve and wiring; here it is taken for a part.
  const bare = { receiver: { ...receiver, notParts: [] }, deck };
  const toldBare = (faults: readonly Fault[]) => told(faults, bare);
  const drifted = (factor: number): Fault => ({ kind: 'driftedCapacitor', element: 'Cin', factor });

  it('must keep more than bias may take', () => {
    expect(toldBare([drifted(0.17)])).toEqual([]);
    expect(toldBare([drifted(0.16)])).toEqual([
      expect.objectContaining({
        place: '/faults/0',
        found: expect.stringContaining('Cin of'),
        wanted: 'more than the 2 pF that the bias of G1 may take out of it',
      }),
    ]);
    // Where bias takes nothing it may drift as far as it likes.
    expect(toldBare([{ kind: 'driftedCapacitor', element: 'Cp3', factor: 0.1 }])).toEqual([]);
  });

  it('must keep it in whichever order parts are replaced', () => {
    const swapped: Fault = { kind: 'swappedTraps', first: 'Cin', second: 'C47' };
    expect(toldBare([swapped])).toEqual([]);
    // Together they leave 47 pF; with the other capacitor new, what is left is the drift.
    expect(toldBare([swapped, drifted(0.1)]).map((p) => p.place)).toEqual(['/faults/1']);
    const small: Fault = { kind: 'driftedCapacitor', element: 'C47', factor: 0.04 };
    expect(toldBare([small])).toEqual([]);
    expect(toldBare([small, swapped]).map((p) => p.place)).toEqual(['/faults']);
  });

  it('is a capacitor still at any bias, where the scenario was let in', () => {
    const stages = [...shippedLibrary().receivers.values()].flatMap((set) =>
      set.receiver.stages.flatMap((stage) => {
        const law = set.receiver.biasLines.find((line) => line.at === stage.agc);
        return law === undefined || stage.inputCapacitor === null
          ? []
          : [{ set, stage, law, name: stage.inputCapacitor }];
      }),
    );
    expect(stages.length).toBeGreaterThan(5);
    let letIn = 0;
    fc.assert(
      fc.property(
        fc.constantFrom(...stages),
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        fc.double({ min: -60, max: 60, noNaN: true }),
        ({ set, stage, law, name }, factor, volts) => {
          const fault: Fault = { kind: 'driftedCapacitor', element: name, factor };
          if (told([fault], set).length > 0) return;
          letIn++;
          const edited = faultEffects(set.receiver, set.deck, [fault], []).deck;
          for (const { value } of stageValues(law, stage, edited, volts)) expect(value).toBeGreaterThanOrEqual(0);
          expect(stageValues(law, stage, edited, volts).find((v) => v.element === name)!.value).toBeGreaterThan(0);
        },
      ),
      // As many as are surely let in often enough, and the same every time.
      { numRuns: 400, seed: 17 },
    );
    expect(letIn).toBeGreaterThan(20);
  });
});

describe('as many faults as a scenario may have', () => {
  it('are held against the receiver in every choice of them', () => {
    const eight: Fault[] = [
      ...['Rp1', 'Rp2', 'Rp3', 'Rmix'].map((element): Fault => ({ kind: 'openResistor', element })),
      { kind: 'weakStage', element: 'G1', factor: 0.5 },
      { kind: 'weakStage', element: 'G2', factor: 0.5 },
      { kind: 'swappedTraps', first: 'C39', second: 'C47' },
      { kind: 'missingShield', from: 'p1', to: 'mix', farads: 1e-13 },
    ];
    expect(told(eight)).toEqual([]);
    expect(
      told([...eight.slice(0, 7), { kind: 'driftedCapacitor', element: 'Cin', factor: 0.01 }]).map((p) => p.place),
    ).toEqual(['/faults/7']);
  });
});
