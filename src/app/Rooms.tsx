/** Which room is shown: the course at once, bench and report when they are first wanted. */
import type { ComponentType } from 'preact';
import { useEffect, useMemo, useState } from 'preact/hooks';
import type { Library } from '../files/library.ts';
import { CoursePage } from '../rooms/course/CoursePage.tsx';
import type { Logbook } from '../services/store/logbook.ts';
import { createCoursePort } from './coursePort.ts';
import type { RoomProps } from './roomProps.ts';
import { type Route, readRoute, routeHash } from './routes.ts';

type Lazy<P> = () => Promise<{ readonly default: ComponentType<P> }>;

const benchRoom: Lazy<RoomProps & { readonly scenarioId: string }> = () => import('./BenchRoom.tsx');
const reportRoom: Lazy<RoomProps & { readonly runId: string }> = () => import('./ReportRoom.tsx');

export function Rooms({ library, logbook }: { readonly library: Library; readonly logbook: Logbook }) {
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
    return (
      <Later key={`bench ${route.scenarioId}`} load={benchRoom} props={{ ...room, scenarioId: route.scenarioId }} />
    );
  }
  if (route.page === 'report') {
    return <Later key={`report ${route.runId}`} load={reportRoom} props={{ ...room, runId: route.runId }} />;
  }
  return <CourseRoom {...room} />;
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

function Later<P extends object>({ load, props }: { readonly load: Lazy<P>; readonly props: P }) {
  const [Room, setRoom] = useState<ComponentType<P> | null>(null);
  useEffect(() => {
    let here = true;
    void load().then((module) => {
      if (here) setRoom(() => module.default);
    });
    return () => {
      here = false;
    };
  }, [load]);
  return Room === null ? <main aria-busy="true" /> : <Room {...props} />;
}
