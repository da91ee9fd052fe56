/** First page of the sheet, under its figure: the numbered steps with their ticks, the caution. */

import { useEffect, useMemo, useRef } from 'preact/hooks';
import { usePort } from '../../../kit/hooks/usePort.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { Told } from '../../../kit/Told.tsx';
import { Marked, useMarked } from '../../../kit/terms/Marked.tsx';
import { Ink } from '../../../kit/theme/art.tsx';
import { cautionsOf } from '../../../present/cautions.ts';
import type { BenchPort } from '../../../present/ports.ts';
import { type StepMark, stepMarks, stepNow } from '../../../present/steps.ts';
import { jobSheet } from '../../../receiver/jobSheet.ts';
import type { Receiver } from '../../../receiver/receiver.ts';
import type { ProofId } from '../../../scenario/proofId.ts';
import { bringInSight } from './inSight.ts';
import { AllStands, Lack, useLackStages } from './Lack.tsx';
import './steps.css';

export function ProcedurePage({ port }: { readonly port: BenchPort }) {
  const { sheet: sheetWords } = useWords();
  const { receiver } = port;
  return (
    <>
      {port.scenario.sealed ? <p class="own-ticks">{sheetWords.ownTicks}</p> : null}
      <Steps port={port} />
      {port.scenario.sealed ? <ProofsAsked proofs={port.scenario.proofs} /> : null}
      {receiver.cautions.length === 0 ? null : <Caution receiver={receiver} />}
    </>
  );
}

function Steps({ port }: { readonly port: BenchPort }) {
  const { sheet: sheetWords } = useWords();
  const marks = useStepMarks(port);
  const { procedure } = jobSheet(port.receiver, port.scenario);
  const marked = useMarked(
    procedure.map(({ text }) => text),
    port.receiver,
  );
  const list = useRef<HTMLOListElement>(null);
  const at = stepNow(marks);
  const allDone = marks.every((mark) => mark === 'done');
  const [lack] = useLackStages(port, at);
  // What the reader has turned back to is left alone until something changes.
  useEffect(() => bringInSight(list.current?.children[at]), [at, allDone, lack]);
  return (
    <ol class="steps" ref={list}>
      {procedure.map((step, i) => {
        const mark = marks[i]!;
        return (
          <li key={step.text} class={mark} {...(mark === 'now' ? { 'aria-current': 'step' as const } : {})}>
            {port.scenario.sealed ? (
              <OwnTick port={port} at={i} mark={mark} />
            ) : (
              <span class="box" aria-hidden="true">
                {mark === 'done' ? '\u2713' : i + 1}
              </span>
            )}
            {mark === 'done' && !port.scenario.sealed ? <span class="unseen">{sheetWords.done}: </span> : null}
            <Told of={port.receiver}>
              <Marked>{marked[i]!}</Marked>
            </Told>
            {mark === 'now' ? <Lack port={port} at={i} /> : null}
            {allDone && i === at && !port.scenario.sealed ? <AllStands port={port} /> : null}
          </li>
        );
      })}
    </ol>
  );
}

/** In a sealed run nobody says at the end which of them is missing. */
function ProofsAsked({ proofs }: { readonly proofs: readonly ProofId[] }) {
  const { sheet: sheetWords } = useWords();
  if (proofs.length === 0) return null;
  return (
    <section>
      <h3>{sheetWords.proofsAsked}</h3>
      <ul class="demands">
        {proofs.map((proof) => (
          <li key={proof}>{sheetWords.proofs[proof]}</li>
        ))}
      </ul>
    </section>
  );
}

/** The box of a step that the learner ticks himself. */
export function OwnTick({
  port,
  at,
  mark,
}: {
  readonly port: BenchPort;
  readonly at: number;
  readonly mark: StepMark;
}) {
  const { sheet: sheetWords } = useWords();
  return (
    <button
      type="button"
      class={`own-tick ${mark}`}
      aria-pressed={mark === 'done'}
      aria-label={sheetWords.tickStep(at + 1)}
      onClick={() => port.tickStep(at)}
    >
      <span class="box" aria-hidden="true">
        {mark === 'done' ? '\u2713' : at + 1}
      </span>
    </button>
  );
}

/** Marks of the steps; a new list only when one of them changes. */
export function useStepMarks(port: BenchPort): readonly StepMark[] {
  const key = usePort(port, () => stepMarks(jobSheet(port.receiver, port.scenario), port.session()).join());
  return useMemo(() => key.split(',') as StepMark[], [key]);
}

function Caution({ receiver }: { readonly receiver: Receiver }) {
  const words = useWords();
  const sheetWords = words.sheet;
  const title = receiver.mains === null ? sheetWords.care : sheetWords.cautions;
  return (
    <aside class="caution" aria-label={title}>
      <div>
        <Ink svg={BOLT} width={28} height={26} class="bolt" />
        <b class="h">{title}</b>
        {cautionsOf(words, receiver).map(({ text, lang }) => (
          <p key={text} lang={lang}>
            {text}
          </p>
        ))}
      </div>
    </aside>
  );
}

const BOLT =
  '<path d="M14 2L26 23H2Z" fill="#fcf7ea" stroke="#b5482e" stroke-width="2.2" stroke-linejoin="round"/><path d="M15 7.5l-4.2 8h5.6l-3.4 6" fill="none" stroke="#963820" stroke-width="1.9"/>';
