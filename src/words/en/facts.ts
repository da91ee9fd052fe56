/** Names of things on the bench as they stand inside a sentence. */
import type { LeadId, ToolId } from '../../bench/benchState.ts';

export const slugNames = {
  slug: (letter: string, id: string): string => `slug ${letter} (${id})`,
  trap: (letter: string, id: string): string => `trap ${letter} (${id})`,
} as const;

export const leadNames: Readonly<Record<LeadId, string>> = {
  rf: 'RF lead',
  y: 'Y lead',
  x: 'X lead',
  earth: 'earth strap',
  biasA: 'bias A lead',
  biasB: 'bias B lead',
  meter: 'meter lead',
};

export const toolNames: Readonly<Record<ToolId, string>> = { hex: 'hexagon', blade: 'blade', steel: 'steel blade' };
