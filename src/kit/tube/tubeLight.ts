/**
 * The light of one tube in the page: painted by a worker where the browser can lend it canvases, else by the page itself. The page paints until the
 * worker says that its first picture stands, and again should the worker break down, so that the glass is never dark.
 */
import type { Phosphor as PhosphorKind } from '../../bench/benchState.ts';
import { pageFrames } from '../frameLoop.ts';
import { type BeamPost, createBeamPost } from './beamPost.ts';
import { BeamPump } from './beamPump.ts';
import type { Beam, FaceSize } from './faceLight.ts';
import type { Coming, FromPainter, ToPainter } from './tubeMessages.ts';

export interface TubeLight {
  /** the picture of this moment; its points are copied */
  show(beam: Beam, nowMs: number, coming: Coming): void;
  close(): void;
}

export function openTubeLight(host: HTMLElement, kind: PhosphorKind, size: FaceSize, still: () => boolean): TubeLight {
  let latest: Beam = { points: null, brightness: 1, blur: 0 };
  let kept = new Float32Array(0);
  let here: BeamPump | null = null;
  let worker: Worker | null = null;
  let post: BeamPost | null = null;
  const asWanted = (coming: Coming): Coming => (still() ? 'still' : coming);
  const { width, height, layers } = paintHere();

  function paintHere(): BeamPump {
    const pump = new BeamPump(kind, size, pageFrames);
    const canvases = newCanvases(pump.layers, pump.width, pump.height);
    host.replaceChildren(...canvases);
    pump.attach(canvases.map(glassOf));
    here = pump;
    return pump;
  }
  const paintThere = (there: Worker): void => {
    const canvases = newCanvases(layers, width, height);
    // Above those of the page, and seen only when they have a picture.
    for (const canvas of canvases) canvas.style.visibility = 'hidden';
    host.append(...canvases);
    const lent = canvases.map((canvas) => canvas.transferControlToOffscreen());
    const open: ToPainter = { say: 'open', phosphor: kind, size, canvases: lent };
    there.postMessage(open, lent);
    post = createBeamPost((message, transfer) => there.postMessage(message, transfer));
    post.send(latest, asWanted('quiet'));
  };
  const handOver = (): void => {
    here?.stop();
    here = null;
    const canvases = [...host.children].slice(-layers) as HTMLCanvasElement[];
    for (const canvas of canvases) canvas.style.visibility = '';
    host.replaceChildren(...canvases);
  };
  const takeBack = (): void => {
    worker?.terminate();
    worker = null;
    post = null;
    paintHere().show(latest, performance.now(), asWanted('quiet'));
  };
  const hear = ({ data: message }: MessageEvent<FromPainter>): void => {
    if (message.say === 'ready') paintThere(worker!);
    else if (message.say === 'opened') handOver();
    else if (message.say === 'back') post?.back(message.data);
    else takeBack();
  };

  worker = canLend() ? startWorker() : null;
  if (worker !== null) {
    worker.onmessage = hear;
    worker.onerror = takeBack;
    worker.onmessageerror = takeBack;
  }
  return {
    show(beam, nowMs, coming) {
      const { points } = beam;
      if (points !== null) {
        if (kept.length !== points.data.length) kept = new Float32Array(points.data.length);
        kept.set(points.data);
      }
      latest = { ...beam, points: points === null ? null : { data: kept, count: points.count } };
      here?.show(latest, nowMs, asWanted(coming));
      post?.send(latest, asWanted(coming));
    },
    close() {
      here?.stop();
      worker?.terminate();
      host.replaceChildren();
    },
  };
}

function newCanvases(count: number, width: number, height: number): HTMLCanvasElement[] {
  return Array.from({ length: count }, () => Object.assign(document.createElement('canvas'), { width, height }));
}

function glassOf(canvas: HTMLCanvasElement): CanvasRenderingContext2D {
  const context = canvas.getContext('2d');
  if (context === null) throw new Error('this browser gives no 2d canvas');
  return context;
}

function canLend(): boolean {
  return (
    typeof Worker === 'function' &&
    typeof OffscreenCanvas === 'function' &&
    'transferControlToOffscreen' in HTMLCanvasElement.prototype
  );
}

function startWorker(): Worker | null {
  try {
    return new Worker(new URL('./tubeWorker.ts', import.meta.url), { type: 'module' });
  } catch {
    // A policy of whoever serves the page may forbid it.
    return null;
  }
}
