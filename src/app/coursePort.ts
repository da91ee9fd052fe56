/** Feeds the course page: the library's cards, and what the logbook says of each: best scores, what lies open on the bench. */
import type { CourseCard, CoursePort } from '../present/ports.ts';
import { entryIn, type ScenarioEntry } from '../present/scenarioEntry.ts';
import { endlessId } from '../scenario/endlessId.ts';
import type { Library } from '../services/library/library.ts';
import { freshId } from '../services/store/freshId.ts';
import type { Logbook } from '../services/store/logbook.ts';
import { begunRuns } from './begunRuns.ts';

/** `language`: that of the page. */
export function createCoursePort(
  library: Library,
  logbook: Logbook,
  language: string,
  open: (scenarioId: string) => void,
  approach: CoursePort['approach'],
): CoursePort {
  const cardsOf = (wanted: (entry: ScenarioEntry) => boolean): readonly CourseCard[] => {
    const kept = logbook.keptRuns();
    const onBench = new Map(begunRuns(logbook).map((run) => [run.scenarioId, run]));
    const passed = new Set(kept.filter((run) => run.passed).map((run) => run.scenarioId));
    const best = new Map<string, number>();
    for (const { scenarioId, total } of kept) best.set(scenarioId, Math.max(total, best.get(scenarioId) ?? 0));
    return library
      .entries()
      .filter(wanted)
      .map((entry) => {
        const scenario = entryIn(language, entry);
        const { id, recommendedAfter } = scenario;
        const run = onBench.get(id);
        return {
          scenario,
          best: best.get(id) ?? null,
          passed: passed.has(id),
          onBench: run === undefined ? null : { turns: run.turns, seconds: run.elapsedMs / 1000 },
          early:
            entry.own === undefined &&
            logbook.isReady() &&
            !best.has(id) &&
            run === undefined &&
            recommendedAfter.some((one) => !passed.has(one)),
        };
      });
  };
  return {
    cards: () => cardsOf((entry) => entry.own === undefined),
    own: () => cardsOf((entry) => entry.own !== undefined),
    runsRead: () => logbook.isReady(),
    leftOut: () => library.leftOut(),
    open,
    approach,
    newSeed: () => freshId().slice(0, 6),
    openEndless: (difficulty, seed) => open(endlessId(difficulty, seed)),
    subscribe(listener) {
      const stops = [library.subscribe(listener), logbook.subscribe(listener)];
      return () => {
        for (const stop of stops) stop();
      };
    },
  };
}
