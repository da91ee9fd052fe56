/** The bench: composes header, sheet, tube, instruments, chassis and leads for the size of the window, and what is said over them. */

import type { RefObject } from 'preact';
import { useCallback, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { CurveTones } from '../../describe/curveTones.ts';
import { useFinger } from '../../kit/hooks/useFinger.ts';
import { useKeyDown } from '../../kit/hooks/useKeyDown.ts';
import { usePageTitle } from '../../kit/hooks/usePageTitle.ts';
import { useWindowSize } from '../../kit/hooks/useWindowSize.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { InTurn } from '../../kit/InTurn.tsx';
import { Button } from '../../kit/theme/art.tsx';
import { papersHash } from '../../present/papersAddress.ts';
import type { BenchPort } from '../../present/ports.ts';
import type { ShownPort } from '../../present/shownPort.ts';
import { aidsWithin } from '../../session/session.ts';
import { Announcer } from './Announcer.tsx';
import { AtHand, type AtHandChoice, type BenchSounds } from './AtHand.tsx';
import { BenchHeader } from './BenchHeader.tsx';
import { BenchMenu, type MenuChoice } from './BenchMenu.tsx';
import { BenchScene } from './BenchScene.tsx';
import { BenchTube } from './BenchTube.tsx';
import { goToPipTable, stepToArea } from './benchAreas.ts';
import { CircuitPlace } from './circuit/CircuitPlace.tsx';
import { Cautions, type Helper } from './dialogs/Briefing.tsx';
import { FindingCard } from './dialogs/FindingCard.tsx';
import { PartsTray } from './dialogs/PartsTray.tsx';
import { StageDialogs } from './dialogs/StageDialogs.tsx';
import type { LearnerField } from './dialogs/stages.tsx';
import { Clear, Help, Hints, type SingleKeys } from './dialogs/stages.tsx';
import { Guide } from './guide/Guide.tsx';
import { Shown } from './guide/Shown.tsx';
import { StepLight } from './guide/StepLight.tsx';
import { Heard } from './Heard.tsx';
import { Instruments } from './Instruments.tsx';
import { benchLayout } from './layout.ts';
import { isFreeKey, isPageKey } from './pageKeys.ts';
import { StandsNotice } from './StandsNotice.tsx';
import { ServiceSheet } from './sheet/ServiceSheet.tsx';
import { SheetTab, StepStrip } from './sheet/StepStrip.tsx';
import { useSheetFigures } from './sheet/useSheetFigures.ts';
import { Toast } from './Toast.tsx';
import { useSlugPart } from './useSlugPart.ts';
import './bench.css';
import './shelf.css';
import { size } from '../../kit/px.ts';

export interface BenchPageProps {
  readonly port: BenchPort;
  /** the way to the course; the bench is suspended first */
  readonly onHome?: () => void;
  readonly learner: LearnerField;
  /** with the guide through a first bench, until it is skipped */
  readonly guided?: boolean;
  /** what the technician does here, until somebody takes over */
  readonly shown?: ShownPort | null;
  /** the way to the technician at this job; the bench is suspended first */
  readonly onWatch?: (() => void) | null;
  readonly onGuideSkipped?: () => void;
  /** a helper who sets the bench up, for learners who have shown that they can do it themselves */
  readonly helper?: Helper | null;
  /** the sounds of the bench: off until somebody turns them on */
  readonly sound?: BenchSounds;
  /** the page's single-letter keys, which can be switched off */
  readonly singleKeys?: SingleKeys;
  /** plays curves one after the other, by pitch */
  readonly playCurves?: (curves: readonly CurveTones[]) => void;
}

/**
 * The parts of the bench come one after the other, the heaviest in tasks of their own: first what is said over it, so that the briefing can be read while the bench is drawn
 * under it. The guide looks for others on the bench, so it comes when they stand.
 */
const TURNS = { talk: 1, tube: 2, instruments: 3, scene: 4, rest: 5, guide: 6 } as const;

type Open = 'none' | 'menu' | 'cautions' | AtHandChoice | Exclude<MenuChoice, 'suspend'>;

export function BenchPage({
  port,
  learner,
  onHome,
  sound,
  singleKeys,
  playCurves,
  guided = false,
  onGuideSkipped,
  shown = null,
  onWatch = null,
  helper = null,
}: BenchPageProps) {
  const { width, height } = useWindowSize();
  const main = useRef<HTMLElement>(null);
  useLayoutEffect(() => main.current?.setAttribute('aria-busy', 'true'), []);
  const { shell } = useWords();
  usePageTitle(port.scenario.title, shell.bench);
  const finger = useFinger();
  const layout = useMemo(
    () => benchLayout(width, height, finger, shown !== null),
    [width, height, finger, shown !== null],
  );
  const { figures, paper, stage, turnTo } = useSheetFigures(port);
  const aids = useMemo(() => aidsWithin(port.scenario), [port]);
  const [waxOn, setWaxOn] = useState(true);
  const [guide, setGuide] = useState(guided);
  // Both stand in the place of the sheet, which then folds.
  const beside = guide || shown !== null;
  const [sheetOpen, setSheetOpen] = useState(false);
  const [open, setOpen] = useState<Open>('none');
  const [slug, chooseSlug] = useState<string | null>(() => port.state().toolIn);
  const part = useSlugPart(port, slug);
  const close = useCallback(() => setOpen('none'), []);
  const toggleSheet = useCallback(() => setSheetOpen((old) => !old), []);
  const toggleMenu = useCallback(() => setOpen((old) => (old === 'menu' ? 'none' : 'menu')), []);
  const fell = useCallback(() => sound?.answer('missed'), [sound]);
  const showCautions = useCallback(() => setOpen('cautions'), []);
  const wax = useMemo(() => ({ allowed: aids.toleranceMarks, on: waxOn, set: setWaxOn }), [aids, waxOn]);
  const leave = useMemo(() => (onHome === undefined ? null : () => leaveBench(port, onHome)), [port, onHome]);
  usePageKeys(
    toggleSheet,
    () => setOpen('circuit'),
    () => setOpen('help'),
    beside ? null : (by) => void stepToArea(document.activeElement, by, port.session().current),
  );

  if (layout === null) return <TooNarrow onHome={onHome} />;
  const choose = (choice: MenuChoice): void => {
    if (choice === 'suspend') port.suspend();
    setOpen(choice === 'suspend' ? 'none' : choice);
  };
  const { form } = layout;
  const atHand = <AtHand port={port} rect={layout.atHand} onChoose={setOpen} sound={sound ?? null} />;
  const sheetFolds = layout.sheetFolds || beside;
  const skipGuide = (): void => {
    setGuide(false);
    onGuideSkipped?.();
  };
  return (
    <main ref={main} class={`room-bench bench ${form}`} style={size(layout.page.width, layout.page.height)}>
      <BenchHeader port={port} layout={layout} menu={open === 'menu'} onMenu={toggleMenu} onHome={leave}>
        {layout.atHand === null ? atHand : null}
      </BenchHeader>
      {layout.atHand === null ? null : atHand}
      {layout.sheetTab === null ? null : (
        <SheetTab port={port} rect={layout.sheetTab} open={sheetOpen} onToggle={toggleSheet} />
      )}
      <InTurn after={TURNS.guide}>
        {guide && !(sheetOpen && layout.strip === null) ? (
          <Guide
            port={port}
            rect={layout.strip ?? layout.sheet}
            figures={paper}
            line={layout.strip !== null}
            onSkip={skipGuide}
            onSheet={toggleSheet}
          />
        ) : null}
        {shown !== null && !(sheetOpen && layout.strip === null) ? (
          <Shown
            port={port}
            shown={shown}
            rect={layout.strip ?? layout.sheet}
            line={layout.strip !== null}
            onSheet={toggleSheet}
          />
        ) : null}
      </InTurn>
      {layout.strip === null || beside ? null : (
        <StepStrip
          port={port}
          rect={layout.strip}
          figures={stage ?? paper}
          roomy={form === 'upright'}
          open={sheetOpen}
          onOpen={toggleSheet}
        />
      )}
      {sheetFolds && !sheetOpen ? null : (
        <ServiceSheet
          port={port}
          rect={layout.sheet}
          figures={paper}
          stage={stage}
          turnTo={turnTo}
          onClose={sheetFolds ? toggleSheet : null}
        />
      )}
      <InTurn after={TURNS.talk}>
        <StageDialogs port={port} learner={learner} helper={helper} onLeave={leave} />
      </InTurn>
      <InTurn after={TURNS.tube}>
        <BenchTube port={port} layout={layout} figures={figures} wax={wax.allowed && wax.on} part={part} />
      </InTurn>
      <InTurn after={TURNS.instruments}>
        <Instruments port={port} layout={layout} wax={wax} onCautions={showCautions} slug={slug} part={part} />
      </InTurn>
      <InTurn after={TURNS.scene}>
        <BenchScene port={port} layout={layout} onMiss={fell} selected={slug} onSelect={chooseSlug} />
      </InTurn>
      <InTurn after={TURNS.rest}>
        <Standing bench={main} />
        <BenchMenu
          layout={layout}
          open={open === 'menu'}
          onToggle={toggleMenu}
          onChoose={choose}
          onWatch={onWatch === null ? null : () => leaveBench(port, onWatch)}
          papers={papersHash(port.scenario.id)}
        />
        {open === 'help' ? <Help keys={singleKeys ?? null} onClose={close} /> : null}
        {open === 'hints' ? <Hints port={port} onClose={close} /> : null}
        {open === 'circuit' ? <CircuitPlace port={port} onClose={close} onSlug={chooseSlug} /> : null}
        {open === 'parts' ? <PartsTray port={port} onClose={close} /> : null}
        {open === 'cautions' ? <Cautions port={port} onClose={close} /> : null}
        {open === 'clear' ? <Clear port={port} onClose={close} /> : null}
        {shown === null ? <FindingCard port={port} layout={layout} guided={guide} /> : null}
        {beside || port.scenario.sealed || !aids.hints ? null : <StepLight port={port} />}
        {beside || port.scenario.sealed ? null : <StandsNotice port={port} over={layout.chassisHead} />}
        <Toast port={port} sound={sound ?? null} telling={shown !== null ? 'nothing' : guide ? 'notSteps' : 'all'} />
        <Announcer port={port} />
        {playCurves === undefined ? null : <Heard port={port} figures={figures} layout={layout} play={playCurves} />}
      </InTurn>
    </main>
  );
}

/** All parts have come: the bench is seen, and can be worked, from now on. */
function Standing({ bench }: { readonly bench: RefObject<HTMLElement | null> }) {
  useLayoutEffect(() => bench.current?.removeAttribute('aria-busy'), []);
  return null;
}

function leaveBench(port: BenchPort, onHome: () => void): void {
  if (port.session().stage === 'working') port.suspend();
  onHome();
}

function TooNarrow({ onHome }: { readonly onHome: (() => void) | undefined }) {
  const { narrow: narrowWords } = useWords();
  return (
    <main class="room-bench bench-narrow">
      <h1>{narrowWords.title}</h1>
      <p>{narrowWords.body}</p>
      {onHome === undefined ? null : <Button onClick={onHome}>{narrowWords.back}</Button>}
    </main>
  );
}

/** S for the sheet, I for the circuit, V for its table of pips (letters that no slug has), full stop and comma from part to part, ? for the keys. */
function usePageKeys(
  onSheet: () => void,
  onCircuit: () => void,
  onHelp: () => void,
  onPart: ((by: 1 | -1) => void) | null,
): void {
  useKeyDown((event) => {
    if (!isFreeKey(event)) return;
    if (isPageKey(event, 'sheet')) onSheet();
    else if (isPageKey(event, 'circuit')) onCircuit();
    else if (isPageKey(event, 'pipTable')) goToPipTable();
    else if (event.key === '?') onHelp();
    else if (onPart !== null && isPageKey(event, 'onward')) onPart(1);
    else if (onPart !== null && isPageKey(event, 'backward')) onPart(-1);
    else return;
    event.preventDefault();
  });
}
