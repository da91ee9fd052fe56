/**
 * Judges many files on several processors. A worker is nothing but `regrade -`: it is given a file name a line and answers with a row a line, so whatever spreads lines
 * over machines could take its place. A worker that dies takes no file with it: what it had in hand is judged here.
 */
import { spawn } from 'node:child_process';
import path from 'node:path';
import { type Row, rowAnswered } from '../../judge/row.ts';
import { PROJECT } from '../files.ts';
import { linesOf } from './lines.ts';

const MAIN = path.join(PROJECT, 'src', 'cli', 'main.ts');

export interface Spreading {
  readonly jobs: number;
  /** what every worker is told beside the files */
  readonly more: readonly string[];
  /** judges a file in this process */
  readonly here: (file: string) => Row;
  /** told how many are done */
  readonly done: (count: number) => void;
}

export async function judgeSpread(files: readonly string[], { jobs, more, here, done }: Spreading): Promise<Row[]> {
  const rows = new Array<Row>(files.length);
  let next = 0;
  let count = 0;
  const keep = (index: number, row: Row): void => {
    rows[index] = row;
    done(++count);
  };
  const work = async (): Promise<void> => {
    const words = [...process.execArgv, MAIN, 'regrade', '-', ...more];
    const worker = spawn(process.execPath, words, { stdio: ['pipe', 'pipe', 'ignore'] });
    // A worker that cannot be started, or is gone, is met below as an answer that does not come.
    worker.on('error', () => {});
    worker.stdin.on('error', () => {});
    const answers = linesOf(worker.stdout);
    while (next < files.length) {
      const index = next++;
      worker.stdin.write(`${JSON.stringify(files[index])}\n`);
      const answer = await answers.next();
      if (answer.done === true) {
        keep(index, here(files[index]!));
        while (next < files.length) keep(next, here(files[next++]!));
        return;
      }
      keep(index, rowAnswered(answer.value));
    }
    worker.stdin.end();
  };
  await Promise.all(Array.from({ length: Math.min(jobs, files.length) }, work));
  return rows;
}
