/** Scenario files of the first version, as they were handed out, and the second: what a file leaves out, notes, fault references, hash. Common practice, no source. */
import { readdirSync, readFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { hashOf } from '../../src/files/hash.ts';
import { parseReceiver } from '../../src/files/receiverSchema.ts';
import { readRunFile } from '../../src/files/runFileSchema.ts';
import { scenarioHash, scenarioToFile } from '../../src/files/scenarioFile.ts';
import { parseScenario } from '../../src/files/scenarioSchema.ts';
import { findElement } from '../../src/physics/deck.ts';
import { faultEffects } from '../../src/receiver/faults/faultEffects.ts';
import { hotNode } from '../../src/receiver/faults/faultPlaces.ts';
import { FAULT_ROWS } from '../../src/receiver/faults/faultRows.ts';
import { serialiseRunFile, toRunFile } from '../../src/run/serialise.ts';
import { verifyRun } from '../../src/run/verify.ts';
import { PAR_NOT_KNOWN } from '../../src/scenario/par.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { inside, scratch } from '../cli/commandLine.ts';
import { knownBench, recompute, runOf } from '../run/runs.ts';
import { wholeJob } from '../session/acts.ts';
import { stripSetup } from '../session/setups.ts';
import { shippedJson, shippedLibrary } from './shipped.ts';

const FIRST = new URL('../fixtures/scenarios/', import.meta.url);
const files = scratch();
afterAll(files.remove);

// biome-ignore lint/suspicious/noExplicitAny: files are looked into and changed anywhere
type Json = any;
const first = (name: string): Json => JSON.parse(readFileSync(new URL(name, FIRST), 'utf8'));
function read(json: unknown): Scenario {
  const parsed = parseScenario(json, 's.json');
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  return parsed.value;
}

describe('a file of the first version', () => {
  it.each(readdirSync(FIRST))('%s is read in the words of today', (name) => {
    const old = first(name);
    const scenario = read(old);
    expect(old.version).toBe(1);
    expect(scenario).toMatchObject({
      version: 2,
      recommendedAfter: old.after,
      start: { slugs: old.start.slugs, randomTurns: old.start.scatterTurns },
      aids: { hints: old.aids.hints, toleranceMarks: old.aids.waxMarks },
      par: old.par,
      faults: old.faults,
      weights: old.weights,
    });
    expect(scenario.responses).toEqual(old.work);
    expect(Object.keys(scenario)).not.toContain('after');
  });

  it.each(readdirSync(FIRST))('%s is written anew by the command, and says the same', (name) => {
    const text = readFileSync(new URL(name, FIRST), 'utf8');
    const place = files.file(name, text);
    expect(inside('upgrade', place)).toMatchObject({ code: 0, err: '' });
    const anew = readFileSync(place, 'utf8');
    const { par, ...said } = read(JSON.parse(text));
    expect(read(JSON.parse(anew))).toEqual({ ...said, par: PAR_NOT_KNOWN });
    expect(anew.length).toBeLessThan(text.length);
    expect(Math.max(...anew.split('\n').map((line) => (line.includes('"story"') ? 0 : line.length)))).toBeLessThan(400);
    expect(inside('upgrade', place).out).toContain('as it is');
    expect(readFileSync(place, 'utf8')).toBe(anew);
  });

  it('inside a run file stands under the hash that it had, and is held against the scenario of today', () => {
    const { version: _, recommendedAfter, aids, start, ...same } = stripSetup().scenario;
    const { randomTurns, ...standing } = start;
    const old = {
      ...{ ...same, version: 1, after: recommendedAfter, start: { ...standing, scatterTurns: randomTurns } },
      aids: { hints: aids.hints, waxMarks: aids.toleranceMarks, exactReadouts: false },
    };
    const setup = { ...stripSetup(), scenario: read(old) };
    const run = runOf(setup, wholeJob(setup));
    const made = toRunFile(run, recompute(setup, run.events));
    const file = { ...made, handed: old };
    const text = serialiseRunFile(file);
    const again = readRunFile(text, 'run.json');
    if (!again.ok) throw new Error(JSON.stringify(again.problems));
    expect(again.value.handed).toEqual(old);
    const judged = (scenarioHash: string, known: string) =>
      verifyRun({ ...again.value, scenarioHash }, knownBench(setup, known), recompute);
    const today = scenarioHash(setup.scenario);
    // Sealed with the hash of then it would be verified; with any other it is not the scenario that it says.
    expect(judged(hashOf(old), today)).toEqual({ kind: 'headChanged' });
    expect(judged(hashOf(old), hashOf('another'))).toMatchObject({ kind: 'foreign', part: 'scenario' });
    expect(judged(today, today)).toMatchObject({ kind: 'foreign', part: 'scenario' });
  });
});

describe('an open bypass that feeds back, as files of the first days had it', () => {
  const old = JSON.parse(readFileSync(new URL('../fixtures/scenariosBefore/it-sings.json', import.meta.url), 'utf8'));
  const farads = old.faults[0].farads as number;
  const withFault = (fault: Json): Json => ({ ...old, faults: [fault] });
  const problemsOf = (json: unknown) => {
    const parsed = parseScenario(json, 's.json');
    return parsed.ok ? [] : parsed.problems;
  };

  it('is refused at its place, once, with what may be written now', () => {
    const told = { place: '/faults/0/farads', found: ['bypassAsFeedback'], wanted: ['bypassOrShield'] };
    expect(problemsOf(old)).toEqual([{ file: 's.json', ...told }]);
    // So is one of today's version; and what else is wrong is told beside it.
    const second = { kind: 'openBypass', part: 'G2', farads };
    expect(problemsOf(withFault(second))).toEqual([{ file: 's.json', ...told }]);
    const worse = { ...old, seed: 'x', faults: [second, { ...second, part: 7 }] };
    expect(problemsOf(worse).map(({ place }) => place)).toEqual([
      ...['/seed', '/faults/0/farads', '/faults/1/part', '/faults/1/farads'],
    ]);
    const { code, err } = inside('check', files.file('it-sings.json', JSON.stringify(old, null, 2)));
    expect(code).toBe(1);
    expect(err).toMatch(
      /it-sings\.json, line \d+, column \d+, \/faults\/0\/farads: found an open bypass that feeds back/,
    );
    expect(err.trim().split('\n')).toHaveLength(1);
  });

  it('written as the refusal says is the same circuit: the capacitor from the output to the input of its stage', () => {
    const { receiver, deck } = shippedLibrary().receivers.get(old.receiver)!;
    const stage = findElement(deck, 'G2');
    if (stage?.kind !== 'G') throw new Error('no such stage');
    const parts = [hotNode(stage.nodes), hotNode(stage.control)];
    const { faults } = read(withFault({ kind: 'missingShield', parts, farads }));
    const edited = faultEffects(receiver, deck, faults, []).deck.elements;
    const added = edited.filter(({ name }) => findElement(deck, name) === undefined);
    expect(added).toMatchObject([{ kind: 'C', nodes: parts, value: farads }]);
    expect(edited).toHaveLength(deck.elements.length + 1);
    // The other way out reads, too.
    expect(read(withFault({ kind: 'openBypass', part: 'G2', ohms: 200 })).faults).toHaveLength(1);
  });
});

describe('the second version', () => {
  const TEN = ['format', 'version', 'id', 'code', 'title', 'track', 'order', 'receiver', 'words', 'start'];
  const whole = shippedJson('fault-finding/not-a-word.json') as Json;
  const ten = Object.fromEntries(TEN.map((key) => [key, whole[key]]));

  it('needs ten keys; the rest holds as it is written nowhere', () => {
    expect(read(ten)).toMatchObject({
      difficulty: 1,
      toleranceFactor: 1,
      sealed: false,
      faults: [],
      timeLimitSeconds: null,
    });
    for (const key of TEN) {
      const { [key]: _, ...rest } = ten;
      expect(parseScenario(rest, 's.json').ok, key).toBe(false);
    }
  });

  it('says the same where it says what holds anyway, and has the same hash; another job has another', () => {
    const { par, ...full } = read(ten);
    expect(Object.keys(scenarioToFile(read(ten)))).toEqual(TEN);
    expect(scenarioHash(read(full))).toBe(scenarioHash(read(ten)));
    for (const other of [{ toleranceFactor: 2 }, { seed: 2 }, { par: { turns: 3, seconds: 60 } }, { title: 'Another' }])
      expect(scenarioHash(read({ ...ten, ...other }))).not.toBe(scenarioHash(read(ten)));
  });

  it('may be annotated, and nothing comes of it', () => {
    const noted = structuredClone({
      ...{ $schema: './scenario.schema.json', note: 'for Tuesday', 'x-club': { night: 2 } },
      ...{ ...ten, start: { ...ten.start, note: 'as the crew left it', 'x-by': 'secretary' } },
    });
    expect(read(noted)).toEqual(read(ten));
    expect(scenarioHash(read(noted))).toBe(scenarioHash(read(ten)));
    // Slugs and controls are names: a note among them is none.
    const slugs = { ...ten.start.slugs, note: 1 };
    expect(read({ ...ten, start: { ...ten.start, slugs } }).start.slugs.note).toBe(1);
    for (const wrong of [{ note: 7 }, { notes: 'x' }, { xclub: 1 }, { words: { ...ten.words, $schema: 'x' } }])
      expect(parseScenario({ ...ten, ...wrong }, 's.json').ok, JSON.stringify(wrong)).toBe(false);
  });

  it('has notes in a receiver too: at its head, and under keys of one’s own anywhere; a note of a test point is its own', () => {
    const receiver = shippedJson('receivers/loose-can-10m7/receiver.json') as Json;
    const noted = structuredClone({ ...receiver, note: 'second shelf', $schema: 'x', 'x-club': 1 });
    noted.plan['x-drawn'] = 'by hand';
    expect(parseReceiver(noted, 'r.json')).toEqual(parseReceiver(receiver, 'r.json'));
    noted.plan.note = 'no';
    expect(parseReceiver(noted, 'r.json').ok).toBe(false);
  });

  it('names what has failed in one way, whatever it is', () => {
    for (const [kind, row] of Object.entries(FAULT_ROWS)) {
      const named = Object.values(row.fields).filter(({ holds }) => holds !== 'number').length;
      const figures = Object.entries(row.fields as Record<string, { holds: string; least: number }>).flatMap(
        ([key, { holds, least }]) => (holds === 'number' ? [[key, least] as const] : []),
      );
      const fault = {
        kind,
        ...(named === 1 ? { part: 'C12' } : named === 2 ? { parts: ['C1a', 'C2a'] } : {}),
        ...Object.fromEntries(figures),
      };
      const scenario = read({ ...ten, faults: [fault] });
      expect(scenarioToFile(scenario).faults, kind).toEqual([fault]);
    }
    expect(parseScenario({ ...ten, faults: [{ kind: 'openResistor', element: 'R1' }] }, 's.json').ok).toBe(false);
  });
});
