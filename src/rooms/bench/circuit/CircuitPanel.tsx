/** The circuit diagram over the bench, page by page; what is pointed at on it is ringed on the chassis, and the other way round. */
import { useMemo, useState } from 'preact/hooks';
import { printedTray } from '../../../bench/parts.ts';
import { designOf } from '../../../bench/setup.ts';
import { chassisArt } from '../../../kit/chassis/chassisArt.ts';
import { SymbolMark } from '../../../kit/circuit/SymbolMark.tsx';
import { Modal } from '../../../kit/dialogs/Modal.tsx';
import { useWindowSize } from '../../../kit/hooks/useWindowSize.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { singleKeysAct } from '../../../kit/singleKeys.ts';
import { Button, Ink } from '../../../kit/theme/art.tsx';
import { chassisPlaces } from '../../../present/chassisPlaces.ts';
import { chassisSpots } from '../../../present/circuit/chassisSpots.ts';
import { circuitDiagram } from '../../../present/circuit/circuitDiagram.ts';
import { type CircuitPage, circuitPages, isOnPage } from '../../../present/circuit/circuitPages.ts';
import { type CircuitSymbol, LETTERING } from '../../../present/circuit/circuitTypes.ts';
import { partRole } from '../../../present/circuit/partRole.ts';
import { stageCalled } from '../../../present/circuit/stageCalled.ts';
import type { BenchPort } from '../../../present/ports.ts';
import { slugLetters } from '../../../receiver/slugLetters.ts';
import '../../../kit/tabs/tabs.css';
import { FailedFigure, PartButtons } from './PartStrip.tsx';
import { PartTold } from './PartTold.tsx';
import './circuit.css';

/** px: with this much room the chassis stands beside the drawing, else under it */
const BESIDE = 1000;
const CHASSIS = 250;
/** the chassis beside the drawing in a window that has little to spare */
const SMALL_CHASSIS = 200;
const ROOMY = 1240;
/** px round the drawing: the paper's edge, the gap to the chassis */
const AROUND = 76;
/** px over and under the drawing */
const ABOVE = 420;
/** Lettering keeps its 12 px when the drawing shrinks, and no drawing is blown up to a poster. */
const LEAST_SCALE = 12 / LETTERING;
const MOST_SCALE = 1.4;

interface CircuitPanelProps {
  readonly port: BenchPort;
  readonly onClose: () => void;
  /** chooses a slug on the bench */
  readonly onSlug: (slug: string) => void;
}

