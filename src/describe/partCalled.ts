/** How a sentence names a part, by its name in the log: as the parts tray lists it. */
import type { Receiver } from '../receiver/receiver.ts';
import type { Words } from '../words/words.ts';

export function partCalled({ parts }: Words, { detectors }: Pick<Receiver, 'detectors'>, part: string): string {
  return parts.called(
    part,
    detectors.some(({ id }) => id === part),
  );
}
