/** Failures that the chart, the meter or the tool tell apart, by scenario, and the part that has to go: the technician finds each through the display alone. */
export const FAILURES: ReadonlyMap<string, string> = new Map([
  ['lid-off', 'shield'],
  ['sagging-line', 'AGC'],
  ['upside-down', 'video'],
  ['almost-right', 'R2'],
  ['tired-valve', 'G2'],
  ['two-islands', 'L2s'],
  ['half-a-loaf', 'bypass:G2'],
  ['one-hump-gone', 'R3'],
  ['comes-and-goes', 'R4'],
  ['not-a-word', 'C2a'],
]);
