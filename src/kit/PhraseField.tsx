/** The phrase of a sealed sheet: seen as it is written, for it is said aloud in the room, and neither kept nor corrected by the browser. */
const MOST_LETTERS = 200;

interface PhraseFieldProps {
  readonly label: string;
  readonly value: string;
  readonly onWrite: (phrase: string) => void;
  readonly class?: string;
  /** id of the line that says more */
  readonly note?: string;
}

export function PhraseField({ label, value, onWrite, class: name, note }: PhraseFieldProps) {
  return (
    <label class={name}>
      <span class="l">{label}</span>
      <input
        class="written"
        type="text"
        maxLength={MOST_LETTERS}
        autocomplete="off"
        spellcheck={false}
        value={value}
        aria-describedby={note}
        onInput={({ currentTarget }) => onWrite(currentTarget.value)}
      />
    </label>
  );
}
