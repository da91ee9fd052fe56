/**
 * A kind of fault that nobody has heard of, added by its row and its words alone, is met wherever faults are: in the file format and its published schema, in the
 * deck, in the tray, at the bench, in the chart, in what is drawn, in the good hand's work, and in the report's sentence and advice.
 */
import { describe, expect, test, vi } from 'vitest';
import type { BenchSetup } from '../../../src/bench/setup.ts';
import { createHand, makeSound } from '../../../src/certify/goodHand.ts';
import { adviceFor } from '../../../src/describe/advice.ts';
import { scoreLineSentence } from '../../../src/describe/scoreLine.ts';
import { checkScenario } from '../../../src/files/checkScenario.ts';
import { faultToFile } from '../../../src/files/faultFile.ts';
import { schemaText } from '../../../src/files/jsonSchema.ts';
import { readRunFile } from '../../../src/files/runFileSchema.ts';
import { parseScenario } from '../../../src/files/scenarioSchema.ts';
import { grade } from '../../../src/grading/grade.ts';
import { faultEffects } from '../../../src/receiver/faults/faultEffects.ts';
import type { FaultySet } from '../../../src/receiver/faults/faultPlaces.ts';
import { plausibleFaults } from '../../../src/receiver/faults/faultsThatFit.ts';
import { partsTray } from '../../../src/receiver/faults/partsTray.ts';
import { serialiseRunFile, toRunFile } from '../../../src/run/serialise.ts';
import { chartedParts } from '../../../src/technician/faultChart.ts';
import { en } from '../../../src/words/en/index.ts';
import { saidOf } from '../../files/said.ts';
import { shippedJson, shippedReceiver } from '../../files/shipped.ts';
import { runOf } from '../../run/runs.ts';

vi.mock('../../../src/receiver/faults/faultRows.ts', async (load) => {
  const real = await load<typeof import('../../../src/receiver/faults/faultRows.ts')>();
  const { faultRow } = await import('../../../src/receiver/faults/faultRow.ts');
  const { coilOf } = await import('../../../src/receiver/faults/faultPlaces.ts');
  const { findElement } = await import('../../../src/physics/deck.ts');
  const dampCoil = faultRow({
    fields: { slug: { holds: 'slug' }, ohms: { holds: 'number', least: 10, most: 1e6 } },
    edits: (fault, set: FaultySet) => {
      const coil = findElement(set.deck, coilOf(set, fault.slug));
      if (coil?.kind !== 'L') return [];
      return [{ kind: 'add', element: { kind: 'R', name: 'Rdamp', nodes: coil.nodes, value: fault.ohms } }];
    },
    cure: { by: 'part', parts: () => ['varnish'], own: { kind: 'varnish', names: () => ['varnish'] } },
    symptom: { tells: 'damp' },
    sits: { at: 'trap', drawn: true, of: ({ id }) => [{ slug: id, ohms: 4700 }] },
  });
  return { ...real, FAULT_ROWS: { ...real.FAULT_ROWS, dampCoil } };
});

vi.mock('../../../src/words/en/parts.ts', async (load) => {
  const real = await load<typeof import('../../../src/words/en/parts.ts')>();
  Object.assign(real.partsWords.kinds, { varnish: 'Varnish' });
  Object.assign(real.partsWords.own, { varnish: 'A coat of varnish' });
  return real;
});

vi.mock('../../../src/words/en/grading.ts', async (load) => {
  const real = await load<typeof import('../../../src/words/en/grading.ts')>();
  Object.assign(real.faultWords.told, { damp: 'It drinks the signal on wet days.' });
  Object.assign(real.faultWords.tries, { damp: 'Dry the coil and coat it.' });
  return real;
});

const FAULT = { kind: 'dampCoil', slug: 'A2', ohms: 2200 };
const { receiver, deck } = shippedReceiver('video-valve-45m');
const read = (fault: object) =>
  parseScenario(
    {
      ...shippedJson('fault-finding/tired-valve.json'),
      faults: [faultToFile(fault as Readonly<Record<string, unknown>>)],
    },
    'x.json',
  );

