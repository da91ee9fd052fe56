/** Leads, plugs, clips, probe and jacks as Pixi graphics. Each lead has a colour and a weave, so that colour is never the only sign. */
import { type Graphics, GraphicsPath } from 'pixi.js';
import { C } from '../../../kit/theme/ink.ts';
import type { LeadKind, LeadTip } from './leadKinds.ts';
import { dashes, type Polyline } from './leadPath.ts';

const WIDTH = 6;

export function drawWire(g: Graphics, line: Polyline, { colour, weave }: Pick<LeadKind, 'colour' | 'weave'>): void {
  const points = Array.from(line);
  g.clear();
  const shade = points.map((v, i) => v + (i % 2 === 0 ? 2.5 : 4));
  g.poly(shade, false).stroke({ width: WIDTH, color: C.ink, alpha: 0.13, cap: 'round', join: 'round' });
  // The paper casing parts leads that cross.
  g.poly(points, false).stroke({ width: WIDTH + 4, color: C.paper, alpha: 0.9, cap: 'butt', join: 'round' });
  g.poly(points, false).stroke({ width: WIDTH, color: C.ink, cap: 'round', join: 'round' });
  g.poly(points, false).stroke({ width: WIDTH - 2.4, color: colour, cap: 'round', join: 'round' });
  switch (weave) {
    case 'plain':
      return;
    case 'banded':
      for (const piece of dashes(line, 2, 9)) g.poly(piece, false).stroke({ width: WIDTH - 3, color: C.sheet });
      return;
    case 'stitched':
      for (const piece of dashes(line, 7, 4)) g.poly(piece, false).stroke({ width: 1.1, color: C.ink });
      return;
    case 'doubleStitched':
      for (const piece of dashes(line, 2, 3)) g.poly(piece, false).stroke({ width: 2.4, color: C.ink });
      return;
    case 'lined':
      g.poly(points, false).stroke({ width: 1, color: C.sheet });
      return;
  }
}

/** Points along +x from the tip at the origin; the wire enters at the far end. */
export function drawTip(g: Graphics, tip: LeadTip, colour: string): void {
  g.clear();
  switch (tip) {
    case 'plug':
      drawPlug(g, colour);
      return;
    case 'clip':
      clipJaws(g);
      sleeve(g, colour, 20, 26);
      return;
    case 'boxedClip':
      clipJaws(g);
      sleeve(g, colour, 20, 22);
      // What sits at the end of the lead: termination, capacitor or resistor in a small tube.
      shape(g, 'M42 -5H55Q57 -5 57 -3V3Q57 5 55 5H42Z', C.sheet, 1.2);
      detail(g, 'M45 -5V5M48 -5V5', 1.4);
      return;
    case 'probe':
      shape(g, 'M0 0L12 -1.6V1.6Z', C.ink, 0.5);
      shape(g, 'M11 -3.4L22 -6H50L58 -3.6V3.6L50 6H22L11 3.4Z', C.sheet, 1.3);
      detail(g, 'M24 -6V6M28 -6V6', 0.9);
      shape(g, 'M34 -6H43V6H34Z', colour, 1);
      detail(g, 'M22 4.2H50M30 2.6H50', 0.6);
      return;
  }
}

/** A plug in its jack, sticking out along +x. */
export function drawPlug(g: Graphics, colour: string): void {
  shape(g, 'M-4 -5H13L18 -3.2V3.2L13 5H-4Z', colour, 1.3);
  detail(g, 'M1 -5V5M4.5 -5V5M8 -5V5', 0.8);
  detail(g, 'M-3 3.6H13', 1.1);
}

export function drawJack(g: Graphics): void {
  g.circle(0, 0, 10.5).fill(C.sheet).stroke({ width: 1.4, color: C.ink });
  g.circle(0, 0, 5.6).fill(C.ink);
}

function clipJaws(g: Graphics): void {
  shape(g, 'M0 -1L11 -5.5L31 -5.2V-1Z', C.wash2, 1.2);
  shape(g, 'M0 1L11 5.5L31 5.2V1Z', C.wash2, 1.2);
  detail(g, 'M3 -1L4.5 1L6 -1L7.5 1L9 -1L10.5 1L12 -1', 0.9);
}

function sleeve(g: Graphics, colour: string, from: number, length: number): void {
  g.roundRect(from, -7, length, 14, 4).fill(colour).stroke({ width: 1.3, color: C.ink });
  for (let x = from + 5; x < from + length - 3; x += 4) detail(g, `M${x} -6V6`, 0.7);
}

function shape(g: Graphics, d: string, fill: string, width: number): void {
  g.path(new GraphicsPath(d)).fill(fill).stroke({ width, color: C.ink, join: 'round' });
}

function detail(g: Graphics, d: string, width: number): void {
  g.path(new GraphicsPath(d)).stroke({ width, color: C.ink });
}
