/** Instrument 8: two bias outputs and the meter. In the full bench its other sides hold the leads' fittings and the mains. */

import { memo } from 'preact/compat';
import { useCallback } from 'preact/hooks';
import { BIAS_OUTPUTS, type BiasOutput } from '../../../bench/biasOutputs.ts';
import { usePort } from '../../../kit/hooks/usePort.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import type { Rect } from '../../../kit/px.ts';
import { Meter } from '../../../kit/widgets/Meter.tsx';
import type { BenchPort } from '../../../present/ports.ts';
import { PortKnob, PortSwitch } from '../portWidgets.tsx';
import { type PartShown, slugPartTitle, tellsPart } from '../useSlugPart.ts';
import { Panel, SidedPanel } from './Panel.tsx';
import { each, type OnPanel, Others, Places } from './Places.tsx';
import { SafeStrip } from './SafeStrip.tsx';
import { SlugPartFigure } from './SlugPartFigure.tsx';
import './biasPanel.css';

interface BiasPanelProps {
  readonly port: BenchPort;
  readonly rect: Rect | null;
  readonly onCautions: () => void;
  /** the slug that is chosen, by id */
  readonly slug: string | null;
  /** what it moves; null: nobody may be told, or it is not worked out yet */
  readonly part: PartShown | null;
}

function BiasPanelBase({ port, rect, onCautions, slug, part }: BiasPanelProps) {
  const words = useWords();
  const { panels: panelWords, slugPart: partWords } = words;
  const head = { id: 'panel-bias', no: 8, title: panelWords.bias, rect } as const;
  const mains = port.receiver.mains !== null;
  if (rect === null) {
    return (
      <Panel {...head} class="bias-panel">
        <BiasAndMeter port={port} meterWidth={150} meterHeight={92} roomy />
      </Panel>
    );
  }
  const bench = () => (
    <BiasAndMeter port={port} meterWidth={meterRoom(rect)} meterHeight={Math.min(120, rect.height - 48)} />
  );
  const leads = () => <LeadFittings port={port} />;
  const safe = () => <SafeStrip port={port} onCautions={onCautions} />;
  const told = tellsPart(port.scenario);
  const moves = () => (
    <SlugPartFigure port={port} shown={part} width={PART_WIDTH} height={Math.min(130, rect.height - 36)} />
  );
  if (rect.height >= 370) {
    return (
      <Panel {...head} class="bias-panel tall">
        <div class="panel-row">{<BiasAndMeter port={port} meterWidth={meterRoom(rect)} meterHeight={104} />}</div>
        <div class="panel-row">{leads()}</div>
        {mains ? <div class="panel-row">{safe()}</div> : null}
        {told && rect.height >= (mains ? 540 : 420) ? <div class="panel-row">{moves()}</div> : null}
      </Panel>
    );
  }
  return (
    <SidedPanel
      {...head}
      class="bias-panel"
      start={mains && !port.state().powered ? 2 : 0}
      // A meter in use stays where it is.
      front={told && slug !== null && port.state().leads.meter === null ? { side: 'part', key: slug } : null}
      sides={[
        { name: panelWords.biasSide, content: bench },
        { id: 'leads', name: panelWords.leadsSide, content: leads },
        ...(mains ? [{ id: 'safe', name: panelWords.safeSide, content: safe }] : []),
        ...(told
          ? [
              {
                id: 'part',
                name: partWords.side,
                title: slugPartTitle(words, port.receiver, slug),
                content: moves,
              },
            ]
          : []),
      ]}
    />
  );
}

/** px of the figure of what a slug moves */
const PART_WIDTH = 206;

const meterRoom = (rect: Rect): number => Math.min(210, Math.max(118, rect.width - 46 - 2 * 72 - 66 - 36));

function BiasAndMeter({
  port,
  meterWidth,
  meterHeight,
  roomy = false,
}: {
  readonly port: BenchPort;
  readonly meterWidth: number;
  readonly meterHeight: number;
  /** room for a full switch beside each knob */
  readonly roomy?: boolean;
}) {
  return (
    <>
      {BIAS_OUTPUTS.map((output) => (
        <Output key={output.lead} port={port} output={output} roomy={roomy} />
      ))}
      <PortMeter port={port} width={meterWidth} height={meterHeight} />
      <div class="bias-output">
        <PortKnob port={port} control="meterRangeVolts" r={16} />
        <PortSwitch port={port} control="meterMode" look="small" />
      </div>
      <Others port={port} panel="bias" placed={BIAS_PLACED} look={{ r: 16, look: 'small' }} />
    </>
  );
}

const BIAS_PLACED: OnPanel<'bias'> = [
  ...BIAS_OUTPUTS.flatMap(({ volts, polarity }) => [volts, polarity]),
  'meterRangeVolts',
  'meterMode',
];

interface OutputProps {
  readonly port: BenchPort;
  readonly output: BiasOutput;
  readonly roomy: boolean;
}

function Output({ port, output, roomy }: OutputProps) {
  const { biasVolts } = useWords().format.knob;
  const polarity = usePort(port, () => port.state().controls[output.polarity]);
  const shown = useCallback((volts: number) => biasVolts(volts, polarity), [polarity]);
  return (
    <div class="bias-output">
      <PortKnob port={port} control={output.volts} r={16} shown={shown} />
      <PortSwitch port={port} control={output.polarity} look={roomy ? 'plate' : 'small'} />
    </div>
  );
}

function PortMeter({
  port,
  width,
  height,
}: {
  readonly port: BenchPort;
  readonly width: number;
  readonly height: number;
}) {
  const range = usePort(port, () => port.state().controls.meterRangeVolts);
  const connected = usePort(port, () => port.state().leads.meter !== null);
  // To a thousandth of the range: the needle shows no more.
  const volts = usePort(port, () => Math.round((1000 * port.display().meterVolts) / range) * (range / 1000));
  const pinned = usePort(port, () => port.display().meterPinned);
  return <Meter volts={volts} pinned={pinned} rangeVolts={range} connected={connected} width={width} height={height} />;
}

const FITTINGS = [...each(['rfTerminated', 'rfCapacitor']), { control: 'yTip', width: 132 }] as const;

/** What is screwed to the leads: pad and capacitor of the RF lead, tip of the Y lead. */
export function LeadFittings({ port, note = false }: { readonly port: BenchPort; readonly note?: boolean }) {
  const { leads: leadWords } = useWords();
  return (
    <>
      <Places port={port} places={FITTINGS} />
      <Others port={port} panel="leads" placed={FITTINGS.map(({ control }) => control)} />
      {note ? <p class="s panel-note">{leadWords.note}</p> : null}
    </>
  );
}

export const BiasPanel = memo(BiasPanelBase);
