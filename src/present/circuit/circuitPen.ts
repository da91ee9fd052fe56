/** Puts symbols, lettering and wires on a diagram that grows from left to right, each in a place that nothing else has. */
import {
  type CircuitSymbol,
  LETTERING,
  type Lettering,
  letteringWidth,
  type Section,
  type Spot,
  type SymbolBox,
  type SymbolKind,
} from './circuitTypes.ts';

/** Where things stand, below the line of the signal (above it: negative). */
export const LEVEL = {
  /** the line of an absorption trap, which has no part in the line above it */
  island: 26,
  hanging: 62,
  foot: 114,
  grid: 66,
  bias: 214,
  biasStep: 44,
  firstTrack: -92,
  trackStep: 58,
} as const;

export interface Arch {
  readonly from: number;
  /** known when the other end is placed */
  to: number | null;
  /** how far down its ends come: to the line, or past it to a grid */
  readonly fromY: number;
  toY: number;
  /** puts the part into the line at that height; null: a plain wire */
  readonly part: ((y: number) => { readonly left: number; readonly right: number }) | null;
}

interface Named {
  readonly name: string | null;
  readonly part: string | null;
  readonly slug?: string | null;
}

interface Put extends Named {
  readonly kind: SymbolKind;
  readonly lying?: boolean;
  readonly at: Spot;
  readonly half: Spot;
  readonly label?: Lettering | null;
  readonly disc?: CircuitSymbol['disc'];
  readonly note?: Lettering | null;
}

export class CircuitPen {
  readonly symbols: CircuitSymbol[] = [];
  readonly wires: (readonly Spot[])[] = [];
  readonly dots: Spot[] = [];
  readonly arches: Arch[] = [];
  readonly sections: { stage: string | null; fromX: number }[] = [];
  x = 0;

  put({ kind, at, half, name, part, slug = null, lying = false, label = null, disc = null, note = null }: Put): void {
    this.symbols.push({
      key: `${kind}-${this.symbols.length}`,
      kind,
      name,
      part,
      slug,
      lying,
      at,
      box: { x: at.x - half.x, y: at.y - half.y, width: 2 * half.x, height: 2 * half.y },
      label,
      disc,
      note,
      section: Math.max(0, this.sections.length - 1),
    });
  }

  wire(...points: readonly (readonly [number, number])[]): void {
    this.wires.push(points.map(([x, y]) => ({ x, y })));
  }

  dot(x: number, y: number): void {
    this.dots.push({ x, y });
  }

  earth(x: number, y: number): void {
    this.put({ kind: 'earth', at: { x, y: y + 6 }, half: { x: 12, y: 6 }, name: null, part: null });
  }

  closeSections(toX: number): Section[] {
    return this.sections.map(({ stage, fromX }, i) => ({ stage, fromX, toX: this.sections[i + 1]?.fromX ?? toX }));
  }

  /** Arches over the line: the shorter the lower, none on top of another. */
  span(): void {
    const taken: { from: number; to: number }[][] = [];
    const spanned = this.arches.flatMap((arch) => (arch.to === null ? [] : [{ ...arch, to: arch.to }]));
    for (const arch of spanned.sort((a, b) => Math.abs(a.to - a.from) - Math.abs(b.to - b.from))) {
      const from = Math.min(arch.from, arch.to);
      const to = Math.max(arch.from, arch.to);
      let track = taken.findIndex((held) => held.every((h) => h.to < from - 6 || h.from > to + 6));
      if (track < 0) track = taken.push([]) - 1;
      taken[track]!.push({ from, to });
      const y = LEVEL.firstTrack - track * LEVEL.trackStep;
      if (arch.part === null) this.wire([arch.from, arch.fromY], [arch.from, y], [arch.to, y], [arch.to, arch.toY]);
      else {
        const { left, right } = arch.part(y);
        this.wire([arch.from, arch.fromY], [arch.from, y], [left, y]);
        this.wire([right, y], [arch.to, y], [arch.to, arch.toY]);
      }
    }
  }
}

/** Lettering whose left end (or middle) stands at `x` and whose line is at `y`. */
export function lettering(text: string, x: number, y: number, middle = false): Lettering {
  const width = letteringWidth(text);
  const left = middle ? x - width / 2 : x;
  return { text, x: left, y, box: { x: left, y: y - LETTERING + 3, width, height: LETTERING } };
}

export function boundsOf(boxes: readonly SymbolBox[]): SymbolBox {
  const left = Math.min(...boxes.map((b) => b.x));
  const top = Math.min(...boxes.map((b) => b.y));
  return {
    x: left,
    y: top,
    width: Math.max(...boxes.map((b) => b.x + b.width)) - left,
    height: Math.max(...boxes.map((b) => b.y + b.height)) - top,
  };
}
