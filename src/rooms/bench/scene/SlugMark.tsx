/** One slug on the chassis: hole with its turning head, rings for hover, selection and tool, the letter's disc. */

import { useMemo } from 'preact/hooks';
import { readTurns } from '../../../kit/chassis/ringTurns.ts';
import { holeHead, holeRim } from '../../../kit/chassis/slugHole.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { C } from '../../../kit/theme/ink.ts';
import type { SlugPlace } from '../../../present/chassisPlaces.ts';
import type { BenchPort } from '../../../present/ports.ts';
import { DISC_RADIUS } from '../../../receiver/planSizes.ts';
import { holeCrack, holeTool } from './slugArt.ts';
import { TurningHead } from './TurningHead.tsx';
import '../../../kit/chassis/letterDisc.css';

export interface SlugMarkProps {
  readonly port: BenchPort;
  readonly place: SlugPlace;
  readonly scale: number;
  readonly planWidth: number;
  readonly textSize: number;
  /** where the run began; the limits are counted from there */
  readonly startTurns: number;
  /** how deep the core stands is not said */
  readonly sealed: boolean;
  readonly selected: boolean;
  readonly toolIn: boolean;
  readonly onKey: (e: KeyboardEvent) => void;
  readonly onSelect: () => void;
  readonly elementRef: (element: HTMLElement | null) => void;
}

export function SlugMark({
  port,
  place,
  scale,
  planWidth,
  textSize,
  startTurns,
  sealed,
  selected,
  toolIn,
  onKey,
  onSelect,
  elementRef,
}: SlugMarkProps) {
  const { scene: sceneWords } = useWords();
  const { adjuster, letter, hole, holeRadius: r, touch, disc } = place;
  const lower = adjuster.plan.hole === 'bottom';
  const rim = useMemo(() => holeRim(r, lower), [r, lower]);
  const head = useMemo(() => holeHead(r, adjuster.head), [r, adjuster.head]);
  const tool = useMemo(() => holeTool(r), [r]);
  const crack = useMemo(() => holeCrack(r), [r]);
  const name = sceneWords.slugName(letter, adjuster.label, adjuster.kind === 'trap');
  const side = hole.x > planWidth * 0.7 ? ' to-left' : hole.x < planWidth * 0.3 ? ' to-right' : '';
  return (
    <>
      <div
        class={`slug${selected ? ' selected' : ''}${toolIn ? ' tool-in' : ''}`}
        role="spinbutton"
        tabIndex={0}
        ref={elementRef}
        aria-label={lower ? `${name}, ${sceneWords.bottomCore}` : name}
        aria-valuemin={readTurns(sealed ? -adjuster.travelTurns : -startTurns)}
        aria-valuemax={readTurns(sealed ? adjuster.travelTurns : adjuster.travelTurns - startTurns)}
        data-slug={adjuster.id}
        style={{
          left: `${touch.x * scale}px`,
          top: `${touch.y * scale}px`,
          width: `${touch.width * scale}px`,
          height: `${touch.height * scale}px`,
        }}
        onClick={onSelect}
        onKeyDown={onKey}
      >
        <svg
          class="slug-hole"
          style={{ left: `${(hole.x - touch.x) * scale}px`, top: `${(hole.y - touch.y) * scale}px` }}
          width="1"
          height="1"
          aria-hidden="true"
          focusable="false"
        >
          <g transform={`scale(${scale})`}>
            <g class="when-hover">
              <circle r={r + 7} fill="none" stroke={C.brass} stroke-width="5" />
              <circle r={r + 9.5} fill="none" stroke={C.ink} />
              <circle r={r + 4.5} fill="none" stroke={C.ink} stroke-width=".8" />
            </g>
            <circle class="when-selected" r={r + 6} fill={C.sheet} stroke={C.rust} stroke-width="3.2" />
            <g dangerouslySetInnerHTML={{ __html: rim }} />
            <g data-turns="" dangerouslySetInnerHTML={{ __html: head }} />
            <g class="when-tool" dangerouslySetInnerHTML={{ __html: tool }} />
            <g class="when-cracked" dangerouslySetInnerHTML={{ __html: crack }} />
          </g>
        </svg>
        {selected ? (
          <TurningHead
            port={port}
            adjuster={adjuster}
            r={r}
            scale={scale}
            x={(hole.x - touch.x) * scale}
            y={(hole.y - touch.y) * scale}
            startTurns={startTurns}
            toolIn={toolIn}
          />
        ) : null}
        <span class={`scene-flag${side}`} aria-hidden="true">
          {name}
        </span>
      </div>
      <span
        class={selected ? 'letter-disc chosen' : 'letter-disc'}
        aria-hidden="true"
        onClick={onSelect}
        style={{
          left: `${(disc.x - DISC_RADIUS) * scale}px`,
          top: `${(disc.y - DISC_RADIUS) * scale}px`,
          width: `${2 * DISC_RADIUS * scale}px`,
          height: `${2 * DISC_RADIUS * scale}px`,
          fontSize: `${(13 / 12) * textSize * scale}px`,
        }}
      >
        {letter}
      </span>
    </>
  );
}
