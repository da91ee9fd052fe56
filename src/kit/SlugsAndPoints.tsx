/** What each slug does and where the test points are, as they stand on a sheet: on the bench and on paper. */
import type { ComponentChildren } from 'preact';
import type { Receiver } from '../receiver/receiver.ts';
import { useWords } from './hooks/useWords.ts';
import { Told } from './Told.tsx';

export interface SlugsAndPointsProps {
  readonly receiver: Receiver;
  /** the letter of a slug, as it stands before its name */
  readonly letter: (slug: string) => ComponentChildren;
  readonly slugClass: string;
  readonly pointClass: string;
}

export function SlugsAndPoints({ receiver, letter, slugClass, pointClass }: SlugsAndPointsProps) {
  const { sheet: say } = useWords();
  return (
    <>
      <h3>{say.slugs}</h3>
      <dl class={slugClass}>
        {receiver.adjusters.map((slug) => (
          <div key={slug.id}>
            <dt>
              {letter(slug.id)}
              <b>
                <Told of={receiver}>{slug.label}</Told>
              </b>
            </dt>
            <dd>
              <Told of={receiver}>{slug.does}</Told>{' '}
              <span class="l2">{`${say.head[slug.head]}, ${say.slugTurns(slug.travelTurns)}`}</span>
            </dd>
          </div>
        ))}
      </dl>
      <h3>{say.points}</h3>
      <dl class={pointClass}>
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
