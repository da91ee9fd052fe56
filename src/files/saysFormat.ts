/** Which kind of file a text says it is, told from its beginning: it is read whole only by whoever takes that kind. */

const BEGINNING = 2000;

/** `format`: without `haystack-`; `within`: characters of the beginning. */
export function saysFormat(contents: string, format: string, within = BEGINNING): boolean {
  return new RegExp(`"format"\\s*:\\s*"haystack-${format}"`).test(contents.slice(0, within));
}
