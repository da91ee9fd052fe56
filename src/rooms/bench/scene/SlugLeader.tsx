/** What joins the selected slug to its magnified view: two lines like a zoom cone where there is room, else one line from the letter. */
import { useMemo } from 'preact/hooks';
import { C, r1 } from '../../../kit/theme/ink.ts';
import type { ChassisPlaces, SlugPlace } from '../../../present/chassisPlaces.ts';
import type { Receiver } from '../../../receiver/receiver.ts';
import type { BenchLayout } from '../layout.ts';
import { ringOnPage } from './insetPlaces.ts';
import { leaderRoute } from './leaderRoute.ts';

export interface SlugLeaderProps {
  readonly layout: BenchLayout;
  readonly receiver: Receiver;
  readonly places: ChassisPlaces;
  readonly place: SlugPlace | undefined;
}

export function SlugLeader({ layout, receiver, places, place }: SlugLeaderProps) {
  const d = useMemo(() => {
    if (place === undefined) return '';
    if (layout.leader === 'cone') return cone(layout, place);
    return leaderRoute(layout, receiver, places, place)
      .map((p, i) => `${i ? 'L' : 'M'}${r1(p.x)} ${r1(p.y)}`)
      .join('');
  }, [layout, receiver, places, place]);
  if (d === '') return null;
  return (
    <svg class="slug-leader" width={layout.page.width} height={layout.page.height} aria-hidden="true" focusable="false">
      <path d={d} fill="none" stroke={C.paper} stroke-width="4.5" opacity=".85" />
      <path d={d} fill="none" stroke={C.rust} stroke-width="1.5" />
    </svg>
  );
}

function cone({ chassis, ...layout }: BenchLayout, { hole, holeRadius }: SlugPlace): string {
  const ring = ringOnPage({ chassis, ...layout });
  const x = chassis.x + hole.x * chassis.scale;
  const y = chassis.y + hole.y * chassis.scale;
  const small = (holeRadius + 6) * chassis.scale;
  const away = Math.atan2(ring.y - y, ring.x - x);
  // Common outer tangents of the two circles.
  const lean = Math.acos(Math.max(-1, Math.min(1, (small - ring.r) / (Math.hypot(ring.x - x, ring.y - y) || 1))));
  return [lean, -lean]
    .map((turn) => {
      const c = Math.cos(away + turn);
      const s = Math.sin(away + turn);
      return `M${r1(x + small * c)} ${r1(y + small * s)}L${r1(ring.x + ring.r * c)} ${r1(ring.y + ring.r * s)}`;
    })
    .join('');
}
