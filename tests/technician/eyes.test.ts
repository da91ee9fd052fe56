/** What a person's eye makes of a line that is thick with noise. */
import { describe, expect, it } from 'vitest';
import { swing, withoutNoise } from '../../src/technician/person/eyes.ts';

/** Mean of the envelope of a sine of amplitude `a` in noise of one volt rms: the integral of Rice's distribution (S. O. Rice, 1945, from memory), by the angle and the radius. */
function meanEnvelope(a: number): number {
  let sum = 0;
  const step = 0.05;
  for (let x = -8; x <= 8; x += step) {
    for (let y = -8; y <= 8; y += step)
      sum += (Math.hypot(a + x, y) * Math.exp(-(x * x + y * y) / 2) * step * step) / (2 * Math.PI);
  }
  return sum;
}

describe('a height read over noise', () => {
  const lift = meanEnvelope(0);

  it('of noise alone is the root of half pi', () => {
    expect(lift).toBeCloseTo(Math.sqrt(Math.PI / 2), 3);
  });

  it.each([2, 3, 6])('a carrier of %d times the noise is read within four per cent', (a) => {
    const read = withoutNoise(meanEnvelope(a), lift);
    expect(Math.abs(read / a - 1)).toBeLessThan(0.04);
    // Against the base line it would be read low by nearly all of the lift.
    expect(Math.abs(meanEnvelope(a) - lift - a)).toBeGreaterThan(5 * Math.abs(read - a));
  });

  it('rises with the line, and is nothing where the line lies on the base', () => {
    expect(withoutNoise(2, 2)).toBe(0);
    const seen = Array.from({ length: 40 }, (_, i) => withoutNoise(2 + i / 10, 2));
    for (let i = 1; i < seen.length; i++) expect(seen[i]).toBeGreaterThan(seen[i - 1]!);
    expect(withoutNoise(-6, -2)).toBe(-withoutNoise(6, 2));
  });
});

describe('how far a line swings', () => {
  it('is that of its middle, not of the grass on it', () => {
    const wave = (grass: number, hum: number): Float64Array =>
      Float64Array.from(
        { length: 1024 },
        (_, i) => hum * Math.sin((Math.PI * i) / 512) + (i % 2 === 0 ? grass : -grass),
      );
    const xDiv = wave(0, 0).map((_, i) => i);
    expect(swing({ xDiv, yDiv: wave(0.3, 0) })).toBe(0);
    expect(swing({ xDiv, yDiv: wave(0.3, 0.5) })).toBeCloseTo(1, 5);
  });
});
