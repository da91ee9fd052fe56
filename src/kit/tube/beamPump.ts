/** Paints the beam on canvases, from the animation frame, only while there is something to paint. */
import type { Phosphor as PhosphorKind } from '../../bench/benchState.ts';
import type { BeamPoints } from '../../bench/display.ts';
import { type Beam, createFace, type Face, type FaceSize, paintFrame } from './face.ts';

export class BeamPump {
  private face: Face;
  private images: ImageData[];
  private canvases: readonly CanvasRenderingContext2D[] = [];
  private beam: Beam = { points: null, brightness: 1, blur: 0 };
  private kept = new Float32Array(0);
  private frame = 0;
  private lastMs = 0;
  private changedMs = 0;
  private fresh = true;

  constructor(
    kind: PhosphorKind,
    size: FaceSize,
    private readonly still: () => boolean,
  ) {
    this.face = createFace(kind, size);
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

  /** The canvases of the layers, the lowest first, each of the face's size. */
  attach(canvases: readonly HTMLCanvasElement[]): void {
    this.canvases = canvases.map((canvas) => {
      canvas.width = this.face.width;
      canvas.height = this.face.height;
      const context = canvas.getContext('2d');
      if (context === null) throw new Error('this browser gives no 2d canvas');
      return context;
    });
  }

  /** The picture of this moment, copied: benches write their next one into the same buffer. The first one, and every one for a reader who wants no motion, stands at once. */
  show(beam: Beam, nowMs: number): void {
    this.beam = { ...beam, points: beam.points === null ? null : this.copy(beam.points) };
    this.changedMs = nowMs;
    if (this.fresh || this.still()) {
      this.fresh = false;
      this.stop();
      paintFrame(this.face, this.beam, 0, Number.POSITIVE_INFINITY);
      this.put();
      return;
    }
    if (this.frame !== 0) return;
    this.lastMs = nowMs;
    this.frame = requestAnimationFrame(this.step);
  }

  private copy({ data, count }: BeamPoints): BeamPoints {
    if (this.kept.length < data.length) this.kept = new Float32Array(data.length);
    this.kept.set(data);
    return { data: this.kept, count };
  }

  stop(): void {
    cancelAnimationFrame(this.frame);
    this.frame = 0;
  }

  private readonly step = (nowMs: number): void => {
    const more = paintFrame(
      this.face,
      this.beam,
      Math.max(0, nowMs - this.lastMs) / 1000,
      (nowMs - this.changedMs) / 1000,
    );
    this.lastMs = nowMs;
    this.put();
    this.frame = more ? requestAnimationFrame(this.step) : 0;
  };

  private put(): void {
    this.face.layers.forEach((layer, i) => {
      const image = this.images[i];
      if (layer.fresh && image !== undefined) this.canvases[i]?.putImageData(image, 0, 0);
    });
  }
}
