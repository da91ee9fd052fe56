/** The letters by which slugs are called: A, B, C... in the order of the receiver file, without I and O, which read as figures. */
import type { Adjuster } from '../../../receiver/receiver.ts';

const ALPHABET = 'ABCDEFGHJKLMNPQRSTUVWXYZ';

export function slugLetters(adjusters: readonly Pick<Adjuster, 'id'>[]): ReadonlyMap<string, string> {
  return new Map(adjusters.map(({ id }, i) => [id, ALPHABET[i % ALPHABET.length]!]));
}
