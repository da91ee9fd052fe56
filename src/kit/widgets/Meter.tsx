/** The meter: its reading is its accessible name. Centre zero; the needle leans on its stop when pinned. */

import { memo } from 'preact/compat';
import { useId, useMemo } from 'preact/hooks';
import { clamp } from '../../base/rounding.ts';
import { useWords } from '../hooks/useWords.ts';
import { size } from '../px.ts';
import { Ink } from '../theme/art.tsx';
import { meterNeedle, meterShape, meterStill } from './meterArt.ts';
import './widgets.css';
import './dial.css';

export interface MeterProps {
  readonly volts: number;
  readonly pinned: boolean;
  readonly rangeVolts: number;
  readonly connected: boolean;
  readonly width: number;
  readonly height: number;
}

function MeterBase({ volts, pinned, rangeVolts, connected, width: w, height: h }: MeterProps) {
  const { meter: meterWords } = useWords();
  const clip = useId();
  const shape = useMemo(() => meterShape(w, h), [w, h]);
  const still = useMemo(
    () =>
      meterStill(
        w,
        h,
        [-1, -0.5, 0, 0.5, 1].map((part) => meterWords.mark(part * rangeVolts)),
        meterWords.unit,
        clip,
      ),
    [w, h, rangeVolts, clip],
  );
  const art = useMemo(() => meterNeedle(shape.radius), [shape]);
  const part = clamp(volts / rangeVolts, -1.08, 1.08);
  return (
    <div
      class="meter"
      role="img"
      aria-label={meterWords.reading(volts, rangeVolts, pinned, connected)}
      style={size(w, h)}
    >
      <Ink svg={still} width={w} height={h} />
      <svg class="ink" width={w} height={h} aria-hidden="true" style={{ overflow: 'hidden' }}>
        <g transform={`translate(${shape.cx} ${shape.cy})`}>
          <g
            class="meter-needle"
            style={{ transform: `rotate(${(part * shape.spread).toFixed(2)}deg)` }}
            dangerouslySetInnerHTML={{ __html: art }}
          />
        </g>
      </svg>
    </div>
  );
}

export const Meter = memo(MeterBase);
