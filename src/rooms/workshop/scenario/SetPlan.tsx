/**
 * The set's chassis from above: every slug with its letter and, where it is off, a slip with the turns; parts that have failed bear their card's number. A slug is
 * turned by dragging round its hole, or by the arrow keys.
 */
import { useMemo, useRef } from 'preact/hooks';
import { chassisArt, lettered } from '../../../kit/chassis/chassisArt.ts';
import { EIGHTH, FINE, ringDegrees, turnsBetween } from '../../../kit/chassis/ringTurns.ts';
import { holeHead, holeRim } from '../../../kit/chassis/slugHole.ts';
import { useSize } from '../../../kit/hooks/useSize.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { Ink } from '../../../kit/theme/art.tsx';
import { C, r1 } from '../../../kit/theme/ink.ts';
import { chassisPlaces, type SlugPlace } from '../../../present/chassisPlaces.ts';
import { faultMarks } from '../../../present/faultMarks.ts';
import { faultSpots } from '../../../present/faultSpots.ts';
import { slugFlags } from '../../../present/slugFlags.ts';
import type { FaultySet } from '../../../receiver/faults/faultPlaces.ts';
import type { Draft } from '../../../workshop/draft.ts';
import type { StoodSlug } from './stoodSlugs.ts';
import './setPlan.css';
import '../../../kit/chassis/letterDisc.css';

interface SetPlanProps {
  readonly set: FaultySet;
  readonly faults: Draft['faults'];
  readonly slugs: readonly StoodSlug[];
  readonly chosen: string;
  readonly onChoose: (slug: string) => void;
  readonly onTurns: (slug: string, turns: number) => void;
  readonly onLetGo: () => void;
}

/** CSS px to a plan unit at most: a small chassis need not fill a wide sheet. */
const MOST_SCALE = 1.15;
/** px, the side of a fault's number as the style sheet has it */
const MARK = 20;
/** px: nearer to the middle of the hole a hand has no direction */
const LEAST_ARM = 5;
const KEYS: Readonly<Record<string, number>> = { ArrowUp: 1, ArrowDown: -1, PageUp: 8, PageDown: -8 };

