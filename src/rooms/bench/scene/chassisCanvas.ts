/** The standing part of the chassis: ink art and lettering baked once per size into a bitmap, shown as one Pixi sprite. */
import { Sprite, Texture } from 'pixi.js';
import { ART_MARGIN, chassisArt, type Lettering } from '../../../kit/chassis/chassisArt.ts';
import { openSheet } from '../../../kit/pixiCanvas.ts';
import type { Receiver } from '../../../receiver/receiver.ts';
import type { Words } from '../../../words/words.ts';

export interface ChassisCanvas {
  /** bakes anew; a later call overtakes an earlier one that is not ready */
  show(say: Words['scene'], receiver: Receiver, scale: number): Promise<void>;
  close(): void;
}

export async function openChassisSheet(canvas: HTMLCanvasElement): Promise<ChassisCanvas> {
  const sheet = await openSheet(canvas);
  const sprite = new Sprite(Texture.EMPTY);
  sheet.stage.addChild(sprite);
  let latest = 0;
  let open = true;
  return {
    async show(say, receiver, scale) {
      const mine = ++latest;
      const ratio = window.devicePixelRatio;
      const baked = await bake(say, receiver, scale, ratio);
      if (mine !== latest || !open) return;
      const old = sprite.texture;
      sprite.texture = Texture.from(baked, true);
      sprite.scale.set(1 / ratio);
      if (old !== Texture.EMPTY) old.destroy(true);
      const { plan } = receiver;
      sheet.resize((plan.width + 2 * ART_MARGIN) * scale, (plan.height + 2 * ART_MARGIN) * scale);
    },
    close() {
      open = false;
      sheet.close();
    },
  };
}

async function bake(say: Words['scene'], receiver: Receiver, scale: number, ratio: number): Promise<HTMLCanvasElement> {
  const { svg, lettering } = chassisArt(say, receiver, scale);
  const units = { w: receiver.plan.width + 2 * ART_MARGIN, h: receiver.plan.height + 2 * ART_MARGIN };
  const k = scale * ratio;
  const width = Math.round(units.w * k);
  const height = Math.round(units.h * k);
  const image = new Image(width, height);
  image.src = `data:image/svg+xml,${encodeURIComponent(
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="${-ART_MARGIN} ${-ART_MARGIN} ${units.w} ${units.h}">${svg}</svg>`,
  )}`;
  await Promise.all([image.decode(), facesReady()]);
  const canvas = document.createElement('canvas');
  canvas.width = width;
  canvas.height = height;
  const context = canvas.getContext('2d');
  if (context === null) return canvas;
  context.drawImage(image, 0, 0, width, height);
  context.setTransform(k, 0, 0, k, ART_MARGIN * k, ART_MARGIN * k);
  for (const words of lettering) letter(context, words);
  return canvas;
}

const FACE = '"Barlow Condensed", "Arial Narrow", sans-serif';

function letter(
  context: CanvasRenderingContext2D,
  { words, x, y, size, weight, anchor, fill, spacing }: Lettering,
): void {
  context.font = `${weight} ${size}px ${FACE}`;
  context.letterSpacing = `${spacing * size}px`;
  context.textAlign = anchor === 'middle' ? 'center' : anchor;
  context.fillStyle = fill;
  context.fillText(words, x, y);
}

/** A face that will not load must not keep the chassis away. */
async function facesReady(): Promise<void> {
  await Promise.allSettled([500, 600, 700].map((weight) => document.fonts.load(`${weight} 12px ${FACE}`)));
}
