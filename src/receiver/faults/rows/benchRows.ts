/** What is wrong with the bench or was done to the set: cured with a tool or by hand. */
import { faultRow } from '../faultRow.ts';

export const BENCH_ROWS = {
  /** the owner before screwed every slug in */
  screwedIn: faultRow({
    fields: {},
    marks: () => [{ kind: 'screwedIn' }],
    cure: { by: 'turning' },
    sits: null,
  }),
  /** an earth strap whose clip makes no contact until it is lifted and put back */
  looseEarth: faultRow({
    fields: {},
    marks: () => [{ kind: 'noContact', lead: 'earth' }],
    cure: { by: 'lead', lead: 'earth' },
    sits: null,
  }),
  /** an RF lead whose pad makes no contact until it is unclipped and clipped on again */
  unmatchedLead: faultRow({
    fields: {},
    marks: () => [{ kind: 'noContact', lead: 'rf' }],
    cure: { by: 'lead', lead: 'rf' },
    sits: null,
  }),
} as const;
