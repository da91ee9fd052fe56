/**
 * Seeded chance: the sfc32 generator (Chris Doty-Humphrey's small fast counter, 32 bit; public domain, from memory).
 * All randomness in the project comes from here, so that the same seed gives the same run on every machine.
 */

/** Returns a function that gives uniform numbers in [0, 1). `seed` is any integer. */
export function seededRandom(seed: number): () => number {
  let a = seed | 0;
  let b = (seed ^ 0x9e3779b9) | 0;
  let c = 0x243f6a88;
  let counter = 1;
  const next = (): number => {
    const t = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = ((c << 21) | (c >>> 11)) + t;
    c |= 0;
    return (t >>> 0) / 4294967296;
  };
  // The first outputs still show the seed; the author's own code discards twelve.
  for (let i = 0; i < 12; i++) next();
  return next;
}
