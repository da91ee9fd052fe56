/** A long circuit in pages that fit a width: each begins with a stage, or before the first. A stage that is wider still goes on from page to page, cut where no symbol stands. */
import type { CircuitDiagram, CircuitSymbol, Section, SymbolBox } from './circuitTypes.ts';

export interface CircuitPage {
  readonly fromX: number;
  readonly toX: number;
  readonly sections: readonly number[];
  /** of a stage that takes several pages: which of them this is, from 1; absent: the page holds its stages whole */
  readonly part?: { readonly at: number; readonly of: number };
}

/** Drawing units that stay free on either side of a cut. */
const CLEAR = 4;

/** `width`: of an ordinary page; `most`: what a page can hold when it is drawn as small as it may be, from `width` up. Drawing units. */
export function circuitPages(
  diagram: Pick<CircuitDiagram, 'sections' | 'symbols' | 'couplings'>,
  width: number,
  most: number,
): readonly CircuitPage[] {
  const pages: { fromX: number; toX: number; sections: number[]; part?: NonNullable<CircuitPage['part']> }[] = [];
  diagram.sections.forEach((section: Section, i) => {
    const last = pages.at(-1);
    if (last !== undefined && last.part === undefined && section.toX - last.fromX <= width) {
      last.toX = section.toX;
      last.sections.push(i);
      return;
    }
    const cuts = cutsOf(section, i, diagram, most);
    cuts.forEach((toX, k) => {
      const fromX = k === 0 ? section.fromX : cuts[k - 1]!;
      const part = cuts.length > 1 ? { at: k + 1, of: cuts.length } : undefined;
      pages.push({ fromX, toX, sections: [i], ...(part === undefined ? {} : { part }) });
    });
  });
  return pages;
}

export function isOnPage({ sections, fromX, toX, part }: CircuitPage, { section, at }: CircuitSymbol): boolean {
  return sections.includes(section) && (part === undefined || (at.x >= fromX && at.x < toX));
}

/** Where each page of a section ends. Where nothing can be cut the page stays wider than `most`. */
function cutsOf(
  { fromX, toX }: Section,
  at: number,
  { symbols, couplings }: Pick<CircuitDiagram, 'symbols' | 'couplings'>,
  most: number,
): readonly number[] {
  const taken = [
    ...symbols.filter(({ section }) => section === at).flatMap(spansOf),
    ...couplings.map(({ at: { x } }): Span => [x - 8, x + 8]),
  ];
  const isFree = (x: number): boolean => taken.every(([from, to]) => x <= from - CLEAR || x >= to + CLEAR);
  const free = taken
    .flatMap(([from, to]) => [from - CLEAR, to + CLEAR])
    .filter((x) => x > fromX && x < toX && isFree(x))
    .sort((a, b) => a - b);
  const cuts: number[] = [];
  for (let from = fromX; toX - from > most; ) {
    const next = free.findLast((x) => x > from && x <= from + most) ?? free.find((x) => x > from);
    if (next === undefined) break;
    cuts.push(next);
    from = next;
  }
  return [...cuts, toX];
}

type Span = readonly [from: number, to: number];

function spansOf({ box, label, note, disc }: CircuitSymbol): readonly Span[] {
  const span = ({ x, width }: SymbolBox): Span => [x, x + width];
  return [
    span(box),
    ...(label === null ? [] : [span(label.box)]),
    ...(note === null ? [] : [span(note.box)]),
    ...(disc === null ? [] : [[disc.at.x - 10, disc.at.x + 10] as const]),
  ];
}
