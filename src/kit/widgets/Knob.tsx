/** A fluted knob with a compass needle over a real range input: eyes and hands have the drawing, keys and readers have the input. */

import { memo } from 'preact/compat';
import { useMemo, useRef, useState } from 'preact/hooks';
import type { KnobScale, Notch } from '../../present/knobScale.ts';
import { useWords } from '../hooks/useWords.ts';
import { px, size } from '../px.ts';
import { Ink } from '../theme/art.tsx';
import { EntryField } from './EntryField.tsx';
import { Flag } from './Flag.tsx';
import { knobBlock, knobStill, needle, needleDegrees, valueArc } from './knobArt.ts';
import { useTurning } from './turning.ts';
import { useHeld } from './useHeld.ts';
import './widgets.css';
import './knob.css';

export interface KnobProps {
  readonly label: string;
  readonly value: number;
  readonly scale: KnobScale;
  /** scale positions to one ordinary step */
  readonly coarse?: number;
  /** what the wheel and the arrows go by at a value, where that is more than an ordinary step */
  readonly notchAt?: (value: number) => Notch | null;
  /** what stands under the knob */
  readonly shown: (value: number) => string;
  /** the same for a screen reader, units in full */
  readonly spoken: (value: number) => string;
  /** what a person typed, as a value; null when it cannot be read. Left out: nothing can be typed */
  readonly parse?: (typed: string) => number | null;
  /** an example for the field */
  readonly example?: string;
  /** `held`: a drag, more is to come */
  readonly onChange: (value: number, held: boolean) => void;
  readonly resting: number;
  /** radius of the disc: 27 main, 23 normal, 16 to 18 small */
  readonly r?: number;
  /** the quantity has a sign: the arc grows from the top */
  readonly signed?: boolean;
  readonly readout?: boolean;
  readonly disabled?: boolean;
  /** for hands only: another control stands for it with keys and readers */
  readonly unlisted?: boolean;
}

function KnobBase(props: KnobProps) {
  const { knob: knobWords } = useWords();
  const {
    label,
    scale,
    coarse = 1,
    shown: show,
    spoken,
    parse,
    example = '',
    onChange,
    resting,
    disabled = false,
  } = props;
  const { r = 23, signed = false, readout = true, unlisted = false } = props;
  const held = useHeld(props.value);
  const [typing, setTyping] = useState(false);
  const input = useRef<HTMLInputElement>(null);
  /** the press began on the figure: once the knob has captured the pointer, every later event is the knob's own */
  const onReadout = useRef(false);
  const value = held.shown;
  const place = scale.indexOf(value);
  const turn = useTurning({
    last: scale.last,
    coarse,
    pixels: Math.max(180, scale.last / coarse / 4),
    place: () => place,
    notch: () => props.notchAt?.(value) ?? null,
    set(position, dragging) {
      const next = scale.valueAt(position);
      held.hold(next);
      onChange(next, dragging);
      if (!dragging) held.release();
    },
    released: held.release,
  });
  const put = (next: number): void => {
    held.hold(next);
    onChange(next, false);
    held.release();
  };
  const down = (event: PointerEvent): void => {
    if (disabled || typing) return;
    turn.down(event);
    onReadout.current = (event.target as Element).classList.contains('knob-read');
    if (!unlisted) input.current?.focus({ preventScroll: true });
    event.preventDefault();
  };
  const up = (event: PointerEvent): void => {
    const tap = !turn.moved() && onReadout.current;
    onReadout.current = false;
    turn.up(event);
    if (tap && parse !== undefined && !disabled) setTyping(true);
  };
  const key = (event: KeyboardEvent): void => {
    if (disabled || turn.key(event)) return;
    if (event.key === 'Enter' && parse !== undefined) setTyping(true);
    else if (event.key === 'Backspace') put(resting);
    else return;
    event.preventDefault();
  };

  const block = knobBlock(r);
  const height = readout ? block.height : block.height - 22;
  const part = place / scale.last;
  const still = useMemo(() => knobStill(r, r < 20 ? 7 : 11), [r]);
  const pointer = useMemo(() => needle(r), [r]);
  const box = `${-block.cx} ${-block.cy} ${block.width} ${block.height}`;
  return (
    <div
      class={`knob${disabled ? ' locked' : ''}`}
      style={size(block.width, height)}
      onPointerDown={down}
      onPointerMove={turn.move}
      onPointerUp={up}
      onPointerCancel={turn.up}
      onWheel={disabled ? undefined : turn.wheel}
    >
      <span class="l short knob-label" title={label} aria-hidden="true">
        {label}
      </span>
      <Ink svg={still} width={block.width} height={block.height} viewBox={box} />
      <svg class="ink" width={block.width} height={block.height} viewBox={box} aria-hidden="true">
        <path d={valueArc(r, part, signed)} fill="none" stroke="var(--petrol)" stroke-width="3.2" />
        <g transform={`rotate(${needleDegrees(part).toFixed(1)})`} dangerouslySetInnerHTML={{ __html: pointer }} />
      </svg>
      {readout ? (
        <span class="m knob-read" aria-hidden="true" style={{ top: px(2 * r + 41) }}>
          {show(value)}
        </span>
      ) : null}
      <input
        ref={input}
        class="twin"
        type="range"
        min={0}
        max={scale.last}
        step={1}
        value={Math.round(place)}
        disabled={disabled || unlisted}
        aria-label={label}
        aria-valuetext={spoken(value)}
        onKeyDown={key}
        onInput={(event) => put(scale.valueAt(event.currentTarget.valueAsNumber))}
      />
      {typing && parse !== undefined ? (
        <EntryField
          label={knobWords.typeFor(label)}
          start={show(value)}
          example={example}
          parse={parse}
          onDone={(next, left) => {
            setTyping(false);
            if (next !== null) put(next);
            if (!left) input.current?.focus({ preventScroll: true });
          }}
        />
      ) : disabled ? null : (
        <Flag words={knobWords.drag} />
      )}
    </div>
  );
}

export const Knob = memo(KnobBase);
