/** Rules of the response (G3 to G11, G48 to G53): one for each demand that a service sheet can make; and of parts that have failed (G62). */
import type { SpecItem, SpecItemKind } from '../../receiver/specification.ts';
import { roundMeasured } from '../falling.ts';
import { answer } from './readings.ts';
import type { LineRule, Reading, Subjects } from './rule.ts';

/** Every kind of demand has its rule, or this does not compile. */
const DEMANDS = {
  point: demanded('G3', 'point', { drawn: true }),
  window: demanded('G4', 'window'),
  tilt: demanded('G5', 'tilt'),
  trap: demanded('G6', 'trap', { drawn: true }),
  notch: demanded('G7', 'notch'),
  skirt: demanded('G8', 'skirt'),
  bandwidth: demanded('G9', 'bandwidth'),
  centre: demanded('G10', 'centre'),
  gain: demanded('G11', 'gain'),
  peak: demanded('G48', 'peak'),
  zero: demanded('G49', 'zero'),
  polarity: demanded('G50', 'polarity'),
  separation: demanded('G51', 'separation'),
  symmetry: demanded('G52', 'symmetry'),
  linearity: demanded('G53', 'linearity'),
} as const satisfies { readonly [K in SpecItemKind]: LineRule & { readonly demand: K } };

/** The line of the score about a part that has failed. */
export const FAILED_PART = 'G62';

const PARTS = [
  {
    number: FAILED_PART,
    block: 'response',
    about: 'failedPart',
    weight: 6,
    reads: ({ part, cured, symptom }) => ({
      ...answer(cured),
      subject: part,
      ...(symptom === undefined ? {} : { symptom }),
    }),
  },
] as const satisfies readonly LineRule[];

export const SHEET_RULES = [...Object.values(DEMANDS), ...PARTS];

/** Limits and weight are those of the sheet. */
function demanded<const N extends string, const K extends SpecItemKind>(
  number: N,
  demand: K,
  more: { readonly drawn?: true } = {},
) {
  return {
    number,
    block: 'response',
    about: 'demand',
    demand,
    ...more,
    weight: ({ item }: Subjects['demand']) => item.weight,
    reads: (subject: Subjects['demand']) => (subject.item.kind === demand ? readingOf(subject) : null),
  } as const;
}

function readingOf({ response, item, cause, part, fullWithin }: Subjects['demand']): Reading {
  const { hz, toHz } = item;
  const figures = measuredOf(item);
  // A yes or no has no half way.
  const paid = fullWithin === undefined || figures.unit === 'yes' ? {} : { fullWithin };
  const limits = { ...figures.limits, ...paid };
  return { ...figures, limits, response, hz, toHz, cause, ...(part === undefined ? {} : { part }) };
}

/** Ratios are told in per cent, and the limits rounded like the figure. */
function measuredOf(item: SpecItem): Pick<Reading, 'measured' | 'unit' | 'limits'> {
  const unit = item.unit === 'ratio' ? 'percent' : item.unit;
  const times = item.unit === 'ratio' ? 100 : 1;
  const limit = (value: number | null): number | null => (value === null ? null : roundMeasured(value * times, unit));
  return {
    measured: item.measured * times,
    unit,
    limits: { low: limit(item.low), high: limit(item.high), tolerance: item.tolerance * times },
  };
}
