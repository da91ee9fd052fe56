/** The drills as cards: what each looks like, how its last ten looks went, which one is open. */

import { DRILLS, type DrillId } from '../../drills/drill.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { Fit, Frame } from '../../kit/theme/art.tsx';
import { cardArt, strawArt } from './cardArt.ts';
import { isSure } from './sure.ts';
import { Tick } from './Tick.tsx';

export interface DrillCardsProps {
  readonly open: DrillId;
  readonly tallyOf: (drill: DrillId) => readonly boolean[];
}

export function DrillCards({ open, tallyOf }: DrillCardsProps) {
  const { drills: words } = useWords();
  return (
    <nav aria-label={words.list}>
      <ol class="drill-cards">
        {DRILLS.map((drill, i) => {
          const looks = tallyOf(drill);
          const right = looks.filter((one) => one).length;
          const now = drill === open;
          const sure = isSure(looks);
          return (
            <li key={drill} class={now ? 'drill-card now' : 'drill-card'}>
              <a class="ringed" href={`#/drills/${drill}`} {...(now ? { 'aria-current': 'true' as const } : {})}>
                <Frame kind="card" seed={i + 1} />
                <span class={now ? 'disc rust' : 'disc'} aria-hidden="true">
                  {i + 1}
                </span>
                {now ? <span class="drill-open">{words.open}</span> : sure ? <Tick /> : null}
                <Fit class="drill-art" of={drill} draw={(w, h) => cardArt(drill, w, h)} />
                <span class="drill-name">{words.names[drill]}</span>
                <span class="drill-tally">
                  {looks.length === 0 ? words.notTried : sure ? words.tenInARow : words.tally(right, looks.length)}
                </span>
                <Fit class="drill-straws" of={looks} draw={(w) => strawArt(w, looks)} />
              </a>
            </li>
          );
        })}
      </ol>
    </nav>
  );
}
