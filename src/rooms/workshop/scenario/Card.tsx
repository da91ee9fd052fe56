/** A card of something that is wrong: its name, its order, the way off the desk, and its fields. */
import type { ComponentChildren } from 'preact';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { Frame, Ink } from '../../../kit/theme/art.tsx';
import { C } from '../../../kit/theme/ink.ts';

const CROSS = `<path d="M3 3L13 13M13 3L3 13" stroke="${C.ink}" stroke-width="2"/>`;
const UP = `<path d="M3 11L8 5L13 11" fill="none" stroke="${C.ink}" stroke-width="2"/>`;
const DOWN = `<path d="M3 5L8 11L13 5" fill="none" stroke="${C.ink}" stroke-width="2"/>`;

export interface CardProps {
  readonly name: string;
  /** of the mark on the chassis; left out: it has none */
  readonly no?: number;
  readonly onOff: () => void;
  /** null: it is the first, or cards of its kind have no order */
  readonly onUp?: (() => void) | null;
  readonly onDown?: (() => void) | null;
  readonly children?: ComponentChildren;
}

export function Card({ name, no, onOff, onUp = null, onDown = null, children }: CardProps) {
  const { workshop: say } = useWords();
  const sign = (label: string, svg: string, act: () => void) => <CardSign label={label} svg={svg} onAct={act} />;
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
        {onUp === null ? null : sign(say.up(name), UP, onUp)}
        {onDown === null ? null : sign(say.down(name), DOWN, onDown)}
        {sign(say.takeOff(name), CROSS, onOff)}
      </div>
      {children === undefined ? null : <div class="card-fields">{children}</div>}
    </li>
  );
}

interface CardSignProps {
  readonly label: string;
  /** left out: a cross */
  readonly svg?: string;
  readonly onAct: () => void;
}

/** A small button that is a sign and nothing else. */
export function CardSign({ label, svg = CROSS, onAct }: CardSignProps) {
  return (
    <button type="button" class="card-sign" aria-label={label} onClick={onAct}>
      <Ink svg={svg} width={16} height={16} />
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
