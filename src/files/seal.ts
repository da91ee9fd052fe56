/**
 * The seal on a list of events: `count:set:chain`. The chain is a hash that depends on every event and on their order,
 * the set on every event but not on the order, the count on neither. Together they tell a cut, a shuffled and a changed
 * list apart. It guards against accidents and idle hands; anybody can make a new seal, so the score is what decides.
 */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { hashOf } from './hash.ts';
import type { TimedEvent } from './runFile.ts';

export interface Seal {
  readonly count: number;
  readonly set: string;
  readonly chain: string;
}

export const SEAL_PATTERN = /^(0|[1-9]\d{0,6}):([0-9a-f]{64}):([0-9a-f]{64})$/;

export function sealEvents(events: readonly TimedEvent[]): string {
  const leaves = events.map((event) => hashOf(event));
  let chain = hexOf('haystack-run');
  for (const leaf of leaves) chain = hexOf(chain + leaf);
  const set = hexOf([...leaves].sort().join(''));
  return `${events.length}:${set}:${chain}`;
}

export function readSeal(text: string): Seal | null {
  const match = SEAL_PATTERN.exec(text);
  if (match === null) return null;
  return { count: Number(match[1]), set: match[2]!, chain: match[3]! };
}

function hexOf(text: string): string {
  return bytesToHex(sha256(utf8ToBytes(text)));
}
