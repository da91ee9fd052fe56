/** The solver on the nine-coil valve strip (and the larger solid-state one): whole solves, slug turns, overload, sensitivities; C and ngspice beside it. */

import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { seededRandom } from '../../src/base/random.ts';
import { diodeLaw } from '../../src/physics/diodeLaw.ts';
import type { Solver } from '../../src/physics/solver.ts';
import { deckText, grid, solved, tankHarmonics } from '../../tests/physics/decks.ts';
import { levelSensitivities } from '../../tests/physics/levelSensitivities.ts';
import { runSpice } from '../../tests/physics/ngspice.ts';
import type { PerfCase } from '../case.ts';
import { timed } from '../case.ts';
import { networkText } from '../networkText.ts';
import { voltageSum, wholeSolve } from '../solving.ts';

const HZ = grid(38e6, 52e6, 1024);
const VALVE = 'video-valve-45m';

/** The strip without the resistor that stands for its diode, and the diode itself. */
const LOADED_TEXT = deckText(VALVE).replace(/^Rdio .*$/m, '');
const DIODE = {
  ...{ saturationAmps: 26e-6, emissionVolts: 0.027, loadOhms: 4700, loadFarads: 8e-12 },
  harmonics: tankHarmonics(12e-12, 44e6),
};

/** At the sheet's level, 1.4e-5 S times 2 V less 46 dB. */
function loadedSolver(): Solver {
  const solver = solved(LOADED_TEXT, HZ);
  solver.setDrive('Isig', 1.4e-7);
  solver.setLoads([{ node: 'det', admittance: diodeLaw(DIODE).admittance }]);
  solver.solve();
  return solver;
}

const whole = (deck: string) => () => wholeSolve(solved(deckText(deck), HZ));

const plain = (): Solver => solved(deckText(VALVE), HZ);

/** Turns one slug to and fro by up to two per cent. */
const slug = (coil: string, make: () => Solver) => (seed: number) => {
  const solver = make();
  const nominal = solver.value(coil);
  const random = seededRandom(seed);
  const run = () => {
    solver.setValue(coil, nominal * (0.98 + 0.04 * random()));
    solver.solve();
  };
  return timed({ warmUp: 400, runs: 400, run, checksum: () => voltageSum(solver) });
};

/** The same loop, perf/solve.c, built with whatever C compiler is at hand. */
const inC = (deck: string) => async () => {
  const source = fileURLToPath(new URL('../solve.c', import.meta.url));
  const folder = fileURLToPath(new URL('../../.cache/', import.meta.url));
  const program = `${folder}solve`;
  mkdirSync(folder, { recursive: true });
  if (!existsSync(program) || statSync(program).mtimeMs < statSync(source).mtimeMs) {
    const compiler = ['cc', 'gcc', 'clang'].find((name) => {
      try {
        execFileSync(name, ['-std=c99', '-O3', '-o', program, source, '-lm'], { stdio: 'pipe' });
        return true;
      } catch {
        return false;
      }
    });
    if (compiler === undefined) return 'no C compiler at hand';
  }
  const text = networkText(solved(deckText(deck), HZ), 800);
  const figures = execFileSync(program, { input: text, encoding: 'utf8' }).trim().split('\n').map(Number);
  return { micros: figures.slice(400, -1), checksum: figures.at(-1)! };
};

export const cases: readonly PerfCase[] = [
  { id: 'c-valve', title: 'valve strip, 1024 points, dense elimination in C -O3', measure: inC(VALVE) },
  { id: 'solve-valve', title: 'valve strip, 1024 points, whole solve', against: 'c-valve', measure: whole(VALVE) },
  {
    id: 'solve-valve-loaded',
    title: 'valve strip, 1024 points, whole solve, its diode loading the last coil',
    against: 'solve-valve',
    measure: () => wholeSolve(loadedSolver()),
  },
  {
    id: 'slug-first-loaded',
    title: 'valve strip with its diode, first slug (T1) turned: all blocks',
    against: 'solve-valve',
    measure: slug('Lmix', loadedSolver),
  },
  {
    id: 'ngspice-valve',
    title: 'valve strip, 1024 points, ngspice in WebAssembly',
    against: 'solve-valve',
    async measure() {
      const text = deckText(VALVE).replace('lin 281', 'lin 1024');
      let sum = 0;
      return timed({
        warmUp: 10,
        runs: 20,
        async run() {
          const { nodes } = await runSpice(text);
          sum = 0;
          for (const { re, im } of nodes.values())
            for (let f = 0; f < re.length; f++) sum += Math.hypot(re[f]!, im[f]!);
        },
        checksum: () => sum,
      });
    },
  },
  {
    id: 'slug-first',
    title: 'valve strip, first slug (T1) turned: all blocks',
    against: 'solve-valve',
    measure: slug('Lmix', plain),
  },
  {
    id: 'slug-trap',
    title: 'valve strip, 41.25 trap turned: three blocks',
    against: 'solve-valve',
    measure: slug('L41', plain),
  },
  {
    id: 'slug-last',
    title: 'valve strip, last slug (T5 top) turned: one block',
    against: 'solve-valve',
    measure: slug('Ldet', plain),
  },
  {
    id: 'level-step',
    title: 'valve strip, saturating stages, attenuator stepped',
    measure(seed) {
      const solver = solved(deckText(VALVE), HZ);
      for (const stage of ['G1', 'G2', 'G3']) solver.setSaturation(stage, 1);
      const random = seededRandom(seed);
      const run = () => {
        solver.setDrive('Isig', 1e-6 * 10 ** random());
        solver.solve();
      };
      return timed({ warmUp: 400, runs: 400, run, checksum: () => voltageSum(solver) });
    },
  },
  {
    id: 'sensitivities',
    title: 'valve strip, d|V|/dL of all nine slugs at 1024 points',
    measure() {
      const solver = solved(deckText(VALVE), HZ);
      const coils = ['Lmix', 'Lin', 'L39', 'L47', 'Lp1', 'L41', 'Lp2', 'Lp3', 'Ldet'];
      let slopes = levelSensitivities(solver, 'det', coils);
      const run = () => {
        slopes = levelSensitivities(solver, 'det', coils);
      };
      const sum = () =>
        [...slopes.values()].reduce((total, slope) => slope.reduce((s, v) => s + Math.abs(v), total), 0);
      return timed({ warmUp: 100, runs: 100, run, checksum: sum });
    },
  },
  {
    id: 'c-solid',
    title: 'solid-state strip, 1024 points, dense elimination in C -O3',
    measure: inC('video-solid-45m'),
  },
  {
    id: 'solve-solid',
    title: 'solid-state strip, 1024 points, whole solve',
    against: 'c-solid',
    measure: whole('video-solid-45m'),
  },
];
