/** The key that plays the curve: what the tube shows and then what the sheet asks for. On a tube without a curve only the sheet's is left, and that is said. */
import { useEffect, useState } from 'preact/hooks';
import { readCurve } from '../../describe/curve.ts';
import { type CurveTones, tonesOnTube, tonesWanted } from '../../describe/curveTones.ts';
import { useKeyDown } from '../../kit/hooks/useKeyDown.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { px } from '../../kit/px.ts';
import type { BenchPort } from '../../present/ports.ts';
import type { SheetFigures } from '../../present/sheetFigures.ts';
import type { BenchLayout } from './layoutTypes.ts';
import { isFreeKey, isPageKey } from './pageKeys.ts';

interface HeardProps {
  readonly port: BenchPort;
  readonly figures: SheetFigures;
  readonly layout: BenchLayout;
  /** plays curves one after the other, by pitch */
  readonly play: (curves: readonly CurveTones[]) => void;
}

const SHOWN_MS = 6000;

export function Heard({ port, figures, layout, play }: HeardProps) {
  const { live } = useWords();
  const [bare, setBare] = useState(0);
  useKeyDown((event) => {
    if (!isFreeKey(event) || !isPageKey(event, 'tones')) return;
    event.preventDefault();
    const shown = onTube(port);
    play(shown === null ? [wanted(figures)] : [shown, wanted(figures)]);
    setBare((times) => (shown === null ? times + 1 : 0));
  });
  useEffect(() => {
    if (bare === 0) return;
    const timer = setTimeout(() => setBare(0), SHOWN_MS);
    return () => clearTimeout(timer);
  }, [bare]);
  const { x, y, width } = layout.tube;
  return (
    <>
      <div class="unseen" role="status" aria-live="polite">
        {bare === 0 ? '' : <span key={bare}>{live.sheetAlone}</span>}
      </div>
      {bare === 0 ? null : (
        <div class="toast heard" style={{ left: px(x + width / 2), top: px(y + 28) }} aria-hidden="true">
          {live.sheetAlone}
        </div>
      )}
    </>
  );
}

function onTube(port: BenchPort): CurveTones | null {
  const display = port.display();
  return tonesOnTube(display, readCurve(display).heightDiv);
}

function wanted({ curve, response }: SheetFigures): CurveTones {
  const { centreHz, spanHz, markersHz } = response.setUp;
  return tonesWanted({ ...curve, fromHz: centreHz - spanHz / 2, toHz: centreHz + spanHz / 2, pipsHz: markersHz });
}
