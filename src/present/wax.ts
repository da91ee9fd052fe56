/**
 * Grease-pencil brackets on the glass: where the marked levels of the sheet would stand with the tube as it is set, measured from the base line to the
 * curve's own peak. They are help: a scenario may forbid them. Only where base line and scale are known: sheet's point, DC, detected, sweeping. Pure.
 */

import { clamp } from '../base/rounding.ts';
import type { Controls } from '../bench/benchState.ts';
import { divPerVolt, xSense } from '../bench/deflection.ts';
import type { Facts } from '../bench/facts.ts';
import type { BenchSetup } from '../bench/setup.ts';
import { sheetSign } from '../receiver/detectorSign.ts';
import { within } from './curves.ts';
import type { SheetFigures } from './sheetFigures.ts';
import type { SlugPart } from './slugPart.ts';

export interface WaxMark {
  readonly xDiv: number;
  readonly lowDiv: number;
  readonly highDiv: number;
}

/** What the chosen slug moves, on the glass: the curve a turn in and a turn out, and a bracket under the stretch. Path data in divisions times 100, y down. */
export interface PartOnGlass {
  readonly in: string;
  readonly out: string;
  readonly stretch: string;
}

type GlassFacts = Pick<Facts, 'yAtSheetPoint' | 'sweeping' | 'detectedPeakVolts'>;

/** Where frequencies and levels of the sheet stand on the glass; null where base line or scale are not known. */
interface Glass {
  /** divisions from the middle */
  readonly x: (hz: number) => number;
  /** divisions, of a level as the sheet counts it, at a frequency */
  readonly y: (relative: number, hz: number) => number;
}

function glassOf(
  { receiver, scenario }: Pick<BenchSetup, 'receiver' | 'scenario'>,
  controls: Controls,
  figures: SheetFigures,
  facts: GlassFacts,
): Glass | null {
  const { yCoupling, yInput, yPositionDiv, xGain, xPositionDiv, centreHz, spanHz } = controls;
  if (!facts.yAtSheetPoint || !facts.sweeping || yCoupling !== 'DC' || yInput !== 'detected') return null;
  const up = (sheetSign(receiver, figures.response) * Math.abs(facts.detectedPeakVolts)) / tallest(figures);
  const right = xSense({ scenario }, { controls });
  return {
    x: (hz) => ((10 * (hz - centreHz)) / spanHz) * right * xGain + xPositionDiv,
    y: (relative, hz) => up * figures.onTube(relative, hz) * divPerVolt({ scenario }, controls) + yPositionDiv,
  };
}

export function waxOn(
  setup: Pick<BenchSetup, 'receiver' | 'scenario'>,
  controls: Controls,
  figures: SheetFigures,
  facts: GlassFacts,
): readonly WaxMark[] {
  const glass = glassOf(setup, controls, figures, facts);
  if (glass === null) return [];
  return figures.levels
    .filter((row) => row.pip !== null)
    .map((row) => {
      const a = glass.y(row.low, row.hz);
      const b = glass.y(row.high, row.hz);
      return { xDiv: glass.x(row.hz), lowDiv: Math.min(a, b), highDiv: Math.max(a, b) };
    });
}

/** Hundredths of a division: half the graticule across and down, how far the bracket stands under the base line, and how high its ends are. */
const ACROSS = 500;
const DOWN = 400;
const UNDER = 30;
const TICK = 18;

export function partOnGlass(
  setup: Pick<BenchSetup, 'receiver' | 'scenario'>,
  controls: Controls,
  figures: SheetFigures,
  facts: GlassFacts,
  part: SlugPart,
): PartOnGlass | null {
  const glass = glassOf(setup, controls, figures, facts);
  if (glass === null) return null;
  const top = highest(figures);
  const left = (hz: number): number => Math.round(100 * glass.x(hz));
  const path = (curve: SlugPart['in']): string => {
    if (curve === null) return '';
    let d = '';
    let drawing = false;
    for (const [hz, level] of within(curve, curve.hz[0]!, curve.hz.at(-1)!)) {
      const [x, y] = [left(hz), Math.round(-100 * glass.y(level * top, hz))];
      const onIt = Math.abs(x) <= ACROSS && Math.abs(y) <= DOWN;
      if (onIt) d += `${drawing ? 'L' : 'M'}${x} ${y}`;
      drawing = onIt;
    }
    return d;
  };
  const ends = [left(part.fromHz), left(part.toHz)].sort((a, b) => a - b);
  const [from, to] = ends.map((x) => clamp(x, -ACROSS, ACROSS)) as [number, number];
  const y = Math.min(DOWN - 6, Math.round(-100 * glass.y(0, part.fromHz)) + UNDER);
  return {
    in: path(part.in),
    out: path(part.out),
    stretch: `M${from} ${y - TICK}V${y}H${to}V${y - TICK}`,
  };
}

/** The tallest on the tube, of the reference's height: where a small carrier's load is no short circuit, that is not everywhere the highest level. */
const tallest = (figures: SheetFigures): number => most(figures, figures.onTube);

/** The sheet's highest place; other than 1 where its levels are counted from a reference frequency. */
const highest = (figures: SheetFigures): number => most(figures, (relative) => relative);

/** The most that its levels make within the sheet's limits; where they are counted from the highest, that of the reference. */
function most({ response, curve }: SheetFigures, made: (relative: number, hz?: number) => number): number {
  const { specification: spec } = response;
  if (spec.referenceHz === undefined) return made(1);
  let top = 0;
  for (const [i, hz] of curve.hz.entries()) {
    if (hz >= spec.fromHz && hz <= spec.toHz) top = Math.max(top, made(curve.relative[i]!, hz));
  }
  return top;
}
