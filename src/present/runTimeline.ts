/** What the replay's timeline shows, from the run's own events: turns gathered per slug, stops to jump to, phases. Pure. */
import type { Incident } from '../bench/benchState.ts';
import type { TimedEvent } from '../files/runFile.ts';
import type { Phase } from '../session/phase.ts';

/** One spell at a slug: turns for one purpose, with no long pause. */
export interface Spell {
  readonly slug: string;
  readonly fromSeconds: number;
  readonly toSeconds: number;
  /** net turns, positive = in */
  readonly turns: number;
  /** something went wrong at this slug meanwhile */
  readonly harmed: boolean;
}

const PAUSE_SECONDS = 6;
/** two stops nearer than this are one */
const STOP_SECONDS = 0.75;

export function spells(events: readonly TimedEvent[], incidents: readonly Incident[]): readonly Spell[] {
  const open = new Map<string, { slug: string; fromSeconds: number; toSeconds: number; turns: number }>();
  const done: { slug: string; fromSeconds: number; toSeconds: number; turns: number }[] = [];
  for (const event of events) {
    if (event.type !== 'slugTurned') continue;
    const at = event.atMs / 1000;
    const held = open.get(event.slug);
    if (held !== undefined && at - held.toSeconds <= PAUSE_SECONDS) {
      held.toSeconds = at;
      held.turns += event.turns;
      continue;
    }
    const spell = { slug: event.slug, fromSeconds: at, toSeconds: at, turns: event.turns };
    open.set(event.slug, spell);
    done.push(spell);
  }
  return done.map((s) => ({
    ...s,
    harmed: incidents.some(
      (i) => i.subject === s.slug && i.atSeconds >= s.fromSeconds - 0.01 && i.atSeconds <= s.toSeconds + 0.01,
    ),
  }));
}

/** Moments worth stepping to: the end of each spell at a slug and every other act, near ones taken together. */
export function stops(
  events: readonly TimedEvent[],
  incidents: readonly Incident[],
  lengthSeconds: number,
): readonly number[] {
  const moments = [
    0,
    ...spells(events, incidents).map((s) => s.toSeconds),
    ...events.filter((e) => e.type !== 'slugTurned').map((e) => e.atMs / 1000),
    ...incidents.map((i) => i.atSeconds),
    lengthSeconds,
  ].sort((a, b) => a - b);
  return moments.reduce<number[]>((kept, at) => {
    const last = kept[kept.length - 1];
    // Of two that are close, the later: what was done has then been done.
    if (last !== undefined && kept.length > 1 && at - last < STOP_SECONDS) kept[kept.length - 1] = at;
    else if (last === undefined || at > last) kept.push(at);
    return kept;
  }, []);
}

export const stopBefore = (list: readonly number[], seconds: number): number =>
  [...list].reverse().find((s) => s < seconds - 0.25) ?? 0;
export const stopAfter = (list: readonly number[], seconds: number): number =>
  list.find((s) => s > seconds + 0.01) ?? list[list.length - 1] ?? 0;

/** How many events have happened by a time: the picture is the same for equal counts. */
export function eventsBy(events: readonly TimedEvent[], seconds: number): number {
  const ms = Math.round(seconds * 1000);
  let low = 0;
  let high = events.length;
  while (low < high) {
    const mid = (low + high) >> 1;
    if (events[mid]!.atMs <= ms) low = mid + 1;
    else high = mid;
  }
  return low;
}

/** The slug that was turned last among the first `count` events; null before any. */
export function slugInHand(events: readonly TimedEvent[], count: number): string | null {
  for (let i = count - 1; i >= 0; i--) {
    const event = events[i]!;
    if (event.type === 'slugTurned') return event.slug;
  }
  return null;
}

export interface PhaseSpan {
  readonly phase: Phase;
  readonly fromSeconds: number;
  readonly toSeconds: number;
}

/** Moments at which to ask for the phase: after acts that can end one, at most `most` of them, evenly thinned. */
export function phaseProbes(events: readonly TimedEvent[], lengthSeconds: number, most: number): readonly number[] {
  const times = [0, ...events.map((e) => e.atMs / 1000), lengthSeconds];
  const kept: number[] = [];
  const stride = Math.max(1, Math.ceil(times.length / most));
  for (let i = 0; i < times.length; i += stride) kept.push(times[i]!);
  if (kept[kept.length - 1] !== lengthSeconds) kept.push(lengthSeconds);
  return [...new Set(kept)];
}

/** Spells of a phase shorter than this share of the run are a glance aside, not a phase. */
const GLANCE_SHARE = 0.03;

/** Answers to the probes, joined into spans; what lasted a glance goes to its neighbour. */
export function phaseSpans(
  probes: readonly { readonly atSeconds: number; readonly phase: Phase }[],
  lengthSeconds: number,
): readonly PhaseSpan[] {
  let spans = joined(
    probes.map(({ atSeconds, phase }, i) => ({
      phase,
      fromSeconds: atSeconds,
      toSeconds: probes[i + 1]?.atSeconds ?? lengthSeconds,
    })),
  );
  for (;;) {
    const length = (s: PhaseSpan): number => s.toSeconds - s.fromSeconds;
    const shortest = spans.reduce<PhaseSpan | null>((a, b) => (a === null || length(b) < length(a) ? b : a), null);
    if (shortest === null || spans.length === 1 || length(shortest) >= GLANCE_SHARE * lengthSeconds) return spans;
    const at = spans.indexOf(shortest);
    const neighbour = spans[at === 0 ? 1 : at - 1]!;
    spans = joined(spans.map((s) => (s === shortest ? { ...s, phase: neighbour.phase } : s)));
  }
}

function joined(spans: readonly PhaseSpan[]): PhaseSpan[] {
  const out: PhaseSpan[] = [];
  for (const span of spans) {
    const last = out[out.length - 1];
    if (last?.phase === span.phase) out[out.length - 1] = { ...last, toSeconds: span.toSeconds };
    else if (span.toSeconds > span.fromSeconds) out.push(span);
  }
  return out;
}
