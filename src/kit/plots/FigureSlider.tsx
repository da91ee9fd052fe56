/** The rule for one quantity of a figure. */
import type { FigureControl } from '../../present/handbook/liveFigure.ts';
import { writtenQuantity } from '../../present/handbook/quantity.ts';
import { useFirstWords } from '../hooks/useWords.ts';
import { AmountSlider } from './AmountSlider.tsx';

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
    <AmountSlider
      {...{ name, quiet, tabbable, written }}
      place={Math.round((value - from) / step)}
      last={Math.round((to - from) / step)}
      aloud={also === undefined ? aloud : `${aloud}; ${also}`}
      onPlace={(place) => onValue(from + place * step)}
    />
  );
}
