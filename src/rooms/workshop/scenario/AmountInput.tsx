/** An amount of a card: a field that takes it with its unit, and a rule from least to most. */
import { useEffect, useId, useState } from 'preact/hooks';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { AmountSlider } from '../../../kit/plots/AmountSlider.tsx';
import { amountScale, typedAmount } from '../../../workshop/amountScale.ts';
import type { CardUnit } from '../../../workshop/faultCards.ts';

export interface AmountInputProps {
  readonly name: string;
  /** heard with the name: whose amount it is */
  readonly of: string;
  readonly value: number;
  readonly unit: CardUnit;
  readonly least: number;
  readonly most: number;
  readonly onValue: (value: number) => void;
  readonly onLetGo: () => void;
}

export function AmountInput({ name, of, value, unit, least, most, onValue, onLetGo }: AmountInputProps) {
  const { workshop: say, format } = useWords();
  const [typed, setTyped] = useState<string | null>(null);
  const hint = useId();
  useEffect(() => setTyped(null), [value]);
  const scale = amountScale({ least, most });
  const written = say.amount(value, unit);
  const take = (text: string): void => {
    const amount = typedAmount(text);
    if (amount !== null && amount >= least && amount <= most) {
      onValue(amount);
      onLetGo();
      setTyped(null);
    }
  };
  const amount = typed === null ? value : typedAmount(typed);
  const bad = amount === null || amount < least || amount > most;
  return (
    <div class="amount-input">
      <AmountSlider
        name={name}
        label={`${of}, ${name}`}
        place={scale.placeOf(value)}
        last={scale.last}
        aloud={format.aloud(written)}
        onPlace={(place) => onValue(scale.valueAt(place))}
        onLetGo={onLetGo}
      />
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
        <p class="amount-bad" id={hint} role="alert">
          {say.badAmount(say.amount(least, unit), say.amount(most, unit))}
        </p>
      ) : null}
    </div>
  );
}
