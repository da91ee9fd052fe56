/** In practice, while nothing is missing any more: says so, in the full bench under the button that signs. A slug that is turned takes it away, and so does `Look again`. */
import { useEffect, useState } from 'preact/hooks';
import { usePort } from '../../kit/hooks/usePort.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { place, type Rect } from '../../kit/px.ts';
import { Frame } from '../../kit/theme/art.tsx';
import type { BenchPort } from '../../present/ports.ts';
import { everythingStands } from '../../present/steps.ts';
import '../../kit/links/link.css';
import './stands.css';

/** px at the right that belong to the button of the leads */
const LEADS = 80;
/** px that it stands out over the title of the chassis, up and down */
const ABOVE = 10;
const BELOW = 2;

interface StandsNoticeProps {
  readonly port: BenchPort;
  /** the title of the chassis; null: only spoken, since the strip of the step says it */
  readonly over: Rect | null;
}

export function StandsNotice({ port, over }: StandsNoticeProps) {
  const { sheet: say } = useWords();
  const stands = usePort(port, () => {
    const session = port.session();
    return session.stage === 'working' && everythingStands(session);
  });
  const [looking, setLooking] = useState(false);
  useEffect(() => {
    if (!stands) setLooking(false);
  }, [stands]);
  const shown = stands && !looking;
  const drawn = shown && over !== null;
  const rect = over === null ? null : noticePlace(over);
  return (
    <div class={drawn ? 'stands placed' : 'unseen'} style={drawn ? place(rect!) : undefined}>
      {drawn ? <Frame kind="card" /> : null}
      <p role="status">{shown ? say.allStands : ''}</p>
      {drawn ? (
        <button
          type="button"
          class="link"
          onClick={() => {
            setLooking(true);
            document.querySelector<HTMLElement>('.bench-tube')?.focus();
          }}
        >
          {say.lookAgain}
        </button>
      ) : null}
    </div>
  );
}

function noticePlace({ x, y, width, height }: Rect): Rect {
  return { x, y: y - ABOVE, width: width - LEADS, height: height + ABOVE + BELOW };
}
