/** Beside a demonstration, in the place of the sheet or of the strip: what the technician says, the buttons of who watches, and the part that his hand is on lit where it stands. */
import { useEffect, useMemo, useRef } from 'preact/hooks';
import type { BenchEvent } from '../../../bench/benchEvent.ts';
import { useKeyDown } from '../../../kit/hooks/useKeyDown.ts';
import { usePort } from '../../../kit/hooks/usePort.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { place, px, type Rect } from '../../../kit/px.ts';
import { Button, Frame } from '../../../kit/theme/art.tsx';
import type { GuideSpot } from '../../../present/guide.ts';
import type { BenchPort } from '../../../present/ports.ts';
import { SHOWN_SPEEDS, type ShownPort } from '../../../present/shownPort.ts';
import { isFreeKey, isPageKey } from '../pageKeys.ts';
import { GuideLight } from './GuideLight.tsx';
import { partsMeant } from './partsMeant.ts';
import '../../../kit/links/link.css';
import './guide.css';

interface ShownProps {
  readonly port: BenchPort;
  readonly shown: ShownPort;
  readonly rect: Rect;
  /** no more room than a strip */
  readonly line: boolean;
  readonly onSheet: () => void;
}

export function Shown({ port, shown, rect, line, onSheet }: ShownProps) {
  const words = useWords();
  const { demonstration: say, sheet: sheetWords } = words;
  const { caption, at, of, playing, ended, speed, act } = usePort(shown, () => shown.view());
  const find = useMemo(() => {
    const spot = act === null ? null : spotOf(act);
    return () => (spot === null ? [] : partsMeant(words, spot));
  }, [words, act]);
  const section = useRef<HTMLElement>(null);
  useKeyDown((event) => {
    if (!isFreeKey(event)) return;
    if (isPageKey(event, 'onward')) shown.step();
    else if (isPageKey(event, 'backward')) shown.stepBack();
    else return;
    event.preventDefault();
  });
  // Who comes to watch has the first button in hand.
  // And keeps one where the button under the hand goes with the last saying.
  useEffect(() => {
    if (document.activeElement === null || document.activeElement === document.body)
      section.current?.querySelector('button')?.focus({ preventScroll: true });
  }, [ended]);
  return (
    <>
      <section
        ref={section}
        class={`guide shown placed may-mark${line ? ' line' : ' paper'}`}
        style={line ? { ...place(rect), height: 'auto', minHeight: px(rect.height) } : place(rect)}
        aria-label={say.name}
      >
        <Frame kind={line ? 'card' : 'sheet'} />
        <p class="l guide-count">{say.said(at, of)}</p>
        <div class="guide-said" role="status">
          <p>{caption}</p>
        </div>
        <div class="guide-acts">
          {ended ? (
            <Button primary onClick={() => shown.fromStart()}>
              {say.fromStart}
            </Button>
          ) : (
            <>
              <Button primary onClick={() => shown.toggle()}>
                {playing ? say.pause : say.play}
              </Button>
              <Button onClick={() => shown.step()}>{say.step}</Button>
            </>
          )}
          <Button onClick={() => shown.stepBack()}>{say.back}</Button>
          <Button onClick={() => shown.takeOver()}>{say.takeOver}</Button>
          <label class="shown-speed">
            <span class={line ? 'unseen' : 'l2'}>{say.speed}</span>
            <select
              class="mb"
              value={speed}
              onChange={(event) =>
                shown.setSpeed(SHOWN_SPEEDS.find((one) => one === event.currentTarget.value) ?? speed)
              }
            >
              {SHOWN_SPEEDS.map((one) => (
                <option key={one} value={one}>
                  {say.speeds[one]}
                </option>
              ))}
            </select>
          </label>
        </div>
        {line ? null : (
          <>
            <p class="si">{say.noMark}</p>
            <button type="button" class="link" data-opens="sheet" onClick={onSheet}>
              {sheetWords.open}
            </button>
          </>
        )}
      </section>
      <GuideLight port={port} find={find} />
    </>
  );
}

/** Where his hand was last. */
function spotOf(act: BenchEvent): GuideSpot | null {
  switch (act.type) {
    case 'controlSet':
      return { kind: 'control', control: act.control };
    case 'leadConnected':
      return { kind: 'lead', lead: act.lead, to: act.to };
    case 'leadRemoved':
      return { kind: 'lead', lead: act.lead, to: '' };
    case 'crystalPlugged':
    case 'crystalPulled':
      return { kind: 'crystal', hz: act.hz };
    case 'slugTurned':
      return { kind: 'slug', slug: act.slug };
    case 'isolationSwitched':
      return { kind: 'isolation' };
    case 'powerSwitched':
      return { kind: 'mains' };
    default:
      return null;
  }
}
