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
