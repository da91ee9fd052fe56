/** Instrument 3: the sweep source. */
import { memo } from 'preact/compat';
import { useMemo } from 'preact/hooks';
import type { SourceMode } from '../../../bench/benchState.ts';
import { controlRange } from '../../../bench/controlRange.ts';
import type { Rect } from '../../../kit/px.ts';
import type { BenchPort } from '../../../present/ports.ts';
import { panelWords, sweepWords } from '../../../words/en/bench.ts';
import { PortKnob, PortSwitch } from '../parts.tsx';
import { OFF_ON } from '../studs.ts';
import { Panel } from './Panel.tsx';

function SweepPanelBase({ port, rect }: { readonly port: BenchPort; readonly rect: Rect | null }) {
  const video = port.receiver.videoFeed !== null;
  const modes = useMemo(() => {
    const range = controlRange(port.setup, 'sourceMode');
    const choices = range.kind === 'choice' ? (range.choices as readonly SourceMode[]) : [];
    // A set without a video part has no use for a video sweep.
    return choices
      .filter((value) => value !== 'video' || video)
      .map((value) => ({ value, word: sweepWords.modes[value], spoken: sweepWords.modesSpoken[value] }));
  }, [port, video]);
  return (
    <Panel
      id="panel-sweep"
      no={3}
      title={panelWords.sweep}
      rect={rect}
      class="sweep-panel"
      extra={
        <>
          <PortSwitch port={port} control="sourceMode" label={sweepWords.mode} studs={modes} look="row" />
          <PortSwitch port={port} control="slowSweep" label={sweepWords.slow} studs={OFF_ON} look="small" />
        </>
      }
    >
      <PortKnob port={port} control="centreHz" r={27} />
      <PortKnob port={port} control="spanHz" />
      <PortKnob port={port} control="levelDb" />
      {video ? <PortKnob port={port} control="carrierHz" /> : null}
      <PortKnob port={port} control="phasingDegrees" />
      {video && rect !== null ? (
        <div class="switch-pair">
          <PortSwitch port={port} control="blanking" label={sweepWords.blanking} studs={OFF_ON} look="small" />
          <PortSwitch port={port} control="mirror" label={sweepWords.mirror} studs={OFF_ON} look="small" />
        </div>
      ) : (
        <>
          <PortSwitch port={port} control="blanking" label={sweepWords.blanking} studs={OFF_ON} />
          <PortSwitch port={port} control="mirror" label={sweepWords.mirror} studs={OFF_ON} />
        </>
      )}
    </Panel>
  );
}

export const SweepPanel = memo(SweepPanelBase);
