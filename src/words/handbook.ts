/**
 * What a handbook is made of: pages of plain text with figures, each language's own. In a text `*word*` leans on a word, `{name}` is a figure of
 * present/handbook/numbers.ts, `[words](term)` a word of the glossary and `[words](#page)` another page.
 */

/** What can be turned on each live figure, and what is read from it. */
export interface FigureTable {
  spot: { control: 'moment'; reading: 'frequency' | 'level' };
  scale: { control: 'span' | 'gain'; reading: 'division' | 'width' | 'height' };
  phasing: { control: 'phase' | 'blanking'; reading: 'apart' };
  fastSweep: { control: 'span'; reading: 'peak' | 'late' | 'width' };
  markers: { control: 'marker' | 'way'; reading: 'pip' | 'base' };
  slug: { control: 'turns'; reading: 'peak' | 'moved' };
  oneCan: { control: 'coupling' | 'q'; reading: 'apart' | 'dip' | 'width' | 'height' };
  stagger: { control: 'spread' | 'middle'; reading: 'width' | 'gain' | 'lean' };
  trap: { control: 'tuned' | 'coupling'; reading: 'depth' | 'peak' };
  bridgedT: { control: 'resistor' | 'tuned'; reading: 'depth' };
  detector: { control: 'drive'; reading: 'output' | 'half' };
  sCurve: { control: 'primary' | 'secondary'; reading: 'crossing' | 'apart' | 'heights' };
  bias: { control: 'bias'; reading: 'gain' | 'moved' };
  overload: { control: 'drive'; reading: 'compression' | 'width' };
  probe: { control: 'farads'; reading: 'peak' | 'moved' };
  lead: { control: 'end' | 'earth'; reading: 'tilt' };
  slope: { control: 'carrier'; reading: 'level' | 'low' };
  faults: { control: 'fault'; reading: 'height' | 'width' };
}

export type FigureKind = keyof FigureTable;

/** A slider has a name; a switch has a name and a name for each of its places. */
export type ControlName = string | readonly [name: string, ...places: string[]];

export type FigureWords = {
  readonly [K in FigureKind]: {
    readonly kind: K;
    readonly title: string;
    readonly caption: string;
    readonly controls: Readonly<Record<FigureTable[K]['control'], ControlName>>;
    readonly readings: Readonly<Record<FigureTable[K]['reading'], string>>;
  };
}[FigureKind];

export type HandbookBlock =
  | { readonly h: string }
  | { readonly p: string }
  | { readonly list: readonly string[] }
  | { readonly steps: readonly string[] }
  | { readonly caution: string };

export interface HandbookPage {
  /** of its address */
  readonly id: string;
  readonly group: string;
  readonly title: string;
  /** the first lines, and what the contents say of the page */
  readonly lead: string;
  readonly figures: readonly FigureWords[];
  readonly blocks: readonly HandbookBlock[];
}

export interface HandbookWords {
  readonly title: string;
  readonly intro: string;
  readonly contents: string;
  readonly page: string;
  readonly print: string;
  readonly next: string;
  readonly previous: string;
  readonly allWords: string;
  readonly wordsIntro: string;
  /** what the figure's readings are, before the list of them */
  readonly readings: string;
  readonly nothing: string;
  readonly noSuchPage: string;
  /** what a figure's drawing is, for those who do not see it */
  readonly drawing: string;
  readonly pages: readonly HandbookPage[];
}
