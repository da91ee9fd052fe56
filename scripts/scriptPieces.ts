/**
 * Which modules of the built page travel together. Left to itself the builder makes a piece of every set of modules that the same rooms ask for: the bench then comes in a
 * hundred and twenty answers, and each costs browser and server more than what a piece too many costs in bytes. So what several rooms share comes in a few pieces, by
 * what a room does: reads files, works a bench out, judges a run, shows a bench. What one room alone needs stays with that room.
 */
import type { Rolldown } from 'vite';

type Asked = Rolldown.ChunkingContext;

/** In this order: a module goes with the first piece of which it is. */
export const PIECES: readonly (readonly [name: string, all: readonly string[], shared?: readonly string[]])[] = [
  ['jobs', ['services/jobs/pageWorkers.ts']],
  ['records', ['services/store/storeDatabase.ts', 'services/store/ownDatabase.ts']],
  ['files', ['services/library/shippedReading.ts', 'services/library/shippedSet.ts'], ['app/BenchRoom.tsx']],
  ['circuits', ['app/BenchRoom.tsx'], ['app/DrillsRoom.tsx', 'app/HandbookRoom.tsx', 'app/workshop/WorkshopRoom.tsx']],
  ['judging', ['app/BenchRoom.tsx'], ['app/ReportRoom.tsx', 'app/ExamRoom.tsx', 'app/ClassRoom.tsx']],
  ['bench', ['app/BenchRoom.tsx'], ['app/ShownRoom.tsx', 'app/PapersRoom.tsx']],
  ['drawing', ['rooms/bench/scene/leadCanvas.ts'], ['rooms/bench/scene/chassisCanvas.ts']],
];

const src = new URL('../src/', import.meta.url).pathname;

/** A group for each piece, after that of the first page, which comes in one: every piece by itself is another wait. */
export function scriptPieces(): Rolldown.CodeSplittingGroup[] {
  let known: Map<string, string> | null = null;
  const groups = PIECES.map(
    ([name], at): Rolldown.CodeSplittingGroup => ({
      name: (id, asked) => {
        known ??= piecesOf(asked);
        return known.get(id) === name ? name : null;
      },
      priority: PIECES.length - at,
    }),
  );
  return [{ name: 'first', tags: ['$initial'], priority: PIECES.length + 1 }, ...groups];
}

function piecesOf(asked: Asked): Map<string, string> {
  const pieces = new Map<string, string>();
  for (const [name, all, shared = null] of PIECES) {
    const also = shared === null ? null : neededBy(shared, asked);
    for (const id of neededBy(all, asked)) if (!pieces.has(id) && (also?.has(id) ?? true)) pieces.set(id, name);
  }
  return pieces;
}

/** Everything that comes with these files at once, themselves included. */
function neededBy(files: readonly string[], asked: Asked): ReadonlySet<string> {
  const needed = new Set(files.map((file) => src + file));
  for (const id of needed) {
    for (const each of asked.getModuleInfo(id)?.importedIds ?? []) needed.add(each);
  }
  return needed;
}
