/** The run again: a small tube, the transport, and a timeline with a lane for each slug under a scrubber. */

import { useMemo, useRef } from 'preact/hooks';
import { useSize } from '../../kit/hooks/useSize.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { PlateTitle } from '../../kit/PlateTitle.tsx';
import { Button, Fit, Frame, Ink } from '../../kit/theme/art.tsx';
import { C } from '../../kit/theme/ink.ts';
import { TubeFace } from '../../kit/tube/TubeFace.tsx';
import type { ReportPort } from '../../present/ports.ts';
import { eventsBy, slugInHand, spells, stopAfter, stopBefore, stops } from '../../present/runTimeline.ts';
import { slugLetters } from '../../receiver/slugLetters.ts';
import {
  cursorArt,
  TIMELINE_LEFT,
  TIMELINE_RIGHT,
  type Timeline,
  type TimelineWords,
  timelineArt,
} from './timelineArt.ts';
import { usePhases } from './usePhases.ts';
import { type Playback, SPEEDS, type Speed } from './usePlayback.ts';
import './replay.css';

export interface ReplayPanelProps {
  readonly port: ReportPort;
  readonly playback: Playback;
  readonly lengthSeconds: number;
}

const MINI_CELL = 20.5;

export function ReplayPanel({ port, playback, lengthSeconds }: ReplayPanelProps) {
  const { report: say, phases: phaseNames } = useWords();
  const timelineWords = useMemo<TimelineWords>(
    () => ({ clock: say.clock, turns: say.turnsMark, phase: (one) => phaseNames[one] }),
    [say, phaseNames],
  );
  const { run, receiver } = port;
  const { seconds, playing, speed } = playback;
  const count = eventsBy(run.events, seconds);
  // The picture is the same until the next act. Its points are copied: the bench writes the next picture into the same buffer.
  const moment = useMemo(() => {
    const { state, display, session } = port.at(seconds);
    return { state, session, display: { ...display, beam: { ...display.beam, data: display.beam.data.slice() } } };
  }, [port, count]);
  const incidents = useMemo(() => port.at(lengthSeconds).state.incidents, [port, lengthSeconds]);
  const letters = useMemo(() => slugLetters(receiver), [receiver]);
  const mine = useMemo(() => spells(run.events, incidents), [run, incidents]);
  const jumps = useMemo(() => stops(run.events, incidents, lengthSeconds), [run, incidents, lengthSeconds]);
  const phases = usePhases(port, lengthSeconds);
  const timeline = useMemo(
    () => ({
      lengthSeconds,
      spells: mine,
      phases,
      incidents,
      slugs: receiver.adjusters.map(({ id }) => ({ id, letter: letters.get(id) ?? id })),
    }),
    [lengthSeconds, mine, phases, incidents, receiver, letters],
  );
  const inHand = useMemo(() => slugInHand(run.events, count), [run, count]);
  const clock = say.clock(seconds);
  const phase = phaseNames[moment.session.current];
  const { display, state } = moment;
  return (
    <section class="plate replay" id="replay" aria-labelledby="replay-title">
      <Frame kind="panel" seed={2} />
      <PlateTitle id="replay-title" no={2}>
        {say.replay}
      </PlateTitle>
      <div class="replay-tube">
        <TubeFace
          mini
          cell={MINI_CELL}
          display={display}
          label={say.replayTube(clock, phase)}
          phosphor={state.controls.phosphor}
          focus={state.controls.focus}
          brightness={state.controls.brightness}
          turnsMade={state.turnsMade}
        />
        <Transport
          playback={playback}
          playing={playing}
          speed={speed}
          before={() => playback.seek(stopBefore(jumps, seconds))}
          after={() => playback.seek(stopAfter(jumps, seconds))}
        />
      </div>
      <div class="replay-time">
        <Fit class="replay-lanes" of={timeline} draw={(w, h) => timelineArt(w, h, timeline, timelineWords)} />
        <Cursor
          words={timelineWords}
          timeline={timeline}
          seconds={seconds}
          slug={receiver.adjusters.findIndex(({ id }) => id === inHand)}
        />
        <input
          class="scrubber"
          type="range"
          min={0}
          max={lengthSeconds}
          step={1}
          value={Math.round(seconds)}
          aria-label={say.scrub}
          aria-valuetext={say.scrubValue(clock, phase)}
          style={{ left: `${TIMELINE_LEFT - THUMB / 2}px`, right: `${TIMELINE_RIGHT - THUMB / 2}px` }}
          onInput={(event) => playback.seek(Number(event.currentTarget.value))}
        />
        <ol class="unseen" aria-label={say.acts}>
          {[
            ...mine.map((s) => ({
              at: s.fromSeconds,
              text: say.spell(letters.get(s.slug) ?? s.slug, s.turns, say.clock(s.fromSeconds)),
            })),
            ...incidents.map((i) => ({ at: i.atSeconds, text: say.incident(i.kind, say.clock(i.atSeconds)) })),
          ]
            .sort((a, b) => a.at - b.at)
            .map(({ text }, i) => (
              <li key={`${i}${text}`}>{text}</li>
            ))}
        </ol>
      </div>
    </section>
  );
}

/** width of the scrubber's thumb, px: the stylesheet has the same */
const THUMB = 62;

function Cursor({
  words,
  timeline,
  seconds,
  slug,
}: {
  readonly words: TimelineWords;
  readonly timeline: Timeline;
  readonly seconds: number;
  readonly slug: number;
}) {
  const ref = useRef<HTMLDivElement>(null);
  const { width, height } = useSize(ref);
  return (
    <div class="replay-cursor" ref={ref} aria-hidden="true">
      {width > 0 ? (
        <Ink svg={cursorArt(width, height, timeline, { seconds, slug }, words)} width={width} height={height} />
      ) : null}
    </div>
  );
}

interface TransportProps {
  readonly playback: Playback;
  readonly playing: boolean;
  readonly speed: Speed;
  readonly before: () => void;
  readonly after: () => void;
}

function Transport({ playback, playing, speed, before, after }: TransportProps) {
  const { report: say } = useWords();
  return (
    <div class="transport">
      <Button onClick={before} label={say.back}>
        <Sign d="M7 -8L-4 0L7 8ZM-7 -8V8" />
      </Button>
      <Button onClick={() => playback.toggle()} label={playing ? say.pause : say.play} class="play">
        <Sign d={playing ? 'M-6 -9H-2V9H-6ZM2 -9H6V9H2Z' : 'M-6 -10L9 0L-6 10Z'} />
      </Button>
      <Button onClick={after} label={say.forward}>
        <Sign d="M-7 -8L4 0L-7 8ZM7 -8V8" />
      </Button>
      <label class="speed">
        <span class="l2">{say.speed}</span>
        <select
          class="mb"
          value={String(speed)}
          onChange={(event) => playback.setSpeed(SPEEDS.find((s) => String(s) === event.currentTarget.value) ?? speed)}
        >
          {SPEEDS.map((s) => (
            <option key={s} value={String(s)}>
              {say.times(s)}
            </option>
          ))}
        </select>
      </label>
    </div>
  );
}

function Sign({ d }: { readonly d: string }) {
  return (
    <svg class="sign" width="22" height="22" viewBox="-11 -11 22 22" aria-hidden="true">
      <path d={d} fill={C.ink} stroke={C.ink} stroke-width="1.5" stroke-linejoin="round" />
    </svg>
  );
}
