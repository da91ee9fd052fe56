/** `npm test`: installs what is missing, a browser too, then runs every check, says how each went, and ends with a line of counts. */
import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { availableParallelism, constants, setPriority } from 'node:os';
import path from 'node:path';
import { ensureBrowser } from './browser.mjs';
import { ensureInstalled, nodeProblem, PROJECT } from './install.mjs';
import { serve } from './serve.mjs';
import { playwrightCounts, vitestCounts } from './testCounts.mjs';

const CACHE = path.join(PROJECT, '.cache');
const VITEST_REPORT = path.join(CACHE, 'vitest.json');
const PLAYWRIGHT_REPORT = path.join(CACHE, 'playwright.json');
const BUILD = "await (await import('./scripts/build.mjs')).ensureBuilt({ force: true, quiet: true });";

/** A check: `run` is given what starts a tool or a command, and resolves to whether it passed, or throws; `counts` reads how many tests it held. */

/** Those that are one process each and short: as many at a time as there are cores, the longest first, and each tells everything at its end. */
const SHORT_STEPS = [
  { name: 'build', run: ({ command }) => command(process.execPath, ['--input-type=module', '--eval', BUILD]) },
  { name: 'shipped receivers and scenarios', run: checkShipped },
  { name: 'types', run: ({ tool }) => tool('typescript', '--noEmit', '-p', 'tsconfig.json') },
  {
    name: 'types of the core without the DOM',
    run: ({ tool }) => tool('typescript', '--noEmit', '-p', 'tsconfig.core.json'),
  },
  {
    name: 'format and lint',
    run: ({ tool }) => tool('@biomejs/biome', 'ci', '--error-on-warnings', '--no-errors-on-unmatched'),
  },
  { name: 'published schemas are those of the code', run: ({ tool }) => tool('tsx', 'scripts/check-schemas.ts') },
  {
    name: 'sounds are those of the generator',
    run: ({ command }) => command(process.execPath, ['scripts/make-sounds.mjs', '--check']),
  },
];

/** Keeps every core busy until its last long files. */
const UNIT_STEP = {
  name: 'unit, laws, oracles, model-based',
  run: ({ tool }) =>
    tool(
      'vitest',
      'run',
      '--allowOnly=false',
      '--reporter=default',
      '--reporter=json',
      `--outputFile.json=${VITEST_REPORT}`,
    ),
  counts: () => vitestCounts(readReport(VITEST_REPORT)),
};

/** Beside all that takes long, with what they leave of the cores: a core that waits for a page or for the last long file certifies, and none stands idle at the end. */
const COURSE_STEP = {
  name: 'certification of the course',
  run: ({ tool }) => tool('tsx', 'scripts/certify-course.ts'),
};

const BROWSER_STEP = {
  name: 'browser',
  run: browserTests,
  counts: () => playwrightCounts(readReport(PLAYWRIGHT_REPORT)),
};

async function main() {
  const problem = nodeProblem() ?? (await ensureInstalled());
  if (problem !== null) {
    console.error(problem);
    console.log('0 passed, 1 failed');
    process.exitCode = 1;
    return;
  }
  mkdirSync(CACHE, { recursive: true });
  for (const report of [VITEST_REPORT, PLAYWRIGHT_REPORT]) rmSync(report, { force: true });

  const results = await together(SHORT_STEPS);
  const unit = runStep(UNIT_STEP, aloud);
  const browser = unit.then(() => runStep(BROWSER_STEP, aloud));
  const course = runStep(COURSE_STEP, atItsEnd({ after: browser, last: true }));
  results.push(...(await Promise.all([unit, course, browser])));
  summary(results);
}

/** The results in the order of the steps. */
async function together(steps) {
  const results = new Array(steps.length);
  let begun = 0;
  const lane = async () => {
    for (let at = begun++; at < steps.length; at = begun++) results[at] = await runStep(steps[at], atItsEnd());
  };
  await Promise.all(Array.from({ length: availableParallelism() }, lane));
  return results;
}

/** How a step is heard: as it goes, or all at once when it has ended, for then others run beside it. */
const aloud = { start: startersOf('inherit'), say: console.log, tell() {} };

/** `after`: what is heard first; `last`: its processes come last where others want the cores. */
function atItsEnd({ after = null, last = false } = {}) {
  const said = [];
  const hear = (chunk) => void said.push(chunk);
  return {
    start: startersOf('pipe', hear, last),
    say: (line) => hear(`${line}\n`),
    async tell() {
      await after;
      process.stdout.write(said.map(String).join(''));
    },
  };
}

