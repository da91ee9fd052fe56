/** A live figure: the tube with its picture, what can be turned, what is read. */

import { useMemo, useRef } from 'preact/hooks';
import { useSize } from '../../kit/hooks/useSize.ts';
import { useFirstWords } from '../../kit/hooks/useWords.ts';
import { Disc } from '../../kit/PlateTitle.tsx';
import { FigureSlider } from '../../kit/plots/FigureSlider.tsx';
import { useFigure } from '../../kit/plots/useFigure.ts';
import { px } from '../../kit/px.ts';
import { Frame, Ink } from '../../kit/theme/art.tsx';
import { overBeam, underBeam } from '../../kit/tube/hood.ts';
import { plainProse } from '../../present/handbook/numbers.ts';
import { writtenQuantity } from '../../present/handbook/quantity.ts';
import type { FigureWords, HandbookWords } from '../../words/handbook.ts';
import { CORE_BOX, coreArt } from './coreArt.ts';
import { Prose } from './Prose.tsx';
import { beamPlot, frequencyScale, SCALE_PX, tubeFor } from './tubePlot.ts';
import '../../kit/tabs/tabs.css';

export interface FigureCardProps {
  readonly no: number;
  readonly words: FigureWords;
  readonly book: HandbookWords;
}

export function FigureCard({ no, words, book }: FigureCardProps) {
  const { format } = useFirstWords();
  const { figure, settings, drawn, set } = useFigure(words.kind);
  const place = useRef<HTMLDivElement>(null);
  const { width } = useSize(place);
  const tube = useMemo(() => (width > 0 ? tubeFor(width) : null), [width]);
  const still = useMemo(() => (tube === null ? null : [underBeam(tube), overBeam(tube)]), [tube]);
  const names = words.controls as Readonly<Record<string, string | readonly string[]>>;
  const labels = words.readings as Readonly<Record<string, string>>;
  const readings = Object.entries(labels).map(([id, label]) => {
    const { value, ...unit } = drawn.readings[id]!;
    return {
      label: plainProse(format, label),
      text: value === null ? book.nothing : writtenQuantity(format, { value, ...unit }),
    };
  });
  const heard = readings.map(({ label, text }) => `${label}: ${format.aloud(text)}`).join('; ');
  const { plot } = drawn;
  return (
    <figure class="figure-card">
      <figcaption>
        <h2 class="h">
          <Disc>{no}</Disc>
          {words.title}
        </h2>
      </figcaption>
      <div class="tube-place" ref={place} role="img" aria-label={`${book.drawing} ${heard}`}>
        {tube === null || still === null ? null : (
          <div class="tube-plot" style={{ width: px(tube.width), height: px(tube.height + SCALE_PX) }}>
            <Ink svg={still[0]!} width={tube.width} height={tube.height} />
            <Ink svg={beamPlot(tube, plot)} width={tube.width} height={tube.height} />
            <Ink svg={still[1]!} width={tube.width} height={tube.height} />
            <Ink
              svg={frequencyScale(tube, plot)}
              width={tube.width}
              height={SCALE_PX}
              class="tube-scale"
              style={{ top: px(tube.height) }}
            />
          </div>
        )}
      </div>
      <div class="figure-panel">
        <Frame kind="panel" />
        {plot.coreTurns === undefined ? null : (
          <Ink svg={coreArt(plot.coreTurns)} width={CORE_BOX.width} height={CORE_BOX.height} class="core" />
        )}
        {Object.entries(figure.controls).map(([id, control]) => {
          const name = names[id]!;
          if (control.kind === 'slider') {
            return (
              <FigureSlider
                key={id}
                name={typeof name === 'string' ? name : name[0]!}
                control={control}
                value={settings[id]!}
                onValue={(value) => set(id, value)}
                also={heard}
              />
            );
          }
          const [title, ...choices] = typeof name === 'string' ? [name] : name;
          return (
            <fieldset key={id} class="figure-switch" aria-label={title}>
              <span class="l">{title}</span>
              <div class="tabs">
                {choices.map((choice, i) => (
                  <button key={choice} type="button" aria-pressed={settings[id] === i} onClick={() => set(id, i)}>
                    {choice}
                  </button>
                ))}
              </div>
            </fieldset>
          );
        })}
        <dl class="figure-readings" aria-label={book.readings}>
          {readings.map(({ label, text }) => (
            <div key={label}>
              <dt>{label}</dt>
              <dd class="mb">{text}</dd>
            </div>
          ))}
        </dl>
      </div>
      <p class="figure-caption">
        <Prose>{words.caption}</Prose>
      </p>
    </figure>
  );
}
