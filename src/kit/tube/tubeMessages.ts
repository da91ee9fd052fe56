/** What the page and the worker that paints its tube say to one another. */
import type { Phosphor as PhosphorKind } from '../../bench/benchState.ts';
import type { FaceSize } from './faceLight.ts';

/**
 * How the next picture takes the place of the last: `fading` with the tube's afterglow; `quiet`, which time alone has brought, at once where nothing fades
 * already (one picture a second shall not cost an afterglow of many); `still`, for whoever wants no motion, at once.
 */
export type Coming = 'fading' | 'quiet' | 'still';

export type ToPainter =
  /** the canvases of the layers, the lowest first; they stay with the worker */
  | {
      readonly say: 'open';
      readonly phosphor: PhosphorKind;
      readonly size: FaceSize;
      readonly canvases: readonly OffscreenCanvas[];
    }
  /** another picture; its points (x, y, energy each) come as a buffer that is handed over and goes back */
  | {
      readonly say: 'show';
      readonly data: ArrayBuffer;
      readonly count: number;
      readonly brightness: number;
      readonly blur: number;
      readonly coming: Coming;
    };

export type FromPainter =
  /** it runs, and can paint on a canvas */
  | { readonly say: 'ready' }
  | { readonly say: 'cannot' }
  /** the first picture stands */
  | { readonly say: 'opened' }
  /** a buffer that is read no more, and how many pictures have been painted since the last one went back */
  | { readonly say: 'back'; readonly data: ArrayBuffer; readonly painted: number };
