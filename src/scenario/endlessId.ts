/** Names of the scenarios of the endless track: difficulty and seed word, and nothing else, so that a name is enough to share one. */

export type EndlessDifficulty = 1 | 2 | 3;

const ID = /^endless-([123])-([a-z0-9]{1,12})$/;

export function endlessId(difficulty: EndlessDifficulty, seed: string): string {
  return `endless-${difficulty}-${seed}`;
}

/** What an id says; null where it is none of the track. */
export function readEndlessId(id: string): { readonly difficulty: EndlessDifficulty; readonly seed: string } | null {
  const parts = ID.exec(id);
  return parts === null ? null : { difficulty: Number(parts[1]) as EndlessDifficulty, seed: parts[2]! };
}
