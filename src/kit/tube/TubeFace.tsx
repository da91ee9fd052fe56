/** The tube: hood and glass in ink, the beam in light, pip tags on the lip. One picture to a screen reader, named by the page. */

import { useLayoutEffect, useMemo, useReducer, useRef } from 'preact/hooks';
import type { Phosphor as PhosphorKind } from '../../bench/benchState.ts';
import type { BenchDisplay } from '../../bench/display.ts';
import type { PartOnGlass, WaxMark } from '../../present/wax.ts';
import { useWords } from '../hooks/useWords.ts';
import { Ink } from '../theme/art.tsx';
import {
  beamBlur,
  beamBrightness,
  FULL_PIXELS_PER_DIV,
  MINI_PIXELS_PER_DIV,
  RESTING_BRIGHTNESS,
  RESTING_FOCUS,
} from './faceLight.ts';
import { type Ghosts, ghostPath, ghostsAfterChange, ghostsAtRest, NO_GHOSTS } from './ghosts.ts';
import { overBeam, TUBE_COLOURS, type TubeGeometry, tubeGeometry, underBeam, waxMarks } from './hood.ts';
import { drawTags } from './tags.ts';
import { openTubeLight, type TubeLight } from './tubeLight.ts';
import './tube.css';

export interface TubeFaceProps {
  readonly display: BenchDisplay;
  /** what the curve shows, in words, for screen readers */
  readonly label: string;
  /** CSS pixels to a division; the graticule is 10 x 8 */
  readonly cell: number;
  readonly phosphor: PhosphorKind;
  /** how the tube's own two knobs stand, 0 to 1; default = where they rest */
  readonly brightness?: number;
  readonly focus?: number;
  /** turns of all slugs so far: when they grow, the last settled curves stay as warm lines; left out: none do */
  readonly turnsMade?: number;
  readonly wax?: readonly WaxMark[];
  /** a second curve in wax: path data in divisions times 100, y down, as `ghostPath` gives it; left out: none */
  readonly outline?: string | undefined;
  /** what the chosen slug moves, in wax */
  readonly part?: PartOnGlass | null;
  /** pips are numbered on the lip, and nothing says at what frequency they stand */
  readonly nameless?: boolean;
  /** time alone has brought this picture, no hand: it comes without afterglow, and the warm lines stay true */
  readonly quiet?: boolean;
  /** a small tube: no lip, no tags, a coarser beam */
  readonly mini?: boolean;
}

export const TUBE_HOOD = 15;
const TUBE_LIP = 24;
const REST_MS = 400;

export function TubeFace(props: TubeFaceProps) {
  const { tubeTags: tubeWords } = useWords();
  const {
    display,
    label,
    cell,
    phosphor,
    brightness = RESTING_BRIGHTNESS,
    focus = RESTING_FOCUS,
    turnsMade = null,
    wax = NO_WAX,
    outline,
    part = null,
    nameless = false,
    quiet = false,
    mini = false,
  } = props;
  const g = useMemo(() => tubeGeometry({ cell, hood: mini ? 9 : TUBE_HOOD, lip: mini ? 0 : TUBE_LIP }), [cell, mini]);
  const under = useMemo(() => underBeam(g), [g]);
  const over = useMemo(() => overBeam(g), [g]);
  const marks = useMemo(() => waxMarks(g, wax), [g, wax]);
  const tags = useMemo(
    () => (mini ? '' : drawTags(g, display.tags, nameless ? { ...tubeWords, frequency: () => '' } : tubeWords)),
    [mini, g, display.tags, tubeWords, nameless],
  );
  const beam = useBeam(g, mini, phosphor, display, beamBrightness(brightness), beamBlur(focus), quiet);
  const ghosts = useGhosts(display, turnsMade, quiet);
  const [x, y, w, h] = g.glass;
  return (
    <div class="tube" role="img" aria-label={label} style={{ width: px(g.width), height: px(g.height) }}>
      <Ink svg={under} width={g.width} height={g.height} />
      {marks === '' ? null : <Ink svg={marks} width={g.width} height={g.height} />}
      {outline === undefined ? null : <Outline path={outline} g={g} />}
      {part === null ? null : <Part part={part} g={g} />}
      <WarmLines ghosts={ghosts} g={g} />
      <div class="beam" ref={beam} style={{ left: px(x), top: px(y), width: px(w), height: px(h) }} />
      <Ink svg={over} width={g.width} height={g.height} />
      {tags === '' ? null : <Ink svg={tags} width={g.width} height={g.height} />}
    </div>
  );
}

const px = (v: number): string => `${v}px`;
const NO_WAX: readonly WaxMark[] = [];

