/**
 * Drawings in ink on a canvas: the same strings that stand in the page as SVG, for the few parts that turn in every frame. A canvas that is painted
 * again has the browser neither lay nor paint anything else of the page; an SVG of which one attribute changes has it lay and paint the page's layers anew.
 * It reads what such drawings are made of: paths, circles and the clips of hatching, each with attributes of its own.
 */

export interface InkPiece {
  readonly d: string;
  readonly fill: string | null;
  readonly stroke: string | null;
  readonly width: number;
  readonly join: CanvasLineJoin;
  readonly cap: CanvasLineCap;
  readonly opacity: number;
  /** path that it is clipped to */
  readonly clip: string | null;
}

type Attributes = ReadonlyMap<string, string>;

const TAG = /<(\/?)([A-Za-z]+)([^>]*?)\/?>/g;
const ATTRIBUTE = /([\w-]+)="([^"]*)"/g;

/** Pieces in order, the lowest first. Throws at what no drawing that turns is made of. */
export function inkPieces(svg: string): InkPiece[] {
  const pieces: InkPiece[] = [];
  const clips = new Map<string, string>();
  let clipping: string | null = null;
  for (const [, closing, tag, rest] of svg.matchAll(TAG)) {
    const attributes: Attributes = new Map([...rest!.matchAll(ATTRIBUTE)].map(([, name, value]) => [name!, value!]));
    if (tag === 'clipPath') clipping = closing === '/' ? null : (attributes.get('id') ?? null);
    else if (tag !== 'path' && tag !== 'circle') throw new Error(`no drawing that turns has a <${tag}>`);
    else if (clipping !== null) clips.set(clipping, shapeOf(tag, attributes));
    else pieces.push(pieceOf(shapeOf(tag, attributes), attributes, clips));
  }
  return pieces;
}

function shapeOf(tag: string, attributes: Attributes): string {
  if (tag === 'path') return attributes.get('d') ?? '';
  const [x, y, r] = ['cx', 'cy', 'r'].map((name) => Number(attributes.get(name) ?? 0)) as [number, number, number];
  return `M${x + r} ${y}A${r} ${r} 0 0 1 ${x - r} ${y}A${r} ${r} 0 0 1 ${x + r} ${y}Z`;
}

function pieceOf(d: string, attributes: Attributes, clips: ReadonlyMap<string, string>): InkPiece {
  const colour = (name: string, otherwise: string | null): string | null => {
    const value = attributes.get(name) ?? otherwise;
    return value === 'none' ? null : value;
  };
  const clip = /url\(#(.+)\)/.exec(attributes.get('clip-path') ?? '')?.[1];
  return {
    d,
    fill: colour('fill', '#000'),
    stroke: colour('stroke', null),
    width: Number(attributes.get('stroke-width') ?? 1),
    join: (attributes.get('stroke-linejoin') ?? 'miter') as CanvasLineJoin,
    cap: (attributes.get('stroke-linecap') ?? 'butt') as CanvasLineCap,
    opacity: Number(attributes.get('opacity') ?? 1),
    clip: clip === undefined ? null : (clips.get(clip) ?? null),
  };
}

/** Paints a drawing where the context's origin stands. */
export type InkPainter = (context: CanvasRenderingContext2D) => void;

export function inkPainter(svg: string): InkPainter {
  const paths = new Map<string, Path2D>();
  const pathOf = (d: string): Path2D => {
    const path = paths.get(d) ?? new Path2D(d);
    paths.set(d, path);
    return path;
  };
  const pieces = inkPieces(svg).map((piece) => ({
    ...piece,
    path: pathOf(piece.d),
    within: piece.clip === null ? null : pathOf(piece.clip),
  }));
  return (context) => {
    for (const { path, within, fill, stroke, width, join, cap, opacity } of pieces) {
      context.save();
      if (within !== null) context.clip(within);
      context.globalAlpha *= opacity;
      if (fill !== null) {
        context.fillStyle = fill;
        context.fill(path);
      }
      if (stroke !== null) {
        context.strokeStyle = stroke;
        context.lineWidth = width;
        context.lineJoin = join;
        context.lineCap = cap;
        // As an SVG has it.
        context.miterLimit = 4;
        context.stroke(path);
      }
      context.restore();
    }
  };
}