export function SetPlan({ set, faults, slugs, chosen, onChoose, onTurns, onLetGo }: SetPlanProps) {
  const words = useWords();
  const { workshop: say, format, scene } = words;
  const { receiver } = set;
  const { plan } = receiver;
  const place = useRef<HTMLDivElement>(null);
  const elements = useRef(new Map<string, HTMLElement>()).current;
  const { width: room } = useSize(place);
  const scale = Math.min(MOST_SCALE, room / plan.width);
  const places = useMemo(() => chassisPlaces(receiver, scale || 1), [receiver, scale]);
  const art = useMemo(() => {
    // Before the first measure there is nothing to draw for.
    if (scale === 0) return '';
    const { svg, lettering } = chassisArt(scene, receiver, scale);
    return svg + lettering.map(lettered).join('');
  }, [scene, receiver, scale]);
  const marks = useMemo(
    () => (room === 0 ? [] : faultMarks(receiver, places, faultSpots(set, places, faults), MARK / scale)),
    [set, places, faults],
  );
  const flagText = (turns: number): string => say.offBy(format.turns(Math.abs(turns)), turns > 0);
  const off = slugs
    .filter(({ turns }) => Math.abs(turns) >= 1 / 64)
    .map(({ id, turns }) => ({ slug: id, text: flagText(turns) }));
  // Where a slip has room goes by how long its text is, and not by what it says: one that is dragged seldom moves.
  const lengths = off.map(({ slug, text }) => `${slug} ${text.length}`).join();
  const flags = useMemo(
    () =>
      slugFlags(
        receiver,
        places,
        off,
        marks.map(({ mark }) => mark),
      ),
    [receiver, places, lengths, marks],
  );
  const choose = (slug: string): void => {
    onChoose(slug);
    elements.get(slug)?.focus({ preventScroll: true });
  };
  const key = (event: KeyboardEvent, at: number): void => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const { id, turns } = slugs[at]!;
    const eighths = KEYS[event.key];
    if (eighths !== undefined) onTurns(id, turns + eighths * (event.shiftKey ? FINE : EIGHTH));
    else if (event.key === 'ArrowRight' || event.key === 'ArrowLeft')
      choose(slugs[(at + (event.key === 'ArrowRight' ? 1 : slugs.length - 1)) % slugs.length]!.id);
    else if (event.key === 'Delete' || event.key === 'Backspace') onTurns(id, 0);
    else return;
    event.preventDefault();
  };
  return (
    <div class="set-plan" ref={place}>
      {room === 0 ? null : (
        // biome-ignore lint/a11y/useSemanticElements: a drawing whose slugs are turned one by one
        <div
          class="set-chassis"
          role="group"
          aria-label={say.planOf(receiver.setName)}
          style={{ width: `${plan.width * scale}px`, height: `${plan.height * scale}px` }}
        >
          <Ink
            svg={art}
            width={plan.width * scale}
            height={plan.height * scale}
            viewBox={`0 0 ${plan.width} ${plan.height}`}
          />
          {marks.map(({ at, name, mark }) => (
            <span
              key={`${at} ${name}`}
              class="fault-mark"
              title={say.faultAt(at + 1, say.faults[faults[at]!.kind], name)}
              style={{ left: `${mark.x * scale}px`, top: `${mark.y * scale}px` }}
            >
              <span class="unseen">{say.faultAt(at + 1, say.faults[faults[at]!.kind], name)}</span>
              <span aria-hidden="true">{at + 1}</span>
            </span>
          ))}
          {places.slugs.map((slug, i) => {
            const { id } = slug.adjuster;
            const stood = slugs[i]!;
            return (
              <KeptSlug
                key={id}
                {...{ slug, scale, stood, onTurns, onLetGo }}
                textSize={places.textSize}
                chosen={id === chosen}
                onChoose={() => choose(id)}
                onKey={(event) => key(event, i)}
                elementRef={(element) => {
                  if (element === null) elements.delete(id);
                  else elements.set(id, element);
                }}
              />
            );
          })}
          {off.map(({ slug, text }) => {
            const box = flags.get(slug);
            return box === undefined ? null : (
              <span
                key={slug}
                class={slug === chosen ? 'slug-flag chosen' : 'slug-flag'}
                aria-hidden="true"
                style={{
                  left: `${box.x * scale}px`,
                  top: `${box.y * scale}px`,
                  width: `${box.width * scale}px`,
                  height: `${box.height * scale}px`,
                }}
              >
                {text}
              </span>
            );
          })}
        </div>
      )}
    </div>
  );
}

interface PlanSlugProps {
  readonly slug: SlugPlace;
  readonly stood: StoodSlug;
  readonly scale: number;
  readonly textSize: number;
  readonly chosen: boolean;
  readonly onChoose: () => void;
  readonly onKey: (event: KeyboardEvent) => void;
  readonly onTurns: (slug: string, turns: number) => void;
  readonly onLetGo: () => void;
  readonly elementRef: (element: HTMLElement | null) => void;
}

interface Grip {
  readonly x: number;
  readonly y: number;
  degrees: number | null;
  /** what the hand has asked for, finer than what is written down */
  turns: number;
}

/** Drawn anew only where something of this slug has changed: while one is dragged the others stand. */
function KeptSlug(props: PlanSlugProps) {
  const { slug, scale, stood, textSize, chosen } = props;
  const { id, turns, least, most } = stood;
  const now = useRef(props);
  now.current = props;
  return useMemo(
    () => (
      <PlanSlug
        {...{ slug, scale, stood, textSize, chosen }}
        onChoose={() => now.current.onChoose()}
        onKey={(event) => now.current.onKey(event)}
        onTurns={(...to) => now.current.onTurns(...to)}
        onLetGo={() => now.current.onLetGo()}
        elementRef={(element) => now.current.elementRef(element)}
      />
    ),
    [slug, scale, id, turns, least, most, textSize, chosen],
  );
}

