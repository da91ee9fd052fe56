/** What the page of one's own receivers shows and may ask for. */
import type { Problem } from '../../../base/result.ts';
import type { Slack } from '../../../making/slack.ts';
import type { Making, Standing } from '../../../making/standing.ts';
import type { Draft } from '../../../making/wholeReceiver.ts';

export interface KeptReceiver {
  readonly id: string;
  readonly setName: string;
}

export interface ReceiverPort {
  /** null: nothing has been brought yet */
  readonly making: Making | null;
  readonly standing: Standing | null;
  /** all that is still wrong; null while that is being found out */
  readonly left: readonly Problem[] | null;
  /** the narrowest line of the sheet with every slug a little out; null while that is being found out */
  readonly slack: Slack | null;
  /** what was refused when it was brought, in words */
  readonly refused: readonly string[];
  /** all that are in the making here */
  readonly makings: readonly { readonly key: string; readonly name: string }[];
  /** null: none is open */
  readonly openKey: string | null;
  /** false: this browser keeps none of it */
  readonly isKept: boolean;
  readonly undoSteps: number;
  readonly redoSteps: number;
  readonly kept: readonly KeptReceiver[];
  /** came with evening sheets */
  readonly brought: readonly (KeptReceiver & { readonly hash: string })[];
  /** what came of keeping or taking away, in words */
  readonly told: string | null;
  /** begins a scenario on the receiver that has just been kept; null: none has */
  readonly scenarioOn: (() => void) | null;
  bring(files: readonly File[]): void;
  beginExample(): void;
  openKept(id: string): void;
  dropKept(id: string): void;
  openBrought(id: string, hash: string): void;
  dropBrought(id: string, hash: string): void;
  clear(): void;
  deckText(text: string): void;
  /** one after the other with the same mark they are one step to undo */
  change(draft: Draft, mark?: string): void;
  undo(): void;
  redo(): void;
  choose(key: string): void;
  discard(key: string): void;
  readonly canSave: boolean;
  saveDeck(): void;
  saveReceiver(): void;
  keep(): void;
}
