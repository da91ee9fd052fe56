/** The step to do now, in a strip, where the sheet is folded; and the folded sheet's tab with its ticks. */

import { memo } from 'preact/compat';
import { useWords } from '../../../kit/hooks/useWords.ts';
import type { Rect } from '../../../kit/px.ts';
import { place } from '../../../kit/px.ts';
import { Told } from '../../../kit/Told.tsx';
import { Button, Frame } from '../../../kit/theme/art.tsx';
import type { BenchPort } from '../../../present/ports.ts';
import type { SheetFigures } from '../../../present/sheetFigures.ts';
import { stepNow } from '../../../present/steps.ts';
import { jobSheet } from '../../../receiver/jobSheet.ts';
import { AllStands, useLackStages } from './Lack.tsx';
import { OwnTick, useStepMarks } from './ProcedurePage.tsx';
import { SheetFigure } from './SheetFigure.tsx';
import './steps.css';
import './strip.css';

/** px of a strip whose two lines hold a step and where to look */
const BOTH_FROM = 640;

interface StepStripProps {
  readonly port: BenchPort;
  readonly rect: Rect;
  readonly figures: SheetFigures;
  /** a small figure and a button to open the sheet (upright form) */
  readonly roomy: boolean;
  readonly open: boolean;
  readonly onOpen: () => void;
}

function StepStripBase({ port, rect, figures, roomy, open, onOpen }: StepStripProps) {
  const { sheet: sheetWords } = useWords();
  const marks = useStepMarks(port);
  const at = stepNow(marks);
  const step = jobSheet(port.receiver, port.scenario).procedure[at];
  const [lack] = useLackStages(port, at);
  // Of an alignment the sheet says what to do, and the first stage of the advice only where to look: both, where there is room.
  const asked = lack === undefined || (step?.phase === 'align' && !roomy && rect.width >= BOTH_FROM);
  return (
    <section class={`step-strip placed${roomy ? ' roomy' : ''}`} style={place(rect)} aria-label={sheetWords.kicker}>
      <Frame kind="card" />
      <span class="now-bar" aria-hidden="true" />
      {roomy ? (
        <SheetFigure receiver={port.receiver} figures={figures} width={86} height={rect.height - 8} small />
      ) : null}
      {port.scenario.sealed ? <OwnTick port={port} at={at} mark={marks[at]!} /> : null}
      <p title={step?.text}>
        <b>{sheetWords.stepOf(at + 1, marks.length)}</b> {asked ? <Told of={port.receiver}>{step?.text}</Told> : null}{' '}
        {lack === undefined ? null : <span class="advice-here">{lack}</span>}
      </p>
      {!port.scenario.sealed && marks.every((mark) => mark === 'done') ? <AllStands port={port} /> : null}
      {roomy ? (
        <Button onClick={onOpen} class="strip-open">
          {open ? sheetWords.close : sheetWords.open}
        </Button>
      ) : null}
    </section>
  );
}

interface SheetTabProps {
  readonly port: BenchPort;
  readonly rect: Rect;
  readonly open: boolean;
  readonly onToggle: () => void;
}

function SheetTabBase({ port, rect, open, onToggle }: SheetTabProps) {
  const { sheet: sheetWords } = useWords();
  const marks = useStepMarks(port);
  return (
    <button
      type="button"
      class="sheet-tab placed"
      style={place(rect)}
      aria-expanded={open}
      aria-label={sheetWords.kicker}
      onClick={onToggle}
    >
      <Frame kind="sheet" />
      <span class="disc" aria-hidden="true" data-word="1" />
      <span class="tab-name short" title={sheetWords.kicker} aria-hidden="true">
        {sheetWords.kicker}
      </span>
      <span class="tab-steps" aria-hidden="true">
        {marks.map((mark, i) => (
          <span key={i} class={`box ${mark}`} data-word={mark === 'done' ? '\u2713' : i + 1} />
        ))}
      </span>
    </button>
  );
}

export const StepStrip = memo(StepStripBase);
export const SheetTab = memo(SheetTabBase);