/** A wanted curve beside the one that is there. */
function Outline({ path, g }: { readonly path: string; readonly g: TubeGeometry }) {
  const scale = g.cell / 100;
  return (
    <svg class="ink" width={g.width} height={g.height} aria-hidden="true">
      <path
        d={path}
        transform={`translate(${g.cx} ${g.cy}) scale(${scale})`}
        fill="none"
        stroke={TUBE_COLOURS.wax}
        stroke-width={1.8 / scale}
        stroke-dasharray={`${8 / scale} ${5 / scale}`}
        opacity={0.85}
      />
    </svg>
  );
}

/** A turn in dotted, a turn out dashed, and the stretch that they move. */
function Part({ part, g }: { readonly part: PartOnGlass; readonly g: TubeGeometry }) {
  const scale = g.cell / 100;
  const dash = (...lengths: readonly number[]): string => lengths.map((px) => px / scale).join(' ');
  return (
    <svg class="ink slug-wax" width={g.width} height={g.height} aria-hidden="true">
      <g transform={`translate(${g.cx} ${g.cy}) scale(${scale})`} fill="none" stroke={TUBE_COLOURS.wax}>
        <path
          d={part.in}
          stroke-width={1.6 / scale}
          stroke-dasharray={dash(1.5, 5)}
          stroke-linecap="round"
          opacity=".7"
        />
        <path d={part.out} stroke-width={1.4 / scale} stroke-dasharray={dash(7, 6)} opacity=".6" />
        <path d={part.stretch} stroke-width={2 / scale} stroke-linecap="round" opacity=".8" />
      </g>
    </svg>
  );
}

/** The last settled curves, the older one fainter. */
function WarmLines({ ghosts, g }: { readonly ghosts: Ghosts; readonly g: TubeGeometry }) {
  if (ghosts.paths.length === 0) return null;
  const scale = g.cell / 100;
  const first = 2 - ghosts.paths.length;
  return (
    <svg class={`ink warm${ghosts.shown ? ' shown' : ''}`} width={g.width} height={g.height} aria-hidden="true">
      <g transform={`translate(${g.cx} ${g.cy}) scale(${scale})`} fill="none" stroke={TUBE_COLOURS.warm}>
        {ghosts.paths.map((d, i) => {
          const strength = first + i === 0 ? 0.2 : 0.34;
          return (
            <g key={d}>
              <path d={d} stroke-width={4.5 / scale} opacity={strength / 2} stroke-linejoin="round" />
              <path d={d} stroke-width={1.4 / scale} opacity={strength * 1.3} />
            </g>
          );
        })}
      </g>
    </svg>
  );
}

/** Keeps the light of the face and hands it each new picture; returns where its canvases go. */
function useBeam(
  g: TubeGeometry,
  mini: boolean,
  kind: PhosphorKind,
  display: BenchDisplay,
  brightness: number,
  blur: number,
  quiet: boolean,
) {
  const host = useRef<HTMLDivElement>(null);
  const light = useRef<TubeLight | null>(null);
  const divAcross = (2 * g.glassX) / g.cell;
  const divDown = (2 * g.glassY) / g.cell;
  useLayoutEffect(() => {
    const size = { divAcross, divDown, pixelsPerDiv: mini ? MINI_PIXELS_PER_DIV : FULL_PIXELS_PER_DIV };
    const opened = openTubeLight(host.current!, kind, size, wantsNoMotion);
    light.current = opened;
    return () => opened.close();
  }, [kind, divAcross, divDown, mini]);
  useLayoutEffect(() => {
    const coming = quiet ? 'quiet' : 'fading';
    light.current?.show({ points: display.beam, brightness, blur }, performance.now(), coming);
  }, [kind, divAcross, divDown, mini, display, brightness, blur, quiet]);
  return host;
}

/** While a slug turns nothing is drawn anew for the warm lines: they change when it begins to turn and when it has come to rest. */
function useGhosts(display: BenchDisplay, turnsMade: number | null, quiet: boolean): Ghosts {
  const ghosts = useRef<Ghosts>(NO_GHOSTS);
  const [, redraw] = useReducer<number, void>((n) => n + 1, 0);
  useLayoutEffect(() => {
    if (turnsMade === null) return;
    const become = (next: Ghosts): void => {
      const { paths, shown } = ghosts.current;
      ghosts.current = next;
      if (next.paths !== paths || next.shown !== shown) redraw();
    };
    if (!quiet) become(ghostsAfterChange(ghosts.current, turnsMade));
    // Nobody has asked for another picture meanwhile, else this would have been called off: the points are still those of this one.
    const timer = setTimeout(() => become(ghostsAtRest(ghosts.current, ghostPath(display.beam))), REST_MS);
    return () => clearTimeout(timer);
  }, [display, turnsMade, quiet]);
  return ghosts.current;
}

function wantsNoMotion(): boolean {
  return matchMedia('(prefers-reduced-motion: reduce)').matches;
}
