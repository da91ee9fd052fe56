/** One job: its curve as it is found, what has been won of it, and its par. The title is the button and its hit area is the whole card. */

import { bandOf, Fit, Frac, Frame, Ink, thumb, tick } from '../../kit/theme/art.tsx';
import { C } from '../../kit/theme/ink.ts';
import { isWon } from '../../present/courseTracks.ts';
import type { CourseCard } from '../../present/ports.ts';
import { courseWords as words } from '../../words/en/course.ts';
import { parText, turnsText } from './figures.ts';

export interface JobCardProps {
  readonly card: CourseCard;
  /** card code by scenario id */
  readonly codes: ReadonlyMap<string, string>;
  readonly open: () => void;
}

export function JobCard({ card, codes, open }: JobCardProps) {
  const { scenario, best, early, onBench } = card;
  const won = isWon(card);
  const after = scenario.after.map((id) => codes.get(id) ?? id);
  const state = early
    ? words.after(after)
    : onBench !== null
      ? words.soFar(turnsText(onBench.turns))
      : best !== null
        ? words.best(best)
        : words.notTried;
  return (
    <li class={`card${early ? ' locked' : ''}${onBench !== null ? ' now' : ''}`}>
      <Frame kind={early ? 'locked' : 'card'} seed={scenario.seed} />
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
        <Fit
          class="card-curve"
          of={card}
          draw={(w, h) =>
            thumb({
              x: 0,
              y: 0,
              w,
              h,
              curve: card.start,
              band: bandOf([card.start, card.wanted]),
              score: early ? null : (best ?? 0),
            })
          }
        />
        <div class="card-words">
          <h3>
            <button type="button" class="card-open" onClick={open}>
              {scenario.title}
            </button>
          </h3>
          <p class="card-brief">{scenario.words.brief}</p>
          <p class="card-foot">
            <span class={best !== null && !early ? 'card-best' : ''}>
              <Frac>{state}</Frac>
            </span>
            <span>
              <Frac>{parText(scenario.par)}</Frac>
            </span>
          </p>
        </div>
      </div>
    </li>
  );
}

const WON = `<circle cx="11" cy="11" r="10" fill="${C.petrol}" stroke="${C.ink}" stroke-width="1.2"/>${tick(11, 11, 0.9, '#fff', 2.1)}`;

function WonDisc() {
  return <Ink svg={WON} width={22} height={22} label={words.won} class="won-disc" />;
}
