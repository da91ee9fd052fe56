/** The bench room: takes up or begins the run of a scenario, and gives the page its port, its sounds and its memory. */
import { useEffect, useMemo } from 'preact/hooks';
import { claimOf, grade } from '../grading/grade.ts';
import { BenchPage } from '../rooms/bench/BenchPage.tsx';
import { StorageNotice, type StoragePort } from '../rooms/bench/StorageNotice.tsx';
import type { Run } from '../run/runLog.ts';
import { serialiseRunFile, toRunFile } from '../run/serialise.ts';
import { readEndlessId } from '../scenario/endlessId.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { setupFor } from '../services/library/shippedLibrary.ts';
import { createSoundDesk } from '../services/sound/soundDesk.ts';
import { endlessWords } from '../words/en/endless.ts';
import { shellWords } from '../words/en/shell.ts';
import { createBenchStore } from './benchStore.ts';
import { createFrames } from './frames.ts';
import type { RoomProps } from './roomProps.ts';
import { soundFollowing } from './soundFollowing.ts';
import { useScenario } from './useScenario.ts';

export default function BenchRoom(props: RoomProps & { readonly scenarioId: string }) {
  const { library, logbook, scenarioId } = props;
  const open = logbook.openRuns().find((run) => run.scenarioId === scenarioId) ?? null;
  const found = useScenario(library, scenarioId, open?.scenario ?? null);
  if (found.kind === 'making') {
    return (
      <main class="notice" aria-busy="true">
        <p role="status">{endlessWords.making}</p>
      </main>
    );
  }
  if (found.kind !== 'found') {
    return (
      <main class="notice">
        <p>{readEndlessId(scenarioId) !== null ? endlessWords.failed : shellWords.noSuchScenario}</p>
        <a href="#/course">{shellWords.home}</a>
      </main>
    );
  }
  return <OpenBench {...props} scenario={found.scenario} />;
}

interface OpenBenchProps extends RoomProps {
  readonly scenarioId: string;
  readonly scenario: Scenario;
}

function OpenBench({ library, logbook, go, scenarioId, scenario }: OpenBenchProps) {
  const { store, sound } = useMemo(() => {
    const open = logbook.openRuns().find((run) => run.scenarioId === scenarioId) ?? null;
    // A run goes on with the scenario it began with, even where the shipped one has changed since.
    const setup = setupFor(library, open?.scenario ?? scenario) ?? setupFor(library, scenario)!;
    const desk = createSoundDesk();
    const runId = open?.runId ?? crypto.randomUUID();
    const keep = (run: Run): void => {
      const report = grade(setup, run.events);
      const text = serialiseRunFile(toRunFile(run, claimOf(report)));
      const serial = (logbook.keptRuns().at(-1)?.serial ?? 0) + 1;
      void logbook.keep({ runId, scenarioId, total: report.total, passed: report.passed, serial, text });
      void logbook.dropOpen(scenarioId);
      go({ page: 'report', runId });
    };
    const made = createBenchStore(
      {
        setup,
        runId,
        frames: createFrames(requestAnimationFrame),
        now: () => performance.now(),
        // The browser's own function refuses to be called as a method of these parts.
        request: (callback) => requestAnimationFrame(callback),
        every: (milliseconds, callback) => {
          const timer = setInterval(callback, milliseconds);
          return () => clearInterval(timer);
        },
        after: (milliseconds, callback) => setTimeout(callback, milliseconds),
        save: (run) => logbook.saveOpen(run),
        saveLast: (run) => logbook.saveLast(run),
        heard: (sounds) => {
          for (const each of sounds) desk.play(each);
        },
        finished: keep,
        left: () => {
          void logbook.dropOpen(scenarioId);
          go({ page: 'course' });
        },
      },
      open,
    );
    return { store: made, sound: soundFollowing(made, desk) };
  }, [library, logbook, scenarioId]);

  const storage = useMemo<StoragePort>(
    () => ({ storageNote: () => logbook.note(), subscribe: (listener) => logbook.onNote(listener) }),
    [logbook],
  );

  useEffect(() => {
    const hide = (): void => store.flush();
    const see = (): void => {
      if (document.visibilityState === 'hidden') store.flush();
    };
    addEventListener('pagehide', hide);
    document.addEventListener('visibilitychange', see);
    return () => {
      removeEventListener('pagehide', hide);
      document.removeEventListener('visibilitychange', see);
      store.close();
      sound.close();
    };
  }, [store, sound]);

  return (
    <>
      <StorageNotice storage={storage} />
      <BenchPage
        port={store}
        onHome={() => go({ page: 'course' })}
        sound={{
          status: () => sound.desk.status(),
          toggle: () => sound.desk.setEnabled(sound.desk.status() === 'off'),
        }}
      />
    </>
  );
}
