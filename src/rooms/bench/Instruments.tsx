/** The instruments where the layout has them: panels of their own, the rest on the shelf. */

import { memo } from 'preact/compat';
import { useMemo } from 'preact/hooks';
import { useWords } from '../../kit/hooks/useWords.ts';
import type { BenchPort } from '../../present/ports.ts';
import type { BenchLayout } from './layout.ts';
import { BiasPanel, LeadFittings } from './panels/BiasPanel.tsx';
import { Panel } from './panels/Panel.tsx';
import { RackPanel } from './panels/RackPanel.tsx';
import { SafeStrip } from './panels/SafeStrip.tsx';
import { SlugPartFigure } from './panels/SlugPartFigure.tsx';
import { SweepPanel } from './panels/SweepPanel.tsx';
import { TubePanel, type WaxSwitch } from './panels/TubePanel.tsx';
import { Shelf, type ShelfItem } from './Shelf.tsx';
import { type PartShown, slugPartTitle, tellsPart } from './useSlugPart.ts';

interface InstrumentsProps {
  readonly port: BenchPort;
  readonly layout: BenchLayout;
  readonly wax: WaxSwitch;
  readonly onCautions: () => void;
  /** the slug that is chosen, by id, and what it moves */
  readonly slug: string | null;
  readonly part: PartShown | null;
}

function InstrumentsBase({ port, layout, wax, onCautions, slug, part }: InstrumentsProps) {
  const words = useWords();
  const { panels: panelWords, slugPart: partWords } = words;
  const { panels, shelf, tabs } = layout;
  const shelfHeight = shelf === null ? 0 : shelf.height / shelf.rows;
  const sweep = <SweepPanel port={port} rect={panels.sweep} />;
  const rack = <RackPanel port={port} rect={panels.rack} height={panels.rack?.height ?? shelfHeight} />;
  const tube = <TubePanel port={port} rect={panels.tube} wax={wax} />;
  const bias = <BiasPanel port={port} rect={panels.bias} onCautions={onCautions} slug={slug} part={part} />;
  // Where the work begins: with the mains, where there are any to be made safe.
  const first = useMemo(() => (port.receiver.mains !== null && !port.state().powered ? 'safe' : 'sweep'), [port]);
  if (shelf === null || tabs === null) {
    return (
      <>
        {tube}
        {sweep}
        {rack}
        {bias}
      </>
    );
  }
  const items: ShelfItem[] = [
    { id: 'sweep', no: 3, name: panelWords.sweep, content: sweep },
    { id: 'rack', no: 4, name: panelWords.rack, content: rack },
    ...(panels.tube === null ? [{ id: 'tube', no: 2, name: panelWords.tube, content: tube }] : []),
    { id: 'bias', no: 8, name: panelWords.bias, content: bias },
    {
      id: 'leads',
      no: 9,
      name: panelWords.leads,
      content: (
        <Panel id="panel-leads" no={9} title={panelWords.leads}>
          <LeadFittings port={port} note />
        </Panel>
      ),
    },
  ];
  if (port.receiver.mains !== null) {
    items.push({
      id: 'safe',
      no: '!',
      name: panelWords.safe,
      content: (
        <Panel id="panel-safe" no="!" title={panelWords.safe}>
          <SafeStrip port={port} onCautions={onCautions} />
        </Panel>
      ),
    });
  }
  if (tellsPart(port.scenario)) {
    items.push({
      id: 'part',
      no: 10,
      name: partWords.side,
      content: (
        <Panel id="panel-part" no={10} title={slugPartTitle(words, port.receiver, slug)}>
          <SlugPartFigure port={port} shown={part} width={190} height={108} />
        </Panel>
      ),
    });
  }
  return (
    <>
      {panels.tube === null ? null : tube}
      <Shelf shelf={shelf} tabs={tabs} items={items} first={first} />
    </>
  );
}

export const Instruments = memo(InstrumentsBase);
