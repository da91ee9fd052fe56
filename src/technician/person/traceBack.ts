/**
 * Tracing a failed part: the sweep goes in at one point after the other, from the detector back, and each stage is brought right before the next is looked at. The first that its
 * own slugs cannot bring right holds the part: one that shows there, and from no point behind it.
 */
import { type AtBench, curveOf, isShelf, slugsOf, standFor, timeLeft } from './atWork.ts';
import { LEAST_TURNS, newPad, noteTurns } from './byNotebook.ts';
import { shareOnTube } from './deadStage.ts';
import { type Explained, onPaper, type Paper, replacePart } from './faultFinding.ts';
import { levelBy } from './levels.ts';
import type { ChartEntry, PrintedCurve, PrintedResponse, PrintedSheet } from './sheet.ts';
import { stageByNotebook } from './stage.ts';
import { levelsNow } from './toLimits.ts';
import { type AloneStep, padFor, padOfStage, stepsAlone } from './withNotebook.ts';

/** What no slug explains of a stage, and of the whole curve, is a part's doing from here on; with the part slugs must explain it, and it must leave little of what there was. */
const STAGE_WRONG = 25;
const WHOLE_WRONG = 15;
/** Before a slug has been turned: a sound set is not the one in the notebook, and one slug astray leaves as much as half of this unexplained. */
const SURELY_WRONG = 45;
/** A stage that is no farther off than this, and that no part explains, is taken for one of another set than the notebook's. */
const UNSURE = 60;
const EXPLAINED = 0.15;
/** Of what was wrong, where the part was to blame. */
const MENDED = 0.5;
/** Another curve, from a point behind the part, than by so much of its height: decibels rms. */
const SHOWS_DB = 0.5;
const MOST_PARTS = 3;
/** With the likeliest part a stage is looked at so often, while that leaves no more than this share unexplained. */
const TIMES_TURNED = 3;
const PROMISING = 0.8;
/** A part that alone looks like it may leave so much, and so much of what the next leaves. */
const LITTLE = 0.25;
const LITTLE_OF_NEXT = 1 / 3;

/** Parts that were replaced by it. */
export function traceBack(bench: AtBench, main: PrintedResponse): readonly string[] {
  const replaced: string[] = [];
  let last: Trouble | null = null;
  while (timeLeft(bench)) {
    const now = firstTrouble(bench, main, replaced);
    // Where the stage is as it should be the part was to blame. Where it is not, that says nothing: the core of a new coil stands half way and spoils the stages round it.
    if (last?.part != null && (now === null || now.step > last.step || now.cost < MENDED * last.cost))
      bench.cured.set(last.part, true);
    if (now === null || now.part === null || replaced.length === MOST_PARTS) break;
    replaced.push(now.part);
    replacePart(bench, now.part);
    last = now;
  }
  return replaced;
}

/** What no slug explains of the whole curve. */
function beyondSlugs(bench: AtBench, main: PrintedResponse): number {
  const { levels, notebook } = wholeReader(bench, main)();
  return notebook.fitted(levels).cost;
}

/** How the whole curve stands: what no slug explains of it, and how tall it is, of the printed height. */
export interface Stood {
  readonly cost: number;
  readonly share: number;
}

export function howItStands(bench: AtBench, main: PrintedResponse): Stood {
  const cost = beyondSlugs(bench, main);
  return { cost, share: shareOnTube(bench.hands, curveOf(bench.sheet, main)) };
}

/**
 * Notes whether what no slug explains, `before` a part was replaced, went with it; what the slugs explained then says nothing. Slugs that have been turned to make up for a part
 * leave much unexplained once it is new: then the height says it, for nothing but a coil, whose core stands elsewhere now, makes more of a curve by being as good as it was.
 */
export function noteCure(bench: AtBench, main: PrintedResponse, part: string, before: Stood): void {
  const now = howItStands(bench, main);
  const isCoil = bench.sheet.slugs.some(({ coil }) => coil === part);
  const rose = !isCoil && now.share > RISES * before.share;
  if (rose || before.cost > WHOLE_WRONG) bench.cured.set(part, rose || now.cost < MENDED * before.cost);
}

/** Times the height: more than grass and another part's own value make of it. */
const RISES = 1.4;

/** Whether turns of slugs do not explain what the whole curve shows. */
export function isBeyondSlugs(bench: AtBench, main: PrintedResponse): boolean {
  return beyondSlugs(bench, main) > SURELY_WRONG;
}

/** Where a curve is seen first that its slugs do not explain. */
interface Trouble {
  /** which look it was, from the detector back */
  readonly step: number;
  /** what no slug explains of it */
  readonly cost: number;
  /** which part explains it */
  readonly part: string | null;
}

