/** The ring of the magnified slug: drag round it, turn the wheel over it, or take its grip on a touch screen. */

import type { ComponentChildren } from 'preact';
import { useEffect, useMemo, useRef } from 'preact/hooks';
import type { ToolId } from '../../../bench/benchState.ts';
import { fits } from '../../../bench/tools.ts';
import {
  arcDegrees,
  FINE,
  ringDegrees,
  TurnFollower,
  turnsBetween,
  WheelSteps,
  wheelTravel,
} from '../../../kit/chassis/ringTurns.ts';
import { useFinger } from '../../../kit/hooks/useFinger.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { place, type Rect } from '../../../kit/px.ts';
import { C, pol, r1 } from '../../../kit/theme/ink.ts';
import { inkPainter } from '../../../kit/theme/inkCanvas.ts';
import type { BenchPort } from '../../../present/ports.ts';
import type { Adjuster } from '../../../receiver/receiver.ts';
import { turnBy } from './handTurn.ts';
import { core, ringArcRadius, ringFace, toolEnd } from './slugArt.ts';
import { faint, paintArc, turned } from './turningInk.ts';
import { useBench, usePaint } from './useBench.ts';
import { useTurningCanvas } from './useTurningCanvas.ts';

export interface SlugRingProps {
  readonly port: BenchPort;
  readonly adjuster: Adjuster;
  readonly start: number;
  readonly ring: { readonly x: number; readonly y: number; readonly r: number };
  readonly tool: ToolId | null;
  readonly toolIn: boolean;
  readonly step: number;
  /** what stands in the ring's middle */
  readonly children?: ComponentChildren;
}

const NOTHING = (): void => {};

/** where the grip waits before the first turn */
const GRIP_DEGREES = 135;

/** px from the ring's edge to the canvas of what turns in it: the mark on the core goes farthest, to 27 */
const AWAY = 24;
const turningBox = (R: number): Rect => ({ x: AWAY - R, y: AWAY - R, width: 2 * (R - AWAY), height: 2 * (R - AWAY) });
/** how strongly a tool is drawn that is held above its core */
const LIFTED = 0.32;