async function runStep({ name, run, counts }, { start, say, tell }) {
  say(`\n=== ${name}`);
  const begin = performance.now();
  let ok = false;
  try {
    ok = (await run(start)) !== false;
  } catch (error) {
    say(error instanceof Error ? error.message : error);
  }
  const tests = counts?.() ?? null;
  // A suite without a report, without a test, or with a skipped one has not done its work, whatever its exit code says.
  if (counts !== undefined && (tests === null || tests.passed === 0 || tests.failed > 0)) ok = false;
  const seconds = (performance.now() - begin) / 1000;
  say(`=== ${name}: ${ok ? 'passed' : 'FAILED'} (${seconds.toFixed(1)} s)`);
  await tell();
  return { name, ok, seconds, tests };
}

function summary(results) {
  console.log('\n');
  for (const { name, ok, seconds, tests } of results) {
    const count = tests === null ? '' : `  ${tests.passed} passed, ${tests.failed} failed`;
    console.log(`${ok ? 'ok    ' : 'FAILED'}  ${seconds.toFixed(1).padStart(6)} s  ${name}${count}`);
    if (tests?.skipped) console.log(`        ${tests.skipped} of these failures are tests that were skipped`);
    if (tests?.second?.length)
      console.log(`        ${tests.second.length} passed only at the second go: ${tests.second.join('; ')}`);
  }
  let passed = 0;
  let failed = 0;
  for (const { ok, tests } of results) {
    passed += tests?.passed ?? 0;
    // A step that failed without a failing test counts as one, so that the line never reads "0 failed" when something did.
    failed += Math.max(tests?.failed ?? 0, ok ? 0 : 1);
  }
  console.log(`\n${passed} passed, ${failed} failed`);
  process.exitCode = failed > 0 ? 1 : 0;
}

async function checkShipped({ tool }) {
  const root = path.join(PROJECT, 'scenarios');
  const files = readdirSync(root, { recursive: true })
    .map((name) => name.replaceAll('\\', '/'))
    .filter((name) => /\.(json|cir)$/.test(name) && !name.startsWith('schema/'))
    .map((name) => `scenarios/${name}`)
    .sort();
  const receivers = files.filter((name) => name.endsWith('/receiver.json')).length;
  const scenarios = files.filter((name) => name.endsWith('.json')).length - receivers;
  if (receivers === 0 || scenarios === 0)
    throw new Error(`scenarios/ holds ${receivers} receivers and ${scenarios} scenarios`);
  return tool('tsx', 'src/cli/main.ts', 'check', ...files);
}

async function browserTests({ tool }) {
  const executable = await ensureBrowser();
  const { port, close } = await serve(path.join(PROJECT, 'dist'));
  await close();
  return tool('@playwright/test', 'test', '--reporter=list,json', {
    HAYSTACK_BROWSER: executable,
    HAYSTACK_TEST_PORT: String(port),
    PLAYWRIGHT_JSON_OUTPUT_FILE: PLAYWRIGHT_REPORT,
  });
}

/** `tool` runs the program of an installed package; its last argument may be an object of environment variables. `command` runs any program. */
function startersOf(output, hear, last = false) {
  const command = (program, args, env = {}) => {
    const child = spawn(program, args, {
      cwd: PROJECT,
      stdio: ['ignore', output, output],
      // Nothing may wait for an answer, open a window or write new reference pictures.
      env: { ...process.env, CI: 'true', HAYSTACK_NO_OPEN: '1', ...env },
    });
    // So far behind that a browser test beside it waits no longer than alone; what it starts itself comes as far.
    if (last && child.pid !== undefined) setPriority(child.pid, constants.priority.PRIORITY_LOW);
    for (const stream of [child.stdout, child.stderr]) stream?.setEncoding('utf8').on('data', hear);
    return new Promise((resolve, reject) => {
      child.on('error', reject);
      child.on('close', (code) => resolve(code === 0));
    });
  };
  const tool = (name, ...rest) => {
    const env = typeof rest.at(-1) === 'object' ? rest.pop() : {};
    const home = path.join(PROJECT, 'node_modules', name);
    const { bin } = JSON.parse(readFileSync(path.join(home, 'package.json'), 'utf8'));
    const program =
      typeof bin === 'string'
        ? bin
        : (bin[name === 'typescript' ? 'tsc' : name.replace(/^.*\//, '')] ?? Object.values(bin)[0]);
    return command(process.execPath, [path.join(home, program), ...rest], env);
  };
  return { command, tool };
}

function readReport(file) {
  return existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : null;
}

await main();
