/** How often a finding may be stated. */

/** In practice an answer that does not fit is asked for once more; a sealed job asks once and says nothing. */
export function mostSaid({ sealed }: { readonly sealed: boolean }): number {
  return sealed ? 1 : 2;
}