function setup(): BenchSetup {
  const scenario = read(FAULT);
  if (!scenario.ok) throw new Error(JSON.stringify(scenario.problems));
  return { receiver, deck, scenario: { ...scenario.value, receiver: receiver.id } };
}

describe('a made-up kind of fault', () => {
  test('is read from a scenario, in the shape and the bounds of its row', () => {
    expect(setup().scenario.faults).toEqual([FAULT]);
    const told = (fault: object) => {
      const result = read(fault);
      return saidOf(result).map(({ place, wanted }) => [place, wanted]);
    };
    expect(told({ ...FAULT, ohms: 1 })).toEqual([['/faults/0/ohms', 'from 10 Ω to 1 MΩ']]);
    expect(told({ kind: 'dampCoil', ohms: 100 })).toEqual([['/faults/0/part', 'a value for "part"']]);
    expect(told({ ...FAULT, farads: 1e-12 })).toEqual([
      ['/faults/0/farads', 'no other keys here than kind, part and ohms'],
    ]);
    expect(told({ kind: 'other' })[0]![1]).toContain('"dampCoil"');
  });

  test('stands in a run file, in the scenario that it carries', () => {
    const text = serialiseRunFile(toRunFile(runOf(setup(), []), null));
    expect(text).toContain('"kind": "dampCoil"');
    const file = readRunFile(text, 'run.json');
    if (!file.ok) throw new Error(JSON.stringify(file.problems));
    expect(file.value.scenario.faults).toEqual([FAULT]);
  });

  test('stands in the published schema', () => {
    expect(schemaText('scenario.schema.json')).toContain('"dampCoil"');
  });

  test('is held against the receiver', () => {
    const { scenario } = setup();
    expect(checkScenario(scenario, { receiver, deck })).toEqual([]);
    const elsewhere = { ...scenario, faults: scenario.faults.map((fault) => ({ ...fault, slug: 'A99' })) };
    expect(checkScenario(elsewhere as typeof scenario, { receiver, deck })).toMatchObject([
      { place: '/faults/0/part', found: ['named', 'A99'] },
    ]);
  });

  test('edits the deck until its part is new', () => {
    const { faults } = setup().scenario;
    expect(faultEffects(receiver, deck, faults, []).deck.elements.at(-1)).toMatchObject({ name: 'Rdamp', value: 2200 });
    expect(faultEffects(receiver, deck, faults, ['varnish']).deck).toBe(deck);
  });

  test('has its part in the tray, under its own name', () => {
    const part = partsTray(receiver, deck).find(({ name }) => name === 'varnish')!;
    expect([en.parts.kinds[part.kind], en.parts.name(part, null)]).toEqual(['Varnish', 'A coat of varnish']);
  });

  test('may be drawn, and stands in the chart', () => {
    const traps = receiver.adjusters.filter((a) => a.trapHz !== null).length;
    const made = (kind: string) => kind === 'dampCoil';
    expect(plausibleFaults(receiver, deck).filter(({ kind }) => made(kind))).toHaveLength(traps);
    expect(chartedParts(receiver, deck).filter(({ part }) => part === 'varnish')).toHaveLength(traps);
  });

  test('is cured by the good hand, without a word against it', () => {
    const hand = createHand(setup());
    makeSound(setup(), hand);
    expect(hand.refused).toEqual([]);
    expect(hand.state.replaced).toEqual(['varnish']);
    expect(hand.state.incidents).toEqual([]);
  });

  test('is told of in the report, with what to try', () => {
    const line = grade(setup(), []).lines.find(({ id }) => id === 'G62:varnish')!;
    expect(scoreLineSentence(en, line, receiver)).toContain('It drinks the signal on wet days.');
    expect(adviceFor(en, line)).toBe('Dry the coil and coat it.');
  });
});
