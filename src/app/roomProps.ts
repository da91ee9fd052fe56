/** What every room is given. */

import type { SoundLoudness } from '../rooms/bench/AtHand.tsx';
import type { DealsAhead } from '../services/library/dealsAhead.ts';
import type { Library } from '../services/library/library.ts';
import type { ClaimGiven } from '../services/store/benchClaims.ts';
import type { ChoiceMemory } from '../services/store/choiceMemory.ts';
import type { LearnerMemory } from '../services/store/learnerMemory.ts';
import type { Logbook } from '../services/store/logbook.ts';
import type { OwnShelf } from '../services/store/ownShelf.ts';
import type { Route } from './routes.ts';

export type Dismissed = Set<string>;

export interface RoomProps {
  readonly library: Library;
  /** attempts at sealed jobs, dealt before they are opened */
  readonly ahead: DealsAhead;
  /** scenarios that the user has opened from files */
  readonly own: OwnShelf;
  /** as everybody may read it */
  readonly logbook: Logbook;
  /** with the runs of an exam that is going on and tells nothing yet: for the exam itself alone */
  readonly wholeLogbook: Logbook;
  readonly claims: ClaimGiven;
  readonly learner: LearnerMemory;
  /** how loud the bench is */
  readonly loudness: ChoiceMemory<SoundLoudness>;
  /** whether single letters act */
  readonly singleKeys: ChoiceMemory<'on' | 'off'>;
  /** notices that the learner has dismissed, for as long as the page is open */
  readonly dismissed: Dismissed;
  readonly go: (route: Route) => void;
}
