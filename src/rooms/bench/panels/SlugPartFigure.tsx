/** What the chosen slug moves: the curve as it is, a turn in and a turn out, and the stretch that it moves tinted. */
import { useMemo } from 'preact/hooks';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { curvesFig, type DrawnCurve } from '../../../kit/plots/curvesFig.ts';
import { Told } from '../../../kit/Told.tsx';
import { Ink } from '../../../kit/theme/art.tsx';
import { C, hatch, T } from '../../../kit/theme/ink.ts';
import { levelAt } from '../../../present/curves.ts';
import type { BenchPort } from '../../../present/ports.ts';
import type { SlugPart } from '../../../present/slugPart.ts';
import { slugLetters } from '../../../receiver/slugLetters.ts';
import type { PartShown } from '../useSlugPart.ts';
import './slugPart.css';

interface SlugPartFigureProps {
  readonly port: BenchPort;
  /** null: no slug is chosen, or its part is not worked out yet */
  readonly shown: PartShown | null;
  readonly width: number;
  readonly height: number;
}

export function SlugPartFigure({ port, shown, width, height }: SlugPartFigureProps) {
  const words = useWords();
  const { slugPart: say, scene, rack } = words;
  const { receiver } = port;
  const part = shown?.part ?? null;
  const unit = rack.unit(part?.mostHz ?? 0);
  const perUnit = unit === 'kHz' ? 1e3 : 1e6;
  const svg = useMemo(
    () => (part === null ? '' : figure(part, width, height, unit, perUnit)),
    [part, width, height, unit],
  );
  const adjuster = receiver.adjusters.find(({ id }) => id === shown?.slug);
  if (shown === null || adjuster === undefined) return <p class="slug-part-none s">{say.choose}</p>;
  const letter = slugLetters(receiver).get(adjuster.id)!;
  if (part === null)
    return (
      <p class="slug-part-none s">
        {say.nothing(letter)} <Told of={receiver}>{adjuster.does}</Told>
      </p>
    );
  const level = (curve: SlugPart['in']): number | null => (curve === null ? null : levelAt(curve, part.mostHz));
  return (
    <div class="slug-part">
      <Ink
        svg={svg}
        width={width}
        height={height}
        label={say.spoken(letter, part.fromHz, part.toHz, part.mostHz, {
          now: level(part.now)!,
          in: level(part.in),
          out: level(part.out),
        })}
      />
      <div class="slug-part-said">
        <ul aria-hidden="true">
          {part.in === null ? null : <li class="in">{say.turnIn}</li>}
          <li class="now">{say.now}</li>
          {part.out === null ? null : <li class="out">{say.turnOut}</li>}
        </ul>
        <p>{`${scene.coreIn(adjuster.twoPeaks !== undefined)}.`}</p>
      </div>
    </div>
  );
}

/** px of the figures under the curve, and of one letter of them */
const AXIS = 17;
const LETTER = 7.6;

function figure(part: SlugPart, w: number, h: number, unit: string, perUnit: number): string {
  const { now, fromHz, toHz } = part;
  const drawn: readonly (readonly [SlugPart['in'], DrawnCurve['line']])[] = [
    [part.in, 'dotted'],
    [part.out, 'dashed'],
    [now, 'now'],
  ];
  const { svg, X, bottom } = curvesFig(
    w,
    h,
    AXIS,
    drawn.flatMap(([curve, line]) => (curve === null ? [] : [{ curve, line }])),
    (fig) => {
      const [x0, x1] = [fig.X(fromHz), fig.X(toHz)];
      const box = `M${x0} 2H${x1}V${fig.bottom}H${x0}Z`;
      return (
        `<path d="${box}" fill="${C.rust}" opacity=".12"/>` +
        hatch(box, [x0, 2, x1, fig.bottom], { a: 135, gap: 6, sw: 0.7, op: 0.5, col: C.rust })
      );
    },
  );
  const [x0, x1] = [X(fromHz), X(toHz)];
  const mark = (hz: number): string => (hz / perUnit).toFixed(decimals((now.hz.at(-1)! - now.hz[0]!) / perUnit));
  const [low, high] = [mark(fromHz), `${mark(toHz)} ${unit}`];
  const lowAt = Math.max(0, x0 - (low.length * LETTER) / 2);
  const highAt = Math.min(x1 - (mark(toHz).length * LETTER) / 2, w - high.length * LETTER);
  const both = `${low} \u2013 ${high}`;
  // Where the stretch is narrow, its ends share one figure.
  const labels =
    lowAt + (low.length + 1) * LETTER <= highAt
      ? T(lowAt, h - 4, low, 'm') + T(highAt, h - 4, high, 'm')
      : T(Math.max(0, Math.min((x0 + x1 - both.length * LETTER) / 2, w - both.length * LETTER)), h - 4, both, 'm');
  return `${svg}<path d="M${x0} ${bottom}v4M${x1} ${bottom}v4" stroke="${C.ink}" stroke-width="1.2"/>${labels}`;
}

/** Enough that a tenth of a division can be told. */
const decimals = (span: number): number => Math.max(0, Math.ceil(-Math.log10(span / 100) - 1e-9));
