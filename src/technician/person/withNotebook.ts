/** Curve by curve with the notebook: traps to their places, all slugs together, and where one curve cannot tell them apart stage by stage. */
import {
  type AtBench,
  curveOf,
  inOrderOfWork,
  isNarrow,
  isSCurve,
  isShelf,
  reaches,
  slugsOf,
  standFor,
  timeToProve,
} from './atWork.ts';
import { byNotebook, newPad } from './byNotebook.ts';
import { levelBy } from './levels.ts';
import { offBy, oscillatorOf, setOscillator } from './oscillator.ts';
import { peakUp } from './peaking.ts';
import type { PrintedCurve, PrintedResponse, PrintedSheet, PrintedSlug } from './sheet.ts';
import { type StagePad, stageByNotebook, stagePad } from './stage.ts';
import { bringNotch, setTrap, type WantedNotch } from './traps.ts';

const NOTEBOOK_PASSES = 5;
const MOST_COURSES = 4;
/** Of what was wrong before, where a pass has been worth it. */
const MUCH_BETTER = 0.8;
/** So far from its place a notch is looked for in the notebook; and what a turn moves it by where nothing is seen there. */
const NOTCH_SHARE = 0.02;
const SHARE_A_TURN = 0.01;
const SPARE_DB = 1;
/** From here to the limit an eye is not sure on which side of it a demand is. */
const READS_OUTSIDE = 0.95;
/** So far out a curve is not that of a set that only wants touching up. */
const LOST = 3;
/** What reads so is inside, whatever the eye does. */
const SURELY_INSIDE = 0.75;

/** Curve by curve as the notebook has it, and where there are several all of them again until none asks for anything. True where every demand reads inside at the end. */
export function withNotebook(bench: AtBench): boolean {
  let before = Number.POSITIVE_INFINITY;
  let stagesFirst = false;
  for (let course = 1; ; course++) {
    const { worst, moved, stagesLeft } = oneCourse(bench, stagesFirst, course > 1);
    const inside = worst < READS_OUTSIDE;
    const done = inside ? !moved : worst > MUCH_BETTER * before && (!stagesLeft || worst < 1);
    if (done || bench.sheet.responses.length === 1 || course === MOST_COURSES || !timeToProve(bench)) return inside;
    // A curve that hangs on another's slugs cannot be had before these stand where they belong, and not only so that their own curve reads inside.
    stagesFirst = !inside && stagesLeft;
    before = worst;
  }
}

interface Course {
  /** the demand that reads worst, against its aim; beyond all where it was broken off */
  readonly worst: number;
  /** a slug stands elsewhere than before */
  readonly moved: boolean;
  /** there are stages that were not looked at by themselves */
  readonly stagesLeft: boolean;
}

