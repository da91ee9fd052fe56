/** `sampleOne.ts PROJECT CASE`: one measurement of one version, in a process of its own; prints it as JSON. Started by `perf/against.ts`. */
import { resolve } from 'node:path';
import type { OneRound } from './compared.ts';
import { loadCases, SEED } from './loadCases.ts';

const [project, id] = process.argv.slice(2);
const one = (await loadCases(resolve(project!))).find((each) => each.id === id);
const round = await measured();
process.stdout.write(`${JSON.stringify(round)}\n`);
process.exit(0);

async function measured(): Promise<OneRound | string> {
  if (one === undefined) return 'no such case';
  const before = process.cpuUsage();
  const sample = await one.measure(SEED);
  const { user, system } = process.cpuUsage(before);
  return typeof sample === 'string' ? sample : { ...sample, processorSeconds: (user + system) / 1e6 };
}
