/** The tube's light keeps to physics: energy is conserved, brightness follows dwell, afterglow decays as its constant says. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { RESTING_CONTROLS } from '../../src/bench/setup.ts';
import { beamBlur, beamBrightness, createFaceLight, type FaceLight, paintFrame } from '../../src/kit/tube/faceLight.ts';
import { LUT_SIZE, Phosphor } from '../../src/kit/tube/phosphor.ts';
import { LAYERS, lightTable } from '../../src/kit/tube/phosphorKinds.ts';

const GREY = new Uint32Array(LUT_SIZE).map((_, i) => i);

const small = (extra: Partial<ConstructorParameters<typeof Phosphor>[0]> = {}): Phosphor =>
  new Phosphor({ width: 320, height: 256, pixelsPerDiv: 30, tauSeconds: 0.08, gain: 1, halo: 0, lut: GREY, ...extra });

const total = (p: Phosphor): number => p.energy.reduce((sum, v) => sum + v, 0);

/** Straight strokes from point to point, each with its energy. */
const beam = (...points: readonly (readonly [x: number, y: number, energy: number])[]) => ({
  data: Float32Array.from(points.flat()),
  count: points.length,
});

describe('deposit', () => {
  it('conserves the energy of any stroke that stays on the face', () => {
    const place = fc.tuple(
      fc.double({ min: -4.8, max: 4.8, noNaN: true }),
      fc.double({ min: -3.8, max: 3.8, noNaN: true }),
    );
    fc.assert(
      fc.property(
        fc.array(fc.tuple(place, fc.double({ min: 0.01, max: 5, noNaN: true })), { minLength: 2, maxLength: 20 }),
        (strokes) => {
          const p = small();
          const { data, count } = beam(...strokes.map(([[x, y], e]) => [x, y, e] as const));
          p.deposit(data, count);
          // The last point only ends the last stroke.
          const sent = strokes.slice(0, -1).reduce((sum, [, e]) => sum + e, 0);
          // Single precision sums over some thousand pixels.
          expect(Math.abs(total(p) / sent - 1)).toBeLessThan(1e-4);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('makes a beam that is three times slower three times brighter', () => {
    // The same energy a second: in equal times the slow beam goes 2 divisions, the fast one 6.
    const p = small();
    const slow = beam([-4, 1, 1], [-2, 1, 0]);
    const fast = beam([-3, -1, 1], [3, -1, 0]);
    p.deposit(slow.data, slow.count);
    p.deposit(fast.data, fast.count);
    const column = (xDiv: number, yDiv: number): number => {
      const x = Math.round(160 + xDiv * 30);
      let sum = 0;
      for (let dy = -6; dy <= 6; dy++) sum += p.energy[(Math.round(128 - yDiv * 30) + dy) * 320 + x]!;
      return sum;
    };
    expect(column(-3, 1) / column(0, -1)).toBeCloseTo(3, 2);
  });

  it('draws up as up and right as right', () => {
    const p = small();
    const { data, count } = beam([3, 2, 1], [3.01, 2, 0]);
    p.deposit(data, count);
    const brightest = p.energy.indexOf(p.energy.reduce((a, b) => Math.max(a, b), 0));
    expect(Math.abs((brightest % 320) - (160 + 90))).toBeLessThanOrEqual(1);
    expect(Math.abs(Math.floor(brightest / 320) - (128 - 60))).toBeLessThanOrEqual(1);
  });

  it('adds nothing for a blanked beam, one off the face, or one that is nowhere', () => {
    for (const points of [
      beam([-4, 0, 0], [4, 0, 0]),
      beam([40, 40, 1], [60, 40, 0]),
      beam([Number.NaN, 0, 1], [1, 0, 0]),
      beam([0, Number.POSITIVE_INFINITY, 1], [1, 0, 0]),
    ]) {
      const p = small();
      p.deposit(points.data, points.count);
      expect(total(p)).toBe(0);
    }
  });

  it('spreads a wider spot over more glass without losing energy', () => {
    const sharp = small();
    const wide = small();
    wide.setSpot(sharp.sharpSigma * 3);
    const { data, count } = beam([-2, 0, 1], [2, 0, 0]);
    sharp.deposit(data, count);
    wide.deposit(data, count);
    const peak = (p: Phosphor): number => p.energy.reduce((a, b) => Math.max(a, b), 0);
    expect(total(wide)).toBeCloseTo(total(sharp), 3);
    expect(peak(wide)).toBeLessThan(0.45 * peak(sharp));
  });
});

describe('fade', () => {
  it('leaves 1/e after one time constant, whatever the steps', () => {
    for (const steps of [1, 7, 60]) {
      const p = small();
      const { data, count } = beam([-3, 0, 900], [3, 0, 0]);
      p.deposit(data, count);
      const before = total(p);
      for (let i = 0; i < steps; i++) p.fade(0.08 / steps);
      expect(total(p) / before).toBeCloseTo(Math.exp(-1), 3);
    }
  });

  it('goes to nothing at all, without a stuck ghost', () => {
    const p = small();
    const { data, count } = beam([-3, 0, 900], [3, 0, 0]);
    p.deposit(data, count);
    for (let i = 0; i < 120; i++) p.fade(0.02);
    expect(total(p)).toBe(0);
  });
});

describe('paint', () => {
  it('leaves out only what is dark: the picture is that of a glass painted whole, wherever the beam has been', () => {
    const look = { halo: 0.5, lut: lightTable(LAYERS.P7[0]!), gain: 300, tauSeconds: 0.05 };
    const [p, twin] = [small(look), small(look)];
    const words = new Uint32Array(320 * 256);
    const pictures = new Set<number>();
    for (let frame = 0; frame < 60; frame++) {
      const x = 5 * Math.sin(frame / 3);
      const { data, count } = beam([x, -3, 1], [x / 2, 3, 1], [-x, -3.9, 0]);
      for (const each of [p, twin]) {
        each.setSpot(p.sharpSigma * (frame % 20 > 15 ? 3 : 1));
        each.fade(1 / 60);
        if (frame % 30 < 15) each.deposit(data, count);
        if (frame === 50) each.clear();
      }
      p.paint(words);
      // A twin that has had the same light is given a new glass each time, which has to be painted from end to end.
      const whole = new Uint32Array(320 * 256);
      twin.paint(whole);
      expect(Buffer.compare(Buffer.from(words.buffer), Buffer.from(whole.buffer)), `frame ${frame}`).toBe(0);
      pictures.add(words.reduce((sum, w) => sum + (w >>> 24), 0));
    }
    expect(pictures.size).toBeGreaterThan(30);
  });

  it('fades and paints light in every corner of the glass', () => {
    for (const [x, y] of [
      [5.2, 4.1],
      [-5.2, 4.1],
      [5.2, -4.1],
      [-5.2, -4.1],
    ] as const) {
      const p = small({ lut: lightTable(LAYERS.P31[0]!), gain: 300 });
      const { data, count } = beam([x, y, 1], [x * 0.999, y, 0]);
      p.deposit(data, count);
      const before = total(p);
      const words = new Uint32Array(320 * 256);
      p.paint(words);
      expect(before).toBeGreaterThan(0);
      expect(words.some((w) => w >>> 24 > 0)).toBe(true);
      p.fade(0.08);
      expect(total(p) / before).toBeCloseTo(Math.exp(-1), 3);
    }
  });
});

describe('a face', () => {
  const SIZE = { divAcross: 10.7, divDown: 8.5, pixelsPerDiv: 12 };
  const line = beam([-4, 0, 0.6], [4, 1, 0]);
  const hump = beam([-4, -2, 0.6], [0, 3, 0.6], [4, -2, 0]);
  const lightOf = (face: FaceLight, layer = 0): number =>
    face.layers[layer]!.words.reduce((sum, w) => sum + (w >>> 24), 0);
  const settled = (points: typeof line): number => {
    const face = createFaceLight('P31', SIZE);
    paintFrame(face, { points, brightness: 1, blur: 0 }, 0, Number.POSITIVE_INFINITY);
    return lightOf(face);
  };

  it('comes to the same standing picture at any frame rate, and then rests', () => {
    for (const rate of [30, 60, 144]) {
      const face = createFaceLight('P31', SIZE);
      paintFrame(face, { points: line, brightness: 1, blur: 0 }, 0, Number.POSITIVE_INFINITY);
      let frames = 0;
      let more = true;
      for (; more && frames < 1000; frames++)
        more = paintFrame(face, { points: hump, brightness: 1, blur: 0 }, 1 / rate, frames / rate);
      expect(more).toBe(false);
      expect(frames / rate).toBeLessThan(0.3);
      expect(lightOf(face)).toBe(settled(hump));
      expect(paintFrame(face, { points: hump, brightness: 1, blur: 0 }, 1 / rate, 10)).toBe(false);
      expect(face.layers[0]!.fresh).toBe(false);
    }
  });

  it('shows both the old and the new curve half way', () => {
    const face = createFaceLight('P31', SIZE);
    paintFrame(face, { points: line, brightness: 1, blur: 0 }, 0, Number.POSITIVE_INFINITY);
    expect(paintFrame(face, { points: hump, brightness: 1, blur: 0 }, 0.015, 0.015)).toBe(true);
    const energy = face.layers[0]!.phosphor.energy.reduce((sum, v) => sum + v, 0);
    const after = createFaceLight('P31', SIZE);
    paintFrame(after, { points: hump, brightness: 1, blur: 0 }, 0, Number.POSITIVE_INFINITY);
    const full = after.layers[0]!.phosphor.energy.reduce((sum, v) => sum + v, 0);
    const keep = Math.exp(-0.015 / 0.022);
    // Half of the hump's energy was in the line: one stroke against two.
    expect(energy / full).toBeCloseTo(keep * 0.5 + (1 - keep), 2);
  });

  it('keeps a warm tail on P7 long after the flash has gone', () => {
    const face = createFaceLight('P7', SIZE);
    const [tail, flash] = [0, 1];
    paintFrame(face, { points: line, brightness: 1, blur: 0 }, 0, Number.POSITIVE_INFINITY);
    let seconds = 0;
    for (; seconds < 0.5; seconds += 0.02) paintFrame(face, { points: null, brightness: 1, blur: 0 }, 0.02, seconds);
    expect(lightOf(face, flash)).toBe(0);
    expect(lightOf(face, tail)).toBeGreaterThan(0);
    const lit = face.layers[tail]!.words.find((w) => w >>> 24 > 60)!;
    const [red, green, blue] = [lit & 255, (lit >> 8) & 255, (lit >> 16) & 255];
    expect(red).toBeGreaterThan(green);
    expect(green).toBeGreaterThan(blue);
  });

  it('draws the long tail of P7 in every second frame of sixty, and it fades as fast as in thirty', () => {
    const [tail, flash] = [0, 1];
    const drawnAt = (rate: number): { readonly drawn: number[]; readonly energy: number } => {
      const face = createFaceLight('P7', SIZE);
      paintFrame(face, { points: line, brightness: 1, blur: 0 }, 0, Number.POSITIVE_INFINITY);
      const drawn = [0, 0];
      // Short of the time after which the flash stands still.
      for (let frame = 1; frame <= rate / 10; frame++) {
        paintFrame(face, { points: hump, brightness: 1, blur: 0 }, 1 / rate, frame / rate);
        for (const layer of [tail, flash]) if (face.layers[layer]!.fresh) drawn[layer]!++;
      }
      return { drawn, energy: face.layers[tail]!.phosphor.energy.reduce((sum, v) => sum + v, 0) };
    };
    const [sixty, thirty] = [drawnAt(60), drawnAt(30)];
    expect(sixty.drawn).toEqual([3, 6]);
    expect(thirty.drawn).toEqual([3, 3]);
    expect(sixty.energy / thirty.energy).toBeCloseTo(1, 6);
  });

  it('fades from its own last frame after a rest, however long another layer has gone on', () => {
    const face = createFaceLight('P7', SIZE);
    const flash = 1;
    paintFrame(face, { points: line, brightness: 1, blur: 0 }, 0, Number.POSITIVE_INFINITY);
    for (let frame = 1; frame <= 60; frame++)
      paintFrame(face, { points: line, brightness: 1, blur: 0 }, 1 / 60, frame / 60);
    const energy = (): number => face.layers[flash]!.phosphor.energy.reduce((sum, v) => sum + v, 0);
    const full = energy();
    paintFrame(face, { points: null, brightness: 1, blur: 0 }, 1 / 60, 1 / 60);
    expect(energy() / full).toBeCloseTo(Math.exp(-1 / 60 / 0.022), 3);
  });

  it('is dark without a beam and at brightness nought', () => {
    for (const beamOff of [
      { points: null, brightness: 1, blur: 0 },
      { points: hump, brightness: 0, blur: 0 },
    ]) {
      const face = createFaceLight('P1', SIZE);
      paintFrame(face, beamOff, 0, Number.POSITIVE_INFINITY);
      expect(lightOf(face)).toBe(0);
    }
  });
});

describe('the light of a phosphor', () => {
  it('covers more glass the brighter it is, from nothing to nearly all', () => {
    for (const layer of Object.values(LAYERS).flat()) {
      const cover = [...lightTable(layer)].map((w) => w >>> 24);
      expect(cover[0]).toBe(0);
      expect(cover[LUT_SIZE - 1]).toBeGreaterThan(245);
      expect(cover.every((c, i) => i === 0 || c >= cover[i - 1]!)).toBe(true);
    }
  });

  it('rests at the knobs’ resting places', () => {
    expect(beamBlur(RESTING_CONTROLS.focus)).toBe(0);
    expect(beamBrightness(RESTING_CONTROLS.brightness)).toBe(1);
    expect(beamBrightness(0)).toBe(0);
    expect(beamBlur(0)).toBe(1);
    expect(beamBlur(1)).toBeGreaterThan(0.5);
  });
});
