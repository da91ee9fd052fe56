/** The page of the handbook that explains what a drill is about. */
import type { DrillId } from '../../drills/drill.ts';

export const DRILL_PAGES: Readonly<Record<DrillId, string>> = {
  'phase-it': 'phasing',
  'which-way': 'slug',
  'per-cent': 'reading',
  'find-the-trap': 'traps',
  overload: 'overload',
  zero: 's-curve',
  'which-part': 'faults',
  'what-lies-here': 'reading',
};
