/** The lead end that is in the hand. */
import type { LeadEnd, LeadId } from '../../../bench/benchState.ts';

export interface Carry {
  readonly lead: LeadId;
  readonly legal: readonly LeadEnd[];
  readonly by: 'pointer' | 'keys';
}
