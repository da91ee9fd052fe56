/** One line of a sheet as it is measured on a curve. */

export type SpecItemKind =
  | 'point'
  | 'window'
  | 'tilt'
  | 'trap'
  | 'notch'
  | 'skirt'
  | 'bandwidth'
  | 'centre'
  | 'gain'
  | 'peak'
  | 'zero'
  | 'polarity'
  | 'separation'
  | 'symmetry'
  | 'linearity';

export interface SpecItem {
  /** unique in the sheet: `point:45750000`, `window:42900000-44700000`, `bandwidth:-3` */
  readonly id: string;
  readonly kind: SpecItemKind;
  readonly hz: number;
  /** the other end, where the item is about a stretch or a pair */
  readonly toHz: number | null;
  readonly measured: number;
  /** limits, inclusive; null = open */
  readonly low: number | null;
  readonly high: number | null;
  readonly unit: 'ratio' | 'db' | 'hz';
  /** one tolerance, in `unit`: half a window's width, or the limit itself; 6 dB for a trap's depth (twice the level), as for a skirt */
  readonly tolerance: number;
  readonly weight: number;
}
