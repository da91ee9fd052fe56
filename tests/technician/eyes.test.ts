/** What a person's eye makes of a line that is thick with noise. */
import { describe, expect, it } from 'vitest';
import { apartDiv, SHOWS_DIV } from '../../src/technician/person/diagnosis.ts';
import { grassOnLine, type Sight, swing, withoutNoise } from '../../src/technician/person/eyes.ts';

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

describe('two pictures of the same set', () => {
  const N = 1024;
  /** A line at a height, with grass on it that stands the other way at every second point, or every first. */
  const sight = (height: number, grass: number, from = 0): Sight => {
    const yDiv = Float64Array.from({ length: N }, (_, i) => height + ((i + from) % 2 === 0 ? grass : -grass));
    const xDiv = yDiv.map((_, i) => i);
    return { forward: { xDiv, yDiv }, back: { xDiv, yDiv } };
  };

  it('are alike, however the grass on them stands', () => {
    expect(apartDiv(sight(1, 0.3), sight(1, 0.3, 1))).toBeLessThan(SHOWS_DIV / 10);
  });

  it('differ where the line has moved, or has left the graticule in one', () => {
    expect(apartDiv(sight(1, 0.3), sight(1.4, 0.3))).toBeCloseTo(0.4, 5);
    expect(apartDiv(sight(1, 0), sight(Number.NaN, 0))).toBe(1);
  });
});

describe('grass', () => {
  const N = 64;
  /** What stands on the face: the trace at three divisions, the base line at -2 with so much grass. */
  const hands = (grass: number): Parameters<typeof grassOnLine>[0] => {
    const data = new Float32Array(6 * N);
    for (let i = 0; i < 2 * N; i++) data[3 * i + 1] = i < N ? 3 : -2 + (i % 2 === 0 ? grass : -grass);
    const display = { beam: { data, count: 2 * N } };
    return {
      look: () => display as ReturnType<Parameters<typeof grassOnLine>[0]['look']>,
      knobs: () => ({ yVoltsPerDiv: 0.5 }) as ReturnType<Parameters<typeof grassOnLine>[0]['knobs']>,
    };
  };

  it('is how far the base line strays, in volts', () => {
    expect(grassOnLine(hands(0.4))).toBeCloseTo(0.2, 5);
    expect(grassOnLine(hands(0))).toBe(0);
  });
});
