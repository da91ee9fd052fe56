/** What turning a slug has done to the curve, in one sentence: for those who do not see it. As the graticule shows it, to a tenth of a division. */
import type { Words } from '../words/words.ts';
import type { CurveReading } from './curve.ts';

type Seen = Pick<CurveReading, 'heightDiv' | 'topXDiv'>;

export function curveChange({ live, format }: Pick<Words, 'live' | 'format'>, was: Seen, now: Seen): string {
  if (now.heightDiv === 0) return live.curveGone;
  const tenths = (div: number): string => format.written(div, 1);
  const moved = Math.round(10 * (now.topXDiv - was.topXDiv)) / 10;
  return live.curveChanged(
    tenths(now.heightDiv),
    tenths(was.heightDiv),
    moved === 0 ? null : { by: tenths(Math.abs(moved)), toRight: moved > 0 },
  );
}
