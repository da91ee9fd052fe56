/** `regrade` and `curve` on a run made here by the bench's own log, and on what people may do to the file afterwards. */
import { webcrypto } from 'node:crypto';
import { mkdirSync, readFileSync } from 'node:fs';
import { afterAll, describe, expect, it, vi } from 'vitest';
import { certified } from '../../scripts/makeCourseIndex.ts';
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import { benchSetup } from '../../src/certify/benchSetup.ts';
import { eveningText } from '../../src/files/evening.ts';
import { loadReceiver, loadScenario } from '../../src/files/library.ts';
import type { RunFile } from '../../src/files/runFile.ts';
import { scenarioHash } from '../../src/files/scenarioFile.ts';
import { sealRun } from '../../src/files/seal.ts';
import { claimOf, grade } from '../../src/grading/grade.ts';
import { OUTCOMES } from '../../src/judge/outcome.ts';
import type { Row } from '../../src/judge/row.ts';
import { appendEvent, createRun, type Run } from '../../src/run/runLog.ts';
import { serialiseRunFile, toRunFile } from '../../src/run/serialise.ts';
import { sealSheet } from '../../src/services/handing/phraseSeal.ts';
import { inside, scratch } from './commandLine.ts';

const files = scratch();
afterAll(files.remove);

const HOME = 'scenarios/receivers/loose-can-10m7';
const named = (file: string) => ({ file, text: readFileSync(file, 'utf8') });

/** A short piece of work on the first scenario: some leads, some knobs, both slugs, signed off. */
const WORK: readonly BenchEvent[] = [
  { type: 'leadConnected', lead: 'x', to: 'tube' },
  { type: 'controlSet', control: 'spanHz', value: 1e6 },
  { type: 'controlSet', control: 'phasingDegrees', value: -17 },
  { type: 'controlSet', control: 'blanking', value: true },
  { type: 'controlSet', control: 'pipHeightDiv', value: 0.5 },
  { type: 'toolTaken', tool: 'hex' },
  { type: 'slugTurned', slug: 'T1B', turns: 0.75 },
  { type: 'slugTurned', slug: 'T1T', turns: -0.5 },
  { type: 'signedOff' },
];

function workedRun(): Run {
  const loaded = loadReceiver(named(`${HOME}/receiver.json`), named(`${HOME}/network.cir`));
  if (!loaded.ok) throw new Error(JSON.stringify(loaded.problems));
  const scenario = loadScenario(
    named('scenarios/first-sweep/first-curve.json'),
    new Map([[loaded.value.receiver.id, loaded.value]]),
  );
  if (!scenario.ok) throw new Error(JSON.stringify(scenario.problems));
  const setup = benchSetup(loaded.value, certified(scenario.value));
  if (!setup.ok) throw new Error(JSON.stringify(setup.problems));
  return WORK.reduce(
    (run, event, i) => {
      const appended = appendEvent(run, event, 5000 * (i + 1));
      if (!appended.ok) throw new Error(`${event.type}: ${appended.reason}`);
      return appended.run;
    },
    createRun(setup.value, 'Ottilie'),
  );
}

const run = workedRun();
const claim = claimOf(grade(run.setup, run.events));
const honest = toRunFile(run, claim);
const HONEST = files.file('honest.json', serialiseRunFile(honest));

function saved(name: string, change: Partial<RunFile>): string {
  return files.file(name, serialiseRunFile({ ...honest, ...change }));
}

/** The word for it, and what was found. */
function verdictOf(file: string, ...more: string[]): { readonly verdict: string; readonly [key: string]: unknown } {
  const { out, err, code } = inside('regrade', file, '--json', ...more);
  expect(err).toBe('');
  const { finding, ...row } = JSON.parse(out) as Row;
  expect(code).toBe(row.verdict === 'verified' ? 0 : 1);
  expect(OUTCOMES).toContain(row.verdict);
  return { ...row, ...finding, outcome: row.verdict, verdict: finding.kind };
}

