/** The endless track's place on the course: how hard, which seed word, and on to the bench. */

import { useState } from 'preact/hooks';
import { useFirstWords } from '../../kit/hooks/useWords.ts';
import { Disc } from '../../kit/PlateTitle.tsx';
import { Button, Frame } from '../../kit/theme/art.tsx';
import './endless.css';

export interface EndlessPlaceProps {
  /** a word that nobody has had yet */
  readonly newSeed: () => string;
  readonly open: (difficulty: 1 | 2 | 3, seed: string) => void;
}

const SEED = /^[a-z0-9]{1,12}$/;

export function EndlessPlace({ newSeed, open }: EndlessPlaceProps) {
  const { endless: words } = useFirstWords();
  const [difficulty, setDifficulty] = useState<1 | 2 | 3>(1);
  const [seed, setSeed] = useState(newSeed);
  const good = SEED.test(seed);
  return (
    <section class="track endless" aria-labelledby="track-endless">
      <div class="track-head">
        <Disc class="large">E</Disc>
        <h2 id="track-endless" tabIndex={-1}>
          {words.trackTitle}
        </h2>
        <span />
        <p>{words.blurb}</p>
      </div>
      <form
        class="paper endless-form"
        onSubmit={(event) => {
          event.preventDefault();
          if (good) open(difficulty, seed);
        }}
      >
        <Frame kind="card" />
        <fieldset>
          <legend class="l">{words.difficulty}</legend>
          {([1, 2, 3] as const).map((level) => (
            <label key={level}>
              <input type="radio" name="endless" checked={difficulty === level} onChange={() => setDifficulty(level)} />
              {words.levels[level]}
            </label>
          ))}
        </fieldset>
        <label class="endless-seed">
          <span class="l">{words.seed}</span>
          <input
            class="written"
            type="text"
            value={seed}
            maxLength={12}
            autocomplete="off"
            spellcheck={false}
            aria-invalid={!good}
            aria-describedby="endless-note"
            onInput={(event) => setSeed(event.currentTarget.value)}
          />
        </label>
        <p class="s" id="endless-note">
          {good ? words.seedNote : words.badSeed}
        </p>
        <div class="endless-buttons">
          <Button primary onClick={() => good && open(difficulty, seed)}>
            {words.open}
          </Button>
          <Button onClick={() => setSeed(newSeed())}>{words.another}</Button>
        </div>
      </form>
    </section>
  );
}
