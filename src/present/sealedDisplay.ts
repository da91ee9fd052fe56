/** The picture of a sealed run: pips are there, and nothing says which crystal makes which. */
import type { BenchDisplay, MarkerTag } from '../bench/display.ts';

/** Pips on the sweep, counted from the left as an eye would count them. */
export function sealedDisplay(display: BenchDisplay): BenchDisplay {
  const seen = display.tags.filter(({ xDiv }) => xDiv !== null).sort((a, b) => a.xDiv! - b.xDiv!);
  const tags = seen.map(({ xDiv }, i): MarkerTag => ({ kind: 'unnamed', number: i + 1, hz: 0, xDiv }));
  return { ...display, tags };
}
