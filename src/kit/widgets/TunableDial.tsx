/** The tunable marker's dial: the scale slides under the hairline. It is read by eye; a reader hears it to the nearest ruled mark. */

import { memo } from 'preact/compat';
import { useId, useMemo, useRef } from 'preact/hooks';
import { clamp } from '../../base/rounding.ts';
import type { Notch } from '../../present/knobScale.ts';
import { useWords } from '../hooks/useWords.ts';
import { size } from '../px.ts';
import { Ink } from '../theme/art.tsx';
import { dialFrame, dialScale, dialShape, dialStill, hairline, majorPixels } from './dialArt.ts';
import { Flag } from './Flag.tsx';
import { useTurning } from './turning.ts';
import { useHeld } from './useHeld.ts';
import './widgets.css';
import './dial.css';

export interface TunableDialProps {
  readonly hz: number;
  readonly minHz: number;
  readonly maxHz: number;
  /** hertz from one ruled mark to the next; twenty of them to a figure */
  readonly markHz: number;
  /** what the wheel goes by at a frequency, in tenths of a mark */
  readonly notchAt?: (hz: number) => Notch | null;
  readonly onChange: (hz: number, held: boolean) => void;
  readonly width: number;
  readonly height: number;
}

function TunableDialBase({ hz, minHz, maxHz, markHz, notchAt, onChange, width: w, height: h }: TunableDialProps) {
  const { dial: dialWords } = useWords();
  const held = useHeld(hz);
  const clip = useId();
  const input = useRef<HTMLInputElement>(null);
  const fineHz = markHz / 10;
  const majorHz = 20 * markHz;
  const majorPx = majorPixels(dialWords.figure(Math.round(hz / majorHz) * majorHz + majorHz));
  const last = Math.round((maxHz - minHz) / fineHz);
  const put = (position: number, dragging: boolean): void => {
    const next = clamp(minHz + position * fineHz, minHz, maxHz);
    held.hold(next);
    onChange(next, dragging);
    if (!dragging) held.release();
  };
  const turn = useTurning({
    last,
    coarse: 1,
    // The scale is dragged, so it follows the finger: left goes up in frequency.
    pixels: -((maxHz - minHz) / majorHz) * majorPx,
    sideways: true,
    place: () => (held.shown - minHz) / fineHz,
    notch: () => notchAt?.(held.shown) ?? null,
    set: put,
    released: held.release,
  });
  const shape = useMemo(() => dialShape(w, h, majorPx), [w, h, majorPx]);
  const still = useMemo(() => dialStill(shape, w, h), [shape, w, h]);
  const frame = useMemo(() => dialFrame(w, h), [w, h]);
  const hair = useMemo(() => hairline(w, h), [w, h]);
  const major = Math.round(held.shown / majorHz);
  const scale = useMemo(() => dialScale(shape, major, (n) => dialWords.figure(n * majorHz)), [shape, major, majorHz]);
  const degrees = (major - held.shown / majorHz) * shape.degreesPerMajor;
  const key = (event: KeyboardEvent): void => {
    const marks: Record<string, number> = {
      ArrowUp: 1,
      ArrowRight: 1,
      ArrowDown: -1,
      ArrowLeft: -1,
      PageUp: 10,
      PageDown: -10,
    };
    const move = marks[event.key];
    if (move === undefined || event.ctrlKey || event.altKey || event.metaKey) return;
    event.preventDefault();
    put(clamp((held.shown - minHz) / fineHz + move * (event.shiftKey ? 1 : 10), 0, last), false);
  };
  return (
    <div
      class="dial"
      style={size(w, h)}
      onPointerDown={(event) => {
        turn.down(event);
        input.current?.focus({ preventScroll: true });
        event.preventDefault();
      }}
      onPointerMove={turn.move}
      onPointerUp={turn.up}
      onPointerCancel={turn.up}
      onWheel={turn.wheel}
    >
      <Ink svg={frame} width={w} height={h} />
      <svg class="ink" width={w} height={h} aria-hidden="true">
        <clipPath id={clip}>
          <rect x="1" y="1" width={w - 2} height={h - 2} rx="3" />
        </clipPath>
        <g clip-path={`url(#${clip})`}>
          <g
            transform={`rotate(${degrees.toFixed(3)} ${shape.cx} ${shape.cy})`}
            dangerouslySetInnerHTML={{ __html: scale }}
          />
          <g dangerouslySetInnerHTML={{ __html: still }} />
        </g>
      </svg>
      <Ink svg={hair} width={w} height={h} />
      <input
        ref={input}
        class="twin"
        type="range"
        min={minHz}
        max={maxHz}
        step={markHz}
        value={held.shown}
        aria-label={dialWords.label}
        aria-valuetext={dialWords.spoken(Math.round(held.shown / markHz) * markHz, markHz)}
        onKeyDown={key}
        onInput={(event) => put((event.currentTarget.valueAsNumber - minHz) / fineHz, false)}
      />
      <Flag words={dialWords.drag} />
    </div>
  );
}

export const TunableDial = memo(TunableDialBase);
