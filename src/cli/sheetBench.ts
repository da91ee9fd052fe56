/** The bench as a service sheet sets it up for the first response that a scenario is about, its source standing still at one frequency. */
import { good, type Result } from '../base/result.ts';
import { asSheetSays } from '../bench/asSheetSays.ts';
import type { BenchState } from '../bench/benchState.ts';
import { CONTROL_ROWS } from '../bench/controls/rows.ts';
import { type BenchSetup, firstResponse } from '../bench/setup.ts';
import { readSpiceNumber } from '../physics/spiceNumber.ts';
import type { SheetResponse } from '../receiver/receiver.ts';
import { NO_LIFE } from '../scenario/life.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { commandSetup, type ReceiverOption } from './commandSetup.ts';
import { readScenario } from './document.ts';
import { type Terminal, UsageError } from './terminal.ts';

export interface SetOptions extends ReceiverOption {
  /** number of the set that is put on the bench; left out: the scenario's own */
  readonly seed?: string;
  readonly standing?: string;
}

const STANDINGS = ['found', 'best'] as const;
type StandingWord = (typeof STANDINGS)[number];

export interface SheetBench {
  readonly setup: BenchSetup;
  readonly response: SheetResponse;
  readonly standing: StandingWord;
  /** the source standing still there, which is the true frequency whatever its dial would say */
  stateAt(hz: number): BenchState;
}

/** The highest set number that a scenario file may name. */
const MOST_SEED = 2 ** 31 - 1;
/** What the source of the bench reaches. */
const { min: LEAST_HZ, max: MOST_HZ } = CONTROL_ROWS.centreHz;

export function sheetBench(terminal: Terminal, name: string, options: SetOptions): Result<SheetBench> {
  const seed = seedOf(terminal, options.seed);
  const standing = standingOf(terminal, options.standing);
  const read = readScenario(terminal, name);
  if (!read.ok) return read;
  const clean = { ...read.value, life: NO_LIFE };
  const numbered = seed === null ? clean : { ...clean, set: seed };
  const wanted = standing === 'best' ? madeGood(numbered) : numbered;
  const loaded = commandSetup(terminal, wanted, name, options);
  if (!loaded.ok) return loaded;
  const setup = loaded.value;
  const response = firstResponse(setup);
  const ready = asSheetSays(setup, response, { spanHz: 0, blanking: false });
  const stillMode = response.setUp.source === 'video' ? 'video' : 'spot';
  const dialErrorHz = setup.scenario.bench.centreErrorHz ?? 0;
  const stateAt = (hz: number): BenchState => ({
    ...ready,
    controls: { ...ready.controls, sourceMode: stillMode, centreHz: hz - dialErrorHz },
  });
  return good({ setup, response, standing, stateAt });
}

/** Nothing has failed and every slug is where this set wants it. */
function madeGood(scenario: Scenario): Scenario {
  const { steelIn: _, ...start } = scenario.start;
  return { ...scenario, faults: [], start: { ...start, slugs: {}, randomTurns: 0 } };
}

/** A frequency as given with `--hz`. */
export function hertzOf(terminal: Terminal, text: string): number {
  const value = readSpiceNumber(text.trim());
  if (value !== null && value >= LEAST_HZ && value <= MOST_HZ) return value;
  throw new UsageError(terminal.words.cli.deck.badHz(text, LEAST_HZ, MOST_HZ));
}

function seedOf(terminal: Terminal, text: string | undefined): number | null {
  if (text === undefined) return null;
  const value = /^\d{1,10}$/.test(text) ? Number(text) : Number.NaN;
  if (value <= MOST_SEED) return value;
  throw new UsageError(terminal.words.cli.deck.badSeed(text, MOST_SEED));
}

function standingOf(terminal: Terminal, text: string | undefined): StandingWord {
  const found = STANDINGS.find((one) => one === (text ?? 'found'));
  if (found !== undefined) return found;
  throw new UsageError(terminal.words.cli.deck.badStanding(text ?? '', STANDINGS));
}
