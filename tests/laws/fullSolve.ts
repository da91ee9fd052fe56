/**
 * An independent route to node voltages: one dense system for the whole deck, with every coil's current as a further unknown
 * (modified nodal analysis), mutual inductances straight from k sqrt(L1 L2), no blocks, no inverse matrices.
 */

import type { Deck } from '../../src/physics/deck.ts';
import { nodeKey } from '../../src/physics/deck.ts';

type Complex = readonly [number, number];

/** Voltages by node key at one frequency. */
export function fullSolve(deck: Deck, hz: number): Map<string, Complex> {
  const w = 2 * Math.PI * hz;
  const keys: string[] = [];
  const number = (name: string): number => {
    const key = nodeKey(name);
    if (key === '0') return -1;
    if (!keys.includes(key)) keys.push(key);
    return keys.indexOf(key);
  };
  for (const e of deck.elements)
    if (e.kind !== 'K') for (const n of [...e.nodes, ...(e.kind === 'G' ? e.control : [])]) number(n);
  const coils = deck.elements.filter((e) => e.kind === 'L');
  const coil = (name: string): number => coils.findIndex((c) => c.name.toLowerCase() === name.toLowerCase());
  const n = keys.length + coils.length;
  const a: [number, number][][] = Array.from({ length: n }, () => Array.from({ length: n + 1 }, () => [0, 0]));
  const add = (row: number, column: number, re: number, im: number): void => {
    if (row < 0 || column < 0) return;
    const entry = a[row]![column]!;
    entry[0] += re;
    entry[1] += im;
  };
  for (const e of deck.elements) {
    if (e.kind === 'K') {
      const [i, j] = [coil(e.coils[0]), coil(e.coils[1])];
      const m = e.value * Math.sqrt(coils[i]!.value * coils[j]!.value);
      add(keys.length + i, keys.length + j, 0, -w * m);
      add(keys.length + j, keys.length + i, 0, -w * m);
      continue;
    }
    const [p, q] = e.nodes.map(number) as [number, number];
    const stamp = (cp: number, cm: number, re: number, im: number): void => {
      add(p, cp, re, im);
      add(q, cm, re, im);
      add(p, cm, -re, -im);
      add(q, cp, -re, -im);
    };
    switch (e.kind) {
      case 'R':
        stamp(p, q, 1 / e.value, 0);
        break;
      case 'C':
        stamp(p, q, 0, w * e.value);
        break;
      case 'G':
        stamp(number(e.control[0]), number(e.control[1]), e.value, 0);
        break;
      case 'L': {
        const row = keys.length + coil(e.name);
        add(p, row, 1, 0);
        add(q, row, -1, 0);
        add(row, p, 1, 0);
        add(row, q, -1, 0);
        add(row, row, 0, -w * e.value);
        break;
      }
      case 'I': {
        const phase = (e.phaseDegrees * Math.PI) / 180;
        add(p, n, -e.value * Math.cos(phase), -e.value * Math.sin(phase));
        add(q, n, e.value * Math.cos(phase), e.value * Math.sin(phase));
      }
    }
  }
  eliminate(a, n);
  return new Map(keys.map((key, i) => [key, a[i]![n]!] as const));
}

/** Gauss-Jordan with rows chosen by size relative to the largest entry of each row. */
function eliminate(a: [number, number][][], n: number): void {
  const size = ([re, im]: Complex): number => Math.hypot(re, im);
  for (const row of a) {
    const largest = row.slice(0, n).reduce((most, entry) => Math.max(most, size(entry)), 0);
    for (const entry of row) {
      entry[0] /= largest;
      entry[1] /= largest;
    }
  }
  for (let k = 0; k < n; k++) {
    let best = k;
    for (let i = k + 1; i < n; i++) if (size(a[i]![k]!) > size(a[best]![k]!)) best = i;
    [a[k], a[best]] = [a[best]!, a[k]!];
    const [dr, di] = a[k]![k]!;
    const d = dr * dr + di * di;
    for (let j = k; j <= n; j++) {
      const [re, im] = a[k]![j]!;
      a[k]![j] = [(re * dr + im * di) / d, (im * dr - re * di) / d];
    }
    for (let i = 0; i < n; i++) {
      if (i === k) continue;
      const [fr, fi] = a[i]![k]!;
      if (fr === 0 && fi === 0) continue;
      for (let j = k; j <= n; j++) {
        const [ur, ui] = a[k]![j]!;
        const entry = a[i]![j]!;
        entry[0] -= fr * ur - fi * ui;
        entry[1] -= fr * ui + fi * ur;
      }
    }
  }
}
