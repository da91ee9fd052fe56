/**
 * Energy buffer of an XY display: deposit beam points, let them fade, paint them as RGBA. No DOM, so that it runs in Node too.
 *
 * Energy is beam current times time: brightness follows dwell by itself, the quick retrace dims, a blanked beam adds nothing.
 * Floats, because eight bits leave a stuck ghost where the decay stops falling.
 */

export interface PhosphorOptions {
  /** buffer pixels; the width a multiple of 4 */
  readonly width: number;
  readonly height: number;
  /** buffer pixels to one division of the graticule */
  readonly pixelsPerDiv: number;
  /** spot radius (standard deviation) in buffer pixels */
  readonly sigma?: number;
  /** afterglow time constant, seconds */
  readonly tauSeconds: number;
  /** energy to brightness */
  readonly gain?: number;
  /** share of the light spread into the halo */
  readonly halo?: number;
  /** brightness (index / LUT_SCALE) to little-endian RGBA words */
  readonly lut: Uint32Array;
}

const PHASES = 8;
export const LUT_SIZE = 4096;
export const LUT_SCALE = 512;
const FLOOR = 1 / (16 * LUT_SCALE);
/** the halo is computed on cells of 4 x 4 pixels */
const CELL = 4;
/** halo at the corners of a cell that cannot reach the first step of the table between them */
const UNSEEN = 0.999 / LUT_SCALE;

export class Phosphor {
  readonly width: number;
  readonly height: number;
  readonly energy: Float32Array;
  private readonly pixelsPerDiv: number;
  private readonly tauSeconds: number;
  private readonly gain: number;
  private readonly halo: number;
  private readonly lut: Uint32Array;
  private readonly cols: number;
  private readonly rows: number;
  private readonly cells: Float32Array;
  private readonly temp: Float32Array;
  /** cells that may hold light: most of a face is dark, and what is dark need not be faded, gathered or painted */
  private readonly lit: Uint8Array;
  /** cells that were painted dark in `painted` */
  private readonly dark: Uint8Array;
  private painted: Uint32Array | null = null;
  /** the spot that the tube was made with */
  readonly sharpSigma: number;
  private sigma = 0;
  private taps = 0;
  private kernel = new Float32Array(0);

  constructor({ width, height, pixelsPerDiv, sigma = 1.1, tauSeconds, gain = 9000, halo = 0.5, lut }: PhosphorOptions) {
    if (width % CELL !== 0) throw new Error(`width ${width} is not a multiple of ${CELL}`);
    this.width = width;
    this.height = height;
    this.pixelsPerDiv = pixelsPerDiv;
    this.tauSeconds = tauSeconds;
    this.gain = gain;
    this.halo = halo / (CELL * CELL);
    this.lut = lut;
    this.energy = new Float32Array(width * height);
    this.cols = width / CELL + 1;
    this.rows = Math.ceil(height / CELL) + 1;
    this.cells = new Float32Array(this.cols * this.rows);
    this.temp = new Float32Array(this.cols * this.rows);
    this.lit = new Uint8Array(this.cols * this.rows);
    this.dark = new Uint8Array(this.cols * this.rows);
    this.sharpSigma = sigma;
    this.setSpot(sigma);
  }

  /** Size of the spot: the focus knob. */
  setSpot(sigma: number): void {
    if (sigma === this.sigma) return;
    this.sigma = sigma;
    this.taps = 2 * Math.ceil(2.6 * sigma) + 1;
    this.kernel = gaussTable(this.taps, sigma);
  }

  clear(): void {
    this.energy.fill(0);
    this.lit.fill(0);
  }

  /** What part of the light is left after `seconds`. */
  keepAfter(seconds: number): number {
    return Math.exp(-seconds / this.tauSeconds);
  }

  /** Lets the afterglow fade. */
  fade(seconds: number): void {
    const { energy: e, lit, width: w, height: h, cols } = this;
    const keep = this.keepAfter(seconds);
    for (let cell = 0; cell < lit.length; cell++) {
      if (lit[cell] === 0) continue;
      let left = 0;
      const top = ((cell / cols) | 0) * CELL;
      const first = (cell % cols) * CELL;
      for (let y = top, stop = Math.min(h, top + CELL); y < stop; y++)
        for (let i = y * w + first, end = i + CELL; i < end; i++) {
          const v = e[i]!;
          if (v === 0) continue;
          if (v < FLOOR) e[i] = 0;
          else {
            e[i] = v * keep;
            left = 1;
          }
        }
      lit[cell] = left;
    }
  }

