/**
 * `npm run adversaries`: every hand at every scenario of the course, or at those that are named, on as many processes as there are processors.
 * `--csv`: hand,scenario,sealed,passed,points on the standard output; else a table. `--track TRACK`, `--hand HAND` (both may be said more than once), `--jobs N`.
 * `--copies`: everything done at each of twelve attempts of a sealed scenario, done at every other. `--scatter`: the technician's points over ten of them.
 * `--attempts N`, `--from N` (which attempt is the first: so that it can be had which nobody has tuned a hand on).
 * Progress goes to the standard error. Leaves with 1 where a hand that does not look has passed anything sealed or a search for a fault, or more than three others.
 */
import { spawn } from 'node:child_process';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { shippedLibrary } from '../files/shipped.ts';
import { copiesOf, scatterOf, technicianAt } from './attempts.ts';
import { ADVERSARIES, type HandName, HONEST, LAZY, markOf } from './hands.ts';

const HANDS: readonly HandName[] = [...ADVERSARIES, ...LAZY, ...HONEST];
const HEADER = 'hand,scenario,sealed,passed,points';
const MOST_BY_LUCK = 3;
/** Points, standard deviation: the same hand at the same job. */
const MOST_SCATTER = 4;

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    csv: { type: 'boolean', default: false },
    track: { type: 'string', multiple: true },
    hand: { type: 'string', multiple: true },
    jobs: { type: 'string' },
    /** sealed scenarios only: copies from attempt to attempt, and the technician's points over so many of them */
    copies: { type: 'boolean', default: false },
    scatter: { type: 'boolean', default: false },
    attempts: { type: 'string' },
    from: { type: 'string' },
    /** of a child: these scenarios, one after the other, lines without a header */
    child: { type: 'boolean', default: false },
  },
});

const { scenarios } = shippedLibrary();
const hands = HANDS.filter((hand) => values.hand === undefined || values.hand.includes(hand));
const unknown = [
  ...positionals.filter((id) => !scenarios.some((s) => s.id === id)),
  ...(values.track ?? []).filter((track) => !scenarios.some((s) => s.track === track)),
  ...(values.hand ?? []).filter((hand) => !HANDS.includes(hand as HandName)),
];
if (unknown.length > 0) {
  console.error(`Not known here: ${unknown.join(', ')}`);
  process.exit(2);
}
const wanted = scenarios.filter(({ id, track }) => {
  if (positionals.length === 0 && values.track === undefined) return true;
  return positionals.includes(id) || (values.track ?? []).includes(track);
});

interface Row {
  readonly hand: HandName;
  readonly id: string;
  readonly sealed: boolean;
  readonly faults: boolean;
  readonly passed: boolean;
  readonly points: number;
}

function lineOf({ hand, id, sealed, passed, points }: Row): string {
  return [hand, id, sealed, passed, points].join(',');
}

if (values.copies) copies();
else if (values.scatter) scatter();
else if (values.child) {
  for (const { id, sealed } of wanted) {
    for (const hand of hands) {
      const { passed, points } = markOf(hand, id);
      console.log(lineOf({ hand, id, sealed, faults: false, passed, points }));
    }
  }
} else process.exitCode = await all();

/** Twelve attempts make 132 pairs. */
function copies(): void {
  console.log('scenario,pairs,met,passed,parroted');
  for (const { id } of wanted.filter(({ sealed }) => sealed)) {
    const { pairs, met, passed, parroted } = copiesOf(id, Number(values.attempts ?? 12));
    console.log([id, pairs, met, passed, parroted].join(','));
    if (passed > 0) process.exitCode = 1;
  }
}

function scatter(): void {
  console.log('scenario,attempt,passed,points');
  for (const { id } of wanted.filter(({ sealed }) => sealed)) {
    const first = Number(values.from ?? 1);
    const points = Array.from({ length: Number(values.attempts ?? 10) }, (_, i) => {
      const mark = technicianAt(id, first + i);
      console.log([id, first + i, mark.passed, mark.points].join(','));
      return mark.points;
    });
    const { mean, deviation } = scatterOf(points);
    console.log(`${id}: mean ${mean.toFixed(1)}, standard deviation ${deviation.toFixed(1)}`);
    if (deviation > MOST_SCATTER) process.exitCode = 1;
  }
}

async function all(): Promise<number> {
  const rows: Row[] = [];
  const waiting = [...wanted];
  const jobs = Math.max(1, Math.min(Number(values.jobs ?? availableParallelism()), waiting.length));
  let done = 0;
  if (values.csv) console.log(HEADER);
  const work = async (): Promise<void> => {
    for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) {
      const { id, sealed, faults } = next;
      for (const line of await inChild(id)) {
        const [hand, , , passed, points] = line.split(',');
        const row = { hand: hand as HandName, id, sealed, faults: faults.length > 0 };
        rows.push({ ...row, passed: passed === 'true', points: Number(points) });
        if (values.csv) console.log(line);
      }
      done++;
      console.error(`${done} of ${wanted.length}: ${id}`);
    }
  };
  await Promise.all(Array.from({ length: jobs }, work));
  if (!values.csv) table(rows);
  return breached(rows) ? 1 : 0;
}

/** A process of its own for each scenario: what it remembers goes with it. */
function inChild(id: string): Promise<readonly string[]> {
  const script = fileURLToPath(import.meta.url);
  const args = [...process.execArgv, script, '--child', ...hands.flatMap((hand) => ['--hand', hand]), id];
  const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'inherit'] });
  let text = '';
  child.stdout.on('data', (part: Buffer) => {
    text += part.toString();
  });
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('close', (code) => {
      if (code === 0) resolve(text.trim().split('\n'));
      else reject(new Error(`${id}: the process left with ${String(code)}`));
    });
  });
}

function breached(rows: readonly Row[]): boolean {
  return ADVERSARIES.some((hand) => {
    const passed = rows.filter((row) => row.hand === hand && row.passed);
    return passed.some((row) => row.sealed || row.faults) || passed.length > MOST_BY_LUCK;
  });
}

function table(rows: readonly Row[]): void {
  console.log('hand        passed of  sealed  faults  practice  median points  passed');
  for (const hand of hands) {
    const own = rows.filter((row) => row.hand === hand);
    const passed = own.filter((row) => row.passed);
    const count = (keep: (row: Row) => boolean): string => String(passed.filter(keep).length).padStart(8);
    const points = own.map((row) => row.points).sort((a, b) => a - b);
    const median = String(points[Math.floor(points.length / 2)] ?? 0).padStart(14);
    const kinds = [
      count((row) => row.sealed),
      count((row) => row.faults && !row.sealed),
      count((row) => !row.sealed && !row.faults),
    ].join('');
    const names = passed.length <= MOST_BY_LUCK ? passed.map((row) => row.id).join(' ') : '';
    console.log(
      `${hand.padEnd(12)}${String(passed.length).padStart(6)} ${String(own.length).padStart(3)}${kinds}${median}  ${names}`,
    );
  }
}
