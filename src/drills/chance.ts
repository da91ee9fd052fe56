/** Chance of a look: from the text of its seed alone, so that the same address gives the same looks everywhere. */
import { seededRandom } from '../base/random.ts';

export type Chance = () => number;

export const chanceOf = (seed: string): Chance => seededRandom(numberOf(seed));

export const pick = <T>(from: readonly T[], chance: Chance): T => from[Math.floor(chance() * from.length)]!;

export const between = (low: number, high: number, chance: Chance): number => low + (high - low) * chance();

/** Shuffled. */
export const shuffled = <T>(all: readonly T[], chance: Chance): T[] =>
  all
    .map((one) => [chance(), one] as const)
    .sort(([a], [b]) => a - b)
    .map(([, one]) => one);

/** A whole number from a text (FNV-1a, 32 bit; Fowler, Noll, Vo; from memory). */
function numberOf(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return hash | 0;
}