  /** `points`: x, y (divisions from the centre, y up) and energy of each point, which is spread evenly on the way to the next one. */
  deposit(points: Float32Array, count: number, share = 1): void {
    const { energy: e, width: w, height: h, kernel, taps, pixelsPerDiv } = this;
    const gain = this.gain * share;
    const mid = (taps - 1) / 2;
    const cx = w / 2;
    const cy = h / 2;
    let litX = -1;
    let litY = -1;
    for (let k = 0, end = (count - 1) * 3; k < end; k += 3) {
      const energy = points[k + 2]!;
      if (energy === 0) continue;
      const x0 = cx + points[k]! * pixelsPerDiv;
      const y0 = cy - points[k + 1]! * pixelsPerDiv;
      const dx = cx + points[k + 3]! * pixelsPerDiv - x0;
      const dy = cy - points[k + 4]! * pixelsPerDiv - y0;
      // A stroke far off the face may be as long as it likes: two screen widths of steps are enough to draw what shows of it.
      const steps = Math.min(2 * (w + h), Math.max(1, Math.ceil(Math.sqrt(dx * dx + dy * dy))));
      const v = (gain * energy) / steps;
      for (let s = 0.5; s < steps; s++) {
        const x = x0 + (dx * s) / steps;
        const y = y0 + (dy * s) / steps;
        const ix = Math.floor(x);
        const iy = Math.floor(y);
        if (!(ix >= mid && iy >= mid && ix < w - mid && iy < h - mid)) continue;
        if (ix !== litX || iy !== litY) {
          this.light((ix - mid) >> 2, (iy - mid) >> 2, (ix + mid) >> 2, (iy + mid) >> 2);
          litX = ix;
          litY = iy;
        }
        const kx = (((x - ix) * PHASES) | 0) * taps;
        const ky = (((y - iy) * PHASES) | 0) * taps;
        for (let j = 0, o = (iy - mid) * w + ix - mid; j < taps; j++, o += w) {
          const vy = v * kernel[ky + j]!;
          for (let i = 0; i < taps; i++) e[o + i]! += vy * kernel[kx + i]!;
        }
      }
    }
  }

  private light(fromX: number, fromY: number, toX: number, toY: number): void {
    for (let y = fromY; y <= toY; y++) this.lit.fill(1, y * this.cols + fromX, y * this.cols + toX + 1);
  }

  /** Writes the picture as little-endian RGBA words (a Uint32Array over an ImageData's buffer). Nobody else may write into them between two pictures. */
  paint(out: Uint32Array): void {
    const { energy: e, width: w, height: h, lut, cols, cells, temp, lit, dark } = this;
    this.gatherHalo();
    for (let pass = 0; pass < 2; pass++) {
      blur(cells, temp, cols, this.rows, 1, cols);
      blur(temp, cells, this.rows, cols, cols, 1);
    }
    if (this.painted !== out) dark.fill(0);
    this.painted = out;
    for (let top = 0, q = 0; top < h; top += CELL, q += cols) {
      for (let i = 0; i < cols - 1; i++) {
        const a = cells[q + i]!;
        const b = cells[q + i + 1]!;
        const c = cells[q + cols + i]!;
        const d = cells[q + cols + i + 1]!;
        const isDark = lit[q + i] === 0 && a < UNSEEN && b < UNSEEN && c < UNSEEN && d < UNSEEN ? 1 : 0;
        if (isDark === 1 && dark[q + i] === 1) continue;
        dark[q + i] = isDark;
        for (let y = top, stop = Math.min(h, top + CELL); y < stop; y++) {
          const f = (y - top) / CELL;
          const left = Math.fround((a * (1 - f) + c * f) * LUT_SCALE);
          const step = (Math.fround((b * (1 - f) + d * f) * LUT_SCALE) - left) / CELL;
          for (let o = y * w + i * CELL, end = o + CELL, g = left; o < end; o++, g += step) {
            const v = e[o]! * LUT_SCALE + g;
            out[o] = lut[v < LUT_SIZE ? v | 0 : LUT_SIZE - 1]!;
          }
        }
      }
    }
  }

  private gatherHalo(): void {
    const { energy: e, width: w, height: h, cols, cells, halo, lit } = this;
    cells.fill(0);
    for (let cell = 0; cell < lit.length; cell++) {
      if (lit[cell] === 0) continue;
      const top = ((cell / cols) | 0) * CELL;
      const first = (cell % cols) * CELL;
      for (let y = top, stop = Math.min(h, top + CELL); y < stop; y++)
        for (let i = y * w + first, end = i + CELL; i < end; i++) cells[cell]! += e[i]! * halo;
    }
  }
}

/** Normalised Gaussian taps for PHASES sub-pixel positions. */
function gaussTable(taps: number, sigma: number): Float32Array<ArrayBuffer> {
  const table = new Float32Array(PHASES * taps);
  const mid = (taps - 1) / 2;
  for (let p = 0; p < PHASES; p++) {
    const at = p * taps;
    let sum = 0;
    for (let j = 0; j < taps; j++) {
      const v = Math.exp(-((j + 0.5 - mid - (p + 0.5) / PHASES) ** 2) / (2 * sigma ** 2));
      table[at + j] = v;
      sum += v;
    }
    for (let j = 0; j < taps; j++) table[at + j]! /= sum;
  }
  return table;
}

/** 1-4-6-4-1 blur along one direction. */
function blur(src: Float32Array, dst: Float32Array, n: number, lines: number, step: number, next: number): void {
  for (let l = 0; l < lines; l++) {
    const base = l * next;
    let a = 0;
    let b = 0;
    let c = src[base]!;
    let d = src[base + step]!;
    for (let i = 0; i < n; i++) {
      const e = i + 2 < n ? src[base + (i + 2) * step]! : 0;
      dst[base + i * step] = (a + e) * 0.0625 + (b + d) * 0.25 + c * 0.375;
      a = b;
      b = c;
      c = d;
      d = e;
    }
  }
}
