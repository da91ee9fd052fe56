/**
 * The order of work where a sheet names no points inside the set to sweep its stages from, though it has them: from the detector back, each stage from the point in front of it, as
 * anybody in the trade goes about it. Which slugs belong to a stage is seen on a sound set: those that move its curve and that of no stage behind it.
 */
import { createBench } from '../bench/bench.ts';
import type { BenchSetup } from '../bench/setup.ts';
import type { ProcedureStep, Receiver } from '../receiver/receiver.ts';
import { nominalTurns } from '../receiver/slugLaw.ts';
import { levelFor, readAt } from './printCurve.ts';

/** With one point inside the whole curve tells as much. */
const FEWEST_POINTS = 2;
const TRIED_TURNS = 1;
const PLACES = 41;
/** Of the height of a curve: what moves it by less belongs to another stage. */
const MOVES = 0.06;

const known = new WeakMap<Receiver, readonly ProcedureStep[]>();

export function stageByStage(sound: BenchSetup): readonly ProcedureStep[] {
  const steps = known.get(sound.receiver) ?? ordered(sound);
  known.set(sound.receiver, steps);
  return steps;
}

function ordered(sound: BenchSetup): readonly ProcedureStep[] {
  const { procedure, responses, testPoints, adjusters } = sound.receiver;
  const [main] = responses;
  const inside = testPoints.filter(({ inject }) => inject?.kind === 'node');
  const named = procedure.some(({ phase, at }) => phase === 'align' && at !== undefined);
  if (named || responses.length > 1 || inside.length < FEWEST_POINTS || main === undefined) return procedure;
  const bench = createBench(sound);
  const { centreHz, spanHz } = main.setUp;
  const hz = Array.from({ length: PLACES }, (_, i) => centreHz + 0.9 * spanHz * (i / (PLACES - 1) - 0.5));
  const stages = inside
    .map(({ id: at }) => {
      const levelDb = levelFor(bench, sound, main, at);
      const read = (depths: Readonly<Record<string, number>>): readonly number[] =>
        readAt(bench, sound, main, at, levelDb, hz, depths);
      const right = read({});
      const height = Math.max(...right.map(Math.abs));
      const moves = adjusters.filter((adjuster) => {
        const turned = read({ [adjuster.id]: nominalTurns(adjuster) + TRIED_TURNS });
        return turned.some((v, i) => Math.abs(v - right[i]!) > MOVES * height);
      });
      return { at, moves: moves.map(({ id }) => id) };
    })
    .sort((a, b) => a.moves.length - b.moves.length);
  const align = procedure.filter(({ phase }) => phase === 'align');
  const traps = adjusters.filter(({ kind }) => kind === 'trap').map(({ id }) => id);
  const placed = new Set<string>();
  const own = stages.flatMap(({ at, moves }): ProcedureStep[] => {
    const slugs = moves.filter((id) => !placed.has(id));
    for (const id of slugs) placed.add(id);
    return slugs.length === 0 ? [] : [{ ...align[0]!, at, slugs }];
  });
  const whole = align
    .map((step) => ({ ...step, slugs: step.slugs.filter((id) => !placed.has(id) || traps.includes(id)) }))
    .filter(({ slugs }) => slugs.length > 0);
  const [first, ...rest] = whole;
  const trapsFirst = first?.slugs.every((id) => traps.includes(id)) === true;
  const before = procedure.slice(0, procedure.indexOf(align[0]!));
  const after = procedure.slice(procedure.indexOf(align.at(-1)!) + 1);
  return [...before, ...(trapsFirst ? [first!, ...own, ...rest] : [...own, ...whole]), ...after];
}
