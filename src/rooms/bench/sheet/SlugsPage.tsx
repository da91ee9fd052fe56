/** Third page of the sheet: what each slug does, and the test points. */

import { useMemo } from 'preact/hooks';
import { Disc } from '../../../kit/PlateTitle.tsx';
import { SlugsAndPoints } from '../../../kit/SlugsAndPoints.tsx';
import type { Receiver } from '../../../receiver/receiver.ts';
import { slugLetters } from '../../../receiver/slugLetters.ts';

export function SlugsPage({ receiver }: { readonly receiver: Receiver }) {
  const letters = useMemo(() => slugLetters(receiver), [receiver]);
  return (
    <SlugsAndPoints
      receiver={receiver}
      letter={(slug) => (
        <>
          <Disc class="hollow co">{letters.get(slug)}</Disc>
          <span class="unseen">{letters.get(slug)}: </span>
        </>
      )}
      slugClass="slug-list"
      pointClass="point-list"
    />
  );
}
