/** Instrument 4: crystals of the receiver's box in the rack, comb, tunable marker, height and route of the pips. */

import { memo } from 'preact/compat';
import { useCallback, useMemo, useRef, useState } from 'preact/hooks';
import { CONTROLS } from '../../../bench/controls/controls.ts';
import { usePort } from '../../../kit/hooks/usePort.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import type { Rect } from '../../../kit/px.ts';
import { px } from '../../../kit/px.ts';
import { Short } from '../../../kit/Short.tsx';
import { Crystal } from '../../../kit/widgets/Crystal.tsx';
import { Knob } from '../../../kit/widgets/Knob.tsx';
import { fitKnob } from '../../../present/controlScales.ts';
import { unplaced } from '../../../present/panelRows.ts';
import type { BenchPort } from '../../../present/ports.ts';
import { mainResponse } from '../../../receiver/responses.ts';
import { PortDial, useNotch, useTurned } from '../portWidgets.tsx';
import { Panel } from './Panel.tsx';
import { each, type OnPanel, Others, Places } from './Places.tsx';
import './rack.css';

const HEAD = each(['comb', 'tunableOn', 'markerRoute'], { look: 'small' });
const KNOBS = each(['dialTrimHz', 'pipHeightDiv'], { r: 17 });
const PLACED: OnPanel<'rack'> = [...[...HEAD, ...KNOBS].map(({ control }) => control), 'tunableHz'];

const PITCH = 58;
const LEAST_PITCH = 43;
const PIP_KNOB = 72;
const TRIM_KNOB = 70;
const TUNE_KNOB = 76;
const LEAST_DIAL = 104;
/** from this height on there are two rows */
const TALL = 300;

function RackPanelBase({
  port,
  rect,
  height,
}: {
  readonly port: BenchPort;
  readonly rect: Rect | null;
  readonly height: number;
}) {
  const { panels: panelWords, rack: rackWords } = useWords();
  const count = port.receiver.crystalsHz.length;
  const { pitch, dialWidth, dialHeight, tuneKnob, tall, across } = rackFit(
    rect,
    height,
    count,
    unplaced(CONTROLS, port.receiver, 'rack', PLACED).length,
  );
  const unit = rackWords.unit(mainResponse(port.receiver).setUp.centreHz);
  return (
    <Panel
      id="panel-rack"
      no={4}
      title={panelWords.rack}
      rect={rect}
      class={tall ? 'rack-panel tall' : 'rack-panel'}
      extra={<Places port={port} places={HEAD} />}
    >
      <div class="rack">
        <Crystals port={port} pitch={pitch} across={across} />
        <span class="l2 short" title={rackWords.note(unit)}>
          {rackWords.note(unit)}
        </span>
      </div>
      <div class="rack-dial">
        <span class="l short" title={rackWords.tunableMarker} aria-hidden="true">
          {rackWords.tunableMarker}
        </span>
        <Tunable port={port} width={dialWidth} height={dialHeight} knob={tuneKnob} unit={unit} />
      </div>
      <Places port={port} places={KNOBS} />
      <Others port={port} panel="rack" placed={PLACED} look={{ r: 17 }} />
    </Panel>
  );
}

interface RackFit {
  readonly pitch: number;
  readonly dialWidth: number;
  readonly dialHeight: number;
  readonly tuneKnob: boolean;
  /** crystals over dial and knobs, instead of side by side */
  readonly tall: boolean;
  /** crystals side by side; the box has as many rows as they need */
  readonly across: number;
}

/** `others`: controls without a place of their own, which stand beside the knobs. */
function rackFit(rect: Rect | null, height: number, count: number, others: number): RackFit {
  const dialHeight = Math.min(96, Math.max(70, height - 34 - 16 - 22 - 16));
  if (rect === null) return { pitch: PITCH, dialWidth: 170, dialHeight, tuneKnob: true, tall: false, across: count };
  const room = rect.width - 30 - PIP_KNOB - TRIM_KNOB - others * PIP_KNOB - 36;
  if (rect.height >= TALL && rect.width < 900) {
    const dialWidth = Math.min(340, room - TUNE_KNOB);
    const across = rowOf(count, Math.floor((rect.width - 40) / LEAST_PITCH));
    return {
      across,
      pitch: Math.min(PITCH, (rect.width - 40) / across),
      dialWidth,
      dialHeight: 110,
      tuneKnob: true,
      tall: true,
    };
  }
  // The dial can be dragged itself: the knob beside it stands only where there is room.
  const most = Math.max(3, Math.floor((room - LEAST_DIAL - 24) / (LEAST_PITCH + 1)));
  const across = rowOf(count, most);
  const tuneKnob = room - across * (LEAST_PITCH + 1) - 120 >= TUNE_KNOB;
  const free = room - (tuneKnob ? TUNE_KNOB : 0);
  const pitch = Math.max(LEAST_PITCH, Math.min(PITCH, (free - 128) / across));
  const dialWidth = Math.max(LEAST_DIAL, Math.min(300, Math.floor(free - across * pitch)));
  return { pitch, dialWidth, dialHeight, tuneKnob, tall: false, across };
}

