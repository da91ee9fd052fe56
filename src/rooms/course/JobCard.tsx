/** One job: its curve as it is found, what has been won of it, and its par. The title is the button and its hit area is the whole card. */
import type { ComponentChildren } from 'preact';
import { approached } from '../../kit/approached.ts';
import { useFirstWords } from '../../kit/hooks/useWords.ts';
import { Told } from '../../kit/Told.tsx';
import { Frac, Frame, Ink, tick } from '../../kit/theme/art.tsx';
import { C } from '../../kit/theme/ink.ts';
import { isWon } from '../../present/courseTracks.ts';
import type { Approach, CourseCard } from '../../present/ports.ts';
import { CurveInk } from './CurveInk.tsx';

export interface JobCardProps {
  readonly card: CourseCard;
  /** card code by scenario id */
  readonly codes: ReadonlyMap<string, string>;
  /** false while the runs are being read: what has been won is not known */
  readonly runsRead: boolean;
  /** false: a plain frame for now */
  readonly drawn: boolean;
  readonly open: () => void;
  readonly approach: Approach;
  /** what else stands at the foot of the card */
  readonly children?: ComponentChildren;
}

export function JobCard({ card, codes, runsRead, drawn, open, approach, children }: JobCardProps) {
  const { course: words } = useFirstWords();
  const { scenario, best, early, onBench } = card;
  const won = isWon(card);
  const after = scenario.recommendedAfter.map((id) => codes.get(id) ?? id);
  const state = !runsRead
    ? '\u00a0'
    : early
      ? words.after(after)
      : onBench !== null
        ? words.soFar(words.turns(onBench.turns))
        : best !== null
          ? words.best(best, won)
          : words.notTried;
  return (
    <li class={`card${early ? ' locked' : ''}${onBench !== null ? ' now' : ''}`}>
      {drawn ? <Frame kind={early ? 'locked' : 'card'} seed={scenario.seed} /> : <span class="frame plain" />}
      <div class="card-body">
        <div class="card-head">
          <span class="card-code">{scenario.code}</span>
          <span class="card-level">{words.difficulty(scenario.difficulty)}</span>
          {onBench !== null ? <strong class="card-now">{words.onBench}</strong> : won ? <WonDisc /> : null}
          {onBench === null && !won ? (
            <span class="card-hint" aria-hidden="true">
              {words.openHint}
            </span>
          ) : null}
        </div>
        <div class="card-curve">
          <CurveInk curve={scenario.curve} score={early ? 0 : (best ?? 0)} />
        </div>
        <div class="card-words">
          <h3>
            <button type="button" class="card-open" onClick={open} {...approached(approach)}>
              <Told of={scenario}>{scenario.title}</Told>
            </button>
          </h3>
          <p class="card-brief">
            <Told of={scenario}>{scenario.brief}</Told>
          </p>
          <p class="card-foot">
            <span class={best !== null && !early ? 'card-best' : ''}>
              <Frac>{state}</Frac>
            </span>
            <span>
              <Frac>
                {scenario.uncertified
                  ? words.uncertified
                  : scenario.par === null
                    ? words.sealed
                    : words.par(words.turns(scenario.par.turns), words.minutes(scenario.par.seconds))}
              </Frac>
            </span>
          </p>
        </div>
        {children}
      </div>
    </li>
  );
}

const WON = `<circle cx="11" cy="11" r="10" fill="${C.petrol}" stroke="${C.ink}" stroke-width="1.2"/>${tick(11, 11, 0.9, '#fff', 2.1)}`;

function WonDisc() {
  const { course: words } = useFirstWords();
  return <Ink svg={WON} width={22} height={22} label={words.won} class="won-disc" />;
}
