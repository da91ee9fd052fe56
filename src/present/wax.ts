/**
 * Grease-pencil brackets on the glass: where the marked levels of the sheet would stand with the tube as it is set, measured from the base line to the
 * curve's own peak. They are help: a scenario may forbid them. Only where base line and scale are known: sheet's point, DC, detected, sweeping. Pure.
 */
import type { Controls } from '../bench/benchState.ts';
import { divPerVolt, xSense } from '../bench/deflection.ts';
import type { Facts } from '../bench/facts.ts';
import type { BenchSetup } from '../bench/setup.ts';
import { sheetSign } from '../receiver/detectorSign.ts';
import type { SheetFigures } from './sheetFigures.ts';

export interface WaxMark {
  readonly xDiv: number;
  readonly lowDiv: number;
  readonly highDiv: number;
}

export function waxOn(
  { receiver, scenario }: Pick<BenchSetup, 'receiver' | 'scenario'>,
  controls: Controls,
  figures: SheetFigures,
  facts: Pick<Facts, 'yAtSheetPoint' | 'sweeping' | 'detectedPeakVolts'>,
): readonly WaxMark[] {
  const { yCoupling, yInput, yPositionDiv, xGain, xPositionDiv, centreHz, spanHz } = controls;
  if (!facts.yAtSheetPoint || !facts.sweeping || yCoupling !== 'DC' || yInput !== 'detected') return [];
  const up =
    (sheetSign(receiver, figures.response) * Math.abs(facts.detectedPeakVolts)) / figures.onTube(highest(figures));
  const right = xSense({ scenario }, { controls });
  const y = (relative: number): number =>
    up * figures.onTube(relative) * divPerVolt({ scenario }, controls) + yPositionDiv;
  return figures.levels
    .filter((row) => row.pip !== null)
    .map((row) => {
      const a = y(row.low);
      const b = y(row.high);
      return {
        xDiv: ((10 * (row.hz - centreHz)) / spanHz) * right * xGain + xPositionDiv,
        lowDiv: Math.min(a, b),
        highDiv: Math.max(a, b),
      };
    });
}

/** The sheet's highest place; other than 1 where its levels are counted from a reference frequency. */
function highest({ response, curve }: SheetFigures): number {
  const { specification: spec } = response;
  if (spec.referenceHz === undefined) return 1;
  let top = 0;
  for (let i = 0; i < curve.hz.length; i++) {
    if (curve.hz[i]! >= spec.fromHz && curve.hz[i]! <= spec.toHz) top = Math.max(top, curve.relative[i]!);
  }
  return top;
}
