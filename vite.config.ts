/** How the page is built and how the tests run. What is built stands alone: it may be served from any folder, and carries the licences of its fonts. */
import { readdirSync, readFileSync } from 'node:fs';
import type { Plugin } from 'vite';
import { defineConfig } from 'vitest/config';
import { contentPolicy } from './scripts/contentPolicy.ts';
import { courseIndex } from './scripts/courseIndex.ts';
import { fontPieces } from './scripts/fontPieces.ts';
import { LongestFirst } from './scripts/longestFirst.ts';
import { offline } from './scripts/offline.ts';
import { oneFile, SINGLE_FOLDER } from './scripts/oneFile.ts';
import { PAGE_POLICY } from './scripts/policy.mjs';
import { scriptPieces } from './scripts/scriptPieces.ts';

export default defineConfig(({ mode }) => ({
  base: './',
  // Nothing is written into style sheets or scripts as data: the page's policy lets nothing come from there.
  build:
    mode === 'single'
      ? { target: 'es2022', sourcemap: false, outDir: SINGLE_FOLDER, modulePreload: false }
      : {
          target: 'es2022',
          sourcemap: false,
          assetsInlineLimit: 0,
          rolldownOptions: { output: { codeSplitting: { groups: scriptPieces() } } },
        },
  plugins: [
    courseIndex(),
    fontPieces(),
    ...(mode === 'single' ? oneFile() : [fontLicences(), contentPolicy(PAGE_POLICY), offline()]),
  ],
  // A worker fetches what it needs, as the page does; in one file it has everything in itself.
  worker: { format: mode === 'single' ? 'iife' : 'es' },
  test: {
    environment: 'node',
    testTimeout: 300_000,
    maxWorkers: '100%',
    sequence: { sequencer: LongestFirst },
    // Most files share what a worker has loaded, which halves what they cost beside their tests. Those that put something else in the place of our modules or of the browser's globals load their own.
    projects: [
      { extends: true, test: { name: 'together', isolate: false, include: testFiles(false) } },
      { extends: true, test: { name: 'alone', isolate: true, include: testFiles(true) } },
    ],
  },
}));

/** The Open Font License wants its text to travel with the fonts, and the fonts travel inside the built page. */
function fontLicences(): Plugin {
  const textOf = (place: string): string => readFileSync(new URL(place, import.meta.url), 'utf8');
  const scope = '@fontsource/';
  return {
    name: 'font-licences',
    apply: 'build',
    generateBundle() {
      const { devDependencies } = JSON.parse(textOf('package.json')) as { devDependencies: Record<string, string> };
      for (const font of Object.keys(devDependencies).filter((name) => name.startsWith(scope))) {
        const source = textOf(`node_modules/${font}/LICENSE`);
        this.emitFile({ type: 'asset', fileName: `licences/${font.slice(scope.length)}.txt`, source });
      }
    },
  };
}

/** What a test file says that leaves something of its own in the worker: modules, globals, a database in the place of the browser's. */
const OWN_WORKER = ['vi.mock(', 'vi.stubGlobal(', "/storage.ts'", "fake-indexeddb/auto'"];

/** Those that replace modules or globals, or all the others. */
function testFiles(replacing: boolean): string[] {
  const all = readdirSync(new URL('tests', import.meta.url), { recursive: true, encoding: 'utf8' });
  const files = all.map((name) => `tests/${name.replaceAll('\\', '/')}`).filter((name) => name.endsWith('.test.ts'));
  return files.filter((name) => {
    const text = readFileSync(new URL(name, import.meta.url), 'utf8');
    return OWN_WORKER.some((said) => text.includes(said)) === replacing;
  });
}
