/** What the desk for scenarios may ask of the rest. */
import type { Problem } from '../../../base/result.ts';
import type { BenchSetup } from '../../../bench/setup.ts';
import type { Draft } from '../../../workshop/draft.ts';
import type { HandingPort, ProvingPort } from './provingPort.ts';

/** The set of a draft: `fetching`: being read or dealt. */
export type StandingSet =
  | { readonly kind: 'fetching' }
  | { readonly kind: 'cannot'; readonly problems: readonly Problem[] }
  | { readonly kind: 'stands'; readonly set: Omit<BenchSetup, 'scenario'> };

export interface Named {
  readonly id: string;
  readonly name: string;
}

export interface WorkshopPort {
  readonly receivers: readonly Named[];
  readonly shipped: readonly Named[];
  readonly drafts: readonly { readonly key: string; readonly draft: Draft }[];
  readonly openKey: string;
  readonly draft: Draft;
  readonly isKept: boolean;
  readonly undoSteps: number;
  readonly redoSteps: number;
  readonly standing: StandingSet;
  /** of the open draft's file */
  readonly problems: readonly Problem[];
  /** of the files that were brought last, those that are no scenario */
  readonly refused: readonly { readonly file: string; readonly problems: readonly Problem[] }[];
  /** one after the other with the same mark they are one step to undo */
  readonly change: (next: Draft, mark?: string) => void;
  /** the hand has let go */
  readonly pause: () => void;
  readonly undo: () => void;
  readonly redo: () => void;
  readonly choose: (key: string) => void;
  readonly addNew: () => void;
  readonly duplicate: (shippedId: string) => void;
  readonly remove: (key: string) => void;
  readonly toReceiver: (receiverId: string) => void;
  /** each becomes a draft */
  readonly openFiles: (files: readonly File[]) => void;
  readonly saveFile: () => void;
  /** onto the shelf of own scenarios and to the bench; null: the file is not whole */
  readonly tryIt: (() => void) | null;
  readonly proving: ProvingPort;
  readonly handing: HandingPort;
}
