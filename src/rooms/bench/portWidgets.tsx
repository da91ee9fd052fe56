/** Widgets tied to the bench's controls, chosen by the control's row: each reads its own control and redraws only when that one changes. */

import { useCallback, useMemo } from 'preact/hooks';
import type { ControlId, KnobId, SwitchId } from '../../bench/benchEvent.ts';
import type { ControlRow } from '../../bench/controls/row.ts';
import { CONTROL_ROWS } from '../../bench/controls/rows.ts';
import { usePort } from '../../kit/hooks/usePort.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { Knob } from '../../kit/widgets/Knob.tsx';
import { type Position, PositionRow, SmallSwitch, Switch } from '../../kit/widgets/Switch.tsx';
import { TunableDial } from '../../kit/widgets/TunableDial.tsx';
import { fitKnob, type KnobFitting } from '../../present/controlScales.ts';
import type { Notch } from '../../present/knobScale.ts';
import { positionsOf } from '../../present/panelRows.ts';
import type { BenchPort } from '../../present/ports.ts';
import type { Words } from '../../words/words.ts';

function offOn({ switches }: Words): readonly Position<boolean>[] {
  return [
    { value: false, word: switches.off },
    { value: true, word: switches.on },
  ];
}

export function useOffOn(): readonly Position<boolean>[] {
  const words = useWords();
  return useMemo(() => offOn(words), [words]);
}

/** How a control is drawn where it stands; what does not belong to its kind is left aside. */
export interface PortLook {
  /** radius of a knob */
  readonly r?: number;
  /** a knob's reading under it */
  readonly readout?: boolean;
  /** a switch as a plate of its own, in one line, or as a row of positions */
  readonly look?: 'plate' | 'small' | 'row';
  /** of a switch's plate, or of a dial */
  readonly width?: number;
  /** of a dial */
  readonly height?: number;
}

export interface PortControlProps extends PortLook {
  readonly port: BenchPort;
  readonly control: ControlId;
}

/** The widget of a control, by the kind of its row. */
export function PortControl({ port, control, ...look }: PortControlProps) {
  const row: ControlRow = CONTROL_ROWS[control];
  if (row.kind === 'switch' || row.kind === 'positions')
    return <PortSwitch port={port} control={control as SwitchId} {...look} />;
  const turns = control as KnobId;
  if (row.kind === 'range' && row.drawnAs === 'dial') return <PortDial port={port} control={turns} {...look} />;
  return <PortKnob port={port} control={turns} {...look} />;
}

export interface PortKnobProps extends Pick<PortLook, 'r' | 'readout'> {
  readonly port: BenchPort;
  readonly control: KnobId;
  /** another reading than the control's own (bias with its sign) */
  readonly shown?: (value: number) => string;
}

/** What a turned control does with each new value: a drag is gathered, the rest sent at once. */
export function useTurned(port: BenchPort, control: KnobId): (value: number, held: boolean) => void {
  return useCallback(
    (value: number, held: boolean) => {
      const event = { type: 'controlSet', control, value } as const;
      if (held) port.actSoon(event);
      else if (port.state().controls[control] !== value) port.act(event);
    },
    [port, control],
  );
}

/** What the wheel goes by, as the sweep stands when it is turned. */
export function useNotch(port: BenchPort, { notchAt }: KnobFitting): (value: number) => Notch | null {
  return useCallback((value: number) => notchAt(port.state().controls, value), [port, notchAt]);
}

export function PortKnob({ port, control, r = 23, readout = true, shown }: PortKnobProps) {
  const words = useWords();
  const { aloud } = words.format;
  const value = usePort(port, () => port.state().controls[control]);
  const fitting = useMemo(() => fitKnob(words, port.setup, control), [words, port, control]);
  const change = useTurned(port, control);
  const show = shown ?? fitting.shown;
  const spoken = useCallback((v: number) => aloud(show(v)), [aloud, show]);
  const notchAt = useNotch(port, fitting);
  return (
    <Knob
      label={fitting.label}
      value={value}
      scale={fitting.scale}
      coarse={fitting.coarse}
      notchAt={notchAt}
      shown={show}
      spoken={spoken}
      parse={fitting.parse}
      example={fitting.example}
      signed={fitting.signed}
      resting={fitting.resting}
      onChange={change}
      r={r}
      readout={readout}
    />
  );
}

export interface PortDialProps extends Pick<PortLook, 'width' | 'height'> {
  readonly port: BenchPort;
  readonly control: KnobId;
}

export function PortDial({ port, control, width = 170, height = 70 }: PortDialProps) {
  const hz = usePort(port, () => port.state().controls[control]);
  const words = useWords();
  const fitting = useMemo(() => fitKnob(words, port.setup, control), [words, port, control]);
  const { scale, coarse } = fitting;
  const notchAt = useNotch(port, fitting);
  const change = useTurned(port, control);
  const [minHz, maxHz] = [scale.valueAt(0), scale.valueAt(scale.last)];
  return (
    <TunableDial
      hz={hz}
      minHz={minHz}
      maxHz={maxHz}
      markHz={scale.valueAt(coarse) - minHz}
      notchAt={notchAt}
      onChange={change}
      width={width}
      height={height}
    />
  );
}

export interface PortSwitchProps extends Pick<PortLook, 'look' | 'width'> {
  readonly port: BenchPort;
  readonly control: SwitchId;
}

export function PortSwitch({ port, control, look = 'plate', width }: PortSwitchProps) {
  const value: string | boolean = usePort(port, () => port.state().controls[control]);
  const words = useWords();
  const { label, positions } = useMemo(() => fitSwitch(words, port, control), [words, port, control]);
  const change = useCallback(
    (next: string | boolean) => {
      if (port.state().controls[control] !== next) port.act({ type: 'controlSet', control, value: next });
    },
    [port, control],
  );
  // A small blade has two places.
  if (look === 'row' || (look === 'small' && positions.length > 2))
    return (
      <PositionRow
        label={label}
        positions={positions as readonly Position<string>[]}
        value={value as string}
        onChange={change}
      />
    );
  if (look === 'small') return <SmallSwitch label={label} positions={positions} value={value} onChange={change} />;
  return (
    <Switch
      label={label}
      positions={positions}
      value={value}
      onChange={change}
      {...(width === undefined ? {} : { width })}
    />
  );
}

function fitSwitch(
  words: Words,
  port: BenchPort,
  control: SwitchId,
): { label: string; positions: readonly Position<string | boolean>[] } {
  const row: ControlRow = CONTROL_ROWS[control];
  const say = words.controls[control];
  const positions =
    row.kind === 'positions' && 'positions' in say ? positionsOf(port.receiver, row, say.positions) : offOn(words);
  return { label: say.label, positions };
}
