/** A rule with a grip for one quantity of a figure: a real range input, so hands, keys and readers all have it. */
import type { FigureControl } from '../../present/handbook/liveFigure.ts';
import { writtenQuantity } from '../../present/handbook/quantity.ts';
import { useFirstWords } from '../hooks/useWords.ts';
import './figureSlider.css';

export interface FigureSliderProps {
  readonly name: string;
  /** the name is heard and not seen: something else says it to the eye */
  readonly quiet?: boolean;
  readonly control: Extract<FigureControl, { kind: 'slider' }>;
  readonly value: number;
  readonly onValue: (value: number) => void;
  /** false: Tab goes past it */
  readonly tabbable?: boolean;
  /** what else is heard when it moves */
  readonly also?: string;
}

export function FigureSlider({
  name,
  quiet = false,
  tabbable = true,
  control,
  value,
  onValue,
  also,
}: FigureSliderProps) {
  const { format } = useFirstWords();
  const { from, to, step, unit, places } = control;
  const written = writtenQuantity(format, { value, unit, places });
  const aloud = format.aloud(written);
  return (
    <label class="amount-slider">
      <span class={quiet ? 'unseen' : 'l'}>{name}</span>
      <input
        type="range"
        min={0}
        max={Math.round((to - from) / step)}
        step={1}
        tabIndex={tabbable ? 0 : -1}
        value={Math.round((value - from) / step)}
        aria-valuetext={also === undefined ? aloud : `${aloud}; ${also}`}
        onInput={(event) => onValue(from + event.currentTarget.valueAsNumber * step)}
      />
      <span class="m" aria-hidden="true">
        {written}
      </span>
    </label>
  );
}