export function SlugRing({ port, adjuster, start, ring, tool, toolIn, step, children }: SlugRingProps) {
  const { scene: sceneWords } = useWords();
  const R = ring.r;
  const cracked = useBench(port, (state) => state.slugs[adjuster.id]!.cracked);
  const wear = useBench(port, (state) => Math.round(state.slugs[adjuster.id]!.wear * 10) / 10);
  const face = useMemo(() => ringFace(R), [R]);
  const art = useMemo(
    () => ({
      core: inkPainter(core(R, adjuster.head, cracked, wear)),
      tool: inkPainter(tool === null ? '' : toolEnd(R, tool)),
    }),
    [R, adjuster.head, cracked, wear, tool],
  );

  const gripRef = useRef<HTMLDivElement>(null);
  const ringRef = useRef<HTMLDivElement>(null);
  const finger = useFinger();
  const follower = useRef(new TurnFollower()).current;
  /** how far the tool stands from the core, turns: a head that slips moves against it */
  const slipped = useRef(0);

  const turnsShown = (): number => follower.shown(port.state().slugs[adjuster.id]!.screwTurns) - start;
  const { canvas, follow } = useTurningCanvas(
    turningBox(R),
    1,
    () => {
      const turns = turnsShown();
      const degrees = r1(turns * 360);
      const toolDegrees = r1(degrees + slipped.current * 360);
      const way = r1(arcDegrees(turns));
      return {
        stands: `${degrees} ${toolDegrees}`,
        paint: (context) => {
          paintArc(context, ringArcRadius(R), way);
          turned(context, degrees, art.core);
          // As one piece, though it is made of several.
          if (toolIn) turned(context, toolDegrees, art.tool);
          else faint(context, LIFTED, (layer) => turned(layer, toolDegrees, art.tool));
        },
      };
    },
    [adjuster.id, start, art, toolIn],
  );
  const paint = (): void => {
    follow();
    if (gripRef.current === null) return;
    const turns = turnsShown();
    const [x, y] = pol(R, R, R, GRIP_DEGREES + (turns + slipped.current) * 360);
    gripRef.current.style.transform = `translate(${r1(x)}px, ${r1(y)}px)`;
  };
  usePaint(port, paint, [adjuster.id, start, R, follow, finger]);

  useEffect(() => {
    slipped.current = 0;
    paint();
  }, [adjuster.id, tool]);

  const bitesHere = tool !== null && fits(tool, adjuster.head);
  useEffect(() => {
    const element = ringRef.current;
    if (element === null) return;
    const wheel = new WheelSteps();
    let from: number | null = null;
    /** calls off what waits for the last turn to be heard of */
    let settled = NOTHING;
    // The ring stays where it is while it is held: asked at each move, the page would be laid out anew for the answer.
    let box = new DOMRect();
    const direction = (e: PointerEvent): number => {
      return ringDegrees(e.clientX - box.left - box.width / 2, e.clientY - box.top - box.height / 2);
    };
    const down = (e: PointerEvent): void => {
      if (e.button !== 0 || !e.isPrimary || (e.target instanceof Element && e.target.closest('button'))) return;
      const state = port.state();
      const slug = state.slugs[adjuster.id]!;
      e.preventDefault();
      if (state.tool === null || slug.cracked) {
        // One honest try: the refusal says why nothing turns.
        turnBy(port, adjuster.id, FINE);
        return;
      }
      box = element.getBoundingClientRect();
      from = direction(e);
      element.setPointerCapture(e.pointerId);
      // Taken up again before the last turn was heard of: it goes on from where the hand has it, and nothing lets go of it meanwhile.
      settled();
      follower.grasp(follower.shown(slug.screwTurns), adjuster.travelTurns, bitesHere);
      element.classList.add('held');
    };
    const move = (e: PointerEvent): void => {
      if (from === null) return;
      const to = direction(e);
      const turns = turnsBetween(from, to);
      from = to;
      if (turns === 0) return;
      if (!bitesHere) slipped.current += turns;
      follower.turn(turns);
      port.actSoon({ type: 'slugTurned', slug: adjuster.id, turns });
      if (port.state().slugs[adjuster.id]!.cracked) follower.slip();
      paint();
    };
    const up = (): void => {
      if (from === null) return;
      from = null;
      element.classList.remove('held');
      // The last gathered turns are still on their way; let go when they have been heard of.
      const settle = (): void => {
        settled();
        follower.letGo();
        paint();
      };
      const stop = port.subscribe(settle);
      const timer = setTimeout(settle, 120);
      settled = () => {
        settled = NOTHING;
        stop();
        clearTimeout(timer);
      };
    };
    const roll = (e: WheelEvent): void => {
      e.preventDefault();
      const steps = wheel.take(-wheelTravel(e), e.deltaMode);
      if (steps !== 0) turnBy(port, adjuster.id, steps * (e.shiftKey ? FINE : step));
    };
    element.addEventListener('pointerdown', down);
    element.addEventListener('pointermove', move);
    element.addEventListener('pointerup', up);
    element.addEventListener('pointercancel', up);
    element.addEventListener('wheel', roll, { passive: false });
    return () => {
      element.removeEventListener('pointerdown', down);
      element.removeEventListener('pointermove', move);
      element.removeEventListener('pointerup', up);
      element.removeEventListener('pointercancel', up);
      element.removeEventListener('wheel', roll);
      settled();
      follower.letGo();
    };
  }, [port, adjuster, bitesHere, step, R]);

  return (
    <div
      class="slug-ring"
      ref={ringRef}
      style={{ left: `${ring.x - R}px`, top: `${ring.y - R}px`, width: `${2 * R}px`, height: `${2 * R}px` }}
    >
      <svg width={2 * R} height={2 * R} viewBox={`${-R} ${-R} ${2 * R} ${2 * R}`} aria-hidden="true" focusable="false">
        {/* The drawing writes its own markup and holds no words from files. */}
        <g dangerouslySetInnerHTML={{ __html: face }} />
      </svg>
      <canvas ref={canvas} style={place({ ...turningBox(R), x: AWAY, y: AWAY })} />
      {finger ? (
        <div class="ring-grip" ref={gripRef} aria-hidden="true">
          <svg width="44" height="44" viewBox="-22 -22 44 44" aria-hidden="true" focusable="false">
            <circle r="20.5" fill={C.sheet} stroke={C.rust} stroke-width="2.8" />
            <path
              d="M-9 3Q0 -5 9 3M-9 3l1.5 -6M-9 3h6M9 3l-1.5 -6M9 3h-6"
              fill="none"
              stroke={C.ink}
              stroke-width="1.9"
              stroke-linecap="round"
              stroke-linejoin="round"
            />
          </svg>
        </div>
      ) : null}
      <span class="scene-flag ring-flag" aria-hidden="true">
        {sceneWords.ringHint}
      </span>
      {children}
    </div>
  );
}
