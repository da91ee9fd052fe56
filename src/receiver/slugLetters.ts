/** The letters by which people call the slugs: A, B, C... in the order of the receiver file, without I and O (too like 1 and 0). */

/** As much of a receiver as its letters need. */
interface Slugged {
  readonly adjusters: readonly { readonly id: string }[];
}

export const SLUG_LETTERS = 'ABCDEFGHJKLMNPQRSTUVWXYZ';

/** Letter of the slug that stands at `index` in the receiver's list. */
function slugLetter(index: number): string {
  const letter = SLUG_LETTERS[index];
  if (letter === undefined) throw new Error(`no letter for slug ${index}`);
  return letter;
}

/** Letter by slug id. */
export function slugLetters(receiver: Slugged): ReadonlyMap<string, string> {
  return new Map(receiver.adjusters.map((adjuster, index) => [adjuster.id, slugLetter(index)]));
}
