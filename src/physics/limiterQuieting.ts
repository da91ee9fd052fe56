/**
 * What a limiter that a carrier fills leaves of the noise beside it.
 *
 * A stage i = Is tanh(v / Vs) gives of a carrier a = A / Vs the share N(a) of its small-signal gain (describingFunction.ts). A small wave beside the carrier is one part in
 * phase with it, which changes its size and is carried on with N + a N', and one across it, which changes its phase and is carried on with N. Noise is as much of the one
 * as of the other, so its power falls to (N^2 + (N + a N')^2) / 2 of what an empty limiter would give: with a hard limiter only the half that is across is left,
 * 4 / (pi a sqrt 2) of the volts, while the carrier stands still: twice the signal, half the noise. Behind the limiter the slopes of the circuits mix the two, so what is
 * left is taken as noise like any other.
 * Valid while the noise is small against Vs, so that it does not fill the limiter itself.
 * Sources: W. B. Davenport, Signal-to-noise ratios in band-pass limiters, J. Appl. Phys. 24, 1953 (half of the noise left behind a hard limiter); incremental gains of a
 * describing function: Gelb and Vander Velde, Multiple-Input Describing Functions, 1968 (both from memory).
 */
import { type Deck, nodeKey } from './deck.ts';

/** Noise volts behind a stage over what they would be with nothing in it, from the gain of the carrier and that of a small change of it, each over the small-signal gain. */
export function quietingOf(gain: number, ofChange: number): number {
  return Math.sqrt((gain * gain + ofChange * ofChange) / 2);
}

/** The nodes to which the output of a transconductance goes on, through all that joins nodes and through the stages behind it. */
export function nodesBehind(deck: Deck, stage: string): ReadonlySet<string> {
  const found = new Set<string>();
  const open: string[] = [];
  const reach = (node: string): void => {
    const key = nodeKey(node);
    if (key === '0' || found.has(key)) return;
    found.add(key);
    open.push(key);
  };
  const own = deck.elements.find((e) => e.kind === 'G' && e.name.toLowerCase() === stage.toLowerCase());
  if (own?.kind === 'G') own.nodes.forEach(reach);
  const ends = (coil: string): readonly string[] => {
    const coils = deck.elements.flatMap((e) => (e.kind === 'L' ? [e] : []));
    return coils.find(({ name }) => name.toLowerCase() === coil.toLowerCase())?.nodes ?? [];
  };
  for (let at = open.pop(); at !== undefined; at = open.pop()) {
    const touches = (nodes: readonly string[]): boolean => nodes.some((node) => nodeKey(node) === at);
    for (const element of deck.elements) {
      if (element.kind === 'G') {
        if (touches(element.control)) element.nodes.forEach(reach);
      } else if (element.kind === 'K') {
        const both = element.coils.flatMap(ends);
        if (touches(both)) both.forEach(reach);
      } else if (element.kind !== 'I' && touches(element.nodes)) element.nodes.forEach(reach);
    }
  }
  return found;
}
