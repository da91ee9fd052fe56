/** The shape of each event as a file may hold it. Whether the act was possible is for the bench to say, not for the schema. */
import * as v from 'valibot';
import type { ControlId } from '../bench/benchEvent.ts';
import { RESTING_CONTROLS } from '../bench/setup.ts';
import type { TimedEvent } from './runFile.ts';

/** Longest run that a file may tell of: one day. */
export const RUN_LIMIT_MS = 86_400_000;

const atMs = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(RUN_LIMIT_MS));
const name = v.pipe(v.string(), v.minLength(1), v.maxLength(40));
const readingName = v.pipe(v.string(), v.maxLength(80));
const figure = v.pipe(v.number(), v.finite());
const lead = v.picklist(['rf', 'y', 'x', 'earth', 'biasA', 'biasB', 'meter']);
const tool = v.picklist(['hex', 'blade', 'steel']);
const control = v.picklist(Object.keys(RESTING_CONTROLS) as ControlId[]);
const value = v.union([figure, v.boolean(), v.pipe(v.string(), v.maxLength(40))], 'number, yes/no or word');

export const timedEventSchema = v.variant('type', [
  v.strictObject({ atMs, type: v.literal('cautionsAcknowledged') }),
  v.strictObject({ atMs, type: v.literal('isolationSwitched'), on: v.boolean() }),
  v.strictObject({ atMs, type: v.literal('powerSwitched'), on: v.boolean() }),
  v.strictObject({ atMs, type: v.literal('leadConnected'), lead, to: name }),
  v.strictObject({ atMs, type: v.literal('leadRemoved'), lead }),
  v.strictObject({ atMs, type: v.literal('controlSet'), control, value }),
  v.strictObject({ atMs, type: v.literal('crystalPlugged'), hz: figure }),
  v.strictObject({ atMs, type: v.literal('crystalPulled'), hz: figure }),
  v.strictObject({ atMs, type: v.literal('toolTaken'), tool: v.nullable(tool) }),
  v.strictObject({ atMs, type: v.literal('toolPlaced'), slug: v.nullable(name) }),
  v.strictObject({ atMs, type: v.literal('slugTurned'), slug: name, turns: figure }),
  v.strictObject({ atMs, type: v.literal('readingTaken'), what: readingName, value: figure }),
  v.strictObject({ atMs, type: v.literal('partReplaced'), element: name }),
  v.strictObject({ atMs, type: v.literal('hintAsked'), index: v.pipe(v.number(), v.integer(), v.minValue(0)) }),
  v.strictObject({ atMs, type: v.literal('signedOff') }),
]);

// Both ways round, so that neither the schema nor the union can grow alone.
type Parsed = v.InferOutput<typeof timedEventSchema>;
true satisfies Parsed extends TimedEvent ? true : false;
true satisfies TimedEvent extends Parsed ? true : false;
