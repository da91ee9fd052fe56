/** A card's curve. It was drawn when the page was built and the browser stretches it to its place: nothing is solved, measured or drawn anew. */
import { Fit, hay } from '../../kit/theme/art.tsx';
import { CARD_BOX, type CardCurve, scaledPath } from '../../present/cardCurve.ts';

export interface CurveInkProps {
  readonly curve: CardCurve;
  /** the curve of the sheet beside it, dashed */
  readonly wanted?: boolean;
  /** best score, which sets how dense the hay is; 0: a bare outline */
  readonly score?: number;
}

export function CurveInk({ curve, wanted = false, score = 0 }: CurveInkProps) {
  const { found, zero } = curve;
  return (
    <>
      {score > 0 ? <Fit class="curve-hay" of={`${score} ${found}`} draw={(w, h) => stack(curve, score, w, h)} /> : null}
      <svg
        class="curve-ink"
        viewBox={`0 0 ${CARD_BOX} ${CARD_BOX}`}
        preserveAspectRatio="none"
        aria-hidden="true"
        focusable="false"
      >
        <path class="curve-zero" d={`M0 ${zero}H${CARD_BOX}`} />
        {wanted ? <path class="curve-wanted" d={curve.wanted} /> : null}
        <path class="curve-found" d={found} />
      </svg>
    </>
  );
}

/** Hay between the curve and the line of no signal. */
function stack({ found, zero }: CardCurve, score: number, width: number, height: number): string {
  const floor = Math.round((zero / CARD_BOX) * height * 10) / 10;
  const gap = score > 90 ? 3.4 : score > 75 ? 4.6 : 6.5;
  const outline = `${scaledPath(found, width, height)}V${floor}H0Z`;
  return hay(outline, [0, 0, width, height], { gap, op: 0.8, crossed: score > 75 });
}
