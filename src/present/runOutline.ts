/** A run in a few lines: what was done, in its order, each slug with its turns; and the turns made by then. What a hand does to read a curve (gain, level, place of the picture) is left out between two slugs. Pure. */
import type { BenchEvent } from '../bench/benchEvent.ts';
import type { TimedEvent } from '../files/runFile.ts';

export type OutlineAct =
  | { readonly kind: 'safe' | 'connect' | 'setUp' | 'asFound' | 'proof' | 'diagnosis' | 'hint' | 'helper' | 'signed' }
  | { readonly kind: 'slug'; readonly slug: string; readonly turns: number; readonly made: number }
  | { readonly kind: 'part'; readonly part: string };

export interface OutlineStep {
  readonly act: OutlineAct;
  readonly fromSeconds: number;
  readonly toSeconds: number;
}

/** Turned to see, not to set. */
const SIGHT: readonly string[] = ['yVoltsPerDiv', 'yPositionDiv', 'levelDb', 'xGain', 'xPositionDiv', 'blanking'];
const FITTINGS: readonly string[] = ['rfTerminated', 'rfCapacitor', 'yTip'];

export function runOutline(events: readonly TimedEvent[]): readonly OutlineStep[] {
  const steps: OutlineStep[] = [];
  let turned = false;
  for (const event of events) {
    const act = actOf(event, turned);
    if (act === null) continue;
    if (act.kind === 'slug') turned = true;
    const at = event.atMs / 1000;
    const last = steps.at(-1);
    const joined = last === undefined ? null : join(last.act, act);
    if (last !== undefined && joined !== null) steps[steps.length - 1] = { ...last, act: joined, toSeconds: at };
    else steps.push({ act, fromSeconds: at, toSeconds: at });
  }
  return steps;
}

function actOf(event: BenchEvent, turned: boolean): OutlineAct | null {
  switch (event.type) {
    case 'cautionsAcknowledged':
    case 'isolationSwitched':
      return { kind: 'safe' };
    case 'leadConnected':
    case 'leadRemoved':
      return { kind: 'connect' };
    case 'controlSet':
      if (FITTINGS.includes(event.control)) return { kind: 'connect' };
      return turned && SIGHT.includes(event.control) ? null : { kind: 'setUp' };
    case 'crystalPlugged':
    case 'crystalPulled':
      return { kind: 'setUp' };
    case 'slugTurned':
      return { kind: 'slug', slug: event.slug, turns: event.turns, made: Math.abs(event.turns) };
    case 'partReplaced':
      return { kind: 'part', part: event.element };
    case 'findingStated':
      return event.answer === 'again' ? null : { kind: 'proof' };
    case 'asFoundRecorded':
      return { kind: 'asFound' };
    case 'diagnosisStated':
      return { kind: 'diagnosis' };
    case 'hintAsked':
      return { kind: 'hint' };
    case 'setUpByHelper':
      return { kind: 'helper' };
    case 'signedOff':
      return { kind: 'signed' };
    default:
      return null;
  }
}

/** One line for what goes on; null where something else begins. */
function join(last: OutlineAct, next: OutlineAct): OutlineAct | null {
  if (last.kind === 'slug' && next.kind === 'slug')
    return last.slug === next.slug ? { ...last, turns: last.turns + next.turns, made: last.made + next.made } : null;
  if (last.kind === 'part' || last.kind === 'slug') return null;
  return last.kind === next.kind ? last : null;
}

/** Turns made by each moment at which one was made, from nothing. */
export function turnsOverTime(
  events: readonly TimedEvent[],
): readonly { readonly seconds: number; readonly turns: number }[] {
  let turns = 0;
  const points = [{ seconds: 0, turns: 0 }];
  for (const event of events) {
    if (event.type !== 'slugTurned') continue;
    turns += Math.abs(event.turns);
    points.push({ seconds: event.atMs / 1000, turns });
  }
  return points;
}
