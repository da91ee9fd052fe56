/** Which room is shown: the course at once, the others when they are first wanted. */
import type { ComponentType } from 'preact';
import { useEffect, useLayoutEffect, useMemo, useState } from 'preact/hooks';
import { unreachable } from '../base/never.ts';
import { useFailure } from '../kit/hooks/useFailure.ts';
import { useFirstWords, WordsContext } from '../kit/hooks/useWords.ts';
import { CoursePage } from '../rooms/course/CoursePage.tsx';
import type { WorkshopPlace } from '../rooms/workshop/places.ts';
import { GUIDED_SCENARIO } from '../scenario/guided.ts';
import type { DealsAhead } from '../services/library/dealsAhead.ts';
import type { Library } from '../services/library/library.ts';
import type { ClaimGiven } from '../services/store/benchClaims.ts';
import type { LearnerMemory } from '../services/store/learnerMemory.ts';
import type { Logbook } from '../services/store/logbook.ts';
import type { Words } from '../words/words.ts';
import type { ClassRoomProps } from './ClassRoom.tsx';
import { createCoursePort } from './coursePort.ts';
import type { DrillsRoomProps } from './DrillsRoom.tsx';
import type { ExamRoomProps } from './ExamRoom.tsx';
import type { HandbookRoomProps } from './HandbookRoom.tsx';
import type { Language } from './language.ts';
import { NewerSlip } from './NewerSlip.tsx';
import type { OpenRoomProps } from './OpenRoom.tsx';
import { createOwnPort } from './ownPort.ts';
import type { PapersRoomProps } from './PapersRoom.tsx';
import { RoomBoundary } from './RoomBoundary.tsx';
import type { Dismissed, RoomProps } from './roomProps.ts';
import { type Route, readRoute, routeHash } from './routes.ts';
import { StorageSlips } from './StorageSlips.tsx';
import { toldLogbook } from './toldLogbook.ts';
import { useDealingAhead } from './useDealingAhead.ts';
import { useRoomLinks } from './useRoomLinks.ts';
import type { WorkshopRoomProps } from './workshop/WorkshopRoom.tsx';

type Lazy<P> = () => Promise<{ readonly default: ComponentType<P> }>;

const benchRoom: Lazy<RoomProps & { readonly scenarioId: string; readonly guided: boolean }> = () =>
  import('./BenchRoom.tsx');
const papersRoom: Lazy<PapersRoomProps> = () => import('./PapersRoom.tsx');
const shownRoom: Lazy<RoomProps & { readonly scenarioId: string }> = () => import('./ShownRoom.tsx');
const reportRoom: Lazy<RoomProps & { readonly runId: string }> = () => import('./ReportRoom.tsx');
const drillsRoom: Lazy<DrillsRoomProps> = () => import('./DrillsRoom.tsx');
const openRoom: Lazy<OpenRoomProps> = () => import('./OpenRoom.tsx');
const examRoom: Lazy<ExamRoomProps> = () => import('./ExamRoom.tsx');
const classRoom: Lazy<ClassRoomProps> = () => import('./ClassRoom.tsx');
const workshopRooms: { readonly [P in WorkshopPlace | 'scenario']: Lazy<WorkshopRoomProps> } = {
  scenario: () => import('./workshop/WorkshopRoom.tsx'),
  receiver: () => import('./workshop/ReceiverRoom.tsx'),
  evening: () => import('./workshop/EveningRoom.tsx'),
};
const handbookRoom: Lazy<HandbookRoomProps> = () => import('./HandbookRoom.tsx');

interface RoomsProps {
  readonly language: Language;
  readonly library: Library;
  readonly ahead: DealsAhead;
  readonly own: RoomProps['own'];
  readonly logbook: Logbook;
  readonly claims: ClaimGiven;
  readonly learner: LearnerMemory;
  readonly loudness: RoomProps['loudness'];
  readonly singleKeys: RoomProps['singleKeys'];
}

