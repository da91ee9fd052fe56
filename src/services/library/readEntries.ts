/**
 * Takes up entries that were made beforehand. They were checked when they were made; this looks only at what a card cannot do without, so that one bad entry costs its
 * own card and not the page.
 */
import type { ScenarioEntry } from '../../present/scenarioEntry.ts';

export interface ReadEntries {
  readonly entries: readonly ScenarioEntry[];
  /** code, id or place in the list of each that was left out */
  readonly leftOut: readonly string[];
}

export function readEntries(index: unknown): ReadEntries {
  const entries: ScenarioEntry[] = [];
  const leftOut: string[] = [];
  const known = new Set<string>();
  (Array.isArray(index) ? index : []).forEach((entry: unknown, i) => {
    if (isEntry(entry) && !known.has(entry.id)) {
      known.add(entry.id);
      entries.push(entry);
    } else leftOut.push(nameOf(entry, i));
  });
  return { entries, leftOut };
}

const TEXTS = ['id', 'code', 'title', 'track', 'receiver', 'receiverName', 'brief'];
const PATH = /^M-?\d+ -?\d+l[\d -]+$/;

export function isEntry(entry: unknown): entry is ScenarioEntry {
  if (!isRecord(entry) || !isRecord(entry.curve) || !isPar(entry)) return false;
  const { order, difficulty, recommendedAfter, sealed, seed, curve } = entry;
  return (
    TEXTS.every((key) => typeof entry[key] === 'string' && entry[key] !== '') &&
    [order, seed, curve.zero].every(Number.isFinite) &&
    [1, 2, 3].includes(difficulty as number) &&
    typeof sealed === 'boolean' &&
    Array.isArray(recommendedAfter) &&
    recommendedAfter.every((id) => typeof id === 'string') &&
    [curve.found, curve.wanted].every((path) => typeof path === 'string' && PATH.test(path))
  );
}

/** None is told of a sealed job, and one is of every other. */
function isPar({ sealed, par }: Readonly<Record<string, unknown>>): boolean {
  if (sealed === true) return par === null;
  return isRecord(par) && [par.turns, par.seconds].every(Number.isFinite);
}

function nameOf(entry: unknown, i: number): string {
  const { code, id } = isRecord(entry) ? entry : {};
  for (const name of [code, id]) if (typeof name === 'string' && name !== '') return name;
  return `${i + 1}`;
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null;
}
