/** Third page of the sheet: what each slug does, and the test points. */

import { useMemo } from 'preact/hooks';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { Told } from '../../../kit/Told.tsx';
import type { Receiver } from '../../../receiver/receiver.ts';
import { slugLetters } from '../../../receiver/slugLetters.ts';

export function SlugsPage({ receiver }: { readonly receiver: Receiver }) {
  const { sheet: sheetWords } = useWords();
  const letters = useMemo(() => slugLetters(receiver), [receiver]);
  return (
    <>
      <h3>{sheetWords.slugs}</h3>
      <dl class="slug-list">
        {receiver.adjusters.map((slug) => (
          <div key={slug.id}>
            <dt>
              <span class="disc hollow co" aria-hidden="true">
                {letters.get(slug.id)}
              </span>
              <span class="unseen">{letters.get(slug.id)}: </span>
              <b>
                <Told of={receiver}>{slug.label}</Told>
              </b>
            </dt>
            <dd>
              <Told of={receiver}>{slug.does}</Told>{' '}
              <span class="l2">{`${sheetWords.head[slug.head]}, ${sheetWords.slugTurns(slug.travelTurns)}`}</span>
            </dd>
          </div>
        ))}
      </dl>
      <h3>{sheetWords.points}</h3>
      <dl class="point-list">
        {receiver.testPoints.map((point) => (
          <div key={point.id}>
            <dt>
              <b>{point.id}</b> {point.label === point.id ? '' : <Told of={receiver}>{point.label}</Told>}
            </dt>
            <dd>
              <Told of={receiver}>{point.note}</Told>
            </dd>
          </div>
        ))}
      </dl>
    </>
  );
}
