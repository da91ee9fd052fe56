/** The light of one tube face: its layers of phosphor, and one frame of them. Pure; time is an argument. */
import type { Phosphor as PhosphorKind } from '../../bench/benchState.ts';
import { CONTROL_ROWS } from '../../bench/controls/rows.ts';
import type { BeamPoints } from '../../bench/display.ts';
import { Phosphor } from './phosphor.ts';
import { LAYERS, lightTable } from './phosphorKinds.ts';

/** From the rows alone: the worker that paints shall not carry the bench. */
export const RESTING_BRIGHTNESS = CONTROL_ROWS.brightness.resting;
export const RESTING_FOCUS = CONTROL_ROWS.focus.resting;

export interface FaceSize {
  /** divisions shown across and down, the glass beyond the graticule included */
  readonly divAcross: number;
  readonly divDown: number;
  readonly pixelsPerDiv: number;
}

export interface FaceLayer {
  readonly phosphor: Phosphor;
  readonly tauSeconds: number;
  readonly share: number;
  /** the picture, as RGBA words over `bytes` */
  readonly words: Uint32Array;
  readonly bytes: Uint8ClampedArray<ArrayBuffer>;
  /** since it was last drawn */
  waitedSeconds: number;
  /** its light stands still */
  rested: boolean;
  /** the last frame changed the picture */
  fresh: boolean;
}

export interface FaceLight {
  readonly width: number;
  readonly height: number;
  readonly layers: readonly FaceLayer[];
}

/** About 640 x 512 for the bench's tube, a quarter of that for a small one. */
export const FULL_PIXELS_PER_DIV = 59;
export const MINI_PIXELS_PER_DIV = 30;
/** A hidden page comes back with a long step; the afterglow is then gone anyway. */
const LONGEST_STEP_SECONDS = 0.1;
const GONE_AFTER_TAUS = 6;
/** A layer is drawn anew when so much of its time constant has passed: the long tail of P7 in every second frame of sixty, everything else in each. */
const SEEN_AFTER_TAUS = 1 / 30;
/** spot radius in divisions: a sharp beam, and what each tenth of wrong focus adds */
const SPOT_DIV = 0.021;

export function createFaceLight(kind: PhosphorKind, { divAcross, divDown, pixelsPerDiv }: FaceSize): FaceLight {
  const width = Math.ceil((divAcross * pixelsPerDiv) / 4) * 4;
  const height = Math.ceil(divDown * pixelsPerDiv);
  const layers = LAYERS[kind].map((layer): FaceLayer => {
    const bytes = new Uint8ClampedArray(width * height * 4);
    const phosphor = new Phosphor({
      width,
      height,
      pixelsPerDiv,
      sigma: SPOT_DIV * pixelsPerDiv,
      tauSeconds: layer.tauSeconds,
      // light per pixel of track: the track grows with the scale, and the spot's width too
      gain: (8 / RESTING_BRIGHTNESS) * pixelsPerDiv * pixelsPerDiv,
      lut: lightTable(layer),
    });
    return {
      phosphor,
      tauSeconds: layer.tauSeconds,
      share: layer.share,
      words: new Uint32Array(bytes.buffer),
      bytes,
      waitedSeconds: 0,
      rested: false,
      fresh: true,
    };
  });
  return { width, height, layers };
}

/** The focus knob is sharp where it rests and blurs to both sides. */
export const beamBlur = (focus: number): number => Math.min(1, Math.abs(focus - RESTING_FOCUS) / 0.5);
/** The beam's energy goes with the brightness knob; the light goes with more than its square, as the current over a grid does (from memory). */
export const beamBrightness = (brightness: number): number => (Math.max(0, brightness) / RESTING_BRIGHTNESS) ** 1.2;

export interface Beam {
  /** null: no beam, the afterglow only */
  readonly points: BeamPoints | null;
  /** beside the energy that the points bring: 1 = the knob at rest */
  readonly brightness: number;
  /** 0 = sharp, 1 = as blurred as the knob can make it */
  readonly blur: number;
}

/**
 * One frame: old light fades, new light comes at the pace that keeps a standing curve equally bright at any frame rate.
 * `sinceChangeSeconds` counts from the last change of the beam; `Infinity` draws the settled picture at once.
 * Returns whether light is still fading, so another frame is wanted.
 */
export function paintFrame(face: FaceLight, beam: Beam, stepSeconds: number, sinceChangeSeconds: number): boolean {
  const step = Math.min(stepSeconds, LONGEST_STEP_SECONDS);
  let fading = false;
  for (const layer of face.layers) {
    const { phosphor, tauSeconds, share, words } = layer;
    const settled = sinceChangeSeconds > GONE_AFTER_TAUS * tauSeconds;
    if (!settled) fading = true;
    layer.waitedSeconds = settled ? 0 : layer.waitedSeconds + step;
    layer.fresh = settled
      ? !layer.rested || sinceChangeSeconds === Number.POSITIVE_INFINITY
      : layer.waitedSeconds >= SEEN_AFTER_TAUS * tauSeconds;
    layer.rested = settled;
    if (!layer.fresh) continue;
    const passed = layer.waitedSeconds;
    layer.waitedSeconds = 0;
    phosphor.setSpot(phosphor.sharpSigma * (1 + 2.4 * beam.blur));
    if (settled) phosphor.clear();
    else phosphor.fade(passed);
    const { points } = beam;
    if (points !== null)
      phosphor.deposit(
        points.data,
        points.count,
        share * beam.brightness * (settled ? 1 : 1 - phosphor.keepAfter(passed)),
      );
    phosphor.paint(words);
  }
  return fading;
}
