/**
 * Judges a run file: is it whole, is it of this bench, could it have happened, and does it earn what it claims?
 * The order of the questions matters: the first that fails names the verdict. A forged file may carry a fresh seal;
 * then the bench decides whether it could happen, and the score decides the rest.
 */
import { ENGINE, ENGINES, RULES_VERSION, type RulesVersion } from '../base/engine.ts';
import type { Phrase } from '../base/phrases.ts';
import type { Problem } from '../base/result.ts';
import type { Refusal } from '../bench/benchEvent.ts';
import type { BenchSetup } from '../bench/setup.ts';
import { hashOf } from '../files/hash.ts';
import type { ClaimedScore, RunFile, TimedEvent } from '../files/runFile.ts';
import { scenarioHash } from '../files/scenarioFile.ts';
import { headHash, readSeal, sealEvents } from '../files/seal.ts';
import { onlyTextsDiffer, onlyWordsDiffer } from './earlierWords.ts';
import { type TooFast, tooFast } from './pace.ts';
import { replay } from './replay.ts';
import { receiverHash } from './serialise.ts';

/** A name, a number or a hash as it stands, or what a problem of the file says. */
export type VerdictDetail = string | Phrase;

export type ForeignPart = 'version' | 'engine' | 'rules' | 'noReceiver' | 'receiver' | 'scenario';

/** One line of the score that is not as claimed; null = not there at all. */
export interface LineDifference {
  readonly id: string;
  readonly claimed: number | null;
  readonly recomputed: number | null;
}

export type Verdict =
  | { readonly kind: 'verified'; readonly score: ClaimedScore }
  /** all in order, but the run was not finished and claims nothing; `score` is what it earns as it stands, and passes nothing */
  | { readonly kind: 'unclaimed'; readonly score: ClaimedScore }
  | {
      readonly kind: 'scoreDiffers';
      readonly claimed: ClaimedScore;
      readonly recomputed: ClaimedScore;
      readonly lines: readonly LineDifference[];
    }
  /** signed off, but the claim is not there: somebody took it out, as no seal covers it */
  | { readonly kind: 'claimMissing'; readonly score: ClaimedScore }
  | { readonly kind: 'eventsChanged' }
  /** the events are whole, but what the file says of itself (who, when, which) is not what was sealed with them */
  | { readonly kind: 'headChanged' }
  /** `recorded` is how many events the seal speaks of; null = the seal fits, but the run was never signed off */
  | { readonly kind: 'truncated'; readonly found: number; readonly recorded: number | null }
  /** `index` is the first event that stands before its time; null = the times run on, but the order is not the recorded one */
  | { readonly kind: 'reordered'; readonly index: number | null }
  | {
      readonly kind: 'foreign';
      readonly part: ForeignPart;
      readonly found: VerdictDetail;
      readonly wanted: VerdictDetail;
    }
  | {
      readonly kind: 'impossibleEvent';
      readonly index: number;
      readonly atMs: number;
      readonly type: TimedEvent['type'];
      readonly reason: Refusal;
    }
  /** faster than hands can work */
  | ({ readonly kind: 'tooFast' } & TooFast)
  | { readonly kind: 'unreadable'; readonly problems: readonly Problem[] };

/** What the run is held against: the receiver as this bench knows it. */
export interface KnownBench {
  readonly receiver: BenchSetup['receiver'];
  readonly deck: BenchSetup['deck'];
  /** the hash of the scenario as it was handed out; null = any scenario that is whole will do */
  readonly scenarioHash: string | null;
  /** the last rules under which attempts were dealt as this one; left out: they are dealt so today */
  readonly lastRules?: RulesVersion;
}

export type Recompute = (setup: BenchSetup, events: readonly TimedEvent[]) => ClaimedScore;

/** `setup`: the set that the run was done on, where it is not the design itself. */
export function verifyRun(
  file: RunFile,
  bench: KnownBench,
  recompute: Recompute,
  setup: BenchSetup = { receiver: bench.receiver, deck: bench.deck, scenario: file.scenario },
): Verdict {
  return (
    foreignPart(file, bench) ?? sealBroken(file) ?? impossible(file, setup) ?? scoreVerdict(file, setup, recompute)
  );
}

