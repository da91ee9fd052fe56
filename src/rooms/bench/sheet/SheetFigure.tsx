/** The figure of the sheet: the curve wanted, in ink and hay, with the tolerance bars of the marked levels. */

import { memo } from 'preact/compat';
import { useMemo } from 'preact/hooks';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { type FigureMark, type FigureTrap, Ink, targetFig } from '../../../kit/theme/art.tsx';
import { pipNumbers, type SheetFigures } from '../../../present/sheetFigures.ts';
import type { Receiver, SheetResponse } from '../../../receiver/receiver.ts';

interface SheetFigureProps {
  readonly receiver: Receiver;
  readonly figures: SheetFigures;
  readonly width: number;
  readonly height: number;
  /** only the outline and the hay, for a strip */
  readonly small?: boolean;
}

function SheetFigureBase({ receiver, figures, width, height, small = false }: SheetFigureProps) {
  const { rack: rackWords, sheet: sheetWords } = useWords();
  const svg = useMemo(() => {
    const { response } = figures;
    const [fromHz, toHz] = shownRange(response);
    const unit = rackWords.unit(response.setUp.centreHz);
    return targetFig({
      x: 0,
      y: 0,
      w: width,
      h: height,
      curve: figures.curve,
      fromHz,
      toHz,
      marks: small ? [] : marks(figures, width / (toHz - fromHz)),
      // A trap before the point that is swept has no part in its curve.
      traps: small || figures.stage !== null ? [] : traps(response),
      signed: response.specification.sCurve !== null,
      axis: !small,
      perUnit: unit === 'kHz' ? 1e3 : 1e6,
      unit,
    }).svg;
  }, [receiver, figures, width, height, small]);
  if (small) return <Ink svg={svg} width={width} height={height} />;
  return (
    <Ink
      svg={svg}
      width={width}
      height={height}
      label={sheetWords.figureSpoken(figures.response.setUp.observeAt, receiver.setName)}
    />
  );
}

const DISC = 17;

/** Numbers stand outside the curve: left of it on the way up, right of it on the way down, and never on one another. */
function marks(figures: SheetFigures, perHz: number): FigureMark[] {
  const marked = figures.levels.filter((row) => row.pip !== null);
  const middle = marked.length === 0 ? 0 : peakHz(figures);
  let lastX = Number.NEGATIVE_INFINITY;
  let raised = 0;
  return marked.map((row) => {
    const top = row.target > 0.8;
    const low = row.target < 0.2;
    const dx = top || low ? 0 : row.hz < middle ? -18 : 18;
    const x = row.hz * perHz + dx;
    raised = x - lastX < DISC ? raised + 1 : 0;
    lastX = x;
    return {
      hz: row.hz,
      low: row.low,
      high: row.high,
      level: row.target,
      no: row.pip!,
      dx,
      dy: (top ? 20 : low ? -20 : -2) + (top ? DISC : -DISC) * (raised % 3),
    };
  });
}

function traps(response: SheetResponse): FigureTrap[] {
  const pips = pipNumbers(response);
  return response.specification.traps
    .filter((t) => !response.specification.points.some((p) => p.hz === t.hz))
    .map((t) => {
      const no = pips.get(t.hz);
      return no === undefined ? { hz: t.hz } : { hz: t.hz, no };
    });
}

/** All that the sheet names, with a little on either side. */
function shownRange({ specification: spec }: SheetResponse): readonly [number, number] {
  const named = [...spec.points, ...spec.traps, ...spec.peaks].map((p) => p.hz);
  if (spec.sCurve !== null || named.length < 2) return [spec.fromHz, spec.toHz];
  const low = Math.min(...named);
  const high = Math.max(...named);
  const margin = Math.max(0.16 * (high - low), 1e3);
  return [Math.max(spec.fromHz, low - margin), Math.min(spec.toHz, high + margin)];
}

function peakHz({ curve }: SheetFigures): number {
  let best = 0;
  for (let i = 1; i < curve.hz.length; i++) if (curve.relative[i]! > curve.relative[best]!) best = i;
  return curve.hz[best]!;
}

export const SheetFigure = memo(SheetFigureBase);
