/** What every room is given. */
import type { Library } from '../services/library/library.ts';
import type { SoundMemory } from '../services/sound/soundMemory.ts';
import type { ClaimParts } from '../services/store/benchClaims.ts';
import type { LearnerMemory } from '../services/store/learnerMemory.ts';
import type { Logbook } from '../services/store/logbook.ts';
import type { Route } from './routes.ts';

export type Dismissed = Set<string>;

export interface RoomProps {
  readonly library: Library;
  readonly logbook: Logbook;
  readonly claims: ClaimParts;
  readonly learner: LearnerMemory;
  readonly loudness: SoundMemory;
  /** notices that the learner has dismissed, for as long as the page is open */
  readonly dismissed: Dismissed;
  readonly go: (route: Route) => void;
}
