/** What may have failed in a set or at the bench: plain data, as a scenario names it. `faultEffects.ts` makes it real. */

export type Fault =
  /** a damping or load resistor that has gone open */
  | { readonly kind: 'openResistor'; readonly element: string }
  /** a resistor of another value than the sheet's */
  | { readonly kind: 'wrongLoad'; readonly element: string; readonly ohms: number }
  /** a bias line that leaks to earth: what the set's own line gives is divided down, and the supply's leads hold it all the same */
  | { readonly kind: 'leakyBiasLine'; readonly at: string; readonly ohms: number }
  /** a tired valve or transistor */
  | { readonly kind: 'weakStage'; readonly element: string; readonly factor: number }
  /** a capacitor that has drifted: of a trap, so far that no slug brings the notch back */
  | { readonly kind: 'driftedCapacitor'; readonly element: string; readonly factor: number }
  /** turns of a trap that touch */
  | { readonly kind: 'shortedTrap'; readonly slug: string }
  /** a decoupling capacitor that has gone open: what should end at earth gets back to the stage's input */
  | { readonly kind: 'openBypass'; readonly element: string; readonly farads: number }
  /** a screen left off: one node talks to another */
  | { readonly kind: 'missingShield'; readonly from: string; readonly to: string; readonly farads: number }
  | { readonly kind: 'reversedDiode'; readonly detector: string }
  | { readonly kind: 'leakyDiode'; readonly detector: string; readonly ohms: number }
  /** a core that no longer turns with its screw */
  | { readonly kind: 'crackedSlug'; readonly slug: string }
  /** a coupling (K) or a coupling capacitor with a broken joint */
  | { readonly kind: 'openCoupling'; readonly element: string }
  /** two trap capacitors put in each other's place */
  | { readonly kind: 'swappedTraps'; readonly first: string; readonly second: string }
  /** the owner before screwed every slug in */
  | { readonly kind: 'screwedIn' }
  /** an earth strap whose clip makes no contact until it is lifted and put back */
  | { readonly kind: 'looseEarth' }
  /** an RF lead whose pad makes no contact until it is unclipped and clipped on again */
  | { readonly kind: 'unmatchedLead' };

export type FaultKind = Fault['kind'];

export const FAULT_KINDS: readonly FaultKind[] = [
  'openResistor',
  'wrongLoad',
  'leakyBiasLine',
  'weakStage',
  'driftedCapacitor',
  'shortedTrap',
  'openBypass',
  'missingShield',
  'reversedDiode',
  'leakyDiode',
  'crackedSlug',
  'openCoupling',
  'swappedTraps',
  'screwedIn',
  'looseEarth',
  'unmatchedLead',
];

/** `replace` a part (a deck element, or a detector's name), `turn` slugs, or `reconnect` a lead. */
export type Cure =
  | {
      readonly kind: 'replace';
      readonly part: string;
      /** parts any one of which is the cure: two that have changed places go back together */
      readonly parts: readonly string[];
    }
  | { readonly kind: 'turn' }
  | { readonly kind: 'reconnect'; readonly lead: 'earth' | 'rf' };
