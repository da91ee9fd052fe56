/** One crystal of the box, in its socket or lifted over it. A toggle button; the rack walks between them with left and right. */

import { memo } from 'preact/compat';
import { useMemo } from 'preact/hooks';
import { useWords } from '../hooks/useWords.ts';
import { px, size } from '../px.ts';
import { Ink } from '../theme/art.tsx';
import { CAN, canArt, dropLines, LOW_CAN, socketStill } from './crystalArt.ts';
import { Flag } from './Flag.tsx';
import './widgets.css';
import './crystal.css';

export interface CrystalProps {
  readonly hz: number;
  readonly plugged: boolean;
  /** number of its pip on the tube; null while lifted, and where pips have no numbers */
  readonly pip: number | null;
  /** width of the can: 38 to 46 */
  readonly width: number;
  /** where the box stands in two rows */
  readonly low?: boolean;
  readonly tabIndex: number;
  readonly onToggle: (hz: number) => void;
}

/** the socket below */
const BOTTOM = 18;

function CrystalBase({ hz, plugged, pip, width: w, low = false, tabIndex, onToggle }: CrystalProps) {
  const { rack: rackWords } = useWords();
  const socket = useMemo(() => socketStill(w), [w]);
  const of = low ? LOW_CAN : CAN;
  const lines = useMemo(() => dropLines(w, of), [w, of]);
  const can = useMemo(() => canArt(w, of), [w, of]);
  /** space for the lifted can */
  const top = of.height - 4 + of.lift;
  const height = top + BOTTOM;
  const box = `-3 ${-top} ${w + 6} ${height}`;
  return (
    <button
      type="button"
      class={`crystal${plugged ? ' in' : ''}${low ? ' low' : ''}`}
      style={size(w + 6, height)}
      aria-pressed={plugged}
      aria-label={plugged && pip === null ? rackWords.crystalIn(hz) : rackWords.crystal(hz, pip)}
      tabIndex={tabIndex}
      onClick={() => onToggle(hz)}
    >
      <Ink svg={socket} width={w + 6} height={height} viewBox={box} />
      {plugged ? null : <Ink svg={lines} width={w + 6} height={height} viewBox={box} />}
      <span class="can">
        <Ink svg={can} width={w + 6} height={height} viewBox={box} />
        <span
          class={rackWords.canLabel(hz).length > 5 ? 'm can-label long' : 'm can-label'}
          style={{ top: px(top - of.height + of.label + 5) }}
        >
          {rackWords.canLabel(hz)}
        </span>
      </span>
      <span class="socket-front" style={{ top: px(top + 2) }} />
      {pip === null ? null : <span class="co pip-disc" style={{ top: px(top - 1.5) }} data-word={pip} />}
      <Flag words={plugged ? rackWords.lift(hz) : rackWords.plugIn(hz)} />
    </button>
  );
}

export const Crystal = memo(CrystalBase);
