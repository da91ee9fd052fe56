/**
 * Turning slugs until the curve is the printed one: each slug is tried a little to learn what it does, then all are turned together as the trials say, again and
 * again, as a careful person does with a pencil. Damped least squares (Levenberg, from memory) on what the eye has read; nothing is known of the circuit.
 */
import { type Axis, axisOf, readVolts } from './eyes.ts';
import type { Hands } from './hands.ts';
import { solve } from './leastSquares.ts';
import type { PrintedCurve } from './sheet.ts';
import type { Turner } from './turner.ts';

export interface Fit {
  /** root mean square of what is left, decibels (S-curve: per cent of its height) */
  readonly left: number;
  readonly turns: Readonly<Record<string, number>>;
}

/** Below this much under the printed peak the eye sees nothing that it could compare. */
const FLOOR_DB = -46;
const TRIAL_TURNS = 0.5;
const MOST_TURNS = 2.5;

export function fitCurve(
  hands: Hands,
  turner: Turner,
  curve: PrintedCurve,
  slugs: readonly string[],
  isSCurve: boolean,
  rounds: number,
  goodEnough: number,
): Fit {
  const axis = axisOf(hands);
  const peak = Math.max(...curve.volts.map(Math.abs));
  const wanted = curve.volts.map((v) => shown(v, peak, isSCurve));
  const look = (): number[] => read(hands, axis, curve, peak, isSCurve).map((v, i) => v - wanted[i]!);
  return descend(turner, slugs, look, { rounds, goodEnough, trialTurns: TRIAL_TURNS });
}

export interface Descent {
  readonly rounds: number;
  /** root mean square of the look that is left alone */
  readonly goodEnough: number;
  readonly trialTurns: number;
  /** asked before each round; without it there is time enough */
  readonly timeLeft?: () => boolean;
}

/** Turns slugs until what is looked at is as small as it gets. */
export function descend(
  turner: Turner,
  slugs: readonly string[],
  look: () => number[],
  { rounds, goodEnough, trialTurns, timeLeft = () => true }: Descent,
): Fit {
  const turns: Record<string, number> = Object.fromEntries(slugs.map((id) => [id, 0]));
  const turn = (id: string, by: number): number => {
    const made = turner.turn(id, by);
    turns[id] = turns[id]! + made;
    return made;
  };

  let residual = look();
  let jacobian: number[][] | null = null;
  let damping = 0.02;
  let stalls = 0;
  for (let round = 0; round < rounds && rms(residual) > goodEnough && stalls < 3 && timeLeft(); round++) {
    if (jacobian === null) jacobian = slugs.map((id) => trial(turn, look, residual, id, trialTurns));
    const step = solveDamped(jacobian, residual, damping);
    const before = rms(residual);
    const made = slugs.map((id, i) => turn(id, clamp(step[i]!, MOST_TURNS)));
    const after = look();
    if (rms(after) < before) {
      // What the step has shown is added to what the trials had (Broyden).
      jacobian = learnt(jacobian, made, residual, after);
      stalls = rms(after) > 0.9 * before ? stalls + 1 : 0;
      damping = Math.max(damping / 3, 1e-4);
      residual = after;
      continue;
    }
    slugs.forEach((id, i) => {
      turn(id, -made[i]!);
    });
    damping *= 8;
    stalls++;
    residual = look();
    jacobian = null;
  }
  return { left: rms(residual), turns };
}

export function residualOf(hands: Hands, curve: PrintedCurve, isSCurve: boolean): number {
  const peak = Math.max(...curve.volts.map(Math.abs));
  const now = read(hands, axisOf(hands), curve, peak, isSCurve);
  return rms(now.map((v, i) => v - shown(curve.volts[i]!, peak, isSCurve)));
}

function read(hands: Hands, axis: Axis, curve: PrintedCurve, peak: number, isSCurve: boolean): number[] {
  return readVolts(hands, curve.hz, axis, !isSCurve).map((v) => shown(v, peak, isSCurve));
}

function shown(volts: number, peak: number, isSCurve: boolean): number {
  if (isSCurve) return (100 * volts) / peak;
  return Math.max(FLOOR_DB, 20 * Math.log10(Math.max(Math.abs(volts) / peak, 1e-6)));
}

/** Turns a slug a little and back: what that does to the look, for each turn; nothing for one that will not turn. */
export function trial(
  turn: (id: string, by: number) => number,
  look: () => number[],
  residual: readonly number[],
  id: string,
  by = TRIAL_TURNS,
): number[] {
  let made = turn(id, by);
  if (made === 0) made = turn(id, -by);
  if (made === 0) return residual.map(() => 0);
  const after = look();
  turn(id, -made);
  return after.map((v, i) => (v - residual[i]!) / made);
}

/** Turns that make the squares of residual + J turns least, damped by the size of each slug's own effect. */
function solveDamped(jacobian: readonly number[][], residual: readonly number[], damping: number): number[] {
  const a = jacobian.map((row, i) =>
    jacobian.map((other, k) => {
      const sum = row.reduce((total, v, m) => total + v * other[m]!, 0);
      return i === k ? sum * (1 + damping) + 1e-6 : sum;
    }),
  );
  const b = jacobian.map((row) => -row.reduce((total, v, m) => total + v * residual[m]!, 0));
  return solve(a, b);
}

function learnt(
  jacobian: readonly number[][],
  made: readonly number[],
  before: readonly number[],
  after: readonly number[],
): number[][] {
  const size = made.reduce((sum, t) => sum + t * t, 0);
  if (size < 1e-6) return jacobian.map((row) => [...row]);
  const missed = after.map((v, m) => v - before[m]! - jacobian.reduce((sum, row, i) => sum + row[m]! * made[i]!, 0));
  return jacobian.map((row, i) => row.map((v, m) => v + (missed[m]! * made[i]!) / size));
}

function rms(values: readonly number[]): number {
  return Math.sqrt(values.reduce((sum, v) => sum + v * v, 0) / values.length);
}

function clamp(turns: number, most: number): number {
  return Math.min(Math.max(turns, -most), most);
}