/** Of another bench, receiver or scenario: told without a set to do the run on. */
export function foreignPart(file: RunFile, bench: KnownBench): Verdict | null {
  const foreign = (part: ForeignPart, found: string, wanted: string): Verdict | null =>
    found === wanted ? null : { kind: 'foreign', part, found, wanted };
  const today = scenarioHash(file.scenario);
  // A scenario of an older version stands under the hash that it had then, and is held against the one of today by what it says.
  const inside = file.handed === undefined ? today : hashOf(file.handed);
  const own = file.handed === undefined ? file.scenarioHash : today;
  return (
    // One of before is done again on the bench that it was done on (bench/benchModel.ts).
    (ENGINES.some((one) => one === file.engine) ? null : foreign('engine', file.engine, ENGINE)) ??
    // A run of before is judged by the rules that it was made under.
    (file.rules <= RULES_VERSION ? null : foreign('rules', `${file.rules}`, `${RULES_VERSION}`)) ??
    foreign('receiver', file.scenario.receiver, bench.receiver.id) ??
    (onlyWordsDiffer(file.receiverHash, bench) ? null : foreign('receiver', file.receiverHash, receiverHash(bench))) ??
    foreign('scenario', inside, file.scenarioHash) ??
    (bench.scenarioHash === null || onlyTextsDiffer(own, bench.scenarioHash)
      ? null
      : foreign('scenario', own, bench.scenarioHash)) ??
    // Nobody can choose to have an attempt dealt as it was before: under the rules of today it tells too much.
    (bench.lastRules === undefined || file.rules <= bench.lastRules
      ? null
      : foreign('scenario', own, `rules ${bench.lastRules}`))
  );
}

function sealBroken(file: RunFile): Verdict | null {
  const recorded = readSeal(file.seal);
  const found = readSeal(sealEvents(file.events));
  if (recorded === null || found === null) return { kind: 'eventsChanged' };
  const index = firstBeforeItsTime(file.events);
  if (found.set === recorded.set && (found.chain !== recorded.chain || index !== null))
    return { kind: 'reordered', index };
  if (found.count < recorded.count) return { kind: 'truncated', found: found.count, recorded: recorded.count };
  if (found.count !== recorded.count || found.chain !== recorded.chain) return { kind: 'eventsChanged' };
  if (recorded.head !== null && recorded.head !== headHash(file, found.chain)) return { kind: 'headChanged' };
  return null;
}

function firstBeforeItsTime(events: readonly TimedEvent[]): number | null {
  const index = events.findIndex((event, i) => i > 0 && event.atMs < events[i - 1]!.atMs);
  return index < 0 ? null : index;
}

function impossible(file: RunFile, setup: BenchSetup): Verdict | null {
  const { state, refused } = replay(setup, file.events);
  if (refused !== null) {
    const event = file.events[refused.index]!;
    return {
      kind: 'impossibleEvent',
      index: refused.index,
      atMs: event.atMs,
      type: event.type,
      reason: refused.reason,
    };
  }
  const fast = tooFast(file.events);
  if (fast !== null) return { kind: 'tooFast', ...fast };
  const limit = setup.scenario.timeLimitSeconds;
  const over = state.signedOff || state.stopped !== null || (limit !== null && state.seconds >= limit);
  if (file.claimed !== null && !over) return { kind: 'truncated', found: file.events.length, recorded: null };
  return null;
}

function scoreVerdict(file: RunFile, setup: BenchSetup, recompute: Recompute): Verdict {
  const score = recompute(setup, file.events);
  const claimed = file.claimed;
  if (neverSigned(file)) return { kind: 'unclaimed', score: unsigned(score) };
  if (claimed === null) return { kind: 'claimMissing', score };
  const lines = differences(claimed, score);
  if (lines.length === 0 && claimed.total === score.total && claimed.passed === score.passed) {
    return { kind: 'verified', score };
  }
  return { kind: 'scoreDiffers', claimed, recomputed: score, lines };
}

/** It claims nothing, and nobody signed it off. */
export const neverSigned = ({ claimed, events }: Pick<RunFile, 'claimed' | 'events'>): boolean =>
  claimed === null && events.at(-1)?.type !== 'signedOff';

/** Nothing is passed that was never signed off, whatever its points. */
export function unsigned(score: ClaimedScore): ClaimedScore {
  return { ...score, passed: false };
}

function differences(claimed: ClaimedScore, recomputed: ClaimedScore): readonly LineDifference[] {
  const before = new Map(claimed.lines.map((line) => [line.id, line.points]));
  const after = new Map(recomputed.lines.map((line) => [line.id, line.points]));
  const ids = new Set([...before.keys(), ...after.keys()]);
  return [...ids]
    .map((id) => ({ id, claimed: before.get(id) ?? null, recomputed: after.get(id) ?? null }))
    .filter((line) => line.claimed !== line.recomputed);
}
