/** The small figure on a word's slip: one thing to turn, and the curve that goes with it. */
import type { FigureKind } from '../../words/handbook.ts';
import { FigureSlider } from '../plots/FigureSlider.tsx';
import { inkPlot } from '../plots/plotInk.ts';
import { useFigure } from '../plots/useFigure.ts';
import { Ink } from '../theme/art.tsx';

const WIDTH = 232;
const HEIGHT = 84;

export interface TermFigureProps {
  readonly term: string;
  readonly kind: FigureKind;
  readonly control: string;
  readonly tabbable: boolean;
}

export function TermFigure({ term, kind, control: id, tabbable }: TermFigureProps) {
  const { figure, settings, drawn, set } = useFigure(kind);
  const control = figure.controls[id]!;
  return (
    <span class="term-figure">
      <Ink svg={inkPlot(WIDTH, HEIGHT, drawn.plot)} width={WIDTH} height={HEIGHT} />
      {control.kind === 'slider' ? (
        <FigureSlider
          name={term}
          quiet
          tabbable={tabbable}
          control={control}
          value={settings[id]!}
          onValue={(value) => set(id, value)}
        />
      ) : null}
    </span>
  );
}
