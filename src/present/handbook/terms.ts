/** Which page of the handbook says more of a trade word, which small figure goes with it, and where words stand in a text that does not mark them. */
import type { FigureKind, FigureTable } from '../../words/handbook.ts';
import type { Words } from '../../words/words.ts';

export type TermId = keyof Words['glossary']['terms'];

type TermFigure = {
  readonly [K in FigureKind]: { readonly kind: K; readonly control: FigureTable[K]['control'] };
}[FigureKind];

export interface TermRow {
  readonly page: string | null;
  readonly figure?: TermFigure;
}

const CAN = { kind: 'oneCan', control: 'coupling' } as const;
const Q = { kind: 'oneCan', control: 'q' } as const;

export const TERMS: Readonly<Record<TermId, TermRow>> = {
  adjacent: { page: 'traps' },
  agc: { page: 'bias' },
  bandwidth: { page: 'one-can', figure: Q },
  baseLine: { page: 'phasing' },
  bias: { page: 'bias', figure: { kind: 'bias', control: 'bias' } },
  bleeder: { page: 'safety' },
  blanking: { page: 'phasing' },
  bridged: { page: 'traps', figure: { kind: 'bridgedT', control: 'resistor' } },
  bypass: { page: 'faults' },
  can: { page: 'one-can', figure: CAN },
  carrier: { page: 'reading', figure: { kind: 'slope', control: 'carrier' } },
  clamp: { page: 'bias' },
  coupling: { page: 'one-can', figure: CAN },
  critical: { page: 'one-can', figure: CAN },
  crystal: { page: 'markers' },
  damping: { page: 'one-can', figure: Q },
  detector: { page: 'detectors', figure: { kind: 'detector', control: 'drive' } },
  probe: { page: 'leads', figure: { kind: 'probe', control: 'farads' } },
  discriminator: { page: 's-curve' },
  earth: { page: 'earth' },
  graticule: { page: 'tube' },
  haystack: { page: 'reading' },
  hotChassis: { page: 'safety' },
  if: { page: 'sweep' },
  isolating: { page: 'safety' },
  isolatingResistor: { page: 'leads' },
  limiter: { page: 'overload' },
  link: { page: 'stagger' },
  loading: { page: 'one-can', figure: Q },
  marker: { page: 'markers', figure: { kind: 'markers', control: 'marker' } },
  miller: { page: 'bias', figure: { kind: 'bias', control: 'bias' } },
  mirror: { page: 'tube' },
  oscillator: { page: 'spot' },
  overload: { page: 'overload', figure: { kind: 'overload', control: 'drive' } },
  phasing: { page: 'phasing', figure: { kind: 'phasing', control: 'phase' } },
  pip: { page: 'markers', figure: { kind: 'markers', control: 'marker' } },
  proof: { page: 'order' },
  q: { page: 'one-can', figure: Q },
  ratio: { page: 's-curve' },
  response: { page: 'sweep' },
  retrace: { page: 'phasing', figure: { kind: 'phasing', control: 'phase' } },
  sCurve: { page: 's-curve', figure: { kind: 'sCurve', control: 'secondary' } },
  sheet: { page: 'order' },
  sideband: { page: 'reading', figure: { kind: 'slope', control: 'carrier' } },
  slope: { page: 'reading', figure: { kind: 'slope', control: 'carrier' } },
  slug: { page: 'slug', figure: { kind: 'slug', control: 'turns' } },
  span: { page: 'tube', figure: { kind: 'scale', control: 'span' } },
  spot: { page: 'spot' },
  squareLaw: { page: 'detectors', figure: { kind: 'detector', control: 'drive' } },
  stage: { page: 'stagger' },
  stagger: { page: 'stagger', figure: { kind: 'stagger', control: 'spread' } },
  sweep: { page: 'sweep', figure: { kind: 'spot', control: 'moment' } },
  termination: { page: 'leads' },
  testPoint: { page: 'order' },
  tone: { page: 'spot' },
  trap: { page: 'traps', figure: { kind: 'trap', control: 'tuned' } },
  tunable: { page: 'markers', figure: { kind: 'markers', control: 'marker' } },
  tuned: { page: 'slug', figure: { kind: 'slug', control: 'turns' } },
};

export const termOf = (id: string): TermId | null => (Object.hasOwn(TERMS, id) ? (id as TermId) : null);
