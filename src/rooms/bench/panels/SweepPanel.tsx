/** Instrument 3: the sweep source. */

import { memo } from 'preact/compat';
import { useWords } from '../../../kit/hooks/useWords.ts';
import type { Rect } from '../../../kit/px.ts';
import type { BenchPort } from '../../../present/ports.ts';
import { Panel } from './Panel.tsx';
import { each, type OnPanel, Others, Places } from './Places.tsx';

const HEAD = [
  { control: 'sourceMode', look: 'row' },
  { control: 'slowSweep', look: 'small' },
] as const;
const KNOBS = [
  { control: 'centreHz', r: 27 },
  ...each(['spanHz', 'levelDb', 'carrierHz', 'phasingDegrees', 'fineTuning']),
] as const;
const SWITCHES = ['blanking', 'mirror'] as const;
const PLACED: OnPanel<'sweep'> = [...[...HEAD, ...KNOBS].map(({ control }) => control), ...SWITCHES];

function SweepPanelBase({ port, rect }: { readonly port: BenchPort; readonly rect: Rect | null }) {
  const { panels: panelWords } = useWords();
  // With the carrier's knob or the fine tuning there is less room.
  const { videoFeed, oscillator } = port.receiver;
  const close = (videoFeed !== null || oscillator !== undefined) && rect !== null;
  return (
    <Panel
      id="panel-sweep"
      no={3}
      title={panelWords.sweep}
      rect={rect}
      class="sweep-panel"
      extra={<Places port={port} places={HEAD} />}
    >
      <Places port={port} places={KNOBS} />
      {close ? (
        <div class="switch-pair">
          <Places port={port} places={each(SWITCHES, { look: 'small' })} />
        </div>
      ) : (
        <Places port={port} places={each(SWITCHES)} />
      )}
      <Others port={port} panel="sweep" placed={PLACED} />
    </Panel>
  );
}

export const SweepPanel = memo(SweepPanelBase);