describe('regrade', () => {
  it('verifies an honest run', () => {
    const { out, err, code } = inside('regrade', HONEST);
    expect([err, code]).toEqual(['', 0]);
    expect(out).toContain(`${claim.total} points`);
    expect(out.trimEnd().split('\n')).toHaveLength(1);
    expect(verdictOf(HONEST)).toMatchObject({
      verdict: 'verified',
      learner: 'Ottilie',
      scenario: 'first-curve',
      outcome: 'verified',
      passed: claim.passed,
      points: claim.total,
      reason: '',
      score: claim,
    });
  });

  it('says which line of a claimed score differs', () => {
    const [first, ...rest] = claim.lines;
    const better = { ...claim, total: claim.total + 9, lines: [{ ...first!, points: first!.points + 9 }, ...rest] };
    const file = saved('better.json', { claimed: better });
    expect(verdictOf(file)).toMatchObject({
      outcome: 'altered',
      points: claim.total,
      verdict: 'scoreDiffers',
      lines: [{ id: first!.id, claimed: first!.points + 9, recomputed: first!.points }],
    });
    const { out, code } = inside('regrade', file);
    expect(code).toBe(1);
    expect(out).toContain(`${first!.id}: claimed`);
  });

  it('tells changed, cut, shuffled and impossible events apart', () => {
    const { events } = honest;
    const other = events.map((event) =>
      event.type === 'slugTurned' && event.slug === 'T1T' ? { ...event, turns: -0.25 } : event,
    );
    expect(verdictOf(saved('changed.json', { events: other })).verdict).toBe('eventsChanged');
    expect(verdictOf(saved('cut.json', { events: events.slice(0, -2) }))).toMatchObject({
      verdict: 'truncated',
      found: 7,
      recorded: 9,
    });
    const shuffled = [...events.slice(0, 2), events[3]!, events[2]!, ...events.slice(4)];
    expect(verdictOf(saved('shuffled.json', { events: shuffled }))).toMatchObject({ verdict: 'reordered', index: 3 });
    const forged = events.map((event) => (event.type === 'slugTurned' ? { ...event, slug: 'T7' } : event));
    expect(verdictOf(saved('forged.json', { events: forged, seal: sealRun(honest, forged) }))).toMatchObject({
      outcome: 'impossible',
      verdict: 'impossibleEvent',
      index: 6,
      reason: 'noSuchSlug',
    });
    const unsigned = events.slice(0, -1);
    expect(verdictOf(saved('unsigned.json', { events: unsigned, seal: sealRun(honest, unsigned) }))).toMatchObject({
      verdict: 'truncated',
      recorded: null,
    });
    expect(
      verdictOf(saved('open.json', { events: unsigned, seal: sealRun(honest, unsigned), claimed: null })),
    ).toMatchObject({ verdict: 'unclaimed', outcome: 'unfinished' });
  });

  it('tells a run of another bench or of a softened scenario', () => {
    expect(verdictOf(saved('engine.json', { engine: '9.9.9' }))).toMatchObject({
      outcome: 'otherRules',
      part: 'engine',
    });
    expect(verdictOf(saved('receiver.json', { receiverHash: '0'.repeat(64) }))).toMatchObject({
      outcome: 'otherScenario',
      part: 'receiver',
    });
    const soft = { ...honest.scenario, toleranceFactor: 3 };
    expect(verdictOf(saved('soft.json', { scenario: soft }))).toMatchObject({ outcome: 'altered', part: 'scenario' });
    const resealed = saved('resealed.json', { scenario: soft, scenarioHash: scenarioHash(soft) });
    expect(verdictOf(resealed)).toMatchObject({ outcome: 'otherScenario', part: 'scenario' });
  });

  it('takes receivers of the instructor’s own that lie beside, by themselves or in a sheet', () => {
    const text = JSON.parse(readFileSync(`${HOME}/receiver.json`, 'utf8'));
    const club = files.place('club');
    mkdirSync(club);
    const receiverText = { ...text, id: 'club-can' };
    files.file('club/receiver.json', JSON.stringify(receiverText));
    const deckText = readFileSync(`${HOME}/network.cir`, 'utf8');
    files.file('club/network.cir', deckText);
    const scenario = { ...honest.scenario, id: 'club-night', receiver: 'club-can' };
    const pair = { receiver: named(files.place('club/receiver.json')), deck: named(files.place('club/network.cir')) };
    const design = loadReceiver(pair.receiver, pair.deck);
    const made = design.ok ? benchSetup(design.value, scenario) : design;
    if (!made.ok) throw new Error(JSON.stringify(made.problems));
    const setup = made.value;
    const worked = toRunFile({ ...run, setup }, claimOf(grade(setup, honest.events)));
    const file = files.file('club-run.json', serialiseRunFile(worked));
    expect(verdictOf(file)).toMatchObject({ outcome: 'otherScenario', part: 'noReceiver' });
    // The receiver alone: nothing to hold the scenario against.
    expect(verdictOf(file, '--beside', club)).toMatchObject({ outcome: 'otherScenario', verdict: 'verified' });
    const handed = files.file('club-night.json', JSON.stringify(scenario));
    expect(verdictOf(file, '--beside', club, '--scenario', handed).outcome).toBe('verified');
    expect(verdictOf(file, '--beside', club, '--beside', handed).outcome).toBe('verified');
    const stricter = files.file('club-strict.json', JSON.stringify({ ...scenario, toleranceFactor: 1 }));
    expect(verdictOf(file, '--beside', club, '--beside', stricter).outcome).toBe('otherScenario');
    const evening = {
      ...{ format: 'haystack-evening', version: 1, title: 'At the club', scenarios: [scenario] },
      receivers: [{ receiver: receiverText, deck: deckText }],
    };
    const sheet = files.file('club.evening.json', JSON.stringify(evening));
    expect(verdictOf(file, '--beside', sheet).outcome).toBe('verified');
    // A course's own job is held against the course, whatever lies beside.
    const easier = files.file('easier.json', JSON.stringify({ ...honest.scenario, toleranceFactor: 5 }));
    expect(verdictOf(HONEST, '--beside', easier).outcome).toBe('verified');
    expect(inside('regrade', file, '--beside', file)).toMatchObject({
      code: 1,
      err: expect.stringContaining('evening sheet'),
    });
    expect(inside('regrade', file, '--beside', 'nowhere.json').code).toBe(1);
  });

  it('opens a sealed sheet that lies beside by its phrase, given by an option or in the environment', async () => {
    const scenario = { ...honest.scenario, id: 'sealed-night' };
    const score = claimOf(grade({ ...run.setup, scenario }, honest.events));
    const worked = toRunFile({ ...run, setup: { ...run.setup, scenario } }, score);
    const file = files.file('sealed-run.json', serialiseRunFile(worked));
    const sheet = eveningText({ title: 'Exam', order: 'any', minutes: null, exam: null, scenarios: [scenario] });
    const head = { format: 'haystack-sealed-evening', version: 1, title: 'Exam', minutes: null, count: 1 } as const;
    // Sealed by the browser's standard, opened by Node's own cryptography.
    const subtle = webcrypto.subtle as SubtleCrypto;
    const sealed = await sealSheet(subtle, { ...head, candidates: 'numbers' }, sheet, 'lantern on the slip', 100_000);
    const beside = files.file('sealed.json', JSON.stringify(sealed));
    const unopened = inside('regrade', file, '--beside', beside);
    expect(unopened.code).toBe(1);
    expect(unopened.err).toContain('--phrase');
    const wrong = inside('regrade', file, '--beside', beside, '--phrase', 'lantern');
    expect(wrong.code).toBe(1);
    expect(wrong.err).toContain('does not open');
    expect(verdictOf(file, '--beside', beside, '--phrase', ' Lantern  ON the slip').outcome).toBe('verified');
    expect(verdictOf(file, '--beside', beside, '--phrase', 'x', '--phrase', 'lantern on the slip').outcome).toBe(
      'verified',
    );
    vi.stubEnv('HAYSTACK_PHRASE', 'lantern on the slip');
    expect(verdictOf(file, '--beside', beside).outcome).toBe('verified');
    vi.unstubAllEnvs();
    const altered = files.file('altered.json', JSON.stringify({ ...sealed, title: 'Another exam' }));
    expect(inside('regrade', file, '--beside', altered, '--phrase', 'lantern on the slip').err).toContain(
      'does not open',
    );
  });

  it('takes a scenario of the instructor’s own, and says when it knows none of that name', () => {
    const own = { ...honest.scenario, id: 'tuesday-night' };
    const score = claimOf(grade({ ...run.setup, scenario: own }, honest.events));
    const worked = toRunFile({ ...run, setup: { ...run.setup, scenario: own } }, score);
    const file = files.file('own.json', serialiseRunFile(worked));
    expect(verdictOf(file)).toMatchObject({ outcome: 'otherScenario', verdict: 'verified' });
    expect(inside('regrade', file).out).toContain('There is no scenario of that name');
    const handed = files.file('tuesday.json', JSON.stringify(own));
    expect(verdictOf(file, '--scenario', handed)).toMatchObject({ outcome: 'verified' });
    const stricter = files.file('stricter.json', JSON.stringify({ ...own, toleranceFactor: 1 }));
    expect(verdictOf(file, '--scenario', stricter)).toMatchObject({ outcome: 'otherScenario', part: 'scenario' });
    expect(verdictOf(HONEST, '--scenario', 'first-curve').outcome).toBe('verified');
    expect(verdictOf(HONEST, '--scenario', 'zero')).toMatchObject({ outcome: 'otherScenario', part: 'scenario' });
    expect(inside('regrade', HONEST, '--scenario', 'nobody-has-this').code).toBe(2);
  });

  it('lists the problems of a file that is no run', () => {
    const cut = files.file('halved.json', serialiseRunFile(honest).slice(0, 2500));
    const wrong = files.file('wrong.json', JSON.stringify({ ...honest, engine: 1, claimed: { total: 'all' } }));
    const deck = `${HOME}/network.cir`;
    for (const file of [cut, wrong, deck, 'scenarios/first-sweep/first-curve.json', 'nowhere.json']) {
      const { out, err, code } = inside('regrade', file);
      expect([out, code], file).toEqual(['', 1]);
      expect(err).toMatch(/found .+, wanted .+/);
      expect(verdictOf(file).verdict).toBe('unreadable');
    }
    expect(inside('regrade', wrong).err).toMatch(/\/engine: [\s\S]*\/claimed\//);
  });

  it('checks a run file as a file, too', () => {
    expect(inside('check', HONEST).out).toBe(`ok  ${HONEST}  (run file, 9 events on first-curve)\n`);
    const strange = saved('strange.json', { scenario: { ...honest.scenario, receiver: 'nobody-has-this' } });
    expect(inside('check', strange).err).toContain('/scenario/receiver: found receiver "nobody-has-this"');
  });
});

describe('curve', () => {
  const rows = (csv: string): { head: string; figures: number[][] } => {
    const [head = '', ...lines] = csv.trimEnd().split('\n');
    return { head, figures: lines.map((line) => line.split(',').map(Number)) };
  };

  it('prints the curve of a scenario as found and as designed, each with its peak at 1', () => {
    const { out, err, code } = inside('curve', 'scenarios/first-sweep/first-curve.json');
    expect([err, code]).toEqual(['', 0]);
    const { head, figures } = rows(out);
    expect(head).toBe('hz,start,wanted');
    for (const column of [1, 2]) expect(Math.max(...figures.map((row) => row[column]!))).toBeCloseTo(1, 3);
    expect(figures.every(([hz = 0], i) => i === 0 || hz > figures[i - 1]![0]!)).toBe(true);
  });

  it('shows a run that put both slugs right as the design, to the backlash', () => {
    const { head, figures } = rows(inside('curve', HONEST).out);
    expect(head).toBe('hz,start,after,wanted');
    const apart = (a: number, b: number): number => Math.max(...figures.map((row) => Math.abs(row[a]! - row[b]!)));
    expect(apart(1, 3)).toBeGreaterThan(0.1);
    expect(apart(2, 3)).toBeLessThan(0.05);
  });

  it('writes a drawing and a table', () => {
    const svg = files.place('curve.svg');
    const csv = files.place('curve.csv');
    const { out, err, code } = inside('curve', HONEST, '--svg', svg, '--csv', csv);
    expect([out, err, code]).toEqual(['', '', 0]);
    expect(readFileSync(csv, 'utf8')).toBe(inside('curve', HONEST).out);
    const drawing = readFileSync(svg, 'utf8');
    expect(drawing.match(/<polyline /g)).toHaveLength(3);
    expect(drawing).toContain('A first curve');
    expect(drawing).not.toMatch(/NaN|undefined|<script|href/);
  });

  it('writes words of a file into the drawing as text, never as markup', () => {
    const sly = { ...honest.scenario, title: '</text><script>alert(1)</script> & "more"' };
    const svg = files.place('sly.svg');
    expect(inside('curve', files.file('sly.json', JSON.stringify(sly)), '--svg', svg).code).toBe(0);
    const drawing = readFileSync(svg, 'utf8');
    expect(drawing).not.toContain('<script');
    expect(drawing).toContain('&lt;/text&gt;&lt;script&gt;alert(1)&lt;/script&gt; &amp; &quot;more&quot;');
  });

  it('says where it cannot write, and what it cannot draw', () => {
    const nowhere = inside('curve', HONEST, '--svg', files.place('no/such/folder/x.svg'));
    expect(nowhere.err).toContain('found a place that cannot be written (ENOENT)');
    const deck = inside('curve', `${HOME}/network.cir`);
    expect(deck.err).toContain('/format: found no format, wanted haystack-scenario or haystack-run');
    const impossible = inside(
      'curve',
      saved('impossible.json', {
        events: honest.events.map((e) => (e.type === 'slugTurned' ? { ...e, slug: 'T7' } : e)),
      }),
    );
    expect(impossible.err).toContain('/events/6: found event 7, which the bench refuses (noSuchSlug)');
    expect([nowhere.code, deck.code, impossible.code]).toEqual([1, 1, 1]);
  });
});
