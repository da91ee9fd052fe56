/** Strokes of what turns under the hand, on a canvas whose origin is the middle that it turns round. */
import { C } from '../../../kit/theme/ink.ts';
import type { InkPainter } from '../../../kit/theme/inkCanvas.ts';

/** The way that a turn has gone, from the top; clockwise above 0, degrees. */
export function paintArc(context: CanvasRenderingContext2D, r: number, degrees: number): void {
  if (degrees === 0) return;
  context.beginPath();
  context.arc(0, 0, r, -Math.PI / 2, (degrees * Math.PI) / 180 - Math.PI / 2, degrees < 0);
  context.strokeStyle = C.rust;
  context.lineWidth = 4;
  context.stroke();
}

export function turned(context: CanvasRenderingContext2D, degrees: number, paint: InkPainter): void {
  context.save();
  context.rotate((degrees * Math.PI) / 180);
  paint(context);
  context.restore();
}

/** A drawing seen through as one piece, whatever of it lies on other parts of it. */
export function faint(context: CanvasRenderingContext2D, opacity: number, paint: InkPainter): void {
  const { width, height } = context.canvas;
  const layer = Object.assign(document.createElement('canvas'), { width, height }).getContext('2d');
  if (layer === null) return;
  layer.setTransform(context.getTransform());
  paint(layer);
  context.save();
  context.setTransform(1, 0, 0, 1, 0, 0);
  context.globalAlpha = opacity;
  context.drawImage(layer.canvas, 0, 0);
  context.restore();
}
