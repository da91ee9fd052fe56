/** Instrument 2: the tube's own controls. All at once where there is room, else a trace side and a face side. */
import { memo } from 'preact/compat';
import type { Rect } from '../../../kit/px.ts';
import { SmallSwitch, Switch } from '../../../kit/widgets/Switch.tsx';
import type { BenchPort } from '../../../present/ports.ts';
import { panelWords, tubeControlWords } from '../../../words/en/bench.ts';
import { PortKnob, PortSwitch } from '../parts.tsx';
import { COUPLINGS, OFF_ON, PHOSPHORS, Y_INPUTS } from '../studs.ts';
import { Panel, SidedPanel } from './Panel.tsx';

export interface WaxSwitch {
  readonly allowed: boolean;
  readonly on: boolean;
  readonly set: (on: boolean) => void;
}

interface TubePanelProps {
  readonly port: BenchPort;
  /** null: on the shelf, all in one row */
  readonly rect: Rect | null;
  readonly wax: WaxSwitch;
}

function TubePanelBase({ port, rect, wax }: TubePanelProps) {
  const head = { id: 'panel-tube', no: 2, title: panelWords.tube, rect } as const;
  if (rect === null) {
    return (
      <Panel {...head}>
        <Knobs port={port} controls={['yVoltsPerDiv', 'yPositionDiv', 'xGain', 'xPositionDiv']} r={23} />
        <PortSwitch port={port} control="yCoupling" label={tubeControlWords.yCoupling} studs={COUPLINGS} />
        <PortSwitch port={port} control="yInput" label={tubeControlWords.yInput} studs={Y_INPUTS} width={92} />
        <PortSwitch port={port} control="yInvert" label={tubeControlWords.invert} studs={OFF_ON} />
        <PortSwitch port={port} control="ySmoothing" label={tubeControlWords.smoothing} studs={OFF_ON} />
        <Knobs port={port} controls={['focus', 'brightness']} r={23} />
        <PortSwitch port={port} control="phosphor" label={tubeControlWords.phosphor} studs={PHOSPHORS} />
        <Wax wax={wax} />
      </Panel>
    );
  }
  const rail = rect.width < 190;
  const room = rect.height - 40;
  const r = rail ? (room < 420 ? 13 : 16) : rect.width > 250 && room > 330 ? 26 : 20;
  const cls = rail ? 'tube-panel rail' : 'tube-panel pairs';
  // Two columns: three rows of knobs and three of switches.
  if (!rail && room >= 3 * (2 * r + 59) + 3 * 76) {
    return (
      <Panel {...head} class={cls}>
        <Knobs
          port={port}
          controls={['yVoltsPerDiv', 'yPositionDiv', 'xGain', 'xPositionDiv', 'focus', 'brightness']}
          r={r}
        />
        <PortSwitch port={port} control="yCoupling" label={tubeControlWords.yCoupling} studs={COUPLINGS} />
        <PortSwitch port={port} control="yInput" label={tubeControlWords.yInput} studs={Y_INPUTS} width={92} />
        <PortSwitch port={port} control="yInvert" label={tubeControlWords.invert} studs={OFF_ON} />
        <PortSwitch port={port} control="ySmoothing" label={tubeControlWords.smoothing} studs={OFF_ON} />
        <Wax wax={wax} />
        <PortSwitch port={port} control="phosphor" label={tubeControlWords.phosphor} studs={PHOSPHORS} />
      </Panel>
    );
  }
  const trace = () => (
    <>
      <PortKnob port={port} control="yVoltsPerDiv" r={r} />
      <PortKnob port={port} control="yPositionDiv" r={r} readout={!rail} />
      <PortKnob port={port} control="xGain" r={r} />
      <PortKnob port={port} control="xPositionDiv" r={r} readout={!rail} />
      {rail ? (
        <>
          <PortSwitch
            port={port}
            control="yCoupling"
            label={tubeControlWords.yCoupling}
            studs={COUPLINGS}
            look="small"
          />
          <PortSwitch port={port} control="ySmoothing" label={tubeControlWords.smoothing} studs={OFF_ON} look="small" />
        </>
      ) : (
        <>
          <PortSwitch port={port} control="yCoupling" label={tubeControlWords.yCoupling} studs={COUPLINGS} />
          <PortSwitch port={port} control="yInput" label={tubeControlWords.yInput} studs={Y_INPUTS} width={92} />
          {room > 350 ? <Hint /> : null}
        </>
      )}
    </>
  );
  const face = () => (
    <>
      <Knobs port={port} controls={['focus', 'brightness']} r={r} />
      {rail ? (
        <>
          <PortSwitch port={port} control="yInput" label={tubeControlWords.yInput} studs={Y_INPUTS} look="small" />
          <PortSwitch port={port} control="yInvert" label={tubeControlWords.invert} studs={OFF_ON} look="small" />
          <Wax wax={wax} small />
          <PortSwitch port={port} control="phosphor" label={tubeControlWords.phosphor} studs={PHOSPHORS} look="row" />
        </>
      ) : (
        <>
          <PortSwitch port={port} control="yInvert" label={tubeControlWords.invert} studs={OFF_ON} />
          <PortSwitch port={port} control="ySmoothing" label={tubeControlWords.smoothing} studs={OFF_ON} />
          <Wax wax={wax} />
          <PortSwitch port={port} control="phosphor" label={tubeControlWords.phosphor} studs={PHOSPHORS} />
        </>
      )}
    </>
  );
  return (
    <SidedPanel
      {...head}
      class={cls}
      corner={rail}
      sides={[
        { name: panelWords.traceSide, content: trace },
        { name: panelWords.faceSide, content: face },
      ]}
    />
  );
}

type TubeKnob = 'yVoltsPerDiv' | 'yPositionDiv' | 'xGain' | 'xPositionDiv' | 'focus' | 'brightness';

function Knobs({
  port,
  controls,
  r,
}: {
  readonly port: BenchPort;
  readonly controls: readonly TubeKnob[];
  readonly r: number;
}) {
  return (
    <>
      {controls.map((control) => (
        <PortKnob key={control} port={port} control={control} r={r} />
      ))}
    </>
  );
}

function Hint() {
  return (
    <p class="s panel-hint">
      {tubeControlWords.hint.map((line) => (
        <span key={line}>{line}</span>
      ))}
    </p>
  );
}

/** Wax marks are the view's own: they are help on the glass, no control of the bench. */
function Wax({ wax, small = false }: { readonly wax: WaxSwitch; readonly small?: boolean }) {
  const props = {
    label: tubeControlWords.wax,
    studs: OFF_ON,
    value: wax.on && wax.allowed,
    onChange: wax.set,
    disabled: !wax.allowed,
  } as const;
  return (
    <div {...(wax.allowed ? {} : { title: tubeControlWords.waxNote })}>
      {small ? <SmallSwitch {...props} /> : <Switch {...props} />}
    </div>
  );
}

export const TubePanel = memo(TubePanelBase);
