/**
 * The seal on a run: `count:set:chain:head`. The chain is a hash that depends on every event and on their order, the set on every event but not on
 * the order, the count on neither: together they tell a cut, a shuffled and a changed list apart. The head is a hash of the file's head and of the chain, so
 * that neither another name nor another day can be put over the same events. Files of the first version have no head in their seal.
 * How a seal is made is no secret: it shows that a file agrees with itself, not who wrote it. The score is what decides.
 */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { hashOf } from './hash.ts';
import type { RunHead, TimedEvent } from './runFile.ts';

export interface Seal {
  readonly count: number;
  readonly set: string;
  readonly chain: string;
  /** null: a seal of the first version, over the events alone */
  readonly head: string | null;
}

export const SEAL_PATTERN = /^(0|[1-9]\d{0,6}):([0-9a-f]{64}):([0-9a-f]{64})(?::([0-9a-f]{64}))?$/;

/** The part of the seal that the events alone decide. */
export function sealEvents(events: readonly TimedEvent[]): string {
  const leaves = events.map((event) => hashOf(event));
  let chain = hexOf('haystack-run');
  for (const leaf of leaves) chain = hexOf(chain + leaf);
  const set = hexOf([...leaves].sort().join(''));
  return `${events.length}:${set}:${chain}`;
}

/** `head` may be a whole run file: what has a seal of its own, or a check of its own, is left out. */
export function sealRun(head: RunHead, events: readonly TimedEvent[]): string {
  const sealed = sealEvents(events);
  return `${sealed}:${headHash(head, readSeal(sealed)!.chain)}`;
}

export function headHash(head: RunHead, chain: string): string {
  // The scenario is there by its hash, the claim is held against the events, and the seal cannot cover itself.
  const {
    scenario: _,
    handed: _h,
    events: __,
    claimed: ___,
    seal: ____,
    ...rest
  } = head as RunHead & Record<string, unknown>;
  return hexOf(hashOf(rest) + chain);
}

export function readSeal(text: string): Seal | null {
  const match = SEAL_PATTERN.exec(text);
  if (match === null) return null;
  return { count: Number(match[1]), set: match[2]!, chain: match[3]!, head: match[4] ?? null };
}

function hexOf(text: string): string {
  return bytesToHex(sha256(utf8ToBytes(text)));
}