export function CircuitPanel({ port, onClose, onSlug }: CircuitPanelProps) {
  const words = useWords();
  const { circuit: say, dialogs, parts: partsWords, scene } = words;
  // The values are the sheet's: those of this very set are for the bench to tell.
  const { receiver, deck } = useMemo(() => designOf(port.setup), [port]);
  const diagram = useMemo(
    () =>
      circuitDiagram(receiver, deck, {
        own: say.own,
        coupledWith: say.coupledWith,
        hertz: say.hertz,
      }),
    [receiver, deck, say],
  );
  const tray = useMemo(() => new Map(printedTray(port.setup).map((part) => [part.name, part])), [port]);
  const names = useMemo(() => {
    const letters = slugLetters(receiver);
    const plain = ({ part, kind, name, slug }: CircuitSymbol): string => {
      const called = name ?? '';
      if (kind === 'point') return say.named.point(called);
      if (kind === 'source') return say.named.source(called);
      if (kind === 'biasFeed') return say.named.line(called);
      const held = part === null ? undefined : tray.get(part);
      if (held?.kind === 'diode') return say.named.detector(called);
      const letter = slug === null ? null : (letters.get(slug) ?? null);
      if (held !== undefined) return partsWords.name(held, letter);
      return letter === null ? say.named.fixed(called) : say.named.slugged(called, letter);
    };
    return (symbol: CircuitSymbol): string => withLabel(plain(symbol), symbol.label?.text ?? '');
  }, [tray, receiver, say, partsWords]);
  const wires = useMemo(() => diagram.wires.map((wire) => wire.map(({ x, y }) => `${x},${y}`).join(' ')), [diagram]);
  const reaches = useMemo(
    () => diagram.symbols.flatMap((symbol) => chassisSpots(receiver, symbol).map((spot) => ({ symbol, spot }))),
    [diagram, receiver],
  );
  const window = useWindowSize();
  const side = window.width >= BESIDE && window.width < ROOMY ? SMALL_CHASSIS : CHASSIS;
  const room = Math.min(1320, window.width - 24) - AROUND - (window.width >= BESIDE ? side : 0);
  const pages = useMemo(() => circuitPages(diagram, room, room / LEAST_SCALE), [diagram, room]);
  const [turned, setPage] = useState(0);
  const page = Math.min(turned, pages.length - 1);
  const [pointed, setPointed] = useState<CircuitSymbol | null>(
    () => diagram.symbols.find((s) => s.slug !== null && s.slug === port.state().toolIn) ?? null,
  );
  const [listed, setListed] = useState(false);
  const small = side / receiver.plan.width;
  const art = useMemo(() => chassisArt(scene, receiver, 1), [scene, receiver]);
  const slugs = useMemo(() => chassisPlaces(receiver, 1).slugs, [receiver]);
  /** plan units to 12 px */
  const lettering = 12 / small;
  const spots = pointed === null ? [] : chassisSpots(receiver, pointed);
  const role = pointed === null ? null : partRole(pointed, pointed.part === null ? undefined : tray.get(pointed.part));
  const same = (s: CircuitSymbol) => pointed !== null && isSame(s, pointed);
  const title = (sections: readonly number[]): string =>
    sections
      .map((i) => {
        const { stage } = diagram.sections[i]!;
        if (stage === null) return i === 0 ? say.input : say.detector;
        return stageCalled(receiver, stage);
      })
      .join(', ');
  const titleOf = ({ sections, part }: CircuitPage): string =>
    part === undefined ? title(sections) : say.goesOn(title(sections), part.at, part.of);
  const show = (symbol: CircuitSymbol): void => {
    setPointed(symbol);
    const on = pages.findIndex((p) => isOnPage(p, symbol));
    if (on >= 0) setPage(on);
  };
  const along = useMemo(() => alongTheSignal(diagram.symbols), [diagram]);
  const step = (by: 1 | -1): void => {
    const shown = pages[page];
    const here = (symbol: CircuitSymbol): boolean => shown === undefined || isOnPage(shown, symbol);
    const at = along.findIndex((symbol) => same(symbol) && here(symbol));
    // Whoever has turned to another page goes on from there.
    const first = by === 1 ? along.findIndex(here) : along.findLastIndex(here);
    const to = along[at === -1 ? Math.max(0, first) : (at + by + along.length) % along.length];
    if (to !== undefined) show(to);
  };
  const key = (event: KeyboardEvent): void => {
    if (event.key.toLowerCase() !== 'p' || event.ctrlKey || event.metaKey || event.altKey || !singleKeysAct()) return;
    event.preventDefault();
    step(event.shiftKey ? -1 : 1);
  };
  const held = pointed?.part == null ? null : (tray.get(pointed.part) ?? null);
  const { box } = diagram;
  const top = box.y - 18;
  const height = box.height + 22;
  /** A section that is wider than the room is drawn smaller, and a short circuit larger. */
  const scaleOf = (drawn: number): number =>
    Math.max(LEAST_SCALE, Math.min(MOST_SCALE, room / drawn, (window.height - ABOVE) / height));
  return (
    <Modal title={say.title} onCancel={onClose} onKey={key} wide>
      <div class="circuit">
        <p class="si">{say.hint}</p>
        <div class="tabs">
          {listed
            ? null
            : pages.map((p, i) => (
                <button key={p.fromX} type="button" aria-pressed={i === page} onClick={() => setPage(i)}>
                  {titleOf(p)}
                </button>
              ))}
          <button type="button" aria-pressed={listed} onClick={() => setListed(!listed)}>
            {say.list}
          </button>
        </div>
        <div class="circuit-both">
          {listed ? (
            <div class="circuit-list">
              {diagram.sections.map((section, i) => (
                <section key={section.fromX}>
                  <h3 class="l">{title([i])}</h3>
                  <ul>
                    {diagram.symbols
                      .filter((s) => s.section === i && s.label !== null)
                      .map((s) => (
                        <li key={s.key}>{names(s)}</li>
                      ))}
                  </ul>
                </section>
              ))}
            </div>
          ) : (
            <div class="circuit-pages">
              {pages.map((p, i) => (
                // biome-ignore lint/a11y/useSemanticElements: a drawing whose parts are named one by one
                <svg
                  key={p.fromX}
                  class={i === page ? 'circuit-page' : 'circuit-page other'}
                  role="group"
                  aria-label={`${say.diagram}: ${titleOf(p)}`}
                  viewBox={`${p.fromX} ${top} ${p.toX - p.fromX} ${height}`}
                  width={(p.toX - p.fromX) * scaleOf(p.toX - p.fromX)}
                  height={height * scaleOf(p.toX - p.fromX)}
                >
                  {wires.map((points) => (
                    <polyline key={points} class="wire" points={points} />
                  ))}
                  {diagram.dots.map(({ x, y }) => (
                    <circle key={`${x},${y}`} class="dot" cx={x} cy={y} r={2.8} />
                  ))}
                  {diagram.couplings.map(({ element, at }) => (
                    <path key={element} class="coupling" d={`M${at.x - 1} ${at.y - 24}v48m4 0v-48`} />
                  ))}
                  {diagram.symbols
                    .filter((s) => isOnPage(p, s))
                    .map((s) => (
                      <SymbolMark key={s.key} symbol={s} name={names(s)} pointed={same(s)} onPoint={setPointed} />
                    ))}
                </svg>
              ))}
            </div>
          )}
          <div class="circuit-side">
            <div class="circuit-chassis" style={{ width: `${side}px` }}>
              <Ink
                svg={art.svg}
                width={side}
                height={small * receiver.plan.height}
                viewBox={`0 0 ${receiver.plan.width} ${receiver.plan.height}`}
                label={say.chassis}
              />
              <svg
                aria-hidden="true"
                class="circuit-rings"
                viewBox={`0 0 ${receiver.plan.width} ${receiver.plan.height}`}
                width={side}
                height={small * receiver.plan.height}
              >
                {slugs.map(({ adjuster, letter, disc }) => (
                  <g key={adjuster.id} class="circuit-letter" transform={`translate(${disc.x} ${disc.y})`}>
                    <circle r={lettering * 0.72} />
                    <text font-size={lettering} dy=".35em" text-anchor="middle">
                      {letter}
                    </text>
                  </g>
                ))}
                {spots.map(({ x, y }) => (
                  <circle key={`${x},${y}`} class="ring" cx={x} cy={y} r={26} />
                ))}
                {reaches.map(({ symbol, spot }) => (
                  // biome-ignore lint/a11y/noStaticElementInteractions: keys reach the same part in the drawing
                  <circle
                    key={symbol.key}
                    class="reach"
                    data-spot={symbol.name}
                    cx={spot.x}
                    cy={spot.y}
                    r={18}
                    onPointerEnter={() => show(symbol)}
                    onClick={() => show(symbol)}
                  />
                ))}
              </svg>
            </div>
            <p class="circuit-said" role="status">
              {pointed === null ? '' : <b>{names(pointed)}</b>} {/* A lid lies over several places, and under none. */}
              {pointed === null || pointed.kind === 'shield'
                ? ''
                : spots.length === 0
                  ? say.nowhere
                  : say.at(spots.map((s) => s.name).join(', '))}
            </p>
          </div>
        </div>
        <div class="circuit-told">
          <FailedFigure port={port} part={held?.name ?? null} />
          <div class="circuit-words">
            {role === null ? null : <PartTold role={role} slug={pointed?.slug ?? null} receiver={receiver} />}
            <PartButtons
              port={port}
              part={held}
              letter={pointed?.slug == null ? null : (slugLetters(receiver).get(pointed.slug) ?? null)}
              onSlug={() => {
                onClose();
                onSlug(pointed!.slug!);
              }}
              onNext={() => step(1)}
            />
          </div>
        </div>
        <div class="modal-buttons">
          <Button primary onClick={onClose}>
            {dialogs.close}
          </Button>
          <Button onClick={() => print()}>{say.print}</Button>
        </div>
      </div>
    </Modal>
  );
}

/** Parts that have a name, as the signal meets them: section by section, from left to right, from the top down; each once. */
function alongTheSignal(symbols: readonly CircuitSymbol[]): readonly CircuitSymbol[] {
  const named = symbols.filter(({ name }) => name !== null);
  const once = named.filter((one, i) => named.findIndex((other) => isSame(one, other)) === i);
  return once.sort((a, b) => a.section - b.section || a.at.x - b.at.x || a.at.y - b.at.y);
}

/** A part may have more than one symbol; a point may be called as a part is. */
const isSame = (a: CircuitSymbol, b: CircuitSymbol): boolean =>
  a.name === b.name && a.part === b.part && (a.kind === 'point') === (b.kind === 'point');

/** What is read beside a symbol stands in its name: `V1 (G1)` and not `G1` alone. */
function withLabel(name: string, label: string): string {
  const [long, short] = [name, label].map((text) => text.toLowerCase()) as [string, string];
  if (long.includes(short)) return name;
  return short.includes(long) ? label : `${label}, ${name}`;
}
