/** What the desk shows of a draft's certification, and what can be done about it. */
import type { Certificate, Certification } from '../../../certify/certificate.ts';
import type { Draft } from '../../../workshop/draft.ts';
import type { Nearest } from '../../../workshop/nearest.ts';

export interface Proving {
  /** what is being done; null: nothing */
  readonly step: 'certify' | 'technician' | 'nearest' | null;
  /** of the step, 0 to 1 */
  readonly share: number;
  readonly certification: Certification | null;
  /** null: he has not tried */
  readonly technician: { readonly total: number; readonly passed: boolean } | null;
  /** null: not looked for yet */
  readonly nearest: Nearest | 'none' | null;
  readonly failure: 'noWorker' | 'threw' | null;
}

/** What came of putting a scenario on the evening sheet. */
export type OnSheet = 'onSheet' | 'sheetFull' | 'notTaken';

export interface HandingPort {
  /** of the scenario: the one that its certificate and the runs on it name */
  hash(): string;
  /** a link carries the scenario alone, and its receiver is one of one's own */
  readonly needsReceiver: boolean;
  link(): Promise<{ readonly address: string; readonly long: boolean }>;
  toEvening(): Promise<OnSheet>;
}

export interface ProvingPort {
  readonly state: Proving;
  /** false: the draft has been changed since */
  readonly isOfThis: boolean;
  /** the file is whole and the set is there */
  readonly canStart: boolean;
  readonly start: () => void;
  readonly cancel: () => void;
  readonly take: (draft: Draft) => void;
  readonly saveCertificate: (certificate: Certificate) => void;
}
