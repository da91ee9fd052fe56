/**
 * `npm run perf:refused [-- NAME]`: links and files that somebody made to do harm, each in a process of its own: how long it takes to be refused, what that takes of the processor, and by how much the process grows meanwhile.
 * By hand only, as all figures of the wall clock; what is looked at of each is held by counts in the tests.
 */
import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { HARMS } from './harms.ts';

const BOUND = { milliseconds: 50, megabytes: 100 };
const [wanted, alone] = process.argv.slice(2);

interface Told {
  readonly milliseconds: number;
  /** milliseconds of the process's own processor time, its helping threads counted: what else the machine does is not in it */
  readonly worked: number;
  readonly megabytes: number;
  readonly said: string;
}

/** In this process, and nothing else in it. */
async function refused(name: string): Promise<Told> {
  const harm = HARMS.find((one) => one.name === name);
  if (harm === undefined) throw new Error(`no ${name}`);
  // The code is loaded and warm, as it is by the second file of a class.
  await harm.refuse(harm.make(64) as never);
  const whole = harm.make();
  globalThis.gc?.();
  const before = process.memoryUsage();
  const used = process.cpuUsage();
  const from = performance.now();
  const said = await harm.refuse(whole as never);
  const milliseconds = performance.now() - from;
  const { user, system } = process.cpuUsage(used);
  const after = process.memoryUsage();
  const grown = after.heapUsed - before.heapUsed + (after.arrayBuffers - before.arrayBuffers);
  return { milliseconds, worked: (user + system) / 1000, megabytes: Math.max(0, grown) / 1e6, said };
}

if (alone === '--here') process.stdout.write(JSON.stringify(await refused(wanted!)));
else
  for (const { name, title } of HARMS.filter((one) => wanted === undefined || one.name.includes(wanted))) {
    const args = ['--expose-gc', '--import', 'tsx', fileURLToPath(import.meta.url), name, '--here'];
    const { milliseconds, worked, megabytes, said } = JSON.parse(
      execFileSync(process.execPath, args, { encoding: 'utf8' }),
    ) as Told;
    const over = milliseconds > BOUND.milliseconds || megabytes > BOUND.megabytes ? '  OVER' : '';
    process.stdout.write(
      `${name.padEnd(12)} ${milliseconds.toFixed(1).padStart(8)} ms ${worked.toFixed(1).padStart(8)} ms of processor time ${megabytes.toFixed(1).padStart(7)} MB  ${title}: ${said}${over}\n`,
    );
  }
