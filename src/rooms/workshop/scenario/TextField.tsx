/** A text of the draft, in one line or in several, no longer than its file may have it and without line breaks. */
import { useId } from 'preact/hooks';
import { useWords } from '../../../kit/hooks/useWords.ts';

export interface TextFieldProps {
  readonly label: string;
  readonly value: string;
  readonly most: number;
  /** lines to write in; 1: a field */
  readonly rows: number;
  /** its key in the file, for whatever leads there; left out: nothing does */
  readonly place?: string;
  readonly onValue: (value: string) => void;
  readonly onLetGo: () => void;
}

/** Of the sheet beside it: a browser that lets a field grow with its text asks no more for its rows. */
const LINE_PX = 20;
const EDGES_PX = 14;

export function TextField({ label, value, most, rows, place, onValue, onLetGo }: TextFieldProps) {
  const { workshop } = useWords();
  const id = useId();
  const shared = {
    'aria-labelledby': `${id}-name`,
    'aria-describedby': `${id}-left`,
    'data-place': place,
    class: 'written',
    maxLength: most,
    value,
    onBlur: onLetGo,
    onInput: ({ currentTarget }: { currentTarget: { value: string } }) =>
      onValue(currentTarget.value.replace(/[\r\n\t]+/g, ' ')),
  };
  return (
    <div class="text-field">
      <span class="l" id={`${id}-name`}>
        {label}
      </span>
      <span class="l2" id={`${id}-left`}>
        {workshop.form.left(most - value.length)}
      </span>
      {rows === 1 ? (
        <input type="text" {...shared} />
      ) : (
        <textarea rows={rows} style={{ minHeight: `${rows * LINE_PX + EDGES_PX}px` }} {...shared} />
      )}
    </div>
  );
}