/** `stagesFirst`: every stage by itself before the whole curve is looked at. `again`: all of it has been done before. */
function oneCourse(bench: AtBench, stagesFirst: boolean, again: boolean): Course {
  const { hands, sheet, turner } = bench;
  let worst = 0;
  let stagesLeft = false;
  const found = sheet.slugs.map(({ id }) => turner.depthOf(id));
  // A core that is felt not to turn is in a coil that has to go: nothing is set round it before it has.
  const felt = turner.stuck.size;
  const mayGoOn = (): boolean => timeToProve(bench) && (sheet.chart.length === 0 || turner.stuck.size === felt);
  for (const response of inOrderOfWork(sheet)) {
    const curve = standFor(bench, response);
    const oscillator = oscillatorOf(response);
    if (oscillator !== null) {
      for (const { id } of slugsOf(sheet, response)) setOscillator(hands, turner, id, response);
      worst = Math.max(worst, Math.abs(offBy(hands, oscillator.hz) ?? Infinity) / oscillator.toleranceHz);
      continue;
    }
    // An oscillator that stands at zero beat stays there.
    const beating = sheet.responses.filter((r) => oscillatorOf(r) !== null).flatMap((r) => slugsOf(sheet, r));
    const slugs = slugsOf(sheet, response).filter((slug) => !beating.includes(slug));
    const notches = slugs.filter(({ trapHz }) => trapHz !== null && !isShelf(response, trapHz));
    const rest = slugs.filter((slug) => !notches.includes(slug));
    const seen = notches.filter(({ trapHz }) => reaches(hands, trapHz!));
    const trapsHz = seen.map(({ trapHz }) => trapHz!);
    let pad = newPad(turner, response, rest, trapsHz);
    let stages = stepsAlone(sheet, response);
    // Slugs that the whole curve is about alone.
    let inFront = rest.map(({ id }) => id);
    let peaked = !isNarrow(response);
    // Of two circuits that stand far apart a narrow curve shows one: each is peaked in the middle, and then the curve is looked at again.
    const peak = (): void => {
      peaked = true;
      hands.note({ kind: 'follows', slugs: inFront });
      peakUp(hands, turner, response.setUp.centreHz, inFront);
      pad = newPad(turner, response, rest, trapsHz);
    };
    const byStages = (): void => {
      for (const step of stages) stageAlone(bench, response, step);
      standFor(bench, response);
      // The whole curve is now that of the slugs in front of the stages alone.
      const others = rest.filter(({ id }) => stages.every((step) => !step.slugs.includes(id)));
      stages = [];
      if (others.length === 0 || others.length === rest.length || !mayGoOn()) return;
      inFront = others.map(({ id }) => id);
      const there = newPad(turner, response, others, trapsHz);
      if (byNotebook(hands, turner, response, curve, there, true, mayGoOn) > LOST && !peaked && mayGoOn()) peak();
    };
    if (stagesFirst && stages.length > 0) byStages();
    let left = Number.POSITIVE_INFINITY;
    for (let pass = 0; pass < NOTEBOOK_PASSES && mayGoOn(); pass++) {
      const before = slugs.map(({ id }) => turner.depthOf(id));
      for (const trap of seen) {
        const good = bringNotch(hands, turner, wantedNotch(response, trap, slugs), curve, again || pass > 0);
        // Whose notch cannot be seen is rocked for the lowest line, once the humps are about right.
        if (!good && pass === 1) setTrap(hands, turner, trap.id, trap.trapHz!);
      }
      const moved = slugs.some(({ id }, i) => turner.depthOf(id) !== before[i]);
      if (pass > 0 && left < SURELY_INSIDE && !moved) break;
      const inOneGo = stages.length === 0 || pass > 0;
      const untouched = pass === 0 && !moved;
      const now = byNotebook(hands, turner, response, curve, pad, inOneGo, mayGoOn, untouched);
      const stuck = now > READS_OUTSIDE && (pass === 0 ? now === Number.POSITIVE_INFINITY : now > MUCH_BETTER * left);
      if (!mayGoOn()) return { worst: Number.POSITIVE_INFINITY, moved: true, stagesLeft: false };
      left = Math.min(left, now);
      if (stuck && stages.length > 0) {
        byStages();
        left = Number.POSITIVE_INFINITY;
      } else if (stuck && !peaked && now > LOST) {
        peak();
        left = Number.POSITIVE_INFINITY;
      } else if (stuck) break;
    }
    worst = Math.max(worst, left);
    stagesLeft ||= stages.length > 0;
  }
  return { worst, moved: sheet.slugs.some(({ id }, i) => turner.depthOf(id) !== found[i]), stagesLeft };
}

export type AloneStep = PrintedSheet['procedure'][number];

/** Steps of the procedure that sweep a stage from a point of its own, as far as they are about this curve. */
export function stepsAlone(sheet: PrintedSheet, response: PrintedResponse): readonly AloneStep[] {
  const first = sheet.responses[0]?.id;
  return sheet.procedure.filter(
    (step) =>
      step.phase === 'align' &&
      step.at !== undefined &&
      step.at !== response.setUp.injectAt &&
      (step.response ?? first) === response.id &&
      sheet.curves.some((c) => c.response === response.id && c.injectAt === step.at && c.effects.length > 0),
  );
}

