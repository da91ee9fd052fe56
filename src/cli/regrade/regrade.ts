/** `regrade`: does runs again on this machine and says whether each earns what it claims: one file, or as many as there are. */
import { availableParallelism } from 'node:os';
import { harmless } from '../../base/harmless.ts';
import { verdictWords } from '../../describe/verdict.ts';
import { csvOf } from '../../judge/csv.ts';
import { type Row, saidRow, withSameActs } from '../../judge/row.ts';
import { EXIT, type ExitCode, type Terminal, tellProblems, UsageError } from '../terminal.ts';
import { readBeside } from './beside.ts';
import { createRunJudge, type RunJudge } from './judge.ts';
import { runFilesIn } from './runFiles.ts';
import { judgeSpread } from './workers.ts';

export interface RegradeOptions {
  readonly json?: boolean;
  readonly jsonl?: boolean;
  readonly csv?: boolean;
  readonly scenario?: string;
  readonly jobs?: string;
  readonly beside?: readonly string[];
  readonly phrase?: readonly string[];
}

/** Of the environment: a phrase in it stands in no list of commands, and the processes that spread the work have it too. */
const PHRASE_VARIABLE = 'HAYSTACK_PHRASE';

/** Fewer files than this are done before a second process has started. */
const WORTH_SPREADING = 4;

export function regrade(
  terminal: Terminal,
  names: readonly string[],
  options: RegradeOptions,
): ExitCode | Promise<ExitCode> {
  const say = terminal.words.cli.regrade;
  if ([options.json, options.jsonl, options.csv].filter((one) => one === true).length > 1)
    throw new UsageError(say.oneForm);
  const jobs = jobsOf(terminal, options.jobs);
  const given = process.env[PHRASE_VARIABLE];
  const phrases = [...(options.phrase ?? []), ...(given === undefined ? [] : [given])];
  const beside = readBeside(terminal, options.beside ?? [], phrases);
  if (!beside.ok) return tellProblems(terminal, beside.problems);
  const judge = createRunJudge(terminal, options.scenario, beside.value);
  if (names.includes('-')) {
    if (names.length > 1 || options.csv === true || options.json === true) throw new UsageError(say.linesAlone);
    return judgeLines(terminal, judge);
  }
  const files = runFilesIn(terminal, names);
  if (!files.ok) return tellProblems(terminal, files.problems);
  // The runs of an exam's file are few: they are judged here, before the rest.
  const ofExams = files.value.map((file) => [file, judge.ofRuns(file)] as const);
  const fromExams = ofExams.flatMap(([, rows]) => rows ?? []);
  const single = ofExams.flatMap(([file, rows]) => (rows === null ? [file] : []));
  const progress = progressOf(terminal, single.length);
  if (jobs === 1 || single.length < WORTH_SPREADING) {
    const rows = single.map((file, i) => {
      const row = judge.ofFile(file);
      progress.done(i + 1);
      return row;
    });
    progress.clear();
    return tell(terminal, [...fromExams, ...rows], options);
  }
  const more = [
    ...(options.scenario === undefined ? [] : ['--scenario', options.scenario]),
    ...(options.beside ?? []).flatMap((name) => ['--beside', name]),
    ...(options.phrase ?? []).flatMap((phrase) => ['--phrase', phrase]),
  ];
  const spreading = { jobs, more, here: judge.ofFile, done: progress.done };
  return judgeSpread(single, spreading).then((rows) => {
    progress.clear();
    return tell(terminal, [...fromExams, ...rows], options);
  });
}

function jobsOf({ words }: Terminal, given: string | undefined): number {
  if (given === undefined) return Math.min(availableParallelism(), 16);
  if (!/^[1-9]\d?$/.test(given)) throw new UsageError(words.cli.regrade.badJobs(given));
  return Number(given);
}

/** A run a line, or the name of a file; a row a line, each as soon as it is known. */
async function judgeLines(terminal: Terminal, judge: RunJudge): Promise<ExitCode> {
  let code: ExitCode = EXIT.good;
  let number = 0;
  for await (const line of terminal.lines?.() ?? []) {
    number++;
    const given = line.trim();
    if (given === '') continue;
    const name = nameIn(given);
    const row = name === null ? judge.ofText(given, terminal.words.cli.regrade.line(number)) : judge.ofFile(name);
    if (row.verdict !== 'verified') code = EXIT.bad;
    terminal.out(`${JSON.stringify(saidRow(terminal.words, row))}\n`);
  }
  return code;
}

/** The file that a line names, as it is or as a JSON string; null: the line is itself a run. */
function nameIn(line: string): string | null {
  if (!/^["{[]/.test(line)) return line;
  try {
    const value: unknown = JSON.parse(line);
    return typeof value === 'string' ? value : null;
  } catch {
    return null;
  }
}

function tell(terminal: Terminal, found: readonly Row[], options: RegradeOptions): ExitCode {
  const rows = withSameActs(found);
  if (options.csv === true) terminal.out(csvOf(rows));
  else if (options.jsonl === true)
    for (const row of rows) terminal.out(`${JSON.stringify(saidRow(terminal.words, row))}\n`);
  else if (options.json === true) {
    const said = rows.map((row) => saidRow(terminal.words, row));
    terminal.out(`${JSON.stringify(said.length === 1 ? said[0] : said, null, 2)}\n`);
  } else for (const row of rows) tellRow(terminal, row, rows.length > 1);
  return rows.every((row) => row.verdict === 'verified') ? EXIT.good : EXIT.bad;
}

/** In words: what is no run has its problems, as everywhere. */
function tellRow(terminal: Terminal, row: Row, named: boolean): void {
  const { finding } = row;
  if (finding.kind === 'unreadable') {
    tellProblems(terminal, finding.problems);
    return;
  }
  const { cli, judging } = terminal.words;
  const say = cli.regrade;
  const { title, sentence, details } = verdictWords(terminal.words, finding);
  const more = [
    ...details,
    ...(row.verdict === 'otherScenario' && finding.kind !== 'foreign'
      ? [judging.unknownScenario, say.giveScenario]
      : []),
    ...(row.sameAs === null ? [] : [judging.sameAs(row.sameAs)]),
  ];
  const head = `${named ? `${row.file}: ` : ''}${title}. ${sentence}`;
  for (const line of [head, ...more]) terminal.out(`${harmless(line)}\n`);
}

function progressOf({ words, err, watched }: Terminal, all: number) {
  const shown = watched === true && all > 1;
  return {
    done: (count: number): void => {
      if (shown) err(`\r${words.cli.regrade.progress(count, all)}`);
    },
    clear: (): void => {
      if (shown) err('\r\u001b[K');
    },
  };
}
