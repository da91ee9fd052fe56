/**
 * The chassis as one drawing, made from the receiver file: everything that stands still. Holes, rings and letters' discs that change
 * lie over it as elements of the page. Lettering comes as a list, because an SVG used as an image cannot see the page's typefaces.
 */

import { canNames, letterLine } from '../../present/canNames.ts';
import { type ChassisPlaces, chassisPlaces, type PlanBox, partBox, textWidth } from '../../present/chassisPlaces.ts';
import type { PlanPart, PlanPoint, Receiver } from '../../receiver/receiver.ts';
import type { Words } from '../../words/words.ts';
import { C, escapeText, r1 } from '../theme/ink.ts';
import {
  box,
  cage,
  canBody,
  electrolytic,
  liveSign,
  pan,
  plainCan,
  plate,
  resistor,
  signalPath,
  testPoint,
  transformer,
  trapBody,
  valve,
} from './chassisParts.ts';

export interface Lettering {
  readonly words: string;
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly weight: 500 | 600 | 700;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly fill: string;
  /** em */
  readonly spacing: number;
}

export interface ChassisArt {
  /** inside of an `<svg>` in plan units */
  readonly svg: string;
  readonly lettering: readonly Lettering[];
}

/** Room left round the plan for its cast shade, plan units. */
export const ART_MARGIN = 10;

export function chassisArt(say: Words['scene'], receiver: Receiver, scale: number): ChassisArt {
  const places = chassisPlaces(receiver, scale);
  const { plan } = receiver;
  const lettering: Lettering[] = [];
  let svg = pan(plan.width, plan.height);
  if (plan.hot) svg += hotCorner(say, { hot: plan.hot, parts: plan.parts }, places.textSize, lettering);
  for (const line of plan.path) svg += signalPath(line);
  for (const part of plan.parts) svg += partArt(part, places.textSize, lettering);
  svg += cansArt(places, lettering);
  for (const point of places.points) {
    svg += testPoint(point.at.x, point.at.y);
    lettering.push(
      text(point.id, point.label.x, point.label.y, places.textSize, { weight: 700, anchor: point.label.anchor }),
    );
  }
  for (const slug of places.slugs) svg += leader(slug.disc, slug.hole, places.discRadius);
  return { svg, lettering };
}

function cansArt(places: ChassisPlaces, lettering: Lettering[]): string {
  let svg = '';
  for (const can of places.cans) {
    if (can.shape === 'trap') {
      svg += trapBody(can.x + can.width / 2, can.y + can.height / 2, can.width / 2);
      continue;
    }
    svg += canBody(can.x, can.y, can.width, can.height);
  }
  for (const { id, at } of canNames(places)) lettering.push(text(id, at.x, at.y, places.textSize, { weight: 700 }));
  return svg;
}

/** The sign of live parts, plan units, with its stroke. */
const SIGN_HEIGHT = 32;
/** A smaller one stands beside the words. */
const LEAST_SIGN = 20;
/** Between sign and words, and between words and the edge of the cage. */
const SIGN_GAP = 4;

/** The words stand below the sign where cage and parts leave room, else beside it, where nothing stands: in one line, or in two where one is too long. */
function hotCorner(
  say: Words['scene'],
  { hot, parts }: { readonly hot: NonNullable<Receiver['plan']['hot']>; readonly parts: readonly PlanPart[] },
  size: number,
  lettering: Lettering[],
): string {
  const { x, y, width, height, volts } = hot;
  const words = [say.live(volts), say.keepOut];
  const large = size * (13 / 12);
  const boxes = parts.map(partBox).filter((box) => box.y < y + height && box.y + box.height > y);
  const edge = x + 2 * SIGN_GAP;
  const room = Math.min(x + width, ...boxes.map((box) => box.x)) - SIGN_GAP - edge;
  // Longer words in more lines are lettered as small as may be.
  const fits = words.every((one) => textWidth(one, large) <= room - 6);
  const big = fits ? large : size;
  const lines = words.flatMap((one, k) => atSpaces(one, room - 6, big).map((line) => ({ line, bold: k === 0 })));
  const half = Math.max(...lines.map(({ line }) => textWidth(line, big))) / 2 + 3;
  const leading = big + (lines.length > words.length ? 1 : 3);
  const backing = lines.length * leading + 2;
  const signTall = Math.min(SIGN_HEIGHT, height - backing - 3 * SIGN_GAP);
  const stacked = signTall + SIGN_GAP + backing;
  if (signTall < LEAST_SIGN || 2 * half > room) {
    const wideOf = (rows: readonly string[]): number => Math.max(...rows.map((row) => textWidth(row, big))) + 10;
    const one = [words.join(', ')];
    const rows = freeLeft(hot, boxes, wideOf(one)) === null && height >= 2 * big + 8 ? words : one;
    const wide = wideOf(rows);
    const tall = Math.min(rows.length * (big + 2) + 6, height - 4);
    const left = freeLeft(hot, boxes, wide) ?? x + BESIDE_SIGN;
    const first = y + height / 2 + big * 0.35 - ((rows.length - 1) * (big + 2)) / 2;
    rows.forEach((row, i) => {
      const at = first + i * (big + 2);
      lettering.push(text(row, left + 5, at, big, { weight: 700, anchor: 'start', fill: C.rustInk }));
    });
    return (
      cage(x, y, width, height) +
      liveSign(x + 28, y + height / 2, Math.min(1, (height - 4) / SIGN_HEIGHT)) +
      `<rect x="${r1(left)}" y="${r1(y + (height - tall) / 2)}" width="${r1(wide)}" height="${r1(tall)}" fill="${C.wash}"/>`
    );
  }
  const middle = edge + Math.max(half, Math.min(38, room / 2));
  const top = y + (height - stacked) / 2;
  const under = top + signTall + SIGN_GAP;
  lines.forEach(({ line, bold }, i) => {
    lettering.push(
      text(line, middle, under + 4 + big * 0.8 + i * leading, big, {
        weight: bold ? 700 : 600,
        anchor: 'middle',
        fill: C.rustInk,
      }),
    );
  });
  return (
    cage(x, y, width, height) +
    liveSign(middle, top + signTall / 2, signTall / SIGN_HEIGHT) +
    `<rect x="${r1(middle - half)}" y="${r1(under)}" width="${r1(2 * half)}" height="${r1(backing)}" fill="${C.wash}"/>`
  );
}

