/** A whole number in a small field, taken as soon as it is one. */
import { useEffect, useState } from 'preact/hooks';

export interface NumberFieldProps {
  readonly label: string;
  readonly value: number;
  readonly least: number;
  readonly most: number;
  readonly onValue: (value: number) => void;
}

export function NumberField({ label, value, least, most, onValue }: NumberFieldProps) {
  const [text, setText] = useState(String(value));
  useEffect(() => {
    if (read(text, least, most) !== value) setText(String(value));
  }, [value]);
  const bad = read(text, least, most) === null;
  return (
    <label class="desk-field">
      <span class="l">{label}</span>
      <input
        type="text"
        inputMode="numeric"
        class="written"
        size={Math.min(10, String(most).length + 1)}
        value={text}
        aria-invalid={bad}
        onInput={({ currentTarget }) => {
          setText(currentTarget.value);
          const next = read(currentTarget.value, least, most);
          if (next !== null && next !== value) onValue(next);
        }}
        onBlur={() => setText(String(value))}
      />
    </label>
  );
}

function read(text: string, least: number, most: number): number | null {
  if (!/^\s*\d{1,10}\s*$/.test(text)) return null;
  const value = Number(text);
  return value >= least && value <= most ? value : null;
}
