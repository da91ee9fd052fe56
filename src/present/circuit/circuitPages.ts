/** A long circuit in pages that fit a width: each begins with a stage, or before the first. */
import type { CircuitDiagram, Section } from './circuitTypes.ts';

export interface CircuitPage {
  readonly fromX: number;
  readonly toX: number;
  readonly sections: readonly number[];
}

export function circuitPages({ sections }: Pick<CircuitDiagram, 'sections'>, width: number): readonly CircuitPage[] {
  const pages: { fromX: number; toX: number; sections: number[] }[] = [];
  sections.forEach((section: Section, i) => {
    const last = pages.at(-1);
    if (last !== undefined && section.toX - last.fromX <= width) {
      last.toX = section.toX;
      last.sections.push(i);
    } else pages.push({ fromX: section.fromX, toX: section.toX, sections: [i] });
  });
  return pages;
}
