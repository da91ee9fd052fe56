/** The section beside the ring: how deep the core sits and how much thread is left. A lower core is entered from below. */
import { useMemo } from 'preact/hooks';
import type { BenchState, ToolId } from '../../../bench/benchState.ts';
import { type Rect, size } from '../../../kit/px.ts';
import { r1 } from '../../../kit/theme/ink.ts';
import { inkPainter } from '../../../kit/theme/inkCanvas.ts';
import type { BenchPort } from '../../../present/ports.ts';
import type { Adjuster } from '../../../receiver/receiver.ts';
import { placed } from './SceneHead.tsx';
import { section } from './slugArt.ts';
import { usePaint } from './useBench.ts';
import { useTurningCanvas } from './useTurningCanvas.ts';

/** px that a tool held above its core keeps away */
const LIFTED = 16;
/** px by which the tool may stick out of the box */
const OVER = 12;

export function SlugSection({
  port,
  adjuster,
  rect,
  tool,
  toolIn,
}: {
  readonly port: BenchPort;
  readonly adjuster: Adjuster;
  readonly rect: Rect;
  readonly tool: ToolId | null;
  readonly toolIn: boolean;
}) {
  const art = useMemo(() => section(rect.width, rect.height, tool), [rect.width, rect.height, tool]);
  // In a sealed run nothing in the drawing is finer than an eye at the can.
  const depthOf = ({ slugs }: BenchState): number =>
    port.scenario.sealed ? Math.round(slugs[adjuster.id]!.screwTurns) : slugs[adjuster.id]!.screwTurns;
  const lower = adjuster.plan.hole === 'bottom';
  const ink = useMemo(() => ({ moving: inkPainter(art.moving), tool: inkPainter(art.tool) }), [art]);
  const { canvas, follow } = useTurningCanvas(
    { x: 0, y: -OVER, width: rect.width + 20, height: rect.height + 2 * OVER },
    1,
    () => {
      const y = r1(art.from + (art.way * depthOf(port.state())) / adjuster.travelTurns);
      return {
        stands: String(y),
        paint: (context) => {
          if (lower) context.transform(1, 0, 0, -1, 0, rect.height);
          context.translate(0, y);
          ink.moving(context);
          if (!toolIn) context.translate(0, -LIFTED);
          ink.tool(context);
        },
      };
    },
    [adjuster.id, ink, toolIn, lower],
  );
  usePaint(port, follow, [follow]);
  return (
    <div class="inset-part" style={placed(rect)}>
      <svg
        class="section"
        width={rect.width + 20}
        height={rect.height + 2 * OVER}
        viewBox={`0 ${-OVER} ${rect.width + 20} ${rect.height + 2 * OVER}`}
        aria-hidden="true"
        focusable="false"
      >
        <g {...(lower ? { transform: `translate(0 ${rect.height}) scale(1 -1)` } : {})}>
          <g dangerouslySetInnerHTML={{ __html: art.still }} />
        </g>
      </svg>
      <canvas class="section" ref={canvas} style={size(rect.width + 20, rect.height + 2 * OVER)} />
    </div>
  );
}
