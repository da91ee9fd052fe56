/** Widgets tied to the bench's controls: each reads its own control and redraws only when that one changes. */
import { useCallback, useMemo } from 'preact/hooks';
import type { Controls } from '../../bench/benchState.ts';
import { usePort } from '../../kit/hooks/usePort.ts';
import { Knob } from '../../kit/widgets/Knob.tsx';
import { SmallSwitch, type Stud, StudRow, Switch } from '../../kit/widgets/Switch.tsx';
import { fitKnob, type KnobControl } from '../../present/controlScales.ts';
import type { BenchPort } from '../../present/ports.ts';
import { aloud } from '../../words/en/benchFigures.ts';

export interface PortKnobProps {
  readonly port: BenchPort;
  readonly control: KnobControl;
  readonly r?: number;
  readonly readout?: boolean;
  /** another figure than the control's own (bias with its sign) */
  readonly shown?: (value: number) => string;
  readonly label?: string;
}

export function PortKnob({ port, control, r = 23, readout = true, shown, label }: PortKnobProps) {
  const value = usePort(port, () => port.state().controls[control]);
  const fitting = useMemo(() => fitKnob(port.setup, control), [port, control]);
  const change = useCallback(
    (next: number, held: boolean) => {
      const event = { type: 'controlSet', control, value: next } as const;
      if (held) port.actSoon(event);
      else if (port.state().controls[control] !== next) port.act(event);
    },
    [port, control],
  );
  const show = shown ?? fitting.shown;
  const spoken = useCallback((v: number) => aloud(show(v)), [show]);
  return (
    <Knob
      label={label ?? fitting.label}
      value={value}
      scale={fitting.scale}
      coarse={fitting.coarse}
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

type SwitchControl = {
  [K in keyof Controls]: Controls[K] extends number ? never : K;
}[keyof Controls];

export interface PortSwitchProps<K extends SwitchControl> {
  readonly port: BenchPort;
  readonly control: K;
  readonly label: string;
  readonly studs: readonly Stud<Controls[K]>[];
  readonly look?: 'plate' | 'small' | 'row';
  readonly width?: number;
}

export function PortSwitch<K extends SwitchControl>({
  port,
  control,
  label,
  studs,
  look = 'plate',
  width,
}: PortSwitchProps<K>) {
  const value = usePort(port, () => port.state().controls[control]) as string | boolean;
  const change = useCallback(
    (next: string | boolean) => {
      if (port.state().controls[control] !== next) port.act({ type: 'controlSet', control, value: next });
    },
    [port, control],
  );
  const choices = studs as readonly Stud<string | boolean>[];
  if (look === 'small') return <SmallSwitch label={label} studs={choices} value={value} onChange={change} />;
  if (look === 'row')
    return <StudRow label={label} studs={studs as readonly Stud<string>[]} value={value as string} onChange={change} />;
  return (
    <Switch label={label} studs={choices} value={value} onChange={change} {...(width === undefined ? {} : { width })} />
  );
}
