/** In practice, under the step to do: what keeps it from its tick. Of a missed line of the sheet it says one thing at a time, the next when it is asked for. */

import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { lackStages } from '../../../describe/lack.ts';
import { missingSentence } from '../../../describe/sentence.ts';
import { useLastWords } from '../../../kit/hooks/useLastWords.ts';
import { usePort } from '../../../kit/hooks/usePort.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import type { BenchPort } from '../../../present/ports.ts';
import { stateNow } from '../../../present/stateNow.ts';
import { firstMissing, lackOfStep } from '../../../present/steps.ts';
import { jobSheet } from '../../../receiver/jobSheet.ts';
import { aidsWithin } from '../../../session/session.ts';
import { bringInSight } from './inSight.ts';

interface LackProps {
  readonly port: BenchPort;
  /** number of the step, from 0 */
  readonly at: number;
}

export function Lack({ port, at }: LackProps) {
  const words = useWords();
  const stages = useLackStages(port, at);
  const hints = useMemo(() => aidsWithin(port.scenario).hints, [port]);
  const [asked, setAsked] = useState({ about: '', count: 1 });
  const about = stages[0] ?? '';
  const count = asked.about === about ? asked.count : 1;
  const here = useRef<HTMLSpanElement>(null);
  useEffect(() => bringInSight(here.current?.closest('li')), [count]);
  if (stages.length === 0) return null;
  return (
    <span class="advice" ref={here}>
      {stages.slice(0, count).join(' ')}
      {hints && count < stages.length ? (
        <button type="button" class="link advice-more" onClick={() => setAsked({ about, count: count + 1 })}>
          {words.lineAdvice.more}
        </button>
      ) : null}
    </span>
  );
}

/** In practice, when every step has its tick: the way to the signature, or what no step of this sheet is about and is missing all the same. */
export function AllStands({ port }: { readonly port: BenchPort }) {
  const words = useWords();
  const { sheet: sheetWords } = words;
  const missing = usePort(port, () => firstMissing(port.session()));
  if (missing !== null) return <span class="advice">{missingSentence(words, missing)}</span>;
  return (
    <button type="button" class="link all-stands" onClick={() => port.askToSign()}>
      {sheetWords.allStands}
    </button>
  );
}

/** What is said of anything but a line of the sheet is not kept. */
const NO_STEP = -1;

/** The sentences to be said; none in a sealed run. */
export function useLackStages(port: BenchPort, at: number): readonly string[] {
  const words = useWords();
  const last = useLastWords();
  const key = usePort(port, () => {
    if (port.scenario.sealed) return '';
    const lack = lackOfStep(jobSheet(port.receiver, port.scenario), at, port.session());
    // While the picture settles after a turn the advice of a line stays as it was.
    const kept = lack?.code === 'slugTurning' ? last(at, null) : null;
    if (kept !== null) return kept;
    const said = lack === null ? '' : lackStages(words, port.setup, port.facts(), stateNow(port), lack).join('\n');
    last(lack?.line === undefined ? NO_STEP : at, said);
    return said;
  });
  return useMemo(() => (key === '' ? [] : key.split('\n')), [key]);
}
