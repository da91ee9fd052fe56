/** Turns and seconds of a good run. They are found by the certifier; until they are, a long and generous job stands for them. */
export interface Par {
  readonly turns: number;
  readonly seconds: number;
  /** it is none: it says so itself, so that it is known however often it has been copied */
  readonly standsForNone?: true;
}

/** Of a scenario that nobody has certified. */
export const PAR_NOT_KNOWN: Par = Object.freeze({ turns: 40, seconds: 3600, standsForNone: true });

/** The same as it was written into files while a copy of it was taken for a par. */
export const PAR_ONCE_WRITTEN: Par = Object.freeze({ turns: PAR_NOT_KNOWN.turns, seconds: PAR_NOT_KNOWN.seconds });

/** Turns that cost nothing, whatever the certifier found (G34): where hardly anything is astray two slugs may still be tried by half a turn and put back. */
const FREE_TURNS = 2;

/** Par as a run is marked by it. */
export const countedPar = (par: Par): Par => ({ ...par, turns: Math.max(par.turns, FREE_TURNS) });

export const parIsKnown = ({ par }: { readonly par: Par }): boolean => par.standsForNone !== true;

/** Par as the course keeps it, known or not. Of a sealed job never: it counts what lies astray and what has failed, and so would give both away. */
export const openPar = ({ sealed, par }: { readonly sealed: boolean; readonly par: Par }): Par | null =>
  sealed ? null : countedPar(par);

/** Par as it is told before the signature, which is the one that counts; null where there is none to tell. */
export const toldPar = (scenario: { readonly sealed: boolean; readonly par: Par }): Par | null =>
  parIsKnown(scenario) ? openPar(scenario) : null;
