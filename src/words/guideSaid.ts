/** The steps that the guide has words for, and what there is to be said of one: places and figures of the sheet. */
import type { ControlId } from '../bench/benchEvent.ts';

export type GuideStepId =
  | 'earth'
  | 'rf'
  | 'pad'
  | 'capacitor'
  | 'probe'
  | 'tip'
  | 'x'
  | 'sweep'
  | 'level'
  | 'height'
  | 'phasing'
  | 'blanking'
  | 'crystals'
  | 'pips'
  | 'tool'
  | 'slug'
  | 'halveLevel'
  | 'swingPhase'
  | 'finding'
  | 'sign';

export interface GuideSaid {
  /** on the chassis */
  readonly point: string;
  readonly hz: number;
  readonly centreHz: number;
  readonly spanHz: number;
  readonly levelDb: number;
  /** of a pip that is small but plain to see */
  readonly pipDiv: number;
  /** the control that is meant, and whether it goes up from where it stands */
  readonly control: ControlId | null;
  readonly up: boolean;
  /** of a slug: the whole sentence */
  readonly turn: string;
}
