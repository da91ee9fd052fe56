/**
 * The magnified slug: ring, core and tool from above, section with depth and thread to spare, readout, step buttons.
 * While a hand turns, nothing here is rendered anew: small canvases are painted and one text changes, that is all.
 */

import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { BenchState } from '../../../bench/benchState.ts';
import { EIGHTH, FINE } from '../../../kit/chassis/ringTurns.ts';
import { useKeyDown } from '../../../kit/hooks/useKeyDown.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { createRest } from '../../../kit/rest.ts';
import { singleKeysAct } from '../../../kit/singleKeys.ts';
import { Button, Frac } from '../../../kit/theme/art.tsx';
import type { BenchPort } from '../../../present/ports.ts';
import type { Adjuster } from '../../../receiver/receiver.ts';
import { slugLetters } from '../../../receiver/slugLetters.ts';
import type { Words } from '../../../words/words.ts';
import type { BenchLayout } from '../layout.ts';
import { isWriting } from '../pageKeys.ts';
import { type SlugNote, slugNote, turnBy } from './handTurn.ts';
import { insetPlaces } from './insetPlaces.ts';
import { placed, SceneHead } from './SceneHead.tsx';
import { SlugRing } from './SlugRing.tsx';
import { SlugSection } from './SlugSection.tsx';
import { coreRadius } from './slugArt.ts';
import { useStart } from './start.ts';
import { useBench, usePaint } from './useBench.ts';
import './scene.css';
import './inset.css';

export interface SlugInsetProps {
  readonly port: BenchPort;
  readonly layout: BenchLayout;
  readonly selected: string | null;
}

export function SlugInset({ port, layout, selected }: SlugInsetProps) {
  const { scene: sceneWords } = useWords();
  const adjuster = port.receiver.adjusters.find((a) => a.id === selected);
  const letters = slugLetters(port.receiver);
  const all = [...letters.values()];
  return (
    <section
      class={`slug-inset ${layout.form}`}
      style={placed(layout.slugInset)}
      aria-label={adjuster ? sceneWords.slugTitle(letters.get(adjuster.id)!) : sceneWords.noSlug}
    >
      {adjuster ? (
        <Magnified port={port} layout={layout} adjuster={adjuster} letter={letters.get(adjuster.id)!} />
      ) : (
        <NoSlug layout={layout} words={sceneWords.chooseSlug(all[0]!, all[all.length - 1]!)} />
      )}
    </section>
  );
}

/** In a smaller ring the words are set smaller. */
const WORDS_FIT_PX = 62;

function NoSlug({ layout, words }: { readonly layout: BenchLayout; readonly words: string }) {
  const { scene: sceneWords } = useWords();
  const { ring, head, narrow } = insetPlaces(layout.form, layout.slugInset);
  return (
    <>
      <div class="inset-part" style={placed(head)}>
        <SceneHead no={6} hideTitle={narrow}>
          {sceneWords.noSlug}
        </SceneHead>
      </div>
      <p
        class={`no-slug s${ring.r < WORDS_FIT_PX ? ' small' : ''}`}
        style={placed({ x: ring.x - ring.r, y: ring.y - ring.r, width: 2 * ring.r, height: 2 * ring.r })}
      >
        <span>{words}</span>
      </p>
    </>
  );
}

interface MagnifiedProps {
  readonly port: BenchPort;
  readonly layout: BenchLayout;
  readonly adjuster: Adjuster;
  readonly letter: string;
}

function Magnified({ port, layout, adjuster, letter }: MagnifiedProps) {
  const { scene: sceneWords } = useWords();
  const places = useMemo(() => insetPlaces(layout.form, layout.slugInset), [layout]);
  const start = useStart(port)[adjuster.id]!.screwTurns;
  const [fine, setFine] = useState(false);
  const step = fine ? FINE : EIGHTH;
  const note = useBench(port, (state) => slugNote(state, adjuster));
  const tool = useBench(port, (state) => state.tool);
  const toolIn = useBench(port, (state) => state.toolIn === adjuster.id);
  const untouched = useBench(port, (state) => state.slugs[adjuster.id]!.screwTurns === start);
  const stepWords = fine ? '1/32' : '1/8';
  useBracketKeys(port, adjuster.id, fine);
  const centre = Math.max(22, Math.min(26, coreRadius(places.ring.r)));
  return (
    <>
      <div class="inset-part" style={placed(places.head)}>
        <SceneHead no={6} hideTitle={places.narrow}>
          {sceneWords.slugTitle(letter)}
        </SceneHead>
      </div>
      <Reading port={port} adjuster={adjuster} start={start} places={places} />
      {places.section === null ? null : (
        <SlugSection port={port} adjuster={adjuster} rect={places.section} tool={tool} toolIn={toolIn} />
      )}
      <SlugRing
        port={port}
        adjuster={adjuster}
        start={start}
        ring={places.ring}
        tool={tool}
        toolIn={toolIn}
        step={step}
      >
        {tool === null ? null : (
          <>
            <button
              type="button"
              class="tool-centre"
              style={placed({
                x: places.ring.r - centre,
                y: places.ring.r - centre,
                width: 2 * centre,
                height: 2 * centre,
              })}
              aria-label={toolIn ? sceneWords.liftOut : sceneWords.setIn}
              onClick={() => port.act({ type: 'toolPlaced', slug: toolIn ? null : adjuster.id })}
            />
            <span class="scene-flag centre-flag" aria-hidden="true">
              {toolIn ? sceneWords.liftOut : sceneWords.setIn}
            </span>
          </>
        )}
      </SlugRing>
      <Note note={tool === null ? 'empty' : note} untouched={untouched} adjuster={adjuster} ring={places.ring} />
      <div class="inset-part step" style={placed(places.fine)}>
        <Button
          onClick={() => setFine(!fine)}
          pressed={fine}
          label={sceneWords.fineSpoken}
          class={fine ? 'chosen' : ''}
        >
          {sceneWords.fine}
        </Button>
      </div>
      <div class="inset-part step" data-turns={adjuster.id} data-way="out" style={placed(places.out)}>
        <Button onClick={() => turnBy(port, adjuster.id, -step)} label={sceneWords.outSpoken(stepWords, letter)}>
          <span>
            <Frac>{sceneWords.out(stepWords)}</Frac>
          </span>
        </Button>
      </div>
      <div class="inset-part step" data-turns={adjuster.id} data-way="in" style={placed(places.in)}>
        <Button onClick={() => turnBy(port, adjuster.id, step)} label={sceneWords.inSpoken(stepWords, letter)}>
          <span>
            <Frac>{sceneWords.in(stepWords)}</Frac>
          </span>
        </Button>
      </div>
    </>
  );
}

