/** A blade between positions. Two positions that mean off and on are a switch; positions with names of their own are a radio group. */

import { memo } from 'preact/compat';
import { useId, useMemo } from 'preact/hooks';
import type { Words as AllWords } from '../../words/words.ts';
import { useWords } from '../hooks/useWords.ts';
import { size } from '../px.ts';
import { Short } from '../Short.tsx';
import { Ink } from '../theme/art.tsx';
import { r1 } from '../theme/ink.ts';
import { squeezed } from '../theme/squeeze.ts';
import { Flag } from './Flag.tsx';
import {
  blade,
  positionSector,
  SMALL_SWITCH,
  type SwitchShape,
  smallBlade,
  smallSwitchStill,
  switchShape,
  switchStill,
} from './switchArt.ts';
import './widgets.css';
import './switch.css';

export interface Position<V> {
  readonly value: V;
  /** on the plate */
  readonly word: string;
  /** for a screen reader, where the word alone says too little */
  readonly spoken?: string;
}

/** From this share of a plate's height on there are the words of its two positions. */
const WORDS_FROM = 0.68;
/** What the unseen controls overhang the plate by, in pixels: `.twins` in `switch.css`. */
const TWINS_OVER = 3;

interface SwitchPartProps<V> {
  readonly label: string;
  readonly positions: readonly Position<V>[];
  readonly value: V;
  readonly onChange: (value: V) => void;
  readonly disabled?: boolean;
}

export interface SwitchProps<V> extends SwitchPartProps<V> {
  readonly width?: number;
}

function SwitchBase<V extends string | boolean>({ width, ...part }: SwitchProps<V>) {
  const { switches } = useWords();
  const { label, positions, value, disabled = false } = part;
  const shape = useMemo(() => switchShape(positions.length, width), [positions.length, width]);
  const still = useMemo(() => switchStill(shape), [shape]);
  const blades = useMemo(() => blade(shape.reach), [shape]);
  return (
    <div class={`switch${disabled ? ' locked' : ''}`}>
      <span class="l short switch-label" title={label} aria-hidden="true">
        {label}
      </span>
      <div class="switch-plate" style={size(shape.width, shape.height)}>
        <Ink svg={still} width={shape.width} height={shape.height} />
        <Blade shape={shape} art={blades} at={indexOf(positions, value)} />
        <Words shape={shape} positions={positions} value={value} />
        <Twins {...part} hits={positions.length} {...(positions.length > 2 ? { shape } : {})} />
        {disabled ? null : <Flag words={flagOf(switches, positions, value)} />}
      </div>
    </div>
  );
}

/** In one line for a title row: name, small blade, word of the place it is in. */
function SmallSwitchBase<V extends string | boolean>(part: SwitchPartProps<V>) {
  const { label, positions, value, disabled = false } = part;
  const still = useMemo(() => smallSwitchStill(), []);
  const blades = useMemo(() => smallBlade(), []);
  const at = indexOf(positions, value);
  return (
    <div class={`switch small${disabled ? ' locked' : ''}`}>
      <span class="l short" title={label} aria-hidden="true">
        {label}
      </span>
      <span class={`short ${at === 0 ? 'ls chosen' : 'l2'}`} title={positions[0]!.word} aria-hidden="true">
        {positions[0]!.word}
      </span>
      <span class="switch-plate" style={size(SMALL_SWITCH.width, SMALL_SWITCH.height)}>
        <Ink svg={still} width={SMALL_SWITCH.width} height={SMALL_SWITCH.height} />
        <Blade shape={SMALL_SWITCH} art={blades} at={at} />
      </span>
      <span class={`short ${at === 1 ? 'ls chosen' : 'l2'}`} title={positions[1]!.word} aria-hidden="true">
        {positions[1]!.word}
      </span>
      <Twins {...part} hits={2} />
    </div>
  );
}

/** Three or more positions in a row, each with its word beside it. */
function PositionRowBase<V extends string>({
  label,
  positions,
  value,
  onChange,
  disabled = false,
}: SwitchPartProps<V>) {
  const name = useId();
  return (
    <div class={`position-row${disabled ? ' locked' : ''}`} role="radiogroup" aria-label={label}>
      <span class="l short" title={label} aria-hidden="true">
        {label}
      </span>
      {positions.map((position) => (
        <label key={position.value} class={position.value === value ? 'ls chosen' : 'l2'}>
          <input
            type="radio"
            name={name}
            checked={position.value === value}
            disabled={disabled}
            {...(position.spoken === undefined ? {} : { 'aria-label': position.spoken })}
            onChange={() => onChange(position.value)}
          />
          <span class="position" aria-hidden="true" />
          <Short>{position.word}</Short>
        </label>
      ))}
    </div>
  );
}

function Blade({ shape, art, at }: { readonly shape: SwitchShape; readonly art: string; readonly at: number }) {
  const { px, py, angles, width, height } = shape;
  return (
    <svg class="ink" width={width} height={height} aria-hidden="true">
      <g transform={`translate(${px} ${py})`}>
        <g
          class="blade"
          style={{ transform: `rotate(${angles[at] ?? 0}deg)` }}
          dangerouslySetInnerHTML={{ __html: art }}
        />
      </g>
    </svg>
  );
}