export function Rooms({ language, library, ahead, own, logbook: wholeLogbook, claims, ...memories }: RoomsProps) {
  const logbook = useMemo(() => toldLogbook(wholeLogbook, own), [wholeLogbook, own]);
  const [route, setRoute] = useState<Route>(() => readRoute(location.hash));
  useLayoutEffect(() => {
    const follow = (): void => {
      const next = readRoute(location.hash);
      // Before the room that is left takes back what it had dealt.
      ahead.headFor(next.page === 'bench' ? next.scenarioId : null);
      setRoute(next);
    };
    addEventListener('hashchange', follow);
    return () => removeEventListener('hashchange', follow);
  }, []);
  const go = (next: Route): void => {
    location.hash = routeHash(next);
  };
  const dismissed = useMemo<Dismissed>(() => new Set(), []);
  const room = { library, ahead, own, logbook, wholeLogbook, claims, ...memories, dismissed, go };
  return (
    <WordsContext.Provider value={language.first}>
      <RoomBoundary key={roomKey(route)} {...{ route, library, logbook, go }}>
        <Shown route={route} language={language} room={room} />
      </RoomBoundary>
      <NewerSlip />
    </WordsContext.Provider>
  );
}

/** A room begins anew for each run; the handbook stays while its pages are turned, and the drills while one is taken after the other. */
const roomKey = (route: Route): string =>
  route.page === 'handbook' || route.page === 'drills' || route.page === 'papers' ? route.page : routeHash(route);

interface ShownProps {
  readonly route: Route;
  readonly language: Language;
  readonly room: RoomProps;
}

function Shown({ route, language, room }: ShownProps) {
  switch (route.page) {
    case 'bench':
      return (
        <Later
          load={benchRoom}
          words={language.all}
          props={{ ...room, scenarioId: route.scenarioId, guided: route.guided === true }}
        />
      );
    case 'workshop':
      return (
        <Later
          load={workshopRooms[route.place ?? 'scenario']}
          words={language.all}
          props={{ ...room, beginOn: route.on ?? null }}
        />
      );
    case 'papers':
      return (
        <Later
          load={papersRoom}
          words={language.all}
          props={{ ...room, scenarioId: route.scenarioId, paper: route.paper }}
        />
      );
    case 'shown':
      return <Later load={shownRoom} words={language.all} props={{ ...room, scenarioId: route.scenarioId }} />;
    case 'exam':
      return <Later load={examRoom} words={language.all} props={{ ...room, exam: route.exam }} />;
    case 'open':
      return <Later load={openRoom} words={language.all} props={{ ...room, data: route.data }} />;
    case 'class':
      return <Later load={classRoom} words={language.all} props={{ ...room, fileNo: route.fileNo }} />;
    case 'report':
      return <Later load={reportRoom} words={language.all} props={{ ...room, runId: route.runId }} />;
    case 'drills':
      return (
        <Later
          load={drillsRoom}
          words={language.all}
          props={{ ...room, drill: route.drill, series: route.series, pages: language.handbook }}
        />
      );
    case 'handbook':
      return (
        <Later
          load={handbookRoom}
          words={language.all}
          props={{ logbook: room.logbook, go: room.go, pageId: route.pageId, pages: language.handbook }}
        />
      );
    case 'course':
      return <CourseRoom {...room} all={language.all} />;
    default:
      return unreachable(route);
  }
}

/** There at once: what it tells of runs comes when the logbook has been read. */
function CourseRoom({
  library,
  ahead,
  own,
  logbook,
  dismissed,
  go,
  all,
}: RoomProps & { readonly all: Language['all'] }) {
  const { language } = useFirstWords();
  const port = useMemo(
    () =>
      createCoursePort(library, logbook, language, (scenarioId) => go({ page: 'bench', scenarioId }), ahead.approach),
    [library, logbook, language],
  );
  useDealingAhead(ahead, port);
  const ownPort = useMemo(
    () =>
      createOwnPort({
        ...{ library, shelf: own, logbook, course: port, words: all },
        toExam: (hash) => go({ page: 'exam', exam: hash.slice(0, 16) }),
      }),
    [library, own, port, all],
  );
  const links = useRoomLinks('course', { logbook, go });
  return (
    <CoursePage
      port={port}
      own={ownPort}
      links={links}
      onGuide={() => go({ page: 'bench', scenarioId: GUIDED_SCENARIO, guided: true })}
      notices={<StorageSlips logbook={logbook} dismissed={dismissed} />}
    />
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
  const fail = useFailure();
  useEffect(() => {
    let here = true;
    Promise.all([load(), words()]).then(
      ([module, all]) => {
        if (here) setLoaded({ Room: module.default, words: all });
      },
      (error: unknown) => {
        if (here) fail(error);
      },
    );
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