const REST_MS = 350;

function Reading({
  port,
  adjuster,
  start,
  places,
}: {
  readonly port: BenchPort;
  readonly adjuster: Adjuster;
  readonly start: number;
  readonly places: ReturnType<typeof insetPlaces>;
}) {
  const { turned, turnedShort } = useWords().scene;
  const ref = useRef<HTMLParagraphElement>(null);
  const wordsOf = (state: BenchState): string => {
    const turns = state.slugs[adjuster.id]!.screwTurns - start;
    return places.narrow ? turnedShort(turns) : turned(turns);
  };
  // The same node all along: a new one at each change would have the browser lay the page's layers anew.
  const words = useRef<Text | null>(null);
  const again = [adjuster.id, start, places, turned, turnedShort];
  useLayoutEffect(() => {
    words.current = document.createTextNode('');
    ref.current?.replaceChildren(words.current);
  }, []);
  usePaint(
    port,
    (state) => {
      const text = wordsOf(state);
      if (words.current !== null && words.current.data !== text) words.current.data = text;
    },
    again,
  );
  // The whole words, where there was no room for them, can wait for the hand to rest.
  useEffect(() => {
    const entitle = (): void => {
      if (ref.current !== null) ref.current.title = wordsOf(port.state());
    };
    const rest = createRest(REST_MS, entitle);
    entitle();
    const stop = port.subscribe(rest.stir);
    return () => {
      stop();
      rest.stop();
    };
  }, [port, ...again]);
  return (
    <p class={`inset-part short reading${places.narrow ? ' narrow' : ''}`} style={placed(places.reading)} ref={ref} />
  );
}

const NOTES: Readonly<Record<Exclude<SlugNote, null> | 'empty', (say: Words['scene'], adjuster: Adjuster) => string>> =
  {
    cracked: (say) => say.cracked,
    slips: (say, adjuster) => say.slips(adjuster.head),
    outerStop: (say) => say.atStop.out,
    innerStop: (say) => say.atStop.in,
    steelIn: (say) => say.steelIn,
    empty: (say) => say.handEmpty,
  };

function Note({
  note,
  untouched,
  adjuster,
  ring,
}: {
  readonly note: SlugNote | 'empty';
  /** nobody has turned a slug here yet, so what a turn does is written beside it */
  readonly untouched: boolean;
  readonly adjuster: Adjuster;
  readonly ring: { readonly x: number; readonly y: number; readonly r: number };
}) {
  const { scene } = useWords();
  return (
    <p
      class="inset-note"
      role="status"
      style={{ left: `${ring.x}px`, top: `${ring.y + ring.r + 6}px`, maxWidth: `${2 * ring.r + 12}px` }}
    >
      {note === null ? (
        untouched && <span class="quiet">{scene.coreIn(adjuster.twoPeaks !== undefined)}</span>
      ) : (
        <span class={note === 'empty' ? 'plain' : note === 'cracked' || note === 'slips' ? 'grave' : 'plain'}>
          {NOTES[note](scene, adjuster)}
        </span>
      )}
    </p>
  );
}

/** `[` turns out, `]` turns in, wherever the focus is; shift (which makes braces of them) or the fine switch: 1/32. */
function useBracketKeys(port: BenchPort, slug: string, fine: boolean): void {
  useKeyDown((e) => {
    if (e.defaultPrevented || e.ctrlKey || e.metaKey || isWriting(e.target) || !singleKeysAct()) return;
    const way = e.key === '[' || e.key === '{' ? -1 : e.key === ']' || e.key === '}' ? 1 : 0;
    // AltGr makes brackets on many keyboards and counts as alt; plain alt belongs to the browser.
    if (way === 0 || (e.altKey && !e.getModifierState('AltGraph'))) return;
    e.preventDefault();
    const small = fine || e.shiftKey || e.key === '{' || e.key === '}';
    turnBy(port, slug, way * (small ? FINE : EIGHTH));
  });
}