/** As many as fit, in rows that are as even as can be. */
function rowOf(count: number, most: number): number {
  return Math.ceil(count / Math.ceil(count / most));
}

interface CrystalsProps {
  readonly port: BenchPort;
  readonly pitch: number;
  readonly across: number;
}

function Crystals({ port, pitch, across }: CrystalsProps) {
  const { rack: rackWords } = useWords();
  const plugged = usePort(port, () => port.state().crystals);
  const rack = useRef<HTMLDivElement>(null);
  const [at, setAt] = useState(0);
  const box = port.receiver.crystalsHz;
  const inOrder = useMemo(() => [...plugged].sort((a, b) => a - b), [plugged]);
  const toggle = useCallback(
    (hz: number) =>
      port.act(port.state().crystals.includes(hz) ? { type: 'crystalPulled', hz } : { type: 'crystalPlugged', hz }),
    [port],
  );
  const walk = (event: KeyboardEvent): void => {
    const move = MOVES[event.key]?.(across) ?? 0;
    const buttons = rack.current?.children;
    if (move === 0 || buttons === undefined) return;
    event.preventDefault();
    const next = at + move;
    if (next < 0 || next >= box.length) return;
    setAt(next);
    (buttons[next] as HTMLElement | undefined)?.focus();
  };
  const width = Math.min(46, pitch - 5);
  const rows = Math.ceil(box.length / across);
  return (
    <div
      class={rows > 1 ? 'crystals rows' : 'crystals'}
      role="toolbar"
      aria-label={rackWords.crystals}
      ref={rack}
      onKeyDown={walk}
      onFocusIn={(event) =>
        setAt([...(rack.current?.children ?? [])].indexOf((event.target as Element).closest('button')!))
      }
      style={{ columnGap: px(pitch - width - 6), gridTemplateColumns: `repeat(${across}, max-content)` }}
    >
      {box.map((hz, i) => {
        const pip = inOrder.indexOf(hz);
        return (
          <Crystal
            key={hz}
            hz={hz}
            plugged={pip >= 0}
            pip={pip >= 0 && !port.scenario.sealed ? pip + 1 : null}
            width={width}
            low={rows > 1}
            tabIndex={i === at ? 0 : -1}
            onToggle={toggle}
          />
        );
      })}
    </div>
  );
}

/** Along a row, and from one to the next. */
const MOVES: Readonly<Record<string, (across: number) => number>> = {
  ArrowRight: () => 1,
  ArrowLeft: () => -1,
  ArrowDown: (across) => across,
  ArrowUp: (across) => -across,
};

interface TunableProps {
  readonly port: BenchPort;
  readonly width: number;
  readonly height: number;
  readonly knob: boolean;
  readonly unit: string;
}

function Tunable({ port, width, height, knob, unit }: TunableProps) {
  const { rack: rackWords } = useWords();
  return (
    <>
      <PortDial port={port} control="tunableHz" width={width} height={height} />
      {knob ? <TuneGrip port={port} /> : null}
      <Short class="l2 dial-note">{rackWords.dialNote(unit)}</Short>
    </>
  );
}

/** The dial is the control; this knob is another grip on it, for hands only, and shows no number. */
function TuneGrip({ port }: { readonly port: BenchPort }) {
  const hz = usePort(port, () => port.state().controls.tunableHz);
  const words = useWords();
  const fitting = useMemo(() => fitKnob(words, port.setup, 'tunableHz'), [words, port]);
  const { label, scale, coarse, signed } = fitting;
  const notchAt = useNotch(port, fitting);
  const change = useTurned(port, 'tunableHz');
  return (
    <div class="tune-grip" aria-hidden="true">
      <Knob
        label={label}
        value={hz}
        scale={scale}
        coarse={coarse}
        notchAt={notchAt}
        shown={NOTHING}
        spoken={NOTHING}
        onChange={change}
        resting={hz}
        readout={false}
        signed={signed}
        r={20}
        unlisted
      />
    </div>
  );
}

const NOTHING = (): string => '';

export const RackPanel = memo(RackPanelBase);