function PlanSlug(props: PlanSlugProps) {
  const { slug, stood, scale, textSize, chosen, onChoose, onKey, onTurns, onLetGo, elementRef } = props;
  const { workshop: say, format } = useWords();
  const { adjuster, letter, hole, holeRadius: r, touch, disc } = slug;
  const { id, turns, least, most } = stood;
  const way = Math.abs(turns) < 1 / 64 ? 'none' : turns > 0 ? 'in' : 'out';
  const grip = useRef<Grip | null>(null);
  const rim = useMemo(() => holeRim(r, adjuster.plan.hole === 'bottom'), [r, adjuster]);
  const head = useMemo(() => holeHead(r, adjuster.head), [r, adjuster]);
  const size = 20 * scale;
  return (
    <>
      <div
        class={chosen ? 'plan-slug chosen' : 'plan-slug'}
        role="spinbutton"
        // One place to stop at for all slugs: the next stop is the row of the chosen one.
        tabIndex={chosen ? 0 : -1}
        ref={elementRef}
        data-slug={id}
        aria-label={say.slug(letter, adjuster.label)}
        aria-valuemin={least}
        aria-valuemax={most}
        aria-valuenow={r1(turns * 100) / 100}
        aria-valuetext={say.turned(format.turnsLong(turns), way)}
        style={{
          left: `${touch.x * scale}px`,
          top: `${touch.y * scale}px`,
          width: `${touch.width * scale}px`,
          height: `${touch.height * scale}px`,
        }}
        onFocus={onChoose}
        onKeyDown={onKey}
        onKeyUp={onLetGo}
        onPointerDown={(event) => {
          if (event.button !== 0 || !event.isPrimary) return;
          event.preventDefault();
          onChoose();
          const box = event.currentTarget.getBoundingClientRect();
          event.currentTarget.setPointerCapture(event.pointerId);
          const [x, y] = [box.left + (hole.x - touch.x) * scale, box.top + (hole.y - touch.y) * scale];
          grip.current = { x, y, degrees: directionOf(event, x, y), turns };
        }}
        onPointerMove={(event) => {
          const held = grip.current;
          if (held === null) return;
          const to = directionOf(event, held.x, held.y);
          if (to === null) return;
          const by = held.degrees === null ? 0 : turnsBetween(held.degrees, to);
          held.degrees = to;
          held.turns = Math.min(most, Math.max(least, held.turns + by));
          onTurns(id, held.turns);
        }}
        onLostPointerCapture={() => {
          grip.current = null;
          onLetGo();
        }}
      >
        <svg
          class="plan-hole"
          style={{ left: `${(hole.x - touch.x) * scale}px`, top: `${(hole.y - touch.y) * scale}px` }}
          width="1"
          height="1"
          aria-hidden="true"
          focusable="false"
        >
          <g transform={`scale(${r1(scale * 100) / 100})`}>
            {chosen ? <circle r={r + 6} fill={C.sheet} stroke={C.rust} stroke-width="3.2" /> : null}
            <g dangerouslySetInnerHTML={{ __html: rim }} />
            <g transform={`rotate(${r1(turns * 360)})`} dangerouslySetInnerHTML={{ __html: head }} />
          </g>
        </svg>
      </div>
      <span
        class={chosen ? 'letter-disc chosen' : 'letter-disc'}
        aria-hidden="true"
        onClick={onChoose}
        style={{
          left: `${disc.x * scale - size / 2}px`,
          top: `${disc.y * scale - size / 2}px`,
          width: `${size}px`,
          height: `${size}px`,
          fontSize: `${(13 / 12) * textSize * scale}px`,
        }}
      >
        {letter}
      </span>
    </>
  );
}

function directionOf(event: PointerEvent, x: number, y: number): number | null {
  const [dx, dy] = [event.clientX - x, event.clientY - y];
  return Math.hypot(dx, dy) < LEAST_ARM ? null : ringDegrees(dx, dy);
}
