/** What a drawing in ink is read as for a canvas. What an attribute means that is not there: SVG 2, initial values of `fill`, `stroke` and their kin (W3C, 2018; from memory). */
import { describe, expect, it } from 'vitest';
import { holeHead } from '../../src/kit/chassis/slugHole.ts';
import { C, hatch } from '../../src/kit/theme/ink.ts';
import { inkPainter, inkPieces } from '../../src/kit/theme/inkCanvas.ts';
import { core, holeCrack, holeTool, section, toolEnd } from '../../src/rooms/bench/scene/slugArt.ts';

describe('a drawing in ink on a canvas', () => {
  it('has its pieces in order, each as its own attributes say and otherwise as an SVG has it', () => {
    const pieces = inkPieces(
      '<path d="M0 0H9V9z"/><path d="M1 1L2 2" fill="none" stroke="#123456" stroke-width=".8" stroke-linejoin="round" stroke-linecap="round" opacity=".5"/>',
    );
    const plain = { d: 'M0 0H9V9z', fill: '#000', stroke: null, width: 1, join: 'miter', cap: 'butt', opacity: 1 };
    const line = {
      d: 'M1 1L2 2',
      fill: null,
      stroke: '#123456',
      width: 0.8,
      join: 'round',
      cap: 'round',
      opacity: 0.5,
    };
    expect(pieces).toEqual([
      { ...plain, clip: null },
      { ...line, clip: null },
    ]);
  });

  it('draws a circle as two arcs of its radius through the ends of its diameter', () => {
    expect(inkPieces('<circle cx="3" cy="4" r="2" fill="#fff"/>')[0]!.d).toBe('M5 4A2 2 0 0 1 1 4A2 2 0 0 1 5 4Z');
    expect(inkPieces('<circle r="2.5"/>')[0]!.d).toBe('M2.5 0A2.5 2.5 0 0 1 -2.5 0A2.5 2.5 0 0 1 2.5 0Z');
  });

  it('clips hatching to the shape it stands for, and draws that shape nowhere', () => {
    const disc = 'M-5 0a5 5 0 1 0 10 0a5 5 0 1 0 -10 0z';
    const pieces = inkPieces(hatch(disc, [-5, -5, 10, 10]));
    expect(pieces).toHaveLength(1);
    expect(pieces[0]).toMatchObject({ clip: disc, fill: null, stroke: C.ink });
  });

  it('reads every drawing that turns, and refuses what it would leave out', () => {
    const { moving, tool } = section(60, 150, 'hex');
    const drawings = {
      core: core(75, 'hex', true, 0.6),
      head: holeHead(7, 'blade'),
      holeTool: holeTool(7),
      crack: holeCrack(7),
      moving,
      tool,
      end: toolEnd(75, 'blade'),
    };
    for (const [name, svg] of Object.entries(drawings)) {
      const shapes = svg.match(/<(path|circle) /g)!.length - (svg.match(/<clipPath/g)?.length ?? 0);
      expect([name, inkPieces(svg).length]).toEqual([name, shapes]);
    }
    expect(() => inkPieces('<text x="0" y="0">1</text>')).toThrow('<text>');
    expect(() => inkPieces('<g transform="rotate(3)"><path d="M0 0"/></g>')).toThrow('<g>');
  });

  it('leaves the canvas as it was, strokes under the mitre limit of an SVG, and thins what is seen through', () => {
    const done: string[] = [];
    const context = {
      globalAlpha: 0.5,
      miterLimit: 10,
      save: () => done.push('save'),
      restore: () => done.push('restore'),
      clip: () => done.push('clip'),
      fill: () => done.push(`fill ${context.fillStyle} ${context.globalAlpha}`),
      stroke: () => done.push(`stroke ${context.strokeStyle} ${context.lineWidth} ${context.miterLimit}`),
      fillStyle: '',
      strokeStyle: '',
      lineWidth: 1,
    };
    const before = globalThis.Path2D;
    globalThis.Path2D = class {} as unknown as typeof Path2D;
    try {
      inkPainter('<path d="M0 0H1" fill="#abcdef" stroke="#fedcba" stroke-width="2" opacity=".5"/>')(
        context as unknown as CanvasRenderingContext2D,
      );
    } finally {
      globalThis.Path2D = before;
    }
    expect(done).toEqual(['save', 'fill #abcdef 0.25', 'stroke #fedcba 2 4', 'restore']);
  });
});
