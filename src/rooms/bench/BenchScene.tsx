/** The receiver's side of the bench: leads, chassis with its slugs, the magnified slug, the tools. Knows which slug is chosen. */
import { memo } from 'preact/compat';
import { useState } from 'preact/hooks';
import type { BenchPort } from '../../present/ports.ts';
import type { BenchLayout } from './layout.ts';
import { ChassisScene } from './scene/ChassisScene.tsx';
import { LeadsLayer } from './scene/LeadsLayer.tsx';
import { SlugInset } from './scene/SlugInset.tsx';
import { ToolRack } from './scene/ToolRack.tsx';

interface BenchSceneProps {
  readonly port: BenchPort;
  readonly layout: BenchLayout;
  /** a lead was let go beside every point */
  readonly onMiss: () => void;
}

function BenchSceneBase({ port, layout, onMiss }: BenchSceneProps) {
  const [selected, setSelected] = useState<string | null>(() => port.state().toolIn);
  return (
    <>
      <LeadsLayer port={port} layout={layout} onMiss={onMiss} />
      <ChassisScene port={port} layout={layout} selected={selected} onSelect={setSelected} />
      <SlugInset port={port} layout={layout} selected={selected} />
      <ToolRack port={port} layout={layout} />
    </>
  );
}

export const BenchScene = memo(BenchSceneBase);
