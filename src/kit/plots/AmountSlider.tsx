/** A rule with a grip for one amount, in whole steps: a real range input, so hands, keys and readers all have it. */
import './amountSlider.css';

export interface AmountSliderProps {
  readonly name: string;
  /** the name is heard and not seen: something else says it to the eye */
  readonly quiet?: boolean;
  /** what is heard in the place of the name */
  readonly label?: string;
  /** steps from 0 to `last` */
  readonly place: number;
  readonly last: number;
  /** the amount as it is heard */
  readonly aloud: string;
  /** as it is seen behind the rule; left out: something else shows it */
  readonly written?: string;
  /** false: Tab goes past it */
  readonly tabbable?: boolean;
  readonly onPlace: (place: number) => void;
  readonly onLetGo?: () => void;
}

export function AmountSlider(props: AmountSliderProps) {
  const { name, quiet = false, label, place, last, aloud, written, tabbable = true, onPlace, onLetGo } = props;
  return (
    <label class="amount-slider">
      <span class={quiet ? 'unseen' : 'l'}>{name}</span>
      <input
        type="range"
        {...(label === undefined ? {} : { 'aria-label': label })}
        min={0}
        max={last}
        step={1}
        tabIndex={tabbable ? 0 : -1}
        value={place}
        aria-valuetext={aloud}
        onInput={({ currentTarget }) => onPlace(currentTarget.valueAsNumber)}
        onChange={onLetGo}
      />
      {written === undefined ? null : (
        <span class="m" aria-hidden="true">
          {written}
        </span>
      )}
    </label>
  );
}
