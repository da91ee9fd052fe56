/**
 * Tracing a failed part: the sweep goes in at one point after the other, from the detector back, and each stage is brought right before the next is looked at. The first that its
 * own slugs cannot bring right holds the part: one that shows there, and from no point behind it.
 */
import { type AtBench, curveOf, isShelf, slugsOf, standFor, timeLeft } from './atWork.ts';
import { newPad } from './byNotebook.ts';
import { onPaper, type Paper, replacePart } from './faultFinding.ts';
import { levelBy } from './levels.ts';
import type { ChartEntry, PrintedCurve, PrintedResponse, PrintedSheet } from './sheet.ts';
import { stageByNotebook } from './stage.ts';
import { levelsNow } from './toLimits.ts';
import { type AloneStep, padOfStage, stepsAlone } from './withNotebook.ts';

/** What no slug explains of a stage, and of the whole curve, is a part's doing from here on; with the part slugs must explain it, and it must leave little of what there was. */
const STAGE_WRONG = 25;
const WHOLE_WRONG = 15;
const EXPLAINED = 0.15;
/** Of what was wrong, where the part was to blame. */
const MENDED = 0.5;
/** Another curve, from a point behind the part, than by so much of its height: decibels rms. */
const SHOWS_DB = 0.5;
const MOST_PARTS = 3;

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
export function beyondSlugs(bench: AtBench, main: PrintedResponse): number {
  const { levels, notebook } = wholePaper(bench, main);
  return notebook.fitted(levels).cost;
}

/** Notes whether what no slug explains, `before` a part was replaced, went with it; what the slugs explained then says nothing. */
export function noteCure(bench: AtBench, main: PrintedResponse, part: string, before: number): void {
  if (before > WHOLE_WRONG) bench.cured.set(part, beyondSlugs(bench, main) < MENDED * before);
}

/** Whether turns of slugs do not explain what the whole curve shows. */
export function isBeyondSlugs(bench: AtBench, main: PrintedResponse): boolean {
  return beyondSlugs(bench, main) > WHOLE_WRONG;
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
  const look = (paper: Paper, wrong: number): Trouble | null => {
    const { none, symptoms } = onPaper(
      paper,
      chart,
      (entry) => !tried.includes(entry.part) && behind.every((curve) => !shows(entry, curve)),
    );
    if (none < wrong) return null;
    const [first] = symptoms;
    const fits = first !== undefined && first.cost <= Math.min(EXPLAINED * none, wrong);
    return { step: behind.length, cost: none, part: fits ? first.parts[0]! : null };
  };
  for (const step of stepsAlone(bench.sheet, main)) {
    const paper = stagePaper(bench, main, step);
    const found = look(paper, STAGE_WRONG);
    if (found !== null) return found;
    behind.push(paper.curve);
  }
  return look(wholePaper(bench, main), WHOLE_WRONG);
}

function stagePaper(bench: AtBench, main: PrintedResponse, step: AloneStep): Paper {
  const pad = padOfStage(bench, main, step);
  const curve = curveFrom(bench.sheet, main, step.at!);
  const before = pad.read();
  // Where slugs explain it they are turned; what they do not explain is looked at as it stands.
  if (pad.notebook.slugs.length > 0 && pad.notebook.fitted(before).cost < STAGE_WRONG) {
    stageByNotebook(bench.hands, bench.turner, pad);
    return { ...pad, levels: pad.read(), hz: curve.hz, curve };
  }
  return { ...pad, levels: before, hz: curve.hz, curve };
}

function wholePaper(bench: AtBench, main: PrintedResponse): Paper {
  const { hands, sheet, turner } = bench;
  const curve = standFor(bench, main);
  const slugs = slugsOf(sheet, main).filter((s) => s.trapHz === null || isShelf(main, s.trapHz));
  const trapsHz = sheet.slugs.flatMap(({ trapHz }) => (trapHz === null ? [] : [trapHz]));
  const { notebook } = newPad(turner, main, slugs, trapsHz);
  const levelOf = levelBy(curveOf(sheet, main));
  return { levels: levelsNow(hands, main, curve), hz: main.lookAtHz, curve, notebook, levelOf };
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
