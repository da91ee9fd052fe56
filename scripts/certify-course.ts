/**
 * The whole shipped course: every scenario is certified anew and its certificate and par on disk must be the ones that come out, and the technician, who sees nothing
 * but the bench, must pass it, or it stands on the list of those that he does not pass yet. Half of the course in each of two processes. Run: `npx tsx scripts/certify-course.ts`; the last line counts.
 */
import { fork } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { certifyScenario } from '../src/certify/certifyScenario.ts';
import { shippedLibrary } from '../tests/files/shipped.ts';
import { NOT_YET } from '../tests/technician/notYet.ts';
import { demonstrated, setupOf } from '../tests/technician/oneScenario.ts';

const PARTS = 2;
const folder = fileURLToPath(new URL('../certificates/', import.meta.url));
const part = process.argv[2];

if (part === undefined) await all();
else one(Number(part));

async function all(): Promise<void> {
  const ids = new Set(shippedLibrary().scenarios.map((s) => `${s.id}.json`));
  const stray = readdirSync(folder).filter((name) => !ids.has(name));
  for (const name of stray) console.error(`certificates/${name}: the course has no such scenario`);
  const codes = await Promise.all(
    Array.from({ length: PARTS }, (_, i) => {
      const child = fork(fileURLToPath(import.meta.url), [String(i)], { execArgv: ['--import', 'tsx'] });
      return new Promise<number>((resolve) => child.on('close', (code) => resolve(code ?? 1)));
    }),
  );
  const good = stray.length === 0 && codes.every((code) => code === 0);
  const told = NOT_YET.size === 0 ? 'passed by the technician' : `all but ${NOT_YET.size} passed by the technician`;
  console.log(`${ids.size} scenarios: ${good ? `certified, ${told}` : 'not all are as they should be'}`);
  process.exitCode = good ? 0 : 1;
}

function one(index: number): void {
  const ids = shippedLibrary()
    .scenarios.map((s) => s.id)
    .sort()
    .filter((_, i) => i % PARTS === index);
  for (const id of ids) {
    const problem = problemOf(id);
    if (problem === null) continue;
    console.error(`${id}: ${problem}`);
    process.exitCode = 1;
  }
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
  const { passed, total } = demonstrated(id);
  if (NOT_YET.has(id))
    return passed ? 'the technician passes it now: take it off the list in tests/technician/notYet.ts' : null;
  return passed ? null : `the technician comes to ${total} points and does not pass`;
}
