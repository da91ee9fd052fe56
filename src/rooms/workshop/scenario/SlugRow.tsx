/** The chosen slug: its letter, a rule by eighths of a turn, how far it is off, a step either way, and the way back. */

import { useWords } from '../../../kit/hooks/useWords.ts';
import { Disc } from '../../../kit/PlateTitle.tsx';
import { Frac } from '../../../kit/theme/art.tsx';
import type { StoodSlug } from './stoodSlugs.ts';

export interface SlugRowProps {
  readonly slug: StoodSlug;
  /** set by hand */
  readonly named: boolean;
  /** there is a scatter that would have it */
  readonly scattered: boolean;
  readonly onTurns: (turns: number | null) => void;
  readonly onLetGo: () => void;
}

const EIGHTHS = 8;

export function SlugRow({ slug, named, scattered, onTurns, onLetGo }: SlugRowProps) {
  const { workshop: say, format } = useWords();
  const { adjuster, letter, turns, least, most } = slug;
  const way = Math.abs(turns) < 1 / 64 ? 'none' : turns > 0 ? 'in' : 'out';
  const said = say.turned(format.turnsLong(turns), way);
  const step = (to: 'in' | 'out') => (
    <button
      type="button"
      class="small-button"
      aria-label={say.stepOf(letter, to)}
      onClick={() => {
        onTurns(turns + (to === 'in' ? 1 : -1) / EIGHTHS);
        onLetGo();
      }}
    >
      {say.step[to]}
    </button>
  );
  return (
    <div class={way === 'none' ? 'slug-row' : 'slug-row off'}>
      <Disc>{letter}</Disc>
      <label class="amount-slider">
        <span class="slug-name" aria-hidden="true">
          {adjuster.label}
        </span>
        <input
          type="range"
          aria-label={say.slug(letter, adjuster.label)}
          min={least * EIGHTHS}
          max={most * EIGHTHS}
          step={1}
          value={Math.round(turns * EIGHTHS)}
          aria-valuetext={said}
          onInput={({ currentTarget }) => onTurns(currentTarget.valueAsNumber / EIGHTHS)}
          onChange={onLetGo}
        />
        <span class="m" aria-hidden="true">
          <Frac>{said}</Frac>
        </span>
      </label>
      <div class="slug-steps">
        {step('out')}
        {step('in')}
        <span class="slug-back">
          {way === 'none' ? null : (
            <button type="button" class="link" aria-label={say.putRightOf(letter)} onClick={() => onTurns(0)}>
              {say.putRight}
            </button>
          )}
          {named && scattered ? (
            <button type="button" class="link" aria-label={say.toScatterOf(letter)} onClick={() => onTurns(null)}>
              {say.toScatter}
            </button>
          ) : null}
        </span>
      </div>
    </div>
  );
}
