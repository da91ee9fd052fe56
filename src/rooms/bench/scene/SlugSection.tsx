/** The section beside the ring: how deep the core sits and how much thread is left. A lower core is entered from below. */
import { useMemo, useRef } from 'preact/hooks';
import type { BenchState, ToolId } from '../../../bench/benchState.ts';
import type { Rect } from '../../../kit/px.ts';
import { r1 } from '../../../kit/theme/ink.ts';
import type { BenchPort } from '../../../present/ports.ts';
import type { Adjuster } from '../../../receiver/receiver.ts';
import { placed } from './SceneHead.tsx';
import { section } from './slugArt.ts';
import { usePaint } from './useBench.ts';

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
  // In a sealed run no attribute of the drawing is finer than an eye at the can.
  const depthOf = ({ slugs }: BenchState): number =>
    port.scenario.sealed ? Math.round(slugs[adjuster.id]!.screwTurns) : slugs[adjuster.id]!.screwTurns;
  const moving = useRef<SVGGElement>(null);
  const shaft = useRef<SVGGElement>(null);
  usePaint(
    port,
    (state) => {
      const y = art.from + (art.way * depthOf(state)) / adjuster.travelTurns;
      moving.current?.setAttribute('transform', `translate(0 ${r1(y)})`);
      shaft.current?.setAttribute('transform', `translate(0 ${r1(toolIn ? y : y - LIFTED)})`);
    },
    [adjuster.id, art, toolIn],
  );
  const lower = adjuster.plan.hole === 'bottom';
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
          <g ref={moving} dangerouslySetInnerHTML={{ __html: art.moving }} />
          <g ref={shaft} dangerouslySetInnerHTML={{ __html: art.tool }} />
        </g>
      </svg>
    </div>
  );
}
