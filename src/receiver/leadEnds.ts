/** Which lead of the bench has any business at which test point: the bench asks when a lead is put on, the scenario's check when it begins on one. */
import type { TestPoint } from './receiver.ts';

/** Leads that go to the set; that of X joins two instruments. */
export type SetLead = 'rf' | 'y' | 'earth' | 'biasA' | 'biasB' | 'meter';

export function pointTakes(lead: SetLead, { inject, role, node }: TestPoint): boolean {
  switch (lead) {
    case 'rf':
      return inject !== null;
    case 'y':
      return role === 'detector' || (role === 'signal' && node !== null);
    case 'earth':
      return role === 'earth';
    case 'biasA':
    case 'biasB':
      return role === 'agc';
    case 'meter':
      return true;
  }
}
