/** The last looks as ten discs, the one in hand with its number. */
import { useWords } from '../../kit/hooks/useWords.ts';
import { Tick } from './Tick.tsx';

const ALL = 10;

/** `answered`: the look in hand is the last of `looks` already. */
export function LastLooks({ looks, answered }: { readonly looks: readonly boolean[]; readonly answered: boolean }) {
  const { drills: words } = useWords();
  const before = answered ? looks.slice(-ALL) : looks.slice(-(ALL - 1));
  const now = answered ? null : before.length;
  return (
    <p class="last-looks">
      <span class="unseen">{words.lastLooks(looks.filter((one) => one).length, looks.length)}</span>
      {Array.from({ length: ALL }, (_, i) => {
        if (i < before.length) return <Tick key={i} right={before[i]!} />;
        if (i === now)
          return (
            <span key={i} class="disc rust now" aria-hidden="true">
              {i + 1}
            </span>
          );
        return <span key={i} class="look-to-come" aria-hidden="true" />;
      })}
    </p>
  );
}
