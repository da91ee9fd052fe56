/** The tube with what a look puts on it. What it shows is the question, so no words say it. */
import { useMemo, useRef } from 'preact/hooks';
import type { Scene } from '../../drills/drill.ts';
import { displayOf } from '../../drills/picture.ts';
import { useSize } from '../../kit/hooks/useSize.ts';
import { useWindowSize } from '../../kit/hooks/useWindowSize.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { ghostPath } from '../../kit/tube/ghosts.ts';
import { TUBE_HOOD, TubeFace } from '../../kit/tube/TubeFace.tsx';

export interface LookTubeProps {
  readonly scene: Scene;
  readonly wax: Scene | null;
  readonly nameless: boolean;
}

const MOST_CELL = 46;
const LEAST_CELL = 18;
/** What header, title and answer want of a low window. */
const ELSEWHERE_PX = 300;

export function LookTube({ scene, wax, nameless }: LookTubeProps) {
  const { drills: words } = useWords();
  const place = useRef<HTMLDivElement>(null);
  const { width } = useSize(place);
  const { height } = useWindowSize();
  const across = Math.min((width - 2 * TUBE_HOOD) / 10.76, (width - 2 * TUBE_HOOD - 24) / 10);
  const cell = Math.max(LEAST_CELL, Math.min(MOST_CELL, Math.floor(across), Math.floor((height - ELSEWHERE_PX) / 9.2)));
  // Drawn first: the beam of the same bench is one buffer.
  const outline = useMemo(() => (wax === null ? undefined : ghostPath(displayOf(wax).beam)), [wax]);
  const display = displayOf(scene);
  return (
    <div class="look-tube" ref={place}>
      {width === 0 ? null : (
        <TubeFace
          display={display}
          label={words.tube}
          cell={cell}
          phosphor="P31"
          outline={outline}
          nameless={nameless}
        />
      )}
    </div>
  );
}
