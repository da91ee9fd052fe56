/** A card of something that is wrong: its name, the way off the desk, and its fields. */
import type { ComponentChildren } from 'preact';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { Frame, Ink } from '../../../kit/theme/art.tsx';
import { C } from '../../../kit/theme/ink.ts';

const CROSS = `<path d="M3 3L13 13M13 3L3 13" stroke="${C.ink}" stroke-width="2"/>`;

export interface CardProps {
  readonly name: string;
  /** of the mark on the chassis; left out: it has none */
  readonly no?: number;
  readonly onOff: () => void;
  readonly children?: ComponentChildren;
}

export function Card({ name, no, onOff, children }: CardProps) {
  const { workshop: say } = useWords();
  return (
    <li class="wrong-card paper">
      <Frame kind="card" />
      <div class="wrong-head">
        {no === undefined ? null : (
          <span class="fault-no" aria-hidden="true">
            {no}
          </span>
        )}
        <b>{name}</b>
        <CardSign label={say.takeOff(name)} onAct={onOff} />
      </div>
      {children === undefined ? null : <div class="card-fields">{children}</div>}
    </li>
  );
}

interface CardSignProps {
  readonly label: string;
  readonly onAct: () => void;
}

/** A small button that is a cross and nothing else. */
export function CardSign({ label, onAct }: CardSignProps) {
  return (
    <button type="button" class="card-sign" aria-label={label} onClick={onAct}>
      <Ink svg={CROSS} width={16} height={16} />
    </button>
  );
}

export interface PlaceChoiceProps {
  readonly name: string;
  readonly of: string;
  readonly value: string;
  readonly choices: readonly { readonly value: string; readonly name: string }[];
  readonly onValue: (value: string) => void;
}

export function PlaceChoice({ name, of, value, choices, onValue }: PlaceChoiceProps) {
  const known = choices.some((one) => one.value === value) ? choices : [{ value, name: value }, ...choices];
  return (
    <label class="desk-field">
      <span class="l">{name}</span>
      <select
        aria-label={`${of}, ${name}`}
        value={value}
        onChange={({ currentTarget }) => onValue(currentTarget.value)}
      >
        {known.map((one) => (
          <option key={one.value} value={one.value}>
            {one.name}
          </option>
        ))}
      </select>
    </label>
  );
}
