/** What each lead is: which jack it starts from, its colour and weave, what is at its free end, and the words of the state that change it. */
import type { Controls, LeadId } from '../../../bench/benchState.ts';
import { C } from '../../../kit/theme/ink.ts';
import type { JackId } from '../layout.ts';

export type Weave = 'plain' | 'banded' | 'stitched' | 'doubleStitched' | 'lined';
export type LeadTip = 'clip' | 'boxedClip' | 'probe' | 'plug';

export interface LeadKind {
  readonly id: LeadId;
  readonly jack: JackId;
  readonly colour: string;
  readonly weave: Weave;
}

/** In the order in which they are walked with the keyboard and drawn, last on top. */
export const LEADS: readonly LeadKind[] = [
  { id: 'rf', jack: 'rf', colour: C.petrol, weave: 'plain' },
  { id: 'y', jack: 'y', colour: C.rust, weave: 'banded' },
  { id: 'x', jack: 'xOut', colour: C.brass, weave: 'stitched' },
  { id: 'earth', jack: 'earth', colour: '#3c4a55', weave: 'lined' },
  { id: 'biasA', jack: 'biasA', colour: C.brass, weave: 'stitched' },
  { id: 'biasB', jack: 'biasB', colour: C.brass, weave: 'doubleStitched' },
  { id: 'meter', jack: 'meter', colour: C.petrol, weave: 'banded' },
];

export function tipOf(lead: LeadId, controls: Pick<Controls, 'yTip' | 'rfTerminated' | 'rfCapacitor'>): LeadTip {
  if (lead === 'x') return 'plug';
  if (lead === 'rf') return controls.rfTerminated || controls.rfCapacitor ? 'boxedClip' : 'clip';
  if (lead === 'y') return controls.yTip === 'probe' ? 'probe' : controls.yTip === 'resistor' ? 'boxedClip' : 'clip';
  return lead === 'meter' ? 'probe' : 'clip';
}

/** From the very tip to where the wire enters. */
export const TIP_LENGTH: Readonly<Record<LeadTip, number>> = { clip: 46, boxedClip: 56, probe: 58, plug: 18 };
/** From the tip to the middle of what a hand takes hold of. */
export const GRIP_AT: Readonly<Record<LeadTip, number>> = { clip: 33, boxedClip: 38, probe: 36, plug: 9 };
