/** The head of the chosen slug in its hole on the chassis: it turns with the hand, so it is painted on a canvas of its own, with what lies on it. */
import { useMemo } from 'preact/hooks';
import { holeHead } from '../../../kit/chassis/slugHole.ts';
import { inkPainter } from '../../../kit/theme/inkCanvas.ts';
import type { BenchPort } from '../../../present/ports.ts';
import type { Adjuster } from '../../../receiver/receiver.ts';
import { placed } from './SceneHead.tsx';
import { headDegrees, holeCrack, holeTool } from './slugArt.ts';
import { usePaint } from './useBench.ts';
import { useTurningCanvas } from './useTurningCanvas.ts';

export interface TurningHeadProps {
  readonly port: BenchPort;
  readonly adjuster: Adjuster;
  /** of the hole, in the plan's units */
  readonly r: number;
  /** CSS pixels to a unit of the plan */
  readonly scale: number;
  /** the hole's middle, px from the corner of the slug's target */
  readonly x: number;
  readonly y: number;
  readonly startTurns: number;
  readonly toolIn: boolean;
}

export function TurningHead({ port, adjuster, r, scale, x, y, startTurns, toolIn }: TurningHeadProps) {
  const art = useMemo(
    () => ({
      head: inkPainter(holeHead(r, adjuster.head)),
      tool: inkPainter(holeTool(r)),
      crack: inkPainter(holeCrack(r)),
    }),
    [r, adjuster.head],
  );
  // A whole number of pixels each way, so that its middle falls where the hole's does.
  const half = Math.ceil(1.6 * r * scale);
  const reach = half / scale;
  const { canvas, follow } = useTurningCanvas(
    { x: -reach, y: -reach, width: 2 * reach, height: 2 * reach },
    scale,
    () => {
      const { screwTurns, cracked } = port.state().slugs[adjuster.id]!;
      const degrees = headDegrees(screwTurns - startTurns);
      return {
        stands: `${degrees} ${toolIn} ${cracked}`,
        paint: (context) => {
          context.save();
          context.rotate((degrees * Math.PI) / 180);
          art.head(context);
          context.restore();
          if (toolIn) art.tool(context);
          if (cracked) art.crack(context);
        },
      };
    },
    [art, startTurns, toolIn],
  );
  usePaint(port, follow, [follow]);
  return (
    <canvas
      class="turning-head"
      ref={canvas}
      style={placed({ x: x - half, y: y - half, width: 2 * half, height: 2 * half })}
    />
  );
}
