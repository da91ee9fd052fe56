/** `npm run perf [word ...]`: measures the cases whose id contains one of the words (all without words) and prints one table. */

import { readdirSync } from 'node:fs';
import type { PerfCase, Sample } from './case.ts';
import { median } from './case.ts';
import { firstLoadBytes } from './pageWeight.ts';

const SEED = 20_260_301;

async function loadCases(): Promise<PerfCase[]> {
  const folder = new URL('cases/', import.meta.url);
  const found: PerfCase[] = [];
  for (const file of readdirSync(folder).sort()) {
    if (!file.endsWith('.ts')) continue;
    const module = (await import(new URL(file, folder).href)) as { readonly cases?: readonly PerfCase[] };
    if (module.cases === undefined) throw new Error(`perf/cases/${file} exports no cases`);
    found.push(...module.cases);
  }
  return found;
}

const words = process.argv.slice(2);
const all = await loadCases();
const chosen = all.filter(({ id }) => words.length === 0 || words.some((word) => id.includes(word)));
const samples = new Map<string, Sample>();
const rows: string[][] = [['case', 'median us', 'least', 'most', 'runs', 'checksum', 'against', 'ratio']];
for (const { id, title, against, measure } of chosen) {
  process.stderr.write(`${title} ...\n`);
  const sample = await measure(SEED);
  if (typeof sample === 'string') {
    rows.push([id, `not run: ${sample}`, '', '', '', '', '', '']);
    continue;
  }
  samples.set(id, sample);
  const other = against === undefined ? undefined : samples.get(against);
  const ratio = other === undefined ? '' : (median(sample.micros) / median(other.micros)).toPrecision(3);
  rows.push([
    id,
    median(sample.micros).toFixed(1),
    Math.min(...sample.micros).toFixed(1),
    Math.max(...sample.micros).toFixed(1),
    String(sample.micros.length),
    sample.checksum.toPrecision(10),
    other === undefined ? '' : against!,
    ratio,
  ]);
}

const widths = rows[0]!.map((_, column) =>
  Math.max(...rows.map((row) => (row[column]!.startsWith('not run') ? 0 : row[column]!.length))),
);
process.stdout.write(`seed ${SEED}, node ${process.version}, one thread\n\n`);
for (const row of rows) {
  process.stdout.write(
    `${row
      .map((cell, column) => (column === 0 ? cell.padEnd(widths[column]!) : cell.padStart(widths[column]!)))
      .join('  ')
      .trimEnd()}\n`,
  );
}
const bytes = firstLoadBytes(new URL('../dist', import.meta.url).pathname);
process.stdout.write(
  `\nfirst load of the course page, compressed, all faces in English letters counted: ${bytes === null ? 'not run: npm run build first' : `${(bytes / 1000).toFixed(0)} kB`}\n`,
);
process.exit(0);
