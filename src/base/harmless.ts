/** Words from a file may hold signs that move the cursor or hide text; they are shown by their number. */
export function harmless(text: string): string {
  return text.replace(/[\p{Cc}\p{Cf}\u2028\u2029]/gu, (sign) => `\\u{${sign.codePointAt(0)!.toString(16)}}`);
}
