/** The rooms that can be entered from here, in their order: the bench where a run lies on it, the report where one is kept. */
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { useFirstWords } from '../kit/hooks/useWords.ts';
import type { RoomLink } from '../kit/theme/art.tsx';
import { begunRuns } from './begunRuns.ts';
import type { RoomProps } from './roomProps.ts';
import type { Route } from './routes.ts';

export function useRoomLinks(current: Route['page'], { logbook, go }: Pick<RoomProps, 'logbook' | 'go'>): RoomLink[] {
  const { shell } = useFirstWords();
  const [, setRuns] = useState(0);
  useEffect(() => logbook.subscribe(() => setRuns((n) => n + 1)), [logbook]);
  const scenarioId = (current === 'bench' ? logbook.openRuns() : begunRuns(logbook))[0]?.scenarioId;
  const runId = logbook.keptRuns().at(-1)?.runId;
  const goNow = useRef(go);
  goNow.current = go;
  // The same list as long as it says the same: a room may be drawn at every frame.
  return useMemo(() => {
    const to = (name: string, route: Route): RoomLink => ({
      name,
      current: route.page === current,
      go: () => goNow.current(route),
    });
    return [
      to(shell.course, { page: 'course' }),
      to(shell.drills, { page: 'drills', drill: null, series: null }),
      to(shell.handbook, { page: 'handbook', pageId: null }),
      ...(scenarioId === undefined ? [] : [to(shell.bench, { page: 'bench', scenarioId })]),
      to(shell.workshop, { page: 'workshop', place: null }),
      to(shell.classroom, { page: 'class', fileNo: null }),
      ...(runId === undefined ? [] : [to(shell.reports, { page: 'report', runId })]),
    ];
  }, [shell, current, scenarioId, runId]);
}