/** Parted at spaces into lines no wider than `room`; one word alone may be wider. */
function atSpaces(words: string, room: number, size: number): string[] {
  const lines: string[] = [];
  for (const word of words.split(' ')) {
    const last = lines.at(-1);
    if (last === undefined || textWidth(`${last} ${word}`, size) > room) lines.push(word);
    else lines[lines.length - 1] = `${last} ${word}`;
  }
  return lines;
}

/** From the edge of the cage past the sign. */
const BESIDE_SIGN = 45;

/** Beside the sign, or beyond a part that stands in the way there; null: nowhere. */
function freeLeft(
  { x, width }: NonNullable<Receiver['plan']['hot']>,
  boxes: readonly PlanBox[],
  wide: number,
): number | null {
  const fits = (left: number): boolean =>
    left + wide <= x + width && boxes.every((box) => box.x >= left + wide || box.x + box.width <= left);
  const places = [x + BESIDE_SIGN, ...boxes.map((box) => box.x + box.width + SIGN_GAP)];
  return places.sort((a, b) => a - b).find(fits) ?? null;
}

function partArt(part: PlanPart, size: number, lettering: Lettering[]): string {
  const { x, y } = part;
  const drop = size * 0.36;
  switch (part.kind) {
    case 'valve':
      lettering.push(text(part.label, x, y + drop, size, { weight: 700, anchor: 'middle' }));
      return valve(x, y);
    case 'electrolytic':
      lettering.push(text(part.label, x, y + drop, size, { anchor: 'middle' }));
      return electrolytic(x, y);
    case 'transformer': {
      lettering.push(text(part.label, x, y + drop, size, { weight: 700, anchor: 'middle' }));
      return transformer(x, y) + plate(x, y, Math.max(19, textWidth(part.label, size) / 2 + 4), size + 6);
    }
    case 'resistor':
      return resistor(x, y, part.upright);
    case 'can': {
      const lines = brokenToFit(part.label, 40, size);
      const first = y + drop - ((lines.length - 1) * (size + 1)) / 2;
      lines.forEach((words, i) => {
        lettering.push(text(words, x, first + i * (size + 1), size, { anchor: 'middle' }));
      });
      return plainCan(x, y);
    }
    case 'box': {
      const middle = x + part.width / 2;
      // A second line that does not fit is left out: the drawing has one thing to say first.
      const two = part.sub !== '' && textWidth(part.sub, size) <= part.width - 6 && part.height >= 2.4 * size;
      const at = y + part.height / 2 + drop - (two ? size * 0.66 : 0);
      const label = part.label.toUpperCase();
      lettering.push(text(label, middle, at, size, { weight: 600, anchor: 'middle', spacing: 0.05 }));
      if (two) lettering.push(text(part.sub, middle, at + size * 1.33, size, { anchor: 'middle', fill: C.ink2 }));
      const widest = Math.max(textWidth(label, size) * 1.2, two ? textWidth(part.sub, size) : 0);
      const rim = widest <= part.width - 16 ? 6 : 2.6;
      return box(
        x,
        y,
        part.width,
        part.height,
        rim,
        widest <= part.width - 34 && part.height >= (two ? 3.6 : 2.6) * size,
      );
    }
  }
}

/** One word too wide for its can is parted with a hyphen, as on a drawing. */
function brokenToFit(words: string, room: number, size: number): string[] {
  if (textWidth(words, size) <= room) return [words];
  const spaced = words.split(' ');
  if (spaced.length > 1) return spaced;
  const cut = Math.min(words.length - 2, Math.max(2, Math.floor(room / (size * 0.49)) - 1));
  return [`${words.slice(0, cut)}-`, words.slice(cut)];
}

function leader(from: PlanPoint, to: PlanPoint, radius: number): string {
  const line = letterLine(from, to, radius);
  if (line === null) return '';
  const [near, far] = line;
  return `<path d="M${r1(near.x)} ${r1(near.y)}L${r1(far.x)} ${r1(far.y)}" stroke="${C.ink}" stroke-width="1"/>`;
}

function text(
  words: string,
  x: number,
  y: number,
  size: number,
  style: Partial<Pick<Lettering, 'weight' | 'anchor' | 'fill' | 'spacing'>> = {},
): Lettering {
  return {
    words,
    x,
    y,
    size,
    weight: style.weight ?? 500,
    anchor: style.anchor ?? 'start',
    fill: style.fill ?? C.ink,
    spacing: style.spacing ?? 0.03,
  };
}

/** Lettering in a drawing that stands in the page itself, which sees the page's typefaces by the class. */
export function lettered({ words, x, y, size, weight, anchor, fill, spacing }: Lettering): string {
  return `<text x="${r1(x)}" y="${r1(y)}" class="lettered" font-size="${r1(size)}" font-weight="${weight}" letter-spacing="${r1(spacing * size * 10) / 10}" text-anchor="${anchor}" fill="${fill}">${escapeText(words)}</text>`;
}
