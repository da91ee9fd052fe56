/** The only things that can happen at the bench. A run is a list of these with their times. */

import type { Diagnosis } from '../scenario/diagnosis.ts';
import type { FindingAnswer } from '../scenario/findingAnswer.ts';
import type { ProofId } from '../scenario/proofId.ts';
import type { BenchState, Controls, LeadEnd, LeadId, ToolId } from './benchState.ts';
import type { IdsOfKind } from './controls/row.ts';
import type { CONTROL_ROWS } from './controls/rows.ts';

export type ControlId = keyof Controls;
/** The controls that turn, and those that are flipped. */
export type KnobId = IdsOfKind<typeof CONTROL_ROWS, 'clicks' | 'range'>;
export type SwitchId = Exclude<ControlId, KnobId>;

export type BenchEvent =
  | { readonly type: 'cautionsAcknowledged' }
  | { readonly type: 'isolationSwitched'; readonly on: boolean }
  | { readonly type: 'powerSwitched'; readonly on: boolean }
  | { readonly type: 'leadConnected'; readonly lead: LeadId; readonly to: LeadEnd }
  | { readonly type: 'leadRemoved'; readonly lead: LeadId }
  | { readonly type: 'controlSet'; readonly control: ControlId; readonly value: number | boolean | string }
  | { readonly type: 'crystalPlugged'; readonly hz: number }
  | { readonly type: 'crystalPulled'; readonly hz: number }
  | { readonly type: 'toolTaken'; readonly tool: ToolId | null }
  /** the tool is set into a slug, or taken out (null) */
  | { readonly type: 'toolPlaced'; readonly slug: string | null }
  /** positive = core in; the tool in the hand is used */
  | { readonly type: 'slugTurned'; readonly slug: string; readonly turns: number }
  /** no longer made: old runs may hold it, and it has no effect */
  | { readonly type: 'readingTaken'; readonly what: string; readonly value: number }
  | { readonly type: 'partReplaced'; readonly element: string }
  /** the meter's prods are held to the ends of a part: see partMeter.ts */
  | { readonly type: 'partMetered'; readonly element: string }
  /** a good capacitor is clipped across one of the set, or taken off again (null): see bridge.ts */
  | { readonly type: 'partBridged'; readonly element: string | null }
  /** what was seen during a proof: see finding.ts */
  | {
      readonly type: 'findingStated';
      readonly proof: ProofId;
      readonly answer: FindingAnswer;
      readonly figure: number | null;
    }
  | { readonly type: 'hintAsked'; readonly index: number }
  /** a helper makes the set safe, clips the leads on and sets the picture up: see madeReady.ts */
  | { readonly type: 'setUpByHelper' }
  /** the lines of this response, as they read on the tube before a slug was turned */
  | { readonly type: 'asFoundRecorded'; readonly response: string }
  /** what was wrong with the set as it was found: see diagnosis.ts */
  | ({ readonly type: 'diagnosisStated' } & Diagnosis)
  | { readonly type: 'signedOff' };

/** Why an act was impossible; the state is then unchanged. `describe` has a sentence for each. */
export type Refusal =
  | 'runIsOver'
  | 'noSuchLead'
  | 'noSuchPoint'
  | 'pointRefusesLead'
  | 'pointTaken'
  | 'leadNotConnected'
  | 'noSuchControl'
  | 'valueOutOfRange'
  | 'noSuchCrystal'
  | 'crystalAlreadyIn'
  | 'crystalNotIn'
  | 'rackFull'
  | 'noSuchSlug'
  | 'noToolInHand'
  | 'slugCracked'
  | 'noTurn'
  | 'noSuchPart'
  | 'noCapacitor'
  | 'cautionsFirst'
  | 'alreadySo'
  | 'nothingToSign'
  | 'badTime'
  | 'noHint'
  | 'notAsFound'
  /** a helper comes before anything has been clipped, turned or replaced */
  | 'alreadyBegun'
  | 'nothingProved'
  | 'alreadySaid'
  | 'notInThisScenario'
  /** a demonstration is running: only the page says this, and no log holds it */
  | 'technicianAtBench'
  /** the run's log has no room left; only the diagnosis and signing off are still taken */
  | 'logFull';

export type Applied =
  | { readonly ok: true; readonly state: BenchState; readonly heard: readonly BenchSound[] }
  | { readonly ok: false; readonly reason: Refusal };

/** What an ear would notice; the sound room and the screen reader's live region both use it. */
export type BenchSound =
  | {
      readonly kind:
        | 'switch'
        | 'relay'
        | 'clip'
        | 'unclip'
        | 'crystal'
        | 'blade'
        | 'stop'
        | 'crack'
        | 'slip'
        | 'unsafe'
        | 'sign';
    }
  | { readonly kind: 'detent'; readonly slug: string; readonly nearStop: boolean }
  | { readonly kind: 'proof'; readonly proof: ProofId };
