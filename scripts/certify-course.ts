/**
 * The whole shipped course: every scenario is certified anew and its certificate and par on disk must be the ones that come out, and the technician, who sees nothing
 * but the bench, must replace the part that has failed, say what was wrong and pass, or the scenario stands on the list of those that he does not pass yet. A process for each core takes one
 * scenario after another, of one receiver after another, whose notebook it fills once; those with most work in them first, so that none is left with a long one at the end. Run: `npx tsx scripts/certify-course.ts`; the last line counts.
 * The processes run one bundle of what they need: through tsx each would read it all by itself, and every function be given its name whenever it is made, a tenth of the time.
 */
import { type ChildProcess, fork } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { certifyScenario } from '../src/certify/certifyScenario.ts';
import type { Scenario } from '../src/scenario/scenario.ts';
import { shippedLibrary } from '../tests/files/shipped.ts';
import { DIAGNOSES, diagnosisProblem } from '../tests/technician/diagnoses.ts';
import { FAILURES } from '../tests/technician/failures.ts';
import { NOT_YET } from '../tests/technician/notYet.ts';
import { demonstrated, setupOf } from '../tests/technician/oneScenario.ts';

const folder = fileURLToPath(new URL('../certificates/', import.meta.url));

/** From a worker: it is free; what was wrong with the scenario that it had, if it had one. */
interface Free {
  readonly id: string | null;
  readonly problem: string | null;
}

if (process.send === undefined) await all();
else await work();

async function all(): Promise<void> {
  const { scenarios } = shippedLibrary();
  const ids = new Set(scenarios.map(({ id }) => id));
  const strays = [
    ...readdirSync(folder).filter((name) => !ids.has(name.replace(/\.json$/, ''))),
    ...[...FAILURES.keys(), ...DIAGNOSES, ...NOT_YET].filter((id) => !ids.has(id)),
  ];
  for (const name of strays) console.error(`${name}: the course has no such scenario`);
  const waiting = scenarios.toSorted((a, b) => b.par.seconds - a.par.seconds);
  /** The longest that is left on the receiver that this worker has, whose notebook it has filled; else the longest of all on one that nobody has, or of any. */
  const next = (had: string | null, others: ReadonlySet<string>): Scenario | undefined => {
    const found = [
      waiting.findIndex(({ receiver }) => receiver === had),
      waiting.findIndex(({ receiver }) => !others.has(receiver)),
      0,
    ].find((at) => at >= 0)!;
    return waiting.splice(found, 1)[0];
  };
  const bundle = await bundled();
  const inHand = new Map<ChildProcess, string>();
  const done = new Set<string>();
  let problems = strays.length;
  const worker = (): Promise<number> => {
    const child = fork(bundle, { execArgv: [] });
    child.on('message', ({ id, problem }: Free) => {
      if (id !== null) done.add(id);
      if (problem !== null) {
        problems++;
        console.error(`${id}: ${problem}`);
      }
      const had = inHand.get(child) ?? null;
      inHand.delete(child);
      const scenario = next(had, new Set(inHand.values()));
      if (scenario === undefined) child.disconnect();
      else {
        inHand.set(child, scenario.receiver);
        child.send(scenario.id);
      }
    });
    // A child whose channel was closed from here may come to its end without a 'close'.
    return new Promise((resolve) => child.on('exit', (code) => resolve(code ?? 1)));
  };
  const codes = await Promise.all(Array.from({ length: availableParallelism() }, worker));
  // A worker that broke off has not said how its scenario went.
  const lost = [...ids].filter((id) => !done.has(id));
  for (const id of lost) console.error(`${id}: was not tried`);
  const good = problems === 0 && lost.length === 0 && codes.every((code) => code === 0);
  const told = NOT_YET.size === 0 ? 'passed by the technician' : `all but ${NOT_YET.size} passed by the technician`;
  console.log(`${ids.size} scenarios: ${good ? `certified, ${told}` : 'not all are as they should be'}`);
  process.exitCode = good ? 0 : 1;
}

/** This file with all that it imports; each part looks for its files from where it stood. */
async function bundled(): Promise<string> {
  const outDir = fileURLToPath(new URL('../.cache/course/', import.meta.url));
  const { build } = await import('vite');
  await build({
    configFile: false,
    logLevel: 'warn',
    build: {
      ssr: fileURLToPath(import.meta.url),
      outDir,
      target: 'node20',
      rolldownOptions: { output: { entryFileNames: 'course.mjs' } },
    },
    plugins: [
      {
        name: 'own-places',
        transform: (code, id) => code.replace(/\bimport\.meta\.url\b/g, JSON.stringify(pathToFileURL(id).href)),
      },
    ],
  });
  return `${outDir}course.mjs`;
}

function work(): Promise<void> {
  const free = (said: Free): void => void process.send!(said);
  process.on('message', (id: string) => free({ id, problem: problemOf(id) }));
  free({ id: null, problem: null });
  return new Promise((resolve) => process.on('disconnect', resolve));
}

function problemOf(id: string): string | null {
  // Dealt anew: this is the proof that what the certificate keeps of the set is what dealing gives.
  const certified = certifyScenario(setupOf(id, true));
  if (!certified.ok) return `no certificate: ${JSON.stringify(certified.problems)}`;
  const { certificate } = certified;
  const { par } = setupOf(id).scenario;
  if (par.turns !== certificate.par.turns || par.seconds !== certificate.par.seconds)
    return `par is ${JSON.stringify(par)}, the certifier makes it ${JSON.stringify(certificate.par)}`;
  const onDisk: unknown = JSON.parse(readFileSync(`${folder}${id}.json`, 'utf8'));
  if (JSON.stringify(onDisk) !== JSON.stringify(certificate))
    return 'its certificate is of an earlier day; run: npm run haystack -- certify --write on its file';
  const { passed, total, replaced, said } = demonstrated(id);
  const failed = FAILURES.get(id);
  if (failed !== undefined && !replaced.includes(failed))
    return `the technician does not replace ${failed}, but ${replaced.join(', ') || 'nothing'}`;
  const misjudged = diagnosisProblem(setupOf(id), said);
  if (misjudged !== null) return misjudged;
  if (NOT_YET.has(id))
    return passed ? 'the technician passes it now: take it off the list in tests/technician/notYet.ts' : null;
  return passed ? null : `the technician comes to ${total} points and does not pass`;
}
