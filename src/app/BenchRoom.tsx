/** The bench room: takes up or begins the run of a scenario where this tab may, and gives the page its port, its sounds and its memory. */

import { useLayoutEffect, useMemo } from 'preact/hooks';
import { HELPER_SECONDS } from '../grading/limits.ts';
import { useFailure } from '../kit/hooks/useFailure.ts';
import { useTurns } from '../kit/hooks/useTurns.ts';
import { useWords } from '../kit/hooks/useWords.ts';
import { letSingleKeysAct } from '../kit/singleKeys.ts';
import { SlipPage } from '../kit/slips/Slip.tsx';
import { Button } from '../kit/theme/art.tsx';
import { toldBench } from '../present/told.ts';
import { BenchPage } from '../rooms/bench/BenchPage.tsx';
import { readEndlessId } from '../scenario/endlessId.ts';
import { GUIDED_SCENARIO } from '../scenario/guided.ts';
import { createCurvePlayer } from '../services/sound/curvePlayer.ts';
import { createSoundDesk } from '../services/sound/soundDesk.ts';
import { ExamClock, type ExamDemands, ExamGate } from './ExamGate.tsx';
import { LostBench } from './LostBench.tsx';
import { haveItSetUp, setUpsShown } from './madeReady.ts';
import { openBench } from './openBench.ts';
import type { RoomProps } from './roomProps.ts';
import { routeHash } from './routes.ts';
import { Reading, StorageSlips } from './StorageSlips.tsx';
import { soundFollowing, soundsRemembered } from './soundFollowing.ts';
import { type BenchHere, type HandOver, useBenchAccess } from './useBenchAccess.ts';
import { type BenchSetups, useSetups } from './useSetups.ts';

type BenchRoomProps = RoomProps & { readonly scenarioId: string; readonly guided: boolean };

export default function BenchRoom(props: BenchRoomProps) {
  return <ExamGate {...props}>{(exam) => <ClaimedBench {...props} exam={exam} />}</ExamGate>;
}

function ClaimedBench(props: BenchRoomProps & { readonly exam: ExamDemands | null }) {
  const { shell, store: words } = useWords();
  const { access, handOver, asking, takeOver } = useBenchAccess(props.logbook, props.claims, props.scenarioId);
  if (access.kind === 'waiting') return <Reading logbook={props.logbook} dismissed={props.dismissed} />;
  if (access.kind === 'elsewhere') {
    const { title, body } = words.elsewhere;
    return (
      <SlipPage
        product={shell.product}
        title={title}
        busy={asking}
        buttons={
          <>
            <Button primary disabled={asking} onClick={takeOver}>
              {asking ? words.elsewhere.asking : words.elsewhere.takeOver}
            </Button>
            <Button onClick={() => props.go({ page: 'course' })}>{words.toCourse}</Button>
          </>
        }
      >
        <p>{body}</p>
      </SlipPage>
    );
  }
  return (
    <FoundBench key={access.turn} {...props} access={access} handOver={handOver} asking={asking} takeOver={takeOver} />
  );
}

interface HereProps extends BenchRoomProps {
  readonly exam: ExamDemands | null;
  readonly access: BenchHere;
  readonly handOver: HandOver;
  readonly asking: boolean;
  readonly takeOver: () => void;
}

function FoundBench(props: HereProps) {
  const { endless: endlessWords, shell, store } = useWords();
  const { library, ahead, scenarioId, access, go } = props;
  const endless = readEndlessId(scenarioId) !== null;
  const found = useSetups(library, ahead, scenarioId, access.open?.run ?? null, props.exam);
  if (found.kind === 'fetching') {
    const entry = library.entries().find((one) => one.id === scenarioId);
    const made = endless || (entry?.sealed === true && access.open === null);
    if (!made) return <main aria-busy="true" />;
    return <SlipPage product={shell.product} title={endlessWords.making} busy />;
  }
  if (found.kind !== 'found') {
    return (
      <SlipPage
        product={shell.product}
        title={endless ? endlessWords.failed : shell.noSuchScenario}
        buttons={<Button onClick={() => go({ page: 'course' })}>{store.toCourse}</Button>}
      />
    );
  }
  return <OpenBench {...props} setups={found.setups} />;
}

