/** The cautions that must be read before a set is touched: what its file says, completed by what any mains set needs to have said. Pure. */

import type { Receiver } from '../receiver/receiver.ts';
import { dialogWords } from '../words/en/benchTalk.ts';

/** The receiver's own cautions, and of the standing ones of a mains set those that it does not say itself. */
export function cautionsOf({ mains, cautions }: Receiver): readonly string[] {
  if (mains === null) return cautions;
  const said = cautions.join(' ');
  const standing = dialogWords.mainsCautions(mains.highTensionVolts, mains.hotChassis, mains.pictureTube);
  return [...cautions, ...standing.filter(({ known }) => !known.test(said)).map(({ says }) => says)];
}
