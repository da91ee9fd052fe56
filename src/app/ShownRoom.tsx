/** The room of a demonstration: has the technician do the job beside the page, then shows it on a bench of its own. What was taken over from him is practice without a mark and is not kept. */

import { useEffect, useMemo, useState } from 'preact/hooks';
import type { BenchSetup } from '../bench/setup.ts';
import { remarkSentence } from '../describe/remark.ts';
import { pageFrames } from '../kit/frameLoop.ts';
import { useFailure } from '../kit/hooks/useFailure.ts';
import { useWords } from '../kit/hooks/useWords.ts';
import { Slip, SlipPage, SlipStack } from '../kit/slips/Slip.tsx';
import { Button } from '../kit/theme/art.tsx';
import { toldBench } from '../present/told.ts';
import { BenchPage } from '../rooms/bench/BenchPage.tsx';
import type { ShownRun } from '../services/jobs/jobTable.ts';
import { beside } from '../services/jobs/pageJobs.ts';
import { createCurvePlayer } from '../services/sound/curvePlayer.ts';
import { createSoundDesk } from '../services/sound/soundDesk.ts';
import { ExamShut } from './ExamGate.tsx';
import type { RoomProps } from './roomProps.ts';
import { createShownBench } from './shownBench.ts';
import { soundFollowing, soundsRemembered } from './soundFollowing.ts';

type ShownRoomProps = RoomProps & { readonly scenarioId: string };

type Found =
  | { readonly kind: 'ready'; readonly setup: BenchSetup; readonly run: ShownRun }
  | { readonly kind: 'making'; readonly share: number }
  | { readonly kind: 'none' | 'sealed' };

export default function ShownRoom(props: ShownRoomProps) {
  const { exam: say } = useWords();
  return (
    <ExamShut {...props} title={say.notShown}>
      <ShownJob {...props} />
    </ExamShut>
  );
}

function ShownJob(props: ShownRoomProps) {
  const { library, scenarioId, go } = props;
  const { shell, demonstration: say } = useWords();
  const [found, setFound] = useState<Found>({ kind: 'making', share: 0 });
  const fail = useFailure();
  useEffect(() => {
    const calledOff = new AbortController();
    const { signal } = calledOff;
    const make = async (): Promise<Found> => {
      const setup = await library.setup(scenarioId, { signal });
      if (setup === null || !setup.ok) return { kind: 'none' };
      if (setup.value.scenario.sealed) return { kind: 'sealed' };
      const onShare = (share: number): void => setFound({ kind: 'making', share });
      const run = await beside('demonstrate', { setup: setup.value }, { signal, onShare });
      return { kind: 'ready', setup: setup.value, run };
    };
    make().then(
      (made) => {
        if (!signal.aborted) setFound(made);
      },
      (error: unknown) => {
        if (!signal.aborted) fail(error);
      },
    );
    return () => calledOff.abort();
  }, []);
  if (found.kind === 'ready') return <ShownHere {...props} setup={found.setup} run={found.run} />;
  const back = <Button onClick={() => go({ page: 'bench', scenarioId })}>{say.callOff}</Button>;
  if (found.kind === 'making')
    return (
      <SlipPage product={shell.product} title={say.making} buttons={back} busy>
        <p>{say.makingBody}</p>
        <progress max={1} value={found.share} aria-label={say.made} />
      </SlipPage>
    );
  return (
    <SlipPage
      product={shell.product}
      title={found.kind === 'sealed' ? say.sealed : shell.noSuchScenario}
      buttons={found.kind === 'sealed' ? back : <Button onClick={() => go({ page: 'course' })}>{say.toCourse}</Button>}
    />
  );
}

type Stage = 'watching' | 'taken' | 'noted' | 'signed';

function ShownHere({ setup, run, ...props }: ShownRoomProps & { readonly setup: BenchSetup; readonly run: ShownRun }) {
  const { go, learner, loudness, scenarioId } = props;
  const words = useWords();
  const { shell, demonstration: say, store: storeWords } = words;
  const [stage, setStage] = useState<Stage>('watching');
  const toCourse = (): void => go({ page: 'course' });
  const fromStart = (): void => go({ page: 'bench', scenarioId });
  const { bench, sound } = useMemo(() => {
    const { receiver } = setup;
    const desk = createSoundDesk();
    const all = run.said.map(({ before, remark }) => ({
      before,
      text: remarkSentence(words, receiver, remark, run.passed),
    }));
    // What is said again is said once: what follows belongs to the same saying.
    const captions = all.filter(({ text }, i) => text !== all[i - 1]?.text);
    const made = createShownBench({
      setup,
      events: run.events,
      captions,
      loop: pageFrames,
      now: () => performance.now(),
      after: (milliseconds, callback) => setTimeout(callback, milliseconds),
      wantsNoMotion: () => matchMedia('(prefers-reduced-motion: reduce)').matches,
      heard: (sounds) => {
        for (const each of sounds) desk.play(each);
      },
      taken: () => setStage('taken'),
      finished: () => setStage('signed'),
      left: toCourse,
      fromStart,
    });
    return { bench: made, sound: soundFollowing(made.port, desk) };
  }, []);
  const sounds = useMemo(() => soundsRemembered(sound.desk, loudness), [sound, loudness]);
  const player = useMemo(() => createCurvePlayer(), []);
  useEffect(
    () => () => {
      bench.close();
      sound.close();
      player.close();
    },
    [bench, sound],
  );
  const port = useMemo(() => toldBench(words, bench.port), [words, bench]);
  const again = (
    <Button primary={stage === 'signed'} onClick={fromStart}>
      {say.fromStart}
    </Button>
  );
  if (stage === 'signed')
    return (
      <SlipPage
        product={shell.product}
        title={say.signed}
        buttons={
          <>
            {again}
            <Button onClick={toCourse}>{say.toCourse}</Button>
          </>
        }
      >
        <p>{say.signedBody}</p>
      </SlipPage>
    );
  return (
    <>
      {stage !== 'taken' ? null : (
        <SlipStack name={storeWords.notices}>
          <Slip
            buttons={
              <>
                {again}
                <Button onClick={() => setStage('noted')}>{storeWords.seen}</Button>
              </>
            }
          >
            <p>{say.taken}</p>
          </Slip>
        </SlipStack>
      )}
      <BenchPage
        port={port}
        learner={learner}
        onHome={toCourse}
        sound={sounds}
        playCurves={(curves) => player.play(curves)}
        shown={stage === 'watching' ? bench.shown : null}
      />
    </>
  );
}
