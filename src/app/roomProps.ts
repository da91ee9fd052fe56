/** What every room is given. */
import type { Library } from '../files/library.ts';
import type { Logbook } from '../services/store/logbook.ts';
import type { Route } from './routes.ts';

export interface RoomProps {
  readonly library: Library;
  readonly logbook: Logbook;
  readonly go: (route: Route) => void;
}
