/**
 * `npm run perf -- --against REF [--rounds N] [word ...]`: the code as it stands here and another commit of it, measured in one go. The other commit is laid out as a
 * worktree under `.cache/`; both run their own cases with the same seed, turn by turn and each in a process of its own, so that whatever else the machine does
 * falls on both alike.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Compared, compared, type OneRound, type Spread } from './compared.ts';
import { casesFor, loadCases } from './loadCases.ts';
import { tableOf } from './table.ts';

const PROJECT = fileURLToPath(new URL('..', import.meta.url));
const SAMPLE_ONE = fileURLToPath(new URL('sampleOne.ts', import.meta.url));
const HEAD = [
  'case',
  'here us',
  'there us',
  'here from',
  'to',
  'there from',
  'to',
  'ratio',
  'from',
  'to',
  'of processor time',
  'work',
];

export async function against(ref: string, rounds: number, words: readonly string[]): Promise<void> {
  const git = (...args: readonly string[]): string =>
    execFileSync('git', args, { cwd: PROJECT, encoding: 'utf8' }).trim();
  const commit = git('rev-parse', '--verify', `${ref}^{commit}`);
  const other = join(PROJECT, '.cache', `against-${commit.slice(0, 12)}`);
  git('worktree', 'prune');
  if (!existsSync(other)) git('worktree', 'add', '--detach', other, commit);
  // The libraries of this version serve both: what is compared is our own code.
  if (!existsSync(join(other, 'node_modules'))) symlinkSync(join(PROJECT, 'node_modules'), join(other, 'node_modules'));
  try {
    const rows: string[][] = [HEAD];
    for (const { id, title } of casesFor(await loadCases(PROJECT), words)) {
      process.stderr.write(`${title} ...\n`);
      const found = inTurns(PROJECT, other, id, rounds);
      rows.push(
        typeof found === 'string' ? [id, `not run: ${found}`, ...HEAD.slice(2).map(() => '')] : rowOf(id, found),
      );
    }
    process.stdout.write(
      `here against ${commit.slice(0, 12)}, ${rounds} rounds in turn, node ${process.version}\n\n${tableOf(rows)}`,
    );
  } finally {
    git('worktree', 'remove', '--force', other);
  }
}

function inTurns(here: string, there: string, id: string, rounds: number): Compared | string {
  const mine: OneRound[] = [];
  const others: OneRound[] = [];
  for (let round = 0; round < rounds; round++) {
    // Who comes first changes from round to round.
    const turns = round % 2 === 0 ? [here, there] : [there, here];
    for (const project of turns) {
      const found = sampled(project, id);
      if (typeof found === 'string') return `${found}${project === there ? ', there' : ''}`;
      (project === here ? mine : others).push(found);
    }
  }
  return compared(mine, others);
}

function sampled(project: string, id: string): OneRound | string {
  const { status, stdout, stderr } = spawnSync(process.execPath, ['--import', 'tsx', SAMPLE_ONE, project, id], {
    cwd: project,
    encoding: 'utf8',
    maxBuffer: 2 ** 28,
  });
  if (status !== 0) throw new Error(`${id} in ${project}:\n${stderr}`);
  return JSON.parse(stdout.trim().split('\n').at(-1)!) as OneRound | string;
}

const micros = (value: number): string => value.toFixed(1);
const times = (value: number): string => value.toFixed(2);

function rowOf(id: string, { here, there, ratio, processorRatio, sameWork }: Compared): string[] {
  const range = ({ least, most }: Spread, write: (value: number) => string): string[] => [write(least), write(most)];
  return [
    ...[id, micros(here.median), micros(there.median), ...range(here, micros), ...range(there, micros)],
    ...[
      times(ratio.median),
      ...range(ratio, times),
      times(processorRatio.median),
      sameWork ? 'the same' : 'NOT the same',
    ],
  ];
}
