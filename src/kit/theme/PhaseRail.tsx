/** The rail of phases: five discs on a line that say where the learner is. */
import { useMemo } from 'preact/hooks';
import { Ink } from './art.tsx';
import { C, line, r1, T } from './ink.ts';
import { tick } from './pieces.ts';
import { squeezedText } from './squeeze.ts';

export interface RailStop {
  readonly name: string;
  readonly done: boolean;
  readonly now: boolean;
}

/** Five discs that report where the learner is. `name` says so to screen readers, as one sentence. */
export function PhaseRail({
  stops,
  name,
  width = 480,
  compact = false,
}: {
  readonly stops: readonly RailStop[];
  readonly name: string;
  readonly width?: number;
  readonly compact?: boolean;
}) {
  const pad = compact ? 20 : 40;
  const height = compact ? 40 : 58;
  const key = stops.map((s) => `${s.name}${s.done}${s.now}`).join('|');
  const svg = useMemo(() => phases(pad, 20, width - 2 * pad, stops, { compact }), [key, width, compact, pad]);
  return <Ink svg={svg} width={width} height={height} label={name} class="phase-rail" />;
}

/** The rail of phases: done petrol with a tick, now rust with an outer ring, to come dotted. `y` is the line of the discs. */
export function phases(
  x: number,
  y: number,
  w: number,
  stops: readonly RailStop[],
  { compact = false }: { readonly compact?: boolean } = {},
): string {
  const step = w / (stops.length - 1);
  let s = '';
  stops.forEach((stop, i) => {
    if (i === stops.length - 1) return;
    const a = x + i * step + 14;
    const b = x + (i + 1) * step - 14;
    s += stop.done
      ? line(a, y, b, y, { sw: 2.2, col: C.petrol, amp: 0.3 })
      : `<path d="M${r1(a)} ${y}H${r1(b)}" stroke="${C.ink}" stroke-width="1.3" stroke-dasharray="2 4"/>`;
  });
  stops.forEach(({ name, done, now }, i) => {
    const cx = x + i * step;
    const fill = now ? C.rust : done ? C.petrol : C.sheet;
    s += `<circle cx="${r1(cx)}" cy="${y}" r="${now ? 13 : 11}" fill="${fill}" stroke="${C.ink}" stroke-width="1.5"/>`;
    if (now) s += `<circle cx="${r1(cx)}" cy="${y}" r="16.5" fill="none" stroke="${C.rust}" stroke-width="1.4"/>`;
    s +=
      done && !now
        ? tick(cx, y, 1, '#fff', 2.2)
        : T(cx, y + 4.8, i + 1, 'co', { anchor: 'middle', fill: now ? '#fff' : C.ink });
    if (!compact)
      s += T(cx, y + 30, name, 'ls', {
        anchor: 'middle',
        more: squeezedText(name, Math.min(step, 2 * x) - 4),
        size: 13,
        weight: now ? 700 : 500,
        ...(done || now ? {} : { fill: C.ink2 }),
      });
  });
  return s;
}