/** Two words stand in the lower corners; more stand at their positions. */
function Words<V>({
  shape,
  positions,
  value,
}: {
  readonly shape: SwitchShape;
  readonly positions: readonly Position<V>[];
  readonly value: V;
}) {
  const { width, px, py, reach, angles } = shape;
  return (
    <svg class="ink" width={width} height={shape.height} aria-hidden="true">
      {positions.map((position, i) => {
        const chosen = position.value === value ? 'ls chosen' : 'l2';
        const big = position.word.length === 1 ? ' big' : '';
        if (positions.length === 2) {
          return (
            <text
              key={position.word}
              class={`${chosen}${big}`}
              x={i === 0 ? 6 : width - 6}
              y={40.5}
              text-anchor={i === 0 ? 'start' : 'end'}
              {...squeezed(position.word, width / 2 - 8)}
            >
              {position.word}
            </text>
          );
        }
        const a = angles[i]!;
        const out = reach + (Math.abs(a) < 10 ? 7 : 9);
        const x = px + out * Math.sin((a * Math.PI) / 180);
        const y = py - out * Math.cos((a * Math.PI) / 180);
        return (
          <text
            key={position.word}
            class={chosen}
            x={r1(x)}
            y={r1(y + (Math.abs(a) < 10 ? 0 : 4))}
            text-anchor={a < -10 ? 'end' : a > 10 ? 'start' : 'middle'}
            {...squeezed(position.word, a < -10 ? x - 4 : a > 10 ? width - x - 4 : width / 2)}
          >
            {position.word}
          </text>
        );
      })}
    </svg>
  );
}

/** The native controls that lie unseen over the plate: one checkbox, or a radio for each position. `shape`: where positions lie round a pivot. */
function Twins<V extends string | boolean>(
  part: SwitchPartProps<V> & { readonly hits: number; readonly shape?: SwitchShape },
) {
  const { label, positions, value, onChange, disabled = false, hits, shape } = part;
  const name = useId();
  if (typeof value === 'boolean') {
    return (
      <input
        class="twin hit"
        type="checkbox"
        role="switch"
        aria-checked={value}
        aria-label={label}
        checked={value}
        disabled={disabled}
        onClick={(event) => {
          // A press on a position's own word sets that position, and leaves it where it is set already. Where it was is asked of the box, which the press has changed: a quick second press comes before the page is drawn anew.
          const was = !event.currentTarget.checked;
          if (wordUnder(event, positions) === was) event.preventDefault();
        }}
        onChange={(event) => onChange(event.currentTarget.checked as V)}
      />
    );
  }
  const turn = (): void => onChange(positions[(indexOf(positions, value) + 1) % hits]!.value);
  const flip = (event: KeyboardEvent): void => {
    if (event.key !== ' ' || disabled) return;
    event.preventDefault();
    turn();
  };
  return (
    <div role="radiogroup" aria-label={label} class="twins">
      {positions.map((position, at) => (
        <input
          key={position.word}
          class={shape === undefined ? 'twin hit' : 'twin hit sector'}
          {...(shape === undefined ? {} : { style: positionSector(shape, at, TWINS_OVER) })}
          type="radio"
          name={name}
          checked={position.value === value}
          disabled={disabled}
          aria-label={position.spoken ?? position.word}
          onChange={() => onChange(position.value)}
          onKeyDown={flip}
          onClick={(event) => {
            if (hits !== 2 || position.value !== value || event.detail === 0) return;
            // The whole of a small plate is one place for a finger; a pointer may also press the word of a position, which stays set.
            const finger = 'pointerType' in event && event.pointerType === 'touch';
            if (finger || wordUnder(event, positions) === null) turn();
          }}
        />
      ))}
    </div>
  );
}

/** Of two positions the one whose word a pointer pressed; null for a press elsewhere on the switch, and for a key. */
function wordUnder<V>(
  { detail, clientX, clientY, currentTarget }: MouseEvent,
  positions: readonly Position<V>[],
): V | null {
  const whole = currentTarget instanceof Element ? currentTarget.closest('.switch') : null;
  const plate = whole?.querySelector('.switch-plate')?.getBoundingClientRect();
  if (detail === 0 || whole === null || plate === undefined) return null;
  const at = (position: 0 | 1): V => positions[position]!.value;
  if (!whole.classList.contains('small'))
    return clientY < plate.top + WORDS_FROM * plate.height ? null : at(clientX < plate.left + plate.width / 2 ? 0 : 1);
  if (clientX > plate.right) return at(1);
  const word = whole.querySelectorAll(':scope > .short')[1]?.getBoundingClientRect();
  return word !== undefined && clientX >= word.left && clientX < plate.left ? at(0) : null;
}

function indexOf<V>(positions: readonly Position<V>[], value: V): number {
  return Math.max(
    0,
    positions.findIndex((position) => position.value === value),
  );
}

function flagOf<V>({ choose, flipTo }: AllWords['switches'], positions: readonly Position<V>[], value: V): string {
  if (positions.length > 2) return choose;
  return flipTo(positions[1 - indexOf(positions, value)]!.word);
}

export const Switch = memo(SwitchBase) as typeof SwitchBase;
export const SmallSwitch = memo(SmallSwitchBase) as typeof SmallSwitchBase;
export const PositionRow = memo(PositionRowBase) as typeof PositionRowBase;
