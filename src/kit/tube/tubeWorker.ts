/** Beside the page: fades and paints the light of one tube, in frames of its own. */
import { createFrameLoop } from '../frameLoop.ts';
import { BeamPump, type Glass } from './beamPump.ts';
import type { FromPainter, ToPainter } from './tubeMessages.ts';

const say = (message: FromPainter, transfer: Transferable[] = []): void => self.postMessage(message, { transfer });
const loop = createFrameLoop((callback) => self.requestAnimationFrame(callback));
let pump: BeamPump | null = null;
let held: ArrayBuffer | null = null;
let told = 0;

self.onmessage = ({ data: message }: MessageEvent<ToPainter>) => {
  if (message.say === 'open') {
    const { phosphor, size, canvases } = message;
    pump = new BeamPump(phosphor, size, loop);
    pump.attach(canvases.map(glassOf).filter((glass): glass is Glass => glass !== null));
    return;
  }
  if (pump === null) return;
  const { data, count, brightness, blur, coming } = message;
  const first = held === null;
  pump.show({ points: { data: new Float32Array(data), count }, brightness, blur }, performance.now(), coming);
  if (first) say({ say: 'opened' });
  else {
    say({ say: 'back', data: held!, painted: pump.painted - told }, [held!]);
    told = pump.painted;
  }
  held = data;
};

function glassOf(canvas: OffscreenCanvas): Glass | null {
  return canvas.getContext('2d');
}

const able = 'requestAnimationFrame' in self && glassOf(new OffscreenCanvas(1, 1)) !== null;
say({ say: able ? 'ready' : 'cannot' });
