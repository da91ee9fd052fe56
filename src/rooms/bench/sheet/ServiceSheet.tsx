/** The service sheet: an article of three pages on turned-corner paper. Always open in the full bench, laid over the rest elsewhere. */

import { memo } from 'preact/compat';
import { useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import { roundTo } from '../../../base/rounding.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import type { Rect } from '../../../kit/px.ts';
import { place } from '../../../kit/px.ts';
import { Told } from '../../../kit/Told.tsx';
import { Frame } from '../../../kit/theme/art.tsx';
import type { BenchPort } from '../../../present/ports.ts';
import type { SheetFigures } from '../../../present/sheetFigures.ts';
import type { StageCurve } from '../../../present/stageCurve.ts';
import { workResponses } from '../../../receiver/responses.ts';
import type { Words } from '../../../words/words.ts';
import { LevelsPage } from './LevelsPage.tsx';
import { ProcedurePage } from './ProcedurePage.tsx';
import { SheetFigure } from './SheetFigure.tsx';
import { SlugsPage } from './SlugsPage.tsx';
import '../../../kit/tabs/tabs.css';
import '../../../kit/links/link.css';
import './sheet.css';
import './lists.css';

interface ServiceSheetProps {
  readonly port: BenchPort;
  readonly rect: Rect;
  readonly figures: SheetFigures;
  /** the figure for the stage that is swept, in place of the whole curve's */
  readonly stage: SheetFigures | null;
  readonly turnTo: (response: string) => void;
  /** null: this sheet cannot be put away */
  readonly onClose: (() => void) | null;
}

/** px: a sheet without much height has a lower figure, for the steps need it more */
const LOW = 600;
const FIGURE = 176;
const LOW_FIGURE = 118;

function ServiceSheetBase({ port, rect, figures, stage, turnTo, onClose }: ServiceSheetProps) {
  const { sheet: sheetWords } = useWords();
  const [page, setPage] = useState(0);
  const sheet = useRef<HTMLElement>(null);
  const text = useRef<HTMLElement>(null);
  const { receiver } = port;
  useLayoutEffect(() => {
    if (onClose === null) return;
    const paper = sheet.current;
    const before = document.activeElement;
    paper?.focus();
    return () => {
      const at = document.activeElement;
      if (at === document.body || paper?.contains(at)) queueMicrotask(() => backTo(before));
    };
  }, [onClose !== null]);
  useLayoutEffect(() => text.current?.scrollTo(0, 0), [page]);
  const pages = sheetWords.pages;
  const content = useMemo(() => {
    if (page === 0) return <ProcedurePage port={port} />;
    return page === 1 ? <LevelsPage port={port} figures={figures} /> : <SlugsPage receiver={receiver} />;
  }, [page, port, receiver, figures]);
  const figureHeight = rect.height < LOW ? LOW_FIGURE : FIGURE;
  return (
    <article
      id="service-sheet"
      class={`sheet placed${onClose === null ? '' : ' over'}`}
      style={place(rect)}
      aria-label={sheetWords.kicker}
      ref={sheet}
      tabIndex={-1}
      onKeyDown={(event) => {
        if (event.key !== 'Escape' || onClose === null) return;
        event.stopPropagation();
        onClose();
      }}
    >
      <Frame kind="sheet" />
      <header class="sheet-head">
        <p class="l sheet-kick">{sheetWords.kicker}</p>
        <h2>
          <Told of={receiver}>{receiver.title}</Told>
        </h2>
        <p class="sheet-sub">
          <Told of={receiver}>{receiver.setName}</Told>
        </p>
        <ResponseTabs port={port} shown={figures.response.id} turnTo={turnTo} />
      </header>
      {page === 0 ? (
        <figure class="sheet-figure">
          <SheetFigure receiver={receiver} figures={stage ?? figures} width={rect.width - 38} height={figureHeight} />
          <figcaption class="si">{figureCaption(sheetWords, stage ?? figures)}</figcaption>
        </figure>
      ) : null}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a part that scrolls must be reachable by keyboard */}
      <section class="sheet-text" ref={text} tabIndex={0} aria-label={pages[page]!}>
        {content}
      </section>
      <nav class="pager" aria-label={sheetWords.kicker}>
        {page === 0 ? (
          <span class="pager-gap" />
        ) : (
          <button type="button" class="link" onClick={() => setPage(page - 1)}>
            <span aria-hidden="true">{'\u2039 '}</span>
            {pages[page - 1]}
          </button>
        )}
        <span>{sheetWords.pageOf(page + 1, pages.length)}</span>
        {page === pages.length - 1 ? (
          <span class="pager-gap" />
        ) : (
          <button type="button" class="link" onClick={() => setPage(page + 1)}>
            {pages[page + 1]}
            <span aria-hidden="true">{' \u203a'}</span>
          </button>
        )}
      </nav>
      {onClose === null ? null : (
        <button type="button" class="link sheet-close" onClick={onClose}>
          {sheetWords.close}
        </button>
      )}
    </article>
  );
}

/** The hand goes back to where it was; the button that opened the sheet may have given way to it and be another by now. */
function backTo(before: Element | null): void {
  const there = before instanceof HTMLElement && before.isConnected && before !== document.body;
  const to = there ? before : document.querySelector<HTMLElement>('[data-opens=sheet]');
  to?.focus({ preventScroll: true });
}

function figureCaption(words: Words['sheet'], { response, stage }: SheetFigures): string {
  const { observeAt } = response.setUp;
  if (stage !== null) {
    const { at, peaks, dips, halfWayHz } = asRead(stage, response.setUp.spanHz);
    return words.stageFigure(observeAt, at, peaks, dips, halfWayHz);
  }
  const beats = response.specification.peaks.some(({ oscillator }) => oscillator === true);
  return beats ? words.beatFigure(observeAt) : words.figure(observeAt);
}

/** To half a hundredth of the span or so: nobody reads a place on the tube any nearer. */
function asRead({ at, peaks, dips, halfWayHz }: StageCurve, spanHz: number): StageCurve {
  const stepHz = 10 ** Math.floor(Math.log10(spanHz / 100)) / 2;
  const read = (hz: number): number => roundTo(hz, stepHz);
  const places = (turnings: StageCurve['peaks']) => turnings.map(({ hz, level }) => ({ hz: read(hz), level }));
  return {
    at,
    peaks: places(peaks),
    dips: places(dips),
    halfWayHz: halfWayHz === null ? null : [read(halfWayHz[0]), read(halfWayHz[1])],
  };
}

/** One tab for each curve that the job is about; none where there is only one. */
function ResponseTabs({
  port,
  shown,
  turnTo,
}: {
  readonly port: BenchPort;
  readonly shown: string;
  readonly turnTo: (response: string) => void;
}) {
  const { sheet: sheetWords } = useWords();
  const work = useMemo(() => workResponses(port.receiver, port.scenario), [port]);
  if (work.length < 2) return null;
  return (
    <fieldset class="tabs" aria-label={sheetWords.responses}>
      {work.map(({ id, title }) => (
        <button key={id} type="button" aria-pressed={id === shown} onClick={() => turnTo(id)}>
          {title}
        </button>
      ))}
    </fieldset>
  );
}

export const ServiceSheet = memo(ServiceSheetBase);