function firstTrouble(bench: AtBench, main: PrintedResponse, tried: readonly string[]): Trouble | null {
  const { chart } = bench.sheet;
  const behind: PrintedCurve[] = [];
  const open = (entry: ChartEntry): boolean =>
    !tried.includes(entry.part) && behind.every((curve) => !shows(entry, curve));
  const look = (read: () => Paper, wrong: number, unsure: number): Trouble | null => {
    const onIt = (): OnIt => {
      const paper = read();
      return { ...onPaper(paper, chart, open), slugs: paper.notebook.slugs };
    };
    const asFound = onIt();
    if (asFound.none < wrong) return null;
    const part = partOf(asFound, wrong) ?? withSlugsTurned(bench, asFound, onIt, wrong);
    return part === null && asFound.none < unsure ? null : { step: behind.length, cost: asFound.none, part };
  };
  for (const step of stepsAlone(bench.sheet, main)) {
    const read = stageReader(bench, main, step);
    const found = look(read, STAGE_WRONG, UNSURE);
    if (found !== null) return found;
    behind.push(curveFrom(bench.sheet, main, step.at!));
  }
  return look(wholeReader(bench, main), WHOLE_WRONG, WHOLE_WRONG);
}

/** What is on the tube, explained, and the slugs that it was explained with. */
interface OnIt extends Explained {
  readonly slugs: readonly string[];
}

/** A part that leaves next to nothing unexplained, or little where every other leaves much more. */
function partOf({ none, symptoms: [first, next] }: Explained, wrong: number): string | null {
  if (first === undefined) return null;
  const all = first.cost <= Math.min(EXPLAINED * none, wrong);
  const alone = first.cost <= LITTLE * none && first.cost <= LITTLE_OF_NEXT * (next?.cost ?? none);
  return all || alone ? first.parts[0]! : null;
}

/**
 * With its slugs far out a stage does not show plainly what has failed in it: they go where they would belong if the likeliest part had, and it is looked at again. Where that
 * names none they go back.
 */
function withSlugsTurned({ hands, turner }: AtBench, asFound: OnIt, onIt: () => OnIt, wrong: number): string | null {
  const { slugs } = asFound;
  const home = slugs.map((id) => turner.depthOf(id));
  const go = (kind: 'turns' | 'back', far: readonly number[]): void => {
    noteTurns(hands, kind, slugs, far);
    slugs.forEach((id, i) => {
      if (Math.abs(far[i]!) >= LEAST_TURNS) turner.turn(id, far[i]!);
    });
  };
  let last: OnIt = asFound;
  for (let n = 0; n < TIMES_TURNED; n++) {
    const [likeliest] = last.symptoms;
    if (likeliest === undefined || likeliest.cost > PROMISING * last.none) break;
    go(
      'turns',
      likeliest.turns.map((far) => -far),
    );
    const now = onIt();
    const part = partOf(now, wrong);
    if (part !== null) return part;
    if (now.symptoms[0] === undefined || now.symptoms[0].cost > likeliest.cost) break;
    last = now;
  }
  go(
    'back',
    slugs.map((id, i) => home[i]! - turner.depthOf(id)),
  );
  return null;
}

/** The bench stands for the stage. */
function stageReader(bench: AtBench, main: PrintedResponse, step: AloneStep): () => Paper {
  const pad = padOfStage(bench, main, step);
  const curve = curveFrom(bench.sheet, main, step.at!);
  // Where slugs explain it they are turned; what they do not explain is looked at as it stands.
  if (pad.notebook.slugs.length > 0 && pad.wide.fitted(pad.read()).cost < UNSURE) {
    stageByNotebook(bench.hands, bench.turner, pad);
  }
  return () => {
    const { wide: notebook, read, levelOf } = padFor(bench, main, step, curve);
    return { levels: read(), hz: curve.hz, curve, notebook, levelOf };
  };
}

function wholeReader(bench: AtBench, main: PrintedResponse): () => Paper {
  const { hands, sheet, turner } = bench;
  const curve = standFor(bench, main);
  const slugs = slugsOf(sheet, main).filter((s) => s.trapHz === null || isShelf(main, s.trapHz));
  const trapsHz = sheet.slugs.flatMap(({ trapHz }) => (trapHz === null ? [] : [trapHz]));
  const levelOf = levelBy(curveOf(sheet, main));
  return () => {
    const { notebook } = newPad(turner, main, slugs, trapsHz);
    return { levels: levelsNow(hands, main, curve), hz: main.lookAtHz, curve, notebook, levelOf };
  };
}

function curveFrom({ curves }: PrintedSheet, { id }: PrintedResponse, at: string): PrintedCurve {
  return curves.find((c) => c.response === id && c.injectAt === at)!;
}

function shows({ voltsFrom }: ChartEntry, { injectAt, volts }: PrintedCurve): boolean {
  const peak = volts.reduce((most, v) => Math.max(most, Math.abs(v)), 0);
  const db = (v: number): number => 20 * Math.log10(Math.max(Math.abs(v) / peak, LEAST_SHARE));
  const there = voltsFrom[injectAt] ?? volts;
  const sum = volts.reduce((all, v, i) => all + (db(there[i]!) - db(v)) ** 2, 0);
  return Math.sqrt(sum / volts.length) > SHOWS_DB;
}

const LEAST_SHARE = 0.01;
