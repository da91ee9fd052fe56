/** A scenario on the shelf of one's own. */
import type { ScenarioEntry } from '../../present/scenarioEntry.ts';
import type { Par } from '../../scenario/par.ts';

/** What this bench's own certifier said of it, on the receiver of that hash; one of an earlier day does not say which. */
export type OwnCertificate =
  | {
      readonly kind: 'certified';
      readonly engine: string;
      readonly receiverHash?: string | undefined;
      readonly par: Par;
    }
  | { readonly kind: 'refused'; readonly engine: string; readonly receiverHash?: string | undefined };

export interface OwnScenario {
  /** of the scenario as its file says it */
  readonly hash: string;
  readonly id: string;
  /** the file as it was opened */
  readonly text: string;
  readonly addedAtMs: number;
  readonly entry: ScenarioEntry;
  /** of the receiver that a sheet brought along with it; left out: it stands on the one that is here under its name */
  readonly receiverHash?: string | undefined;
  /** null: not tried yet */
  readonly certificate: OwnCertificate | null;
}
