/** How the whole job reads: every curve as printed, or every demand inside. */
import { type AtBench, isSCurve, right, standFor } from './atWork.ts';
import { residualOf } from './fit.ts';
import { offBy, oscillatorOf } from './oscillator.ts';
import { worstDemand } from './toLimits.ts';

/** So far over the limit an eye may read what lies on it. */
const EYE = 0.1;

/** Every curve that the job asks for is near enough, in units of what is called right. */
export function asPrinted(bench: AtBench, times: number): boolean {
  return bench.sheet.responses.every((response) => {
    const curve = standFor(bench, response);
    const wanted = oscillatorOf(response);
    if (wanted !== null) return Math.abs(offBy(bench.hands, wanted.hz) ?? Infinity) < wanted.toleranceHz / 2;
    return residualOf(bench.hands, curve, isSCurve(response)) < times * right(response);
  });
}

/** No demand reads outside its limits. `eye`: in tolerances, so far over a limit may still be inside. */
export function allInside(bench: AtBench, eye = EYE): boolean {
  return bench.sheet.responses.every((response) => {
    const curve = standFor(bench, response);
    const wanted = oscillatorOf(response);
    if (wanted !== null) return Math.abs(offBy(bench.hands, wanted.hz) ?? Infinity) < wanted.toleranceHz;
    return worstDemand(bench.hands, response, curve) < 1 + eye;
  });
}
