/** What an instructor lays beside the runs of a class as handed out: what is taken, what is refused, and what a run is then held against. Source: docs/class.md. */
import 'fake-indexeddb/auto';
import { describe, expect, it } from 'vitest';
import { readMaterial } from '../../src/app/classMaterial.ts';
import { certifyHanded } from '../../src/app/takeFiles.ts';
import { withPar } from '../../src/certify/certifiedPar.ts';
import { claimOf, grade } from '../../src/grading/grade.ts';
import type { HandedOut } from '../../src/judge/handedOut.ts';
import { serialiseRunFile, toRunFile } from '../../src/run/serialise.ts';
import { PAR_ONCE_WRITTEN } from '../../src/scenario/par.ts';
import { type ReadText, unfolded } from '../../src/services/classroom/brought.ts';
import { doJob } from '../../src/services/jobs/doJob.ts';
import { en } from '../../src/words/en/index.ts';
import { runOf } from '../run/runs.ts';
import { wholeJob } from '../session/acts.ts';
import { browser, course, lesson, other, pair, sheetOn } from './harbourCan.ts';

const can = pair('harbour-can');
const scenarioText = (changes: Record<string, unknown> = {}): string =>
  JSON.stringify({ ...lesson, id: 'slip-evening', receiver: 'harbour-can', ...changes });
const file = (name: string, text: string) => ({ name, blob: new File([text], name) });
const world = { library: async () => course, knownSet: async () => null, par: async () => null };
const judge = (text: string, handedOut: readonly HandedOut[]) =>
  doJob('judge', { text, file: 'run.json', handedOut }, world);

const asText: ReadText = async ({ blob }) => ({ ok: true, value: await blob.text() });

async function material(...files: readonly { readonly name: string; readonly blob: File }[]) {
  const { library } = await browser();
  const sorted = await unfolded({ files, leftAlone: [], empty: [] }, asText);
  const read = await readMaterial(en, library, sorted.handedOut ?? [], []);
  return { ...read, sorted, scenarios: read.materials.flatMap(({ scenarios }) => scenarios) };
}

/** A run as a learner who opened the sheet hands it in. `certified`: their bench had certified the scenario meanwhile; `copied`: it was done on a bench that took a copy of what stands for no par for one. */
async function runText(sheet: string, { certified = false, copied = false } = {}): Promise<string> {
  const { library, take } = await browser();
  const taken = await take(sheet);
  if (!taken.ok) throw new Error(JSON.stringify(taken.problems));
  const found = await library.setup('slip-evening');
  if (!found?.ok) throw new Error('no bench');
  let setup = found.value;
  if (certified) {
    const jobs = { run: (name: never, order: never) => doJob(name, order, world) as never };
    const said = await certifyHanded({ scenario: setup.scenario, design: setup }, jobs);
    if (said?.kind !== 'certified') throw new Error('not certified');
    setup = { ...setup, scenario: withPar(setup.scenario, said.par) };
  }
  if (copied) setup = { ...setup, scenario: { ...setup.scenario, par: PAR_ONCE_WRITTEN } };
  const run = runOf(setup, wholeJob(setup));
  return serialiseRunFile(toRunFile(run, claimOf(grade(setup, run.events))));
}

describe('what lies beside the runs', () => {
  it('is the sheet with its receiver inside, and the run is verified against it', async () => {
    const { scenarios, refused } = await material(file('evening.json', sheetOn(can)));
    expect(refused).toEqual([]);
    expect(scenarios.map(({ id }) => id)).toEqual(['slip-evening']);
    expect(await judge(await runText(sheetOn(can)), [])).toMatchObject({ outcome: 'otherScenario', score: null });
    expect(await judge(await runText(sheetOn(can)), scenarios)).toMatchObject({ outcome: 'verified' });
  });

  it('is held against the run as it is: another receiver or another scenario of that name stays another', async () => {
    const { scenarios } = await material(file('evening.json', sheetOn(pair('harbour-can', other))));
    expect(await judge(await runText(sheetOn(can)), scenarios)).toMatchObject({
      ...{ outcome: 'otherScenario', finding: { kind: 'foreign', part: 'receiver' } },
    });
    const easier = scenarioText({ toleranceFactor: 3 });
    const easy = [{ id: 'slip-evening', text: easier, receiver: can }];
    expect(await judge(await runText(sheetOn(can)), easy)).toMatchObject({
      ...{ outcome: 'otherScenario', finding: { kind: 'foreign', part: 'scenario' } },
    });
  });

  it('is certified here where the learner’s bench had certified it, and no other par will do', async () => {
    const { scenarios } = await material(file('evening.json', sheetOn(can)));
    const run = await runText(sheetOn(can), { certified: true });
    expect(await judge(run, scenarios)).toMatchObject({ outcome: 'verified' });
    const generous = [{ ...scenarios[0]!, text: scenarioText({ title: 'Another evening' }) }];
    expect((await judge(run, generous)).finding).toMatchObject({ kind: 'foreign', part: 'scenario' });
  });

  it('is the run’s where its bench had not certified it yet and wrote down the par that stands for none', async () => {
    const { scenarios } = await material(file('evening.json', sheetOn(can)));
    const run = await runText(sheetOn(can), { copied: true });
    expect((JSON.parse(run) as { scenario: object }).scenario).toHaveProperty('par');
    expect(await judge(run, scenarios)).toMatchObject({ outcome: 'verified' });
  });

  it('is a scenario and the two files of its receiver, in whatever order', async () => {
    const { scenarios, refused } = await material(
      file('slip.json', scenarioText()),
      file('network.cir', can.deck.text),
      file('harbour.json', can.receiver.text),
    );
    expect(refused).toEqual([]);
    expect(await judge(await runText(sheetOn(can)), scenarios)).toMatchObject({ outcome: 'verified' });
  });

  it.each<[string, readonly (readonly [string, string])[], RegExp]>([
    ['a receiver without its deck', [['harbour.json', can.receiver.text]], /Bring network\.cir/],
    ['a deck without its receiver', [['network.cir', can.deck.text]], /deck alone/],
    ['a sealed sheet', [['sealed.json', '{"format":"haystack-sealed-evening"}']], /sealed/],
    ['a scenario on a receiver that is not here', [['slip.json', scenarioText()]], /harbour-can/],
    [
      'a scenario with a name of the course',
      [['slip.json', scenarioText({ id: 'first-curve', receiver: 'loose-can-10m7' })]],
      /course/,
    ],
  ])('refuses %s, and says why', async (_, files, reason) => {
    const { materials, refused } = await material(...files.map(([name, text]) => file(name, text)));
    expect(materials.flatMap(({ scenarios }) => scenarios)).toEqual([]);
    expect(refused.join(' ')).toMatch(reason);
  });

  it('is not what lies in a folder among the runs', async () => {
    const { sorted, materials } = await material(
      file('evening/easy.json', sheetOn(can)),
      file('evening/anna.json', await runText(sheetOn(can))),
    );
    expect(materials).toEqual([]);
    expect(sorted.strangers).toEqual(['evening/easy.json']);
    expect(sorted.files.map(({ name }) => name)).toEqual(['evening/anna.json']);
  });
});
