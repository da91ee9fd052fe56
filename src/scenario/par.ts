/** Turns and seconds of a good run. They are found by the certifier; until they are, a long and generous job stands for them. */
export interface Par {
  readonly turns: number;
  readonly seconds: number;
}

/** Of a scenario that nobody has certified. Known by what it is, not by its figures. */
export const PAR_NOT_KNOWN: Par = Object.freeze({ turns: 40, seconds: 3600 });

/** Par as it is told before the signature. Of a sealed job never: it counts what lies astray and what has failed, and so would give both away. */
export const toldPar = ({ sealed, par }: { readonly sealed: boolean; readonly par: Par }): Par | null =>
  sealed ? null : par;

export const parIsKnown = ({ par }: { readonly par: Par }): boolean => par !== PAR_NOT_KNOWN;
