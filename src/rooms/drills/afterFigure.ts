/** The curves of an answered look in ink, over their frequencies. */
import type { BenchDisplay } from '../../bench/display.ts';
import type { CurveRole, Question } from '../../drills/drill.ts';
import { landmarksOf } from '../../drills/landmarks.ts';
import { displayOf } from '../../drills/picture.ts';
import { axisLabels, axisMarks } from '../../kit/theme/figures.ts';
import { C, callout, r1, T } from '../../kit/theme/ink.ts';

type Point = readonly [xDiv: number, yDiv: number];

const STRIDE = 6;

/** Means over a few points of the beam; both ways where the way back is drawn as well. */
function linesOf({ beam: { data, count } }: BenchDisplay, both: boolean): readonly (readonly Point[])[] {
  const half = count / 2;
  return (both ? [0, half] : [0]).map((start) => {
    const line: Point[] = [];
    for (let from = start; from + STRIDE <= start + half; from += STRIDE) {
      let x = 0;
      let y = 0;
      for (let i = from; i < from + STRIDE; i++) {
        x += data[i * 3]!;
        y += data[i * 3 + 1]!;
      }
      line.push([x / STRIDE, y / STRIDE]);
    }
    return line;
  });
}

export const INKS: Readonly<Record<CurveRole, string>> = {
  was: `stroke="${C.ink}" stroke-width="2.1"`,
  half: `stroke="${C.petrolInk}" stroke-width="1.8" stroke-dasharray="2 4"`,
  wanted: `stroke="${C.brassInk}" stroke-width="1.7" stroke-dasharray="8 5"`,
};

/** A frequency that the look was about: what stands there is said by its number among the choices, or by nothing. */
interface AfterMark {
  readonly hz: number;
  readonly no: number | null;
  readonly asked: boolean;
}

export interface AfterCurves {
  readonly marks: readonly AfterMark[];
  readonly centreHz: number;
  readonly spanHz: number;
  readonly curves: readonly { readonly look: CurveRole; readonly lines: readonly (readonly Point[])[] }[];
}

/** Read off the same benches as the tube. */
export function afterCurves(question: Question): AfterCurves {
  const { after, scene } = question;
  const { centreHz, spanHz } = scene.state.controls;
  return {
    centreHz,
    spanHz,
    marks: marksOf(question),
    curves: after.map(([look, one]) => ({ look, lines: linesOf(displayOf(one), !one.state.controls.blanking) })),
  };
}

function marksOf({ ask, subject, scene }: Question): AfterMark[] {
  const { hz } = subject;
  if (hz === undefined) return [];
  const places =
    ask.kind === 'choice' && ask.choices[0]?.kind === 'landmark' ? landmarksOf(scene.setup.receiver.id) : null;
  if (places === null || ask.kind !== 'choice') return [{ hz, no: null, asked: true }];
  return ask.choices.flatMap((choice, i) => {
    const at = choice.kind === 'landmark' ? places.get(choice.landmark) : undefined;
    return at === undefined ? [] : [{ hz: at, no: i + 1, asked: i === ask.right }];
  });
}

const SCALE_PX = 24;
const CALLOUT_PX = 9;

export function afterFigure(w: number, h: number, { centreHz, spanHz, marks: asked, curves }: AfterCurves): string {
  const levels = curves.flatMap(({ lines }) => lines.flatMap((line) => line.map(([, y]) => y)));
  const low = Math.min(...levels);
  const high = Math.max(...levels, low + 1);
  const foot = h - SCALE_PX;
  const X = (xDiv: number): number => r1(((xDiv + 5) / 10) * w);
  const Y = (yDiv: number): number => r1(foot - 2 - ((yDiv - low) / (high - low)) * (foot - 8));
  let s = `<path d="M0 ${foot}H${w}" stroke="${C.ink}" stroke-width="1.3"/>`;
  const [unit, name] = centreHz < 2e6 ? [1e3, 'kHz'] : [1e6, 'MHz'];
  const marks = axisMarks((centreHz - spanHz / 2) / unit, (centreHz + spanHz / 2) / unit, Math.max(2, w / 80));
  const labels = axisLabels(marks);
  marks.forEach((value, i) => {
    const x = X(((value * unit - centreHz) / spanHz) * 10);
    s += `<path d="M${x} ${foot}v5" stroke="${C.ink}" stroke-width="1.1"/>`;
    const half = 4 * labels[i]!.length;
    if (x > half && x < w - 34 - half) s += T(x, foot + 18, labels[i]!, 'ms', { anchor: 'middle' });
  });
  s += T(w, foot + 18, name, 'ls', { anchor: 'end' });
  // The curve that was stands over the others.
  for (const { look, lines } of [...curves].reverse())
    for (const line of lines)
      s += `<path d="${line.map(([x, y], i) => `${i ? 'L' : 'M'}${X(x)} ${Y(y)}`).join('')}" fill="none" stroke-linejoin="round" ${INKS[look]}/>`;
  for (const { hz, no, asked: right } of asked) {
    const x = X(((hz - centreHz) / spanHz) * 10);
    const ink = right ? C.rust : C.ink2;
    s += `<path d="M${x} ${foot}V${no === null ? 2 : 2 * CALLOUT_PX + 1}" stroke="${ink}" stroke-width="1.3" stroke-dasharray="2 3"/>`;
    if (no !== null)
      s += callout(
        x,
        CALLOUT_PX + 1,
        no,
        right ? { r: CALLOUT_PX, fill: C.rust, txt: '#fff' } : { r: CALLOUT_PX, fill: C.sheet },
      );
  }
  return s;
}
