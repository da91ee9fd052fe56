/** Which room is shown: the course at once, bench and report when they are first wanted. */
import type { ComponentType } from 'preact';
import { useEffect, useMemo, useState } from 'preact/hooks';
import type { Library } from '../files/library.ts';
import { WordsContext } from '../kit/hooks/useWords.ts';
import { CoursePage } from '../rooms/course/CoursePage.tsx';
import type { Logbook } from '../services/store/logbook.ts';
import type { Words } from '../words/words.ts';
import { createCoursePort } from './coursePort.ts';
import type { Language } from './language.ts';
import type { RoomProps } from './roomProps.ts';
import { type Route, readRoute, routeHash } from './routes.ts';

type Lazy<P> = () => Promise<{ readonly default: ComponentType<P> }>;

const benchRoom: Lazy<RoomProps & { readonly scenarioId: string }> = () => import('./BenchRoom.tsx');
const reportRoom: Lazy<RoomProps & { readonly runId: string }> = () => import('./ReportRoom.tsx');

interface RoomsProps {
  readonly language: Language;
  readonly library: Library;
  readonly logbook: Logbook;
}

export function Rooms({ language, library, logbook }: RoomsProps) {
  const [route, setRoute] = useState<Route>(() => readRoute(location.hash));
  useEffect(() => {
    const follow = (): void => setRoute(readRoute(location.hash));
    addEventListener('hashchange', follow);
    return () => removeEventListener('hashchange', follow);
  }, []);
  const go = (next: Route): void => {
    location.hash = routeHash(next);
  };
  const room = { library, logbook, go };
  if (route.page === 'bench') {
    const props = { ...room, scenarioId: route.scenarioId };
    return <Later key={`bench ${route.scenarioId}`} load={benchRoom} words={language.all} props={props} />;
  }
  if (route.page === 'report') {
    const props = { ...room, runId: route.runId };
    return <Later key={`report ${route.runId}`} load={reportRoom} words={language.all} props={props} />;
  }
  return (
    <WordsContext.Provider value={language.first}>
      <CourseRoom {...room} />
    </WordsContext.Provider>
  );
}

function CourseRoom({ library, logbook, go }: RoomProps) {
  const port = useMemo(
    () => createCoursePort(library, logbook, (scenarioId) => go({ page: 'bench', scenarioId })),
    [library, logbook],
  );
  const last = logbook.keptRuns().at(-1);
  return (
    <CoursePage port={port} onReport={last === undefined ? null : () => go({ page: 'report', runId: last.runId })} />
  );
}

interface LaterProps<P> {
  readonly load: Lazy<P>;
  readonly words: () => Promise<Words>;
  readonly props: P;
}

/** A room that comes with its words. */
function Later<P extends object>({ load, words, props }: LaterProps<P>) {
  const [loaded, setLoaded] = useState<{ readonly Room: ComponentType<P>; readonly words: Words } | null>(null);
  useEffect(() => {
    let here = true;
    void Promise.all([load(), words()]).then(([module, all]) => {
      if (here) setLoaded({ Room: module.default, words: all });
    });
    return () => {
      here = false;
    };
  }, [load, words]);
  if (loaded === null) return <main aria-busy="true" />;
  return (
    <WordsContext.Provider value={loaded.words}>
      <loaded.Room {...props} />
    </WordsContext.Provider>
  );
}
