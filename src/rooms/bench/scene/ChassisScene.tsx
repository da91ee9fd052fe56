/** The chassis from above: a baked drawing on a Pixi canvas, and over it the slugs as real elements that take keys, pointer and finger. */

import { useEffect, useMemo, useRef } from 'preact/hooks';
import type { BenchState } from '../../../bench/benchState.ts';
import { ART_MARGIN } from '../../../kit/chassis/chassisArt.ts';
import { EIGHTH, FINE, readTurns } from '../../../kit/chassis/ringTurns.ts';
import { useKeyDown } from '../../../kit/hooks/useKeyDown.ts';
import { useResolution } from '../../../kit/hooks/useResolution.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { Short } from '../../../kit/Short.tsx';
import { chassisPlaces, type PointPlace, textBox } from '../../../present/chassisPlaces.ts';
import type { BenchPort } from '../../../present/ports.ts';
import type { Words } from '../../../words/words.ts';
import type { BenchLayout } from '../layout.ts';
import { isFreeKey } from '../pageKeys.ts';
import type { ChassisCanvas } from './chassisCanvas.ts';
import { turnBy } from './handTurn.ts';
import { placed, SceneHead } from './SceneHead.tsx';
import { SlugLeader } from './SlugLeader.tsx';
import { SlugMark } from './SlugMark.tsx';
import { headDegrees } from './slugArt.ts';
import { useStart } from './start.ts';
import { useBench, usePaint } from './useBench.ts';
import './scene.css';

/** px across a point's spot: `.point-spot` in `scene.css` */
const SPOT = 28;

export interface ChassisSceneProps {
  readonly port: BenchPort;
  readonly layout: BenchLayout;
  readonly selected: string | null;
  readonly onSelect: (slug: string) => void;
}

export function ChassisScene({ port, layout, selected, onSelect }: ChassisSceneProps) {
  const { scene: sceneWords } = useWords();
  const { receiver } = port;
  const { scale } = layout.chassis;
  const places = useMemo(() => chassisPlaces(receiver, scale), [receiver, scale]);
  const start = useStart(port);
  const toolIn = useBench(port, (state) => state.toolIn);
  const canvas = useChassisCanvas(port, scale);
  const elements = useRef(new Map<string, HTMLElement>()).current;

  const select = (slug: string): void => {
    const standing = port.state().toolIn;
    // The hand goes to the next slug and takes its tool along.
    if (standing !== null && standing !== slug) port.act({ type: 'toolPlaced', slug: null });
    onSelect(slug);
  };
  const choose = (slug: string): void => {
    select(slug);
    elements.get(slug)?.focus({ preventScroll: true });
  };
  const turn = (slug: string, turns: number): void => {
    if (slug !== selected) select(slug);
    turnBy(port, slug, turns);
  };
  useLetterKeys(places.slugs, choose);

  const seen = useRef(new Map<string, BenchState['slugs'][string]>()).current;
  usePaint(
    port,
    (state) => {
      for (const { adjuster } of places.slugs) {
        const slug = state.slugs[adjuster.id]!;
        const element = elements.get(adjuster.id);
        if (element === undefined || seen.get(adjuster.id) === slug) continue;
        seen.set(adjuster.id, slug);
        paintSlug(
          sceneWords,
          element,
          slug,
          start[adjuster.id]!.screwTurns,
          port.scenario.sealed ? null : adjuster.travelTurns,
          adjuster.id === selected,
        );
      }
    },
    [places, sceneWords, selected],
  );

  const key = (e: KeyboardEvent, i: number): void => {
    if (e.ctrlKey || e.metaKey || e.altKey) return;
    const slug = places.slugs[i]!.adjuster.id;
    const step = e.shiftKey ? FINE : EIGHTH;
    const walk = (by: number): void => {
      const next = places.slugs[(i + by + places.slugs.length) % places.slugs.length]!;
      elements.get(next.adjuster.id)?.focus();
    };
    if (e.key === 'Enter' || e.key === ' ') select(slug);
    else if (e.key === 'ArrowUp') turn(slug, step);
    else if (e.key === 'ArrowDown') turn(slug, -step);
    else if (e.key === 'ArrowRight') walk(1);
    else if (e.key === 'ArrowLeft') walk(-1);
    else if (e.key === ']' || e.key === '}') turn(slug, e.key === '}' || e.shiftKey ? FINE : EIGHTH);
    else if (e.key === '[' || e.key === '{') turn(slug, e.key === '{' || e.shiftKey ? -FINE : -EIGHTH);
    else return;
    e.preventDefault();
  };

  const { chassis } = layout;
  const margin = ART_MARGIN * scale;
  return (
    <>
      {layout.chassisHead === null ? null : <Head port={port} layout={layout} count={receiver.adjusters.length} />}
      <section class="chassis-scene" style={placed(chassis)} aria-label={sceneWords.chassisName(receiver.setName)}>
        <canvas
          class="chassis-canvas"
          ref={canvas}
          style={placed({
            x: -margin,
            y: -margin,
            width: (receiver.plan.width + 2 * ART_MARGIN) * scale,
            height: (receiver.plan.height + 2 * ART_MARGIN) * scale,
          })}
        />
        {receiver.testPoints.map((point, i) => (
          <span
            key={point.id}
            data-point={point.id}
            class={`point-spot${point.plan.y * scale < 60 ? ' low' : ''}`}
            style={{ left: `${point.plan.x * scale}px`, top: `${point.plan.y * scale}px` }}
          >
            <span class="point-name" style={nameBeside(places.points[i]!, places.textSize, scale)} />
            <span class="scene-flag">{sceneWords.pointName(point.id, point.label)}</span>
          </span>
        ))}
        {places.slugs.map((place, i) => (
          <SlugMark
            key={place.adjuster.id}
            port={port}
            place={place}
            scale={scale}
            planWidth={receiver.plan.width}
            textSize={places.textSize}
            sealed={port.scenario.sealed}
            startTurns={start[place.adjuster.id]!.screwTurns}
            selected={place.adjuster.id === selected}
            toolIn={place.adjuster.id === toolIn}
            onKey={(e) => key(e, i)}
            onSelect={() => select(place.adjuster.id)}
            elementRef={(element) => {
              if (element === null) elements.delete(place.adjuster.id);
              else elements.set(place.adjuster.id, element);
              seen.delete(place.adjuster.id);
            }}
          />
        ))}
      </section>
      <SlugLeader
        layout={layout}
        receiver={receiver}
        places={places}
        place={places.slugs.find((p) => p.adjuster.id === selected)}
      />
    </>
  );
}

