/** `npm run perf [word ...]`: measures the cases whose id contains one of the words (all without words) and prints one table; with `--against REF`, beside another commit. */

import { parseArgs } from 'node:util';
import { against } from './against.ts';
import type { Sample } from './case.ts';
import { median } from './case.ts';
import { casesFor, loadCases, SEED } from './loadCases.ts';
import { firstLoadBytes } from './pageWeight.ts';
import { tableOf } from './table.ts';

const { values, positionals: words } = parseArgs({
  options: { against: { type: 'string' }, rounds: { type: 'string', default: '5' } },
  allowPositionals: true,
});
const rounds = Number(values.rounds);
if (!Number.isInteger(rounds) || rounds < 1) throw new Error(`--rounds ${values.rounds}: a number of rounds is wanted`);
if (values.against !== undefined) {
  await against(values.against, rounds, words);
  process.exit(0);
}

const chosen = casesFor(await loadCases(new URL('..', import.meta.url).pathname), words);
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

process.stdout.write(`seed ${SEED}, node ${process.version}, one thread\n\n${tableOf(rows)}`);
const bytes = firstLoadBytes(new URL('../dist', import.meta.url).pathname);
process.stdout.write(
  `\nfirst load of the course page, compressed, all faces in English letters counted: ${bytes === null ? 'not run: npm run build first' : `${(bytes / 1000).toFixed(0)} kB`}\n`,
);
process.exit(0);
