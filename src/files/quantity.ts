/** A figure with its unit as people of the trade write it: `45.75 MHz`, `110 pF`, `1.122 mH`. */

const PREFIXES = ['p', 'n', 'µ', 'm', '', 'k', 'M', 'G'] as const;
const PLAIN = 4;
/** Digits enough to tell two crystals of one box apart. */
const DIGITS = 8;

export function quantity(value: number, unit: 'Hz' | 'F' | 'H' | 'ohms'): string {
  if (value === 0 || !Number.isFinite(value)) return `${value} ${unit}`;
  const lowest = unit === 'Hz' ? PLAIN : 0;
  const thousands = Math.floor(Math.log10(Math.abs(value)) / 3 + 1e-9);
  const step = Math.min(Math.max(PLAIN + thousands, lowest), PREFIXES.length - 1);
  const scaled = value / 1000 ** (step - PLAIN);
  return `${Number(scaled.toPrecision(DIGITS))} ${PREFIXES[step]}${unit}`;
}