function Head({
  port,
  layout,
  count,
}: {
  readonly port: BenchPort;
  readonly layout: BenchLayout;
  readonly count: number;
}) {
  const { scene: sceneWords } = useWords();
  const touched = useBench(port, (_, p) => p.facts().slugsTouched);
  return (
    <div class="chassis-head" style={placed(layout.chassisHead!)}>
      <SceneHead no={5}>{sceneWords.chassisTitle}</SceneHead>
      <Short class="l2">{sceneWords.touched(touched, count)}</Short>
    </div>
  );
}

/** Where the drawn name of a point stands, from the corner of its spot. */
function nameBeside({ at, id, label }: PointPlace, textSize: number, scale: number) {
  const { x, y, width, height } = textBox(label, id, textSize);
  return placed({
    x: (x - at.x) * scale + SPOT / 2,
    y: (y - at.y) * scale + SPOT / 2,
    width: width * scale,
    height: height * scale,
  });
}

function paintSlug(
  say: Words['scene'],
  element: HTMLElement,
  slug: BenchState['slugs'][string],
  start: number,
  /** null: how deep the core stands is not said */
  travel: number | null,
  chosen: boolean,
): void {
  const turns = readTurns(slug.screwTurns - start);
  write(element, 'aria-valuenow', String(turns));
  write(
    element,
    'aria-valuetext',
    travel === null
      ? say.slugTurned(say.turned(turns), slug.cracked)
      : say.slugSpoken(say.turned(turns), Math.round(slug.screwTurns), Math.round(travel), slug.cracked),
  );
  element.classList.toggle('cracked', slug.cracked);
  // That of the chosen one is hidden: it is painted as it turns.
  if (chosen) return;
  const head = element.querySelector('[data-turns]');
  if (head !== null) write(head, 'transform', `rotate(${headDegrees(slug.screwTurns - start)})`);
}

/** An attribute that is set has the page styled and laid anew, though it stands so already. */
function write(element: Element, name: string, value: string): void {
  if (element.getAttribute(name) !== value) element.setAttribute(name, value);
}

/** Letters call their slugs from anywhere on the page but from where something is written. */
function useLetterKeys(
  slugs: readonly { readonly letter: string; readonly adjuster: { readonly id: string } }[],
  choose: (slug: string) => void,
): void {
  useKeyDown((e) => {
    if (e.key.length !== 1 || !isFreeKey(e)) return;
    const found = slugs.find((s) => s.letter === e.key.toUpperCase());
    if (found === undefined) return;
    e.preventDefault();
    choose(found.adjuster.id);
  });
}

function useChassisCanvas({ receiver }: BenchPort, scale: number) {
  const { scene } = useWords();
  const canvas = useRef<HTMLCanvasElement>(null);
  const sheet = useRef<Promise<ChassisCanvas> | null>(null);
  const resolution = useResolution();
  useEffect(() => {
    const element = canvas.current!;
    const opening = import('./chassisCanvas.ts').then((m) => m.openChassisSheet(element));
    sheet.current = opening;
    return () => {
      sheet.current = null;
      void opening.then((s) => s.close());
    };
  }, []);
  useEffect(() => {
    void sheet.current?.then((s) => s.show(scene, receiver, scale));
  }, [scene, receiver, scale, resolution]);
  return canvas;
}