function stageAlone(bench: AtBench, response: PrintedResponse, step: AloneStep): void {
  const { hands, turner } = bench;
  const pad = padOfStage(bench, response, step);
  if (pad.notebook.slugs.length === 0) return;
  const left = stageByNotebook(hands, turner, pad);
  if (!isNarrow(response) || left < LOST) return;
  hands.note({ kind: 'follows', slugs: pad.notebook.slugs });
  peakUp(hands, turner, response.setUp.centreHz, pad.notebook.slugs);
  stageByNotebook(hands, turner, padOfStage(bench, response, step));
}

/** The bench stands for the stage, and the pad lies open at its page. */
export function padOfStage(bench: AtBench, response: PrintedResponse, { at, slugs }: AloneStep): StagePad {
  const curve = standFor(bench, response, at);
  bench.hands.note({ kind: 'stage', at: at! });
  return padFor(bench, response, { slugs }, curve);
}

export function padFor(
  { hands, sheet, turner }: AtBench,
  response: PrintedResponse,
  { slugs }: Pick<AloneStep, 'slugs'>,
  curve: PrintedCurve,
): StagePad {
  const trapsHz = sheet.slugs.flatMap(({ trapHz }) => (trapHz === null ? [] : [trapHz]));
  const others = sheet.slugs.filter((s) => slugs.includes(s.id) && (s.trapHz === null || isShelf(response, s.trapHz)));
  const besides = sheet.slugs.filter(({ id }) => curve.besides.some(({ slug }) => slug === id));
  return stagePad(
    hands,
    turner,
    curve,
    others,
    besides,
    isSCurve(response),
    trapsHz,
    levelBy(curveOf(sheet, response)),
  );
}

/** A trap to its place: read off where it can be, and where its notch does not show rocked for the lowest line. */
export function placeTrap(
  { hands, sheet, turner }: AtBench,
  response: PrintedResponse,
  curve: PrintedCurve,
  trap: PrintedSlug,
  again: boolean,
): void {
  const read = curve.levels.length > 0 && !isShelf(response, trap.trapHz!);
  if (read && bringNotch(hands, turner, wantedNotch(response, trap, slugsOf(sheet, response)), curve, again)) return;
  setTrap(hands, turner, trap.id, trap.trapHz!);
}

/** Where the sheet wants the notch, and how far a turn moves it by the notebook. */
export function wantedNotch(
  { judge, effects, lookAtHz }: PrintedResponse,
  { id, trapHz }: PrintedSlug,
  slugs: readonly PrintedSlug[],
): WantedNotch {
  const hz = trapHz!;
  const { turns, levels } = effects.find(({ slug }) => slug === id)!;
  const lowest = (k: number): number => {
    let at = hz;
    let least = Number.POSITIVE_INFINITY;
    lookAtHz.forEach((f, i) => {
      if (Math.abs(f / hz - 1) > NOTCH_SHARE) return;
      const ratio = levels[k]![i]!;
      if (ratio < least) [at, least] = [f, ratio];
    });
    return at;
  };
  const sound = judge([...levels[turns.indexOf(0)]!]);
  const depth = sound.find((demand) => demand.id === `trap:${hz}`);
  const place = sound.find((demand) => demand.id === `notch:${hz}`);
  const [out, into] = [turns.indexOf(-1), turns.indexOf(1)];
  const moved = (lowest(into) - lowest(out)) / 2;
  return {
    slug: id,
    hz,
    hzATurn: moved < 0 ? moved : -SHARE_A_TURN * hz,
    withinHz: place?.high ?? null,
    limitDb: depth?.high ?? null,
    // Half way to what is wanted, or as deep as a sound set has it.
    wantedDb:
      depth === undefined
        ? null
        : Math.min(depth.high!, Math.max(depth.high! - depth.tolerance / 2, depth.measured + SPARE_DB)),
    othersHz: slugs.flatMap((other) => (other.trapHz === null || other.trapHz === hz ? [] : [other.trapHz])),
    shared: slugs.some((other) => other.id !== id && other.trapHz === hz),
  };
}