function OpenBench({ setups, ...props }: HereProps & { readonly setups: BenchSetups }) {
  const {
    logbook,
    learner,
    loudness,
    singleKeys,
    go,
    access,
    handOver,
    asking,
    takeOver,
    dismissed,
    scenarioId,
    exam,
  } = props;
  const fail = useFailure();
  const { bench, sound } = useMemo(() => {
    const desk = createSoundDesk();
    const opened = openBench({
      logbook,
      learner: exam === null ? learner : { read: () => exam.candidate },
      open: access.open,
      ...setups,
      endsAtMs: exam?.onBenchMs ?? null,
      after: (runId) => (exam?.heldBack ? { page: 'exam', exam: exam.hash.slice(0, 16) } : { page: 'report', runId }),
      desk,
      go,
      failed: fail,
    });
    return { bench: opened, sound: soundFollowing(opened.store, desk) };
  }, []);
  const { store } = bench;
  const player = useMemo(() => createCurvePlayer(), []);
  const keys = useMemo(
    () => ({
      act: () => singleKeys.read() === 'on',
      let: (on: boolean) => {
        singleKeys.write(on ? 'on' : 'off');
        letSingleKeysAct(on);
      },
    }),
    [singleKeys],
  );
  const sounds = useMemo(() => soundsRemembered(sound.desk, loudness), [sound, loudness]);
  const leftOnBench = useMemo(() => {
    const most = exam?.onBenchMs ?? null;
    return most === null ? null : () => most - store.elapsedSeconds() * 1000;
  }, [store, exam]);
  // Who is examined works alone.
  const shown = useMemo(() => (exam === null ? setUpsShown(store.setup, logbook.keptRuns()) : null), [store, exam]);
  const words = useWords();
  const port = useMemo(() => toldBench(words, store), [words, store]);
  // Solving a bench is one piece of work, drawing it the next: the browser may hear what is pressed in between.
  const solved = useTurns(1, true) > 0;

  useLayoutEffect(() => {
    handOver.current = () => store.handOver();
    void bench.putAside();
    const hide = (): void => store.flush();
    const see = (): void => {
      if (document.visibilityState === 'hidden') store.flush();
    };
    addEventListener('pagehide', hide);
    document.addEventListener('visibilitychange', see);
    return () => {
      removeEventListener('pagehide', hide);
      document.removeEventListener('visibilitychange', see);
      void store.close();
      sound.close();
      player.close();
    };
  }, [bench, sound]);
  useLayoutEffect(() => {
    if (access.lost) store.freeze();
  }, [access.lost]);

  if (!solved) return <main aria-busy="true" />;
  return (
    <>
      <StorageSlips {...{ logbook, dismissed, scenarioId }} unguarded={access.unguarded} over />
      <BenchPage
        port={port}
        learner={learner}
        onHome={() => go({ page: 'course' })}
        guided={props.guided && scenarioId === GUIDED_SCENARIO}
        // The address forgets the guide, and the bench stays as it is.
        onGuideSkipped={() => history.replaceState(null, '', routeHash({ page: 'bench', scenarioId }))}
        sound={sounds}
        onWatch={port.scenario.sealed ? null : () => go({ page: 'shown', scenarioId })}
        helper={shown === null ? null : { shown, minutes: HELPER_SECONDS / 60, come: () => haveItSetUp(store) }}
        singleKeys={keys}
        playCurves={(curves) => player.play(curves)}
      />
      {exam === null || (exam.endsAtMs === null && leftOnBench === null) ? null : (
        <ExamClock
          endsAtMs={exam.endsAtMs}
          leftOnBench={leftOnBench}
          over={() => {
            store.sign();
            // Where nothing was there to be signed, the run stays as it is and counts for nothing.
            if (!store.state().signedOff) go({ page: 'exam', exam: exam.hash.slice(0, 16) });
          }}
        />
      )}
      {access.lost ? <LostBench asking={asking} takeBack={takeOver} toCourse={() => go({ page: 'course' })} /> : null}
    </>
  );
}
