/** `curve --volts`: what the bench itself has at the end of the Y lead with the source standing still, volts with their sign. */
import { createFaultBook } from '../bench/faultsNow.ts';
import { createPictureMaker } from '../bench/picture.ts';
import { hertzOf, type SetOptions, sheetBench } from './sheetBench.ts';
import { EXIT, type ExitCode, type Terminal, tellProblems, UsageError } from './terminal.ts';

export interface VoltsOptions extends SetOptions {
  readonly hz?: string;
}

const MOST_FREQUENCIES = 10_000;
const DIGITS = 9;

export function volts(terminal: Terminal, name: string, options: VoltsOptions): ExitCode {
  const say = terminal.words.cli.curve;
  if (options.hz === undefined) throw new UsageError(say.voltsNeedHz);
  const asked = options.hz.split(',');
  if (asked.length > MOST_FREQUENCIES) throw new UsageError(say.tooManyHz(MOST_FREQUENCIES, asked.length));
  const hz = asked.map((text) => hertzOf(terminal, text));
  const bench = sheetBench(terminal, name, options);
  if (!bench.ok) return tellProblems(terminal, bench.problems);
  const { setup, stateAt } = bench.value;
  const faults = createFaultBook(setup);
  const pictureOf = createPictureMaker(setup, faults);
  const lines = hz.map((f) => {
    const state = stateAt(f);
    // The source stands still, so every sample of the period is the same.
    const [still] = pictureOf(faults(state).really(state)).volts;
    return `${f},${still!.toPrecision(DIGITS)}`;
  });
  terminal.out(`${['hz,volts', ...lines].join('\n')}\n`);
  return EXIT.good;
}
