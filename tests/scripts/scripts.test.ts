/** What `npm start` and `npm test` decide before they do anything: is Node new enough, what is missing, what has changed, what has failed. */
import { cpSync, mkdirSync, mkdtempSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { type BuildModule, type InstallModule, script, type TestCountsModule } from './scriptModules.ts';

const { nodeProblem, missingPackages } = await script<InstallModule>('install.mjs');
const { sourcesPrint } = await script<BuildModule>('build.mjs');
const { vitestCounts, playwrightCounts } = await script<TestCountsModule>('testCounts.mjs');
const folder = mkdtempSync(path.join(tmpdir(), 'haystack-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('installing', () => {
  it('asks for Node 20.19 or newer', () => {
    for (const version of ['20.19.0', '20.20.2', '22.0.0', '100.1.0']) expect(nodeProblem(version), version).toBeNull();
    for (const version of ['20.18.3', '18.20.0', '9.0.0'])
      expect(nodeProblem(version), version).toContain(`this is Node ${version}`);
  });

  it('finds what a clone lacks by comparing contents', () => {
    const clone = path.join(folder, 'clone');
    mkdirSync(clone);
    const lock = (version: string) => ({
      packages: {
        '': { name: 'x' },
        'node_modules/a': { version },
        'node_modules/@b/c': { version: '2.0.0' },
        'node_modules/for-another-machine': { version: '1.0.0', optional: true },
      },
    });
    const write = (place: string, value: unknown) => writeFileSync(path.join(clone, place), JSON.stringify(value));
    expect(missingPackages(clone)).toEqual(['package-lock.json']);
    write('package-lock.json', lock('1.0.0'));
    expect(missingPackages(clone)).toEqual(['a', '@b/c']);
    for (const name of ['a', '@b/c']) {
      mkdirSync(path.join(clone, 'node_modules', name), { recursive: true });
      write(`node_modules/${name}/package.json`, {});
    }
    write('node_modules/.package-lock.json', lock('1.0.0'));
    expect(missingPackages(clone)).toEqual([]);
    write('package-lock.json', lock('1.1.0'));
    expect(missingPackages(clone)).toEqual(['a']);
    rmSync(path.join(clone, 'node_modules', '@b'), { recursive: true });
    expect(missingPackages(clone)).toEqual(['a', '@b/c']);
  });

  it('finds this project complete, since its tests run', () => {
    expect(missingPackages()).toEqual([]);
  });
});

describe('building', () => {
  it('notices a source that was changed, added, taken away or put back older', () => {
    const project = path.join(folder, 'project');
    mkdirSync(path.join(project, 'src', 'room'), { recursive: true });
    const file = path.join(project, 'src', 'room', 'a.ts');
    writeFileSync(file, 'one');
    const prints = [sourcesPrint(project)];
    const note = () => prints.push(sourcesPrint(project));
    writeFileSync(file, 'three');
    note();
    writeFileSync(path.join(project, 'src', 'b.ts'), 'two');
    note();
    utimesSync(file, 1000, 1000);
    note();
    rmSync(file);
    note();
    expect(new Set(prints).size).toBe(5);
    cpSync(path.join(project, 'src'), path.join(project, 'notes'), { recursive: true });
    expect(sourcesPrint(project)).toBe(prints.at(-1));
  });
});

describe('counting', () => {
  const passing = { status: 'passed', assertionResults: [{}] };
  const vitest = { numPassedTests: 7, numFailedTests: 0, numPendingTests: 0, numTodoTests: 0, testResults: [passing] };
  it('reads vitest’s report; a file that does not load and a test that is skipped count as failed', () => {
    expect(vitestCounts(vitest)).toEqual({ passed: 7, failed: 0, skipped: 0 });
    expect(vitestCounts({ ...vitest, numFailedTests: 2, numPendingTests: 1, numTodoTests: 1 })).toEqual({
      passed: 7,
      failed: 4,
      skipped: 2,
    });
    expect(
      vitestCounts({ ...vitest, testResults: [passing, { status: 'failed', assertionResults: [] }] }),
    ).toMatchObject({ failed: 1 });
    expect(vitestCounts(null)).toBeNull();
  });

  it('reads playwright’s report; an error outside tests counts as failed, and a test that passed at its second go is named', () => {
    const stats = { expected: 5, unexpected: 1, flaky: 0, skipped: 2 };
    expect(playwrightCounts({ stats, errors: [], suites: [] })).toEqual({
      passed: 5,
      failed: 3,
      skipped: 2,
      second: [],
    });
    const clean = { expected: 5, unexpected: 0, flaky: 0, skipped: 0 };
    expect(playwrightCounts({ stats: clean, errors: [{}], suites: [] })).toMatchObject({ passed: 5, failed: 1 });
    const spec = (title: string, ...states: string[]) => ({
      title,
      tests: states.map((status, i) => ({ status, projectName: ['full', 'shelf'][i] })),
    });
    const inner = { title: 'a full disk', specs: [spec('is told', 'expected', 'flaky')] };
    const suites = [
      { title: 'a.spec.ts', specs: [spec('one', 'expected'), spec('two', 'flaky')] },
      { title: 'b.spec.ts', specs: [], suites: [inner] },
    ];
    expect(playwrightCounts({ stats: { ...clean, flaky: 2 }, errors: [], suites })).toEqual({
      passed: 7,
      failed: 0,
      skipped: 0,
      second: ['a.spec.ts, two (full)', 'b.spec.ts, a full disk, is told (shelf)'],
    });
    expect(playwrightCounts(null)).toBeNull();
  });
});
