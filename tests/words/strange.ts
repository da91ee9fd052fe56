/** Finds English in a text that should be made of the pseudo language alone: whatever stands outside all brackets. */

/** What is left of a text when everything in brackets, figures and the `known` words from files are taken away; empty = all is in the pseudo language. */
export function outsideBrackets(text: string, known: readonly string[] = []): string {
  let depth = 0;
  let left = '';
  for (const sign of text) {
    if (sign === '\u27e6') depth++;
    else if (sign === '\u27e7') depth--;
    else if (depth === 0) left += sign;
  }
  if (depth !== 0) return text;
  for (const word of [...known].sort((a, b) => b.length - a.length)) left = left.split(word).join('');
  return left.replace(/(?<!\p{L})(?:[kM]?Hz|dB|m?V|div|k\u03a9)(?!\p{L})|[\d\s]|[^\p{L}]/gu, '').trim();
}
