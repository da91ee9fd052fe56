/** A line to write on whose text is taken on return or when it is left; what cannot be used stays, marked, with the reason. */
import { useEffect, useState } from 'preact/hooks';

export interface FieldProps {
  readonly label: string;
  readonly value: string;
  /** null: it was taken; else why not */
  readonly take: (typed: string) => string | null;
  readonly class?: string;
  /** figures and names of the trade run from left to right in every language */
  readonly plain?: boolean;
}

export function Field({ label, value, take, class: cls, plain = false }: FieldProps) {
  const [typed, setTyped] = useState(value);
  const [wrong, setWrong] = useState<string | null>(null);
  useEffect(() => {
    setTyped(value);
    setWrong(null);
  }, [value]);
  const done = (): void => {
    if (typed.trim() === value) {
      setTyped(value);
      setWrong(null);
    } else setWrong(take(typed.trim()));
  };
  return (
    <span class="made-field">
      <input
        type="text"
        class={cls === undefined ? 'written' : `written ${cls}`}
        aria-label={label}
        aria-invalid={wrong !== null}
        {...(plain ? { dir: 'ltr' } : {})}
        value={typed}
        onInput={(event) => setTyped(event.currentTarget.value)}
        onBlur={done}
        onKeyDown={(event) => {
          if (event.key === 'Enter') done();
          if (event.key === 'Escape') {
            setTyped(value);
            setWrong(null);
          }
        }}
      />
      {wrong === null ? null : (
        <span class="made-why" role="alert">
          {wrong}
        </span>
      )}
    </span>
  );
}

/** A number as typed: with a point or a comma, and a minus of either kind. */
export function numberOf(typed: string): number | null {
  const plain = typed.replace('\u2212', '-').replace(',', '.').trim();
  return /^-?\d+(?:\.\d+)?$/.test(plain) ? Number(plain) : null;
}

/** Kilohertz as they stand in a field, and hertz from them. */
export const kilohertz = (hz: number): string => String(Number((hz / 1e3).toFixed(3)));
export function hertzOf(typed: string): number | null {
  const value = numberOf(typed);
  return value === null ? null : Math.round(value * 1e3);
}

/** What was typed is taken. */
export function done(change: () => void): null {
  change();
  return null;
}
