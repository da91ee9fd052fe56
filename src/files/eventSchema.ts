/** The shape of each event as a file may hold it. Whether the act was possible is for the bench to say, not for the schema. */
import * as v from 'valibot';
import { LEAD_IDS, TOOL_IDS } from '../bench/benchState.ts';
import { CONTROLS } from '../bench/controls/controls.ts';
import { SET_UP_MATTERS } from '../scenario/diagnosis.ts';
import { FINDING_ANSWERS } from '../scenario/findingAnswer.ts';
import { PROOFS } from '../scenario/proofId.ts';
import type { TimedEvent } from './runFile.ts';
import { integer, list, number, object, oneOf, shortId, text, yesOrNo } from './schemaPieces.ts';
import { asMessage } from './schemaProblems.ts';

/** Longest run that a file may tell of: one day. */
const RUN_LIMIT_MS = 86_400_000;

const atMs = integer(0, RUN_LIMIT_MS);
const on = yesOrNo();
const hz = number(0, 1e9, 'Hz');
const lead = oneOf(...LEAD_IDS);
const tool = oneOf(...TOOL_IDS);
const proof = oneOf(...PROOFS);
const answer = oneOf(...FINDING_ANSWERS);
const matter = oneOf(...SET_UP_MATTERS);
/** More than any sheet has slugs, or any tray has parts. */
const MOST_NAMED = 200;
const value = v.union([number(-1e9, 1e9), v.boolean(), text(20)], asMessage(['controlValue']));

export function timedEventSchemaOf<Control extends string>(controls: readonly Control[]) {
  return v.variant('type', [
    object({ atMs, type: v.literal('cautionsAcknowledged') }),
    object({ atMs, type: v.literal('isolationSwitched'), on }),
    object({ atMs, type: v.literal('powerSwitched'), on }),
    object({ atMs, type: v.literal('leadConnected'), lead, to: shortId() }),
    object({ atMs, type: v.literal('leadRemoved'), lead }),
    object({ atMs, type: v.literal('controlSet'), control: v.picklist(controls), value }),
    object({ atMs, type: v.literal('crystalPlugged'), hz }),
    object({ atMs, type: v.literal('crystalPulled'), hz }),
    object({ atMs, type: v.literal('toolTaken'), tool: v.nullable(tool) }),
    object({ atMs, type: v.literal('toolPlaced'), slug: v.nullable(shortId()) }),
    object({ atMs, type: v.literal('slugTurned'), slug: shortId(), turns: number(-100, 100, 'turns') }),
    object({ atMs, type: v.literal('readingTaken'), what: text(80), value: number(-1e12, 1e12) }),
    object({ atMs, type: v.literal('partReplaced'), element: text(32) }),
    object({ atMs, type: v.literal('partMetered'), element: text(32) }),
    object({ atMs, type: v.literal('partBridged'), element: v.nullable(text(32)) }),
    object({ atMs, type: v.literal('findingStated'), proof, answer, figure: v.nullable(number(-100, 100)) }),
    object({ atMs, type: v.literal('hintAsked'), index: integer(0, 1000) }),
    object({ atMs, type: v.literal('setUpByHelper') }),
    object({ atMs, type: v.literal('asFoundRecorded'), response: shortId() }),
    object({
      atMs,
      type: v.literal('diagnosisStated'),
      slugs: list(shortId(), 0, MOST_NAMED),
      parts: list(text(32), 0, MOST_NAMED),
      setUp: list(matter, 0, SET_UP_MATTERS.length),
    }),
    object({ atMs, type: v.literal('signedOff') }),
  ]);
}

export const timedEventSchema = timedEventSchemaOf(CONTROLS.ids);

// Both ways round, so that neither the schema nor the union can grow alone.
type Parsed = v.InferOutput<typeof timedEventSchema>;
true satisfies Parsed extends TimedEvent ? true : false;
true satisfies TimedEvent extends Frozen<Parsed> ? true : false;
/** An event that has been read is never changed. */
type Frozen<T> = T extends readonly (infer I)[]
  ? readonly I[]
  : T extends object
    ? { readonly [K in keyof T]: Frozen<T[K]> }
    : T;
