/** Paints the beam on canvases, frame by frame, only while there is something to paint. The same on the page and in a worker. */
import type { Phosphor as PhosphorKind } from '../../bench/benchState.ts';
import type { FrameLoop } from '../frameLoop.ts';
import { type Beam, createFaceLight, type FaceLight, type FaceSize, paintFrame } from './faceLight.ts';
import type { Coming } from './tubeMessages.ts';

/** What a canvas of either kind gives to paint on. */
export type Glass = Pick<CanvasRenderingContext2D, 'putImageData'>;

export class BeamPump {
  private readonly face: FaceLight;
  private readonly images: readonly ImageData[];
  private glasses: readonly Glass[] = [];
  private beam: Beam = { points: null, brightness: 1, blur: 0 };
  private moving = false;
  private lastMs = 0;
  private changedMs = 0;
  private fresh = true;
  /** pictures painted so far */
  painted = 0;

  constructor(
    kind: PhosphorKind,
    size: FaceSize,
    private readonly loop: Pick<FrameLoop, 'ask' | 'drop'>,
  ) {
    this.face = createFaceLight(kind, size);
    this.images = this.face.layers.map(({ bytes }) => new ImageData(bytes, this.face.width, this.face.height));
  }

  get width(): number {
    return this.face.width;
  }
  get height(): number {
    return this.face.height;
  }
  get layers(): number {
    return this.face.layers.length;
  }

  /** One for each layer, the lowest first, each of the face's size. */
  attach(glasses: readonly Glass[]): void {
    this.glasses = glasses;
  }

  /** The picture from now on. Its points are read until the next one comes. The first one stands at once. */
  show(beam: Beam, nowMs: number, coming: Coming): void {
    this.beam = beam;
    this.changedMs = nowMs;
    if (this.fresh || coming === 'still' || (coming === 'quiet' && !this.moving)) {
      this.fresh = false;
      this.stop();
      paintFrame(this.face, beam, 0, Number.POSITIVE_INFINITY);
      this.put();
      return;
    }
    if (this.moving) return;
    this.moving = true;
    this.lastMs = nowMs;
    this.loop.ask('paint', this.step);
  }

  stop(): void {
    this.loop.drop(this.step);
    this.moving = false;
  }

  private readonly step = (nowMs: number): void => {
    this.moving = paintFrame(
      this.face,
      this.beam,
      Math.max(0, nowMs - this.lastMs) / 1000,
      (nowMs - this.changedMs) / 1000,
    );
    this.lastMs = nowMs;
    this.put();
    if (this.moving) this.loop.ask('paint', this.step);
  };

  private put(): void {
    if (!this.face.layers.some((layer) => layer.fresh)) return;
    this.painted++;
    this.face.layers.forEach((layer, i) => {
      const image = this.images[i];
      if (layer.fresh && image !== undefined) this.glasses[i]?.putImageData(image, 0, 0);
    });
  }
}
