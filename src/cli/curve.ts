/** `curve`: the receiver's true response under the sheet's conditions (the curves of the graded report), of a scenario as found or of a run as found and as left. */
import { bad, type Result } from '../base/result.ts';
import type { TimedEvent } from '../files/runFile.ts';
import { grade } from '../grading/grade.ts';
import { responseById } from '../receiver/responses.ts';
import { widenSpecification } from '../receiver/specification.ts';
import { replay } from '../run/replay.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { commandSetup } from './commandSetup.ts';
import { type Curves, curveSvg } from './curveSvg.ts';
import { readDocument, scenarioOf } from './document.ts';
import { writeText } from './files.ts';
import { fittingSetup } from './shelf.ts';
import { EXIT, type ExitCode, type Terminal, tellProblems, UsageError, worded } from './terminal.ts';
import { type VoltsOptions, volts } from './volts.ts';

export interface CurveOptions extends VoltsOptions {
  /** see volts.ts */
  readonly volts?: boolean;
  /** id of a response of the sheet; left out: the first that is judged */
  readonly response?: string;
  readonly svg?: string;
  readonly csv?: string;
}

export function curve(terminal: Terminal, name: string, options: CurveOptions): ExitCode {
  const say = terminal.words.cli.curve;
  if (options.volts) {
    if ((options.response ?? options.svg ?? options.csv) !== undefined) throw new UsageError(say.notWithVolts);
    return volts(terminal, name, options);
  }
  if ((options.hz ?? options.seed ?? options.standing) !== undefined) throw new UsageError(say.onlyWithVolts);
  const work = readWork(terminal, name);
  const curves = work.ok ? solveCurves(terminal, work.value, name, options) : work;
  if (!curves.ok) return tellProblems(terminal, curves.problems);
  if (options.svg === undefined && options.csv === undefined) {
    terminal.out(curveCsv(curves.value));
    return EXIT.good;
  }
  const problems = [
    ...(options.svg === undefined ? [] : writeText(terminal, options.svg, curveSvg(terminal.words, curves.value))),
    ...(options.csv === undefined ? [] : writeText(terminal, options.csv, curveCsv(curves.value))),
  ];
  return tellProblems(terminal, problems);
}

interface Work {
  readonly scenario: Scenario;
  /** null for a scenario file */
  readonly events: readonly TimedEvent[] | null;
}

function readWork(terminal: Terminal, name: string): Result<Work> {
  const document = readDocument(terminal, name);
  if (!document.ok) return document;
  const { kind } = document.value;
  if (kind === 'run') return { ok: true, value: document.value.run };
  if (kind === 'scenario') {
    const scenario = scenarioOf(document.value, name);
    return scenario.ok ? { ok: true, value: { scenario: scenario.value, events: null } } : scenario;
  }
  const { files } = terminal.words.cli;
  const found = kind === 'deck' ? files.noFormat : files.format(`haystack-${kind}`);
  return bad(worded({ file: name, place: '/format', found, wanted: files.curveFormats }));
}

function solveCurves(
  terminal: Terminal,
  { scenario, events }: Work,
  name: string,
  options: CurveOptions,
): Result<Curves> {
  const curveWords = terminal.words.cli.curve;
  const { response: wanted } = options;
  // A run was made on the receiver that it names, whatever lies beside it today.
  if (events !== null && options.receiver !== undefined) throw new UsageError(curveWords.notOfRun);
  const loaded =
    events === null
      ? commandSetup(terminal, scenario, name, options)
      : fittingSetup(terminal, scenario, name, '/scenario');
  if (!loaded.ok) return loaded;
  const setup = loaded.value;
  const { receiver } = setup;
  const { refused } = replay(setup, events ?? []);
  if (refused !== null) {
    const { index, reason } = refused;
    const [found, wanted] = [curveWords.impossible(index, reason), curveWords.possible];
    return bad(worded({ file: name, place: `/events/${index}`, found, wanted }));
  }
  const { curves } = grade(setup, events ?? []);
  const set = wanted === undefined ? curves[0] : curves.find((c) => c.response === wanted);
  if (set === undefined) {
    const known = curves.map((c) => c.response).join(', ');
    return bad(worded({ file: name, place: '--response', found: `"${wanted}"`, wanted: curveWords.oneOf(known) }));
  }
  const { before, after, nominal } = set;
  const response = responseById(receiver, set.response);
  const value = {
    title: receiver.responses.length === 1 ? scenario.title : `${scenario.title}: ${response.title}`,
    setName: receiver.setName,
    specification: widenSpecification(response.specification, scenario.toleranceFactor),
    hz: nominal.hz,
    start: before.relative,
    after: events === null ? null : after.relative,
    wanted: nominal.relative,
  };
  return { ok: true, value };
}

function curveCsv({ hz, start, after, wanted }: Curves): string {
  const head = after === null ? 'hz,start,wanted' : 'hz,start,after,wanted';
  const lines = Array.from(hz, (f, i) => {
    const levels = after === null ? [start[i]!, wanted[i]!] : [start[i]!, after[i]!, wanted[i]!];
    return [f.toPrecision(12), ...levels.map((level) => level.toFixed(6))].join(',');
  });
  return `${[head, ...lines].join('\n')}\n`;
}
