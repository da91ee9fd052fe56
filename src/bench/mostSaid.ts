/** How often a finding may be said. */

/** In practice an answer that does not fit is asked again, once; a sealed job asks once and says nothing. */
export function mostSaid({ sealed }: { readonly sealed: boolean }): number {
  return sealed ? 1 : 2;
}
