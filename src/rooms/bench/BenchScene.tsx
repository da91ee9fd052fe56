/** The receiver's side of the bench: leads, chassis with its slugs, the magnified slug, the tools. */
import { memo } from 'preact/compat';
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
  /** the slug that is chosen, by id */
  readonly selected: string | null;
  readonly onSelect: (slug: string) => void;
}

function BenchSceneBase({ port, layout, onMiss, selected, onSelect }: BenchSceneProps) {
  return (
    <>
      <LeadsLayer port={port} layout={layout} onMiss={onMiss} />
      <ChassisScene port={port} layout={layout} selected={selected} onSelect={onSelect} />
      <SlugInset port={port} layout={layout} selected={selected} />
      <ToolRack port={port} layout={layout} />
    </>
  );
}

export const BenchScene = memo(BenchSceneBase);
