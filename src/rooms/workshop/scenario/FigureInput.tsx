/** A figure of a card: a field that takes it with its unit, and a rule from least to most. */
import { useEffect, useId, useState } from 'preact/hooks';
import { useWords } from '../../../kit/hooks/useWords.ts';
import type { CardUnit } from '../../../workshop/faultCards.ts';
import { figureScale, typedFigure } from '../../../workshop/figureScale.ts';

export interface FigureInputProps {
  readonly name: string;
  /** heard with the name: whose figure it is */
  readonly of: string;
  readonly value: number;
  readonly unit: CardUnit;
  readonly least: number;
  readonly most: number;
  readonly onValue: (value: number) => void;
  readonly onLetGo: () => void;
}

export function FigureInput({ name, of, value, unit, least, most, onValue, onLetGo }: FigureInputProps) {
  const { workshop: say, format } = useWords();
  const [typed, setTyped] = useState<string | null>(null);
  const hint = useId();
  useEffect(() => setTyped(null), [value]);
  const scale = figureScale({ least, most });
  const written = say.figure(value, unit);
  const take = (text: string): void => {
    const figure = typedFigure(text);
    if (figure !== null && figure >= least && figure <= most) {
      onValue(figure);
      onLetGo();
      setTyped(null);
    }
  };
  const figure = typed === null ? value : typedFigure(typed);
  const bad = figure === null || figure < least || figure > most;
  return (
    <div class="figure-input">
      <label class="figure-slider">
        <span class="l">{name}</span>
        <input
          type="range"
          aria-label={`${of}, ${name}`}
          min={0}
          max={scale.last}
          step={1}
          value={scale.placeOf(value)}
          aria-valuetext={format.aloud(written)}
          onInput={({ currentTarget }) => onValue(scale.valueAt(currentTarget.valueAsNumber))}
          onChange={onLetGo}
        />
      </label>
      <input
        type="text"
        class="written"
        size={8}
        aria-label={`${of}, ${say.value(name)}`}
        aria-invalid={bad}
        aria-describedby={bad ? hint : undefined}
        value={typed ?? written}
        onInput={({ currentTarget }) => setTyped(currentTarget.value)}
        onKeyDown={(event) => {
          if (event.key === 'Enter') take(event.currentTarget.value);
          if (event.key === 'Escape') setTyped(null);
        }}
        onBlur={({ currentTarget }) => {
          if (typed !== null) take(currentTarget.value);
        }}
      />
      {bad ? (
        <p class="figure-bad" id={hint} role="alert">
          {say.badFigure(say.figure(least, unit), say.figure(most, unit))}
        </p>
      ) : null}
    </div>
  );
}
