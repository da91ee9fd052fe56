/** The tube with what a look puts on it. What it shows is the question, so no words say what it means; its figures stand in a table, and a key plays it. */
import { useMemo, useRef } from 'preact/hooks';
import { readCurve } from '../../describe/curve.ts';
import { type CurveTones, tonesOnTube } from '../../describe/curveTones.ts';
import type { DrillId, Scene } from '../../drills/drill.ts';
import { displayOf } from '../../drills/picture.ts';
import { readTrace } from '../../drills/trace.ts';
import { useKeyDown } from '../../kit/hooks/useKeyDown.ts';
import { useSize } from '../../kit/hooks/useSize.ts';
import { useWindowSize } from '../../kit/hooks/useWindowSize.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { singleKeysAct } from '../../kit/singleKeys.ts';
import { ghostPath } from '../../kit/tube/ghosts.ts';
import { TUBE_HOOD, TubeFace } from '../../kit/tube/TubeFace.tsx';
import { TraceTable } from './TraceTable.tsx';

export interface LookTubeProps {
  readonly drill: DrillId;
  readonly scene: Scene;
  readonly wax: Scene | null;
  readonly nameless: boolean;
  /** plays curves one after the other, by pitch */
  readonly play: PlayCurves;
}

export type PlayCurves = (curves: readonly CurveTones[]) => void;

const MOST_CELL = 46;
const LEAST_CELL = 18;
/** What header, title and answer want of a low window. */
const ELSEWHERE_PX = 300;

export function LookTube({ drill, scene, wax, nameless, play }: LookTubeProps) {
  const { drills: words } = useWords();
  const place = useRef<HTMLDivElement>(null);
  const { width } = useSize(place);
  const { height } = useWindowSize();
  const across = Math.min((width - 2 * TUBE_HOOD) / 10.76, (width - 2 * TUBE_HOOD - 24) / 10);
  const cell = Math.max(LEAST_CELL, Math.min(MOST_CELL, Math.floor(across), Math.floor((height - ELSEWHERE_PX) / 9.2)));
  // Drawn first: the beam of the same bench is one buffer.
  const inWax = useMemo(() => {
    if (wax === null) return null;
    const shown = displayOf(wax);
    const { heightDiv } = readCurve(shown);
    return {
      outline: ghostPath(shown.beam),
      trace: readTrace(shown, wax.state.controls.blanking),
      heightDiv,
      tones: (most: number) => tonesOf(wax, most),
    };
  }, [wax]);
  const display = displayOf(scene);
  useKeyDown((event) => {
    if (event.defaultPrevented || event.ctrlKey || event.altKey || event.metaKey || event.repeat || !singleKeysAct())
      return;
    const key = event.key.toLowerCase();
    if (key === 'v') place.current?.querySelector('table')?.focus();
    else if (key === 't') {
      const most = Math.max(readCurve(displayOf(scene)).heightDiv, inWax?.heightDiv ?? 0);
      const second = inWax?.tones(most) ?? null;
      // The beam of the same bench is one buffer: what the tube shows is drawn last.
      const first = tonesOf(scene, most);
      play([first, second === null ? null : { ...second, wanted: true as const }].filter((one) => one !== null));
    } else return;
    event.preventDefault();
  });
  return (
    <div class="look-tube" ref={place}>
      {width === 0 ? null : (
        <TubeFace
          display={display}
          label={words.tube}
          cell={cell}
          phosphor="P31"
          outline={inWax?.outline}
          nameless={nameless}
        />
      )}
      <TraceTable drill={drill} scene={scene} wax={inWax?.trace ?? null} />
    </div>
  );
}

/** By one scale for both curves, so that the lower one sounds lower. */
const tonesOf = (scene: Scene, mostDiv: number): CurveTones | null => tonesOnTube(displayOf(scene), mostDiv);
