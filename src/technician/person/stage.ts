/** A stage by itself, swept from its own point, with its own page of the notebook. */
import { LEAST_TURNS, type Look, MOST_TURNS, minus, noteTurns, reachOf } from './byNotebook.ts';
import { axisOf, readVolts } from './eyes.ts';
import type { Hands } from './hands.ts';
import { createNotebook, type Notebook } from './notebook.ts';
import type { PrintedCurve, PrintedSlug } from './sheet.ts';
import type { Turner } from './turner.ts';

const STAGE_ROUNDS = 5;
/** A stage that is right to so much of what may be doubted is right. */
const STAGE_RIGHT = 1.5;
const WORTH_IT = 0.75;

/** A stage by itself, swept from its own point: what its notebook holds, and how its curve is read. */
export interface StagePad {
  readonly notebook: Notebook;
  /** the same with the slugs in front of the stage that show from its point */
  readonly wide: Notebook;
  readonly read: () => number[];
  readonly levelOf: (volts: number) => number;
}

export function stagePad(
  hands: Hands,
  turner: Turner,
  curve: PrintedCurve,
  adjusters: readonly PrintedSlug[],
  besides: readonly PrintedSlug[],
  isSCurve: boolean,
  trapsHz: readonly number[],
  ofDetector: (volts: number) => number,
): StagePad {
  const height = Math.max(...curve.volts.map(Math.abs));
  const levelOf = (v: number): number => (isSCurve ? v / height : ofDetector(v));
  const effects = [...curve.effects, ...curve.besides].map((e) => ({
    ...e,
    levels: e.levels.map((curve) => curve.map((v) => levelOf(v * height))),
  }));
  const notebookOf = (slugs: readonly PrintedSlug[]): Notebook =>
    createNotebook(
      { hz: curve.hz, effects, isSCurve, trapsHz },
      slugs.map(({ id }) => id),
      reachOf(turner, slugs),
    );
  return {
    notebook: notebookOf(adjusters),
    wide: notebookOf([...adjusters, ...besides]),
    read: () => readVolts(hands, curve.hz, axisOf(hands), true, !isSCurve).map(levelOf),
    levelOf,
  };
}

/** Turned until the tube shows the printed curve. Its few slugs cannot be taken for those of other stages. Gives how far from it the stage is left, in what may be doubted. */
export function stageByNotebook(hands: Hands, turner: Turner, { notebook, read }: StagePad): number {
  const { slugs } = notebook;
  const home = slugs.map((id) => turner.depthOf(id));
  const depths = (): number[] => slugs.map((id, i) => turner.depthOf(id) - home[i]!);
  let best: Look | null = null;
  let most = MOST_TURNS;
  let first = 0;
  for (let round = 0; round < STAGE_ROUNDS; round++) {
    const levels = read();
    const at = depths();
    const worst = notebook.leftOver(levels);
    if (round === 0) first = worst;
    if (best !== null) notebook.learn(best.levels, best.stand, minus(at, best.at), levels);
    if (best === null || worst < best.worst) {
      const slow: boolean = best !== null && worst > 0.8 * best.worst;
      const thought: readonly number[] | null =
        best === null ? null : best.stand.map((s, i) => s + at[i]! - best!.at[i]!);
      best = { worst, levels, at, stand: notebook.whereSlugsStand(levels, thought) };
      if (slow) break;
    } else most *= 0.4;
    if (best.worst < STAGE_RIGHT || round === STAGE_ROUNDS - 1) break;
    const turns = notebook.towardsRight(best.levels, best.stand, most);
    const far = turns.map((t, i) => best!.at[i]! + t - at[i]!);
    noteTurns(hands, 'turns', slugs, far);
    const made = slugs.map((id, i) => (Math.abs(far[i]!) < LEAST_TURNS ? 0 : turner.turn(id, far[i]!)));
    if (made.every((t) => t === 0)) break;
  }
  if (best === null) return 0;
  // What hardly made it better was not wrong.
  const better = best.worst < WORTH_IT * first;
  const to = better ? best.at : slugs.map(() => 0);
  minus(to, depths()).forEach((back, i) => {
    if (Math.abs(back) > LEAST_TURNS) turner.turn(slugs[i]!, back);
  });
  return better ? best.worst : first;
}
