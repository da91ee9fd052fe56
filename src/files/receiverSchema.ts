/**
 * The shape of a receiver file: every key, every bound. Unknown keys are errors. The published JSON Schema is made from this; what no schema can say
 * (names that must match, orders, sums) is in receiverConsistency.ts.
 */
import * as v from 'valibot';
import type { Result } from '../base/result.ts';
import { BIAS_OUTPUTS } from '../bench/biasOutputs.ts';
import { CONTROL_ROWS } from '../bench/controls/rows.ts';
import type { Receiver } from '../receiver/receiver.ts';
import { controlSchema } from './controlSchema.ts';
import { withDetectorDefaults } from './detectorDefaults.ts';
import { tooBig } from './guardSize.ts';
import { knownOf, type Reading, resultOf } from './known.ts';
import { bringForward, RECEIVER_HISTORY } from './migrations.ts';
import { withoutNotes } from './notes.ts';
import { planSchema, slugPlanSchema } from './planSchema.ts';
import { receiverConsistency } from './receiverConsistency.ts';
import {
  byLanguage,
  deckFile,
  elementName,
  fileId,
  hertz,
  languageTag,
  list,
  nodeName,
  number,
  object,
  oneOf,
  shortId,
  text,
  yesOrNo,
} from './schemaPieces.ts';
import { asMessage, listed, problemsOf } from './schemaProblems.ts';
import { specificationSchema } from './specificationSchema.ts';

const volts = () => number(-1000, 1000, 'V');
const henries = () => number(1e-10, 1, 'H');

const adjusterSchema = object({
  id: shortId(),
  label: text(60),
  kind: oneOf('slug', 'trap'),
  element: elementName(),
  ganged: list(elementName(), 0, 4),
  nominalHenries: henries(),
  minHenries: henries(),
  maxHenries: henries(),
  travelTurns: number(2, 60, 'turns'),
  backlashTurns: number(0, 0.25, 'turns'),
  head: oneOf('hex', 'blade'),
  trapHz: v.nullable(hertz()),
  twoPeaks: v.exactOptional(object({ coupling: elementName(), share: number(0, 2) })),
  does: text(200),
  plan: slugPlanSchema,
});

const injectionSchema = v.variant('kind', [
  object({ kind: v.literal('deckSource'), element: elementName(), siemens: number(1e-9, 10, 'S') }),
  object({ kind: v.literal('node') }),
]);

const testPointSchema = object({
  id: shortId(),
  label: text(60),
  node: v.nullable(nodeName()),
  role: oneOf('signal', 'detector', 'agc', 'earth'),
  inject: v.nullable(injectionSchema),
  detector: v.nullable(shortId()),
  tap: v.exactOptional(oneOf('output', 'sum', 'open')),
  looseLoop: v.exactOptional(v.literal(true)),
  dcVolts: volts(),
  note: text(240),
  plan: object({ x: number(0, 1000), y: number(0, 1000) }),
});

const stageSchema = object({
  element: elementName(),
  device: text(60),
  gmSiemens: number(1e-6, 10, 'S'),
  saturationVolts: number(1e-3, 100, 'V'),
  limiter: yesOrNo(),
  agc: v.nullable(shortId()),
  inputCapacitor: v.nullable(elementName()),
  inputResistor: v.nullable(elementName()),
});

const biasLineSchema = object({
  at: shortId(),
  follows: v.nullable(shortId()),
  kind: oneOf('exponential', 'proportional'),
  referenceVolts: number(-50, 50, 'V'),
  scaleVolts: number(0.01, 100, 'V'),
  capacitanceFarads: number(0, 1e-9, 'F'),
  unclampedRestVolts: number(-50, 50, 'V'),
  unclampedVoltsPerDetectedVolt: number(-1000, 1000),
});

const diode = {
  saturationAmps: number(1e-15, 1e-2, 'A'),
  emissionVolts: number(0.02, 0.2, 'V'),
  loadOhms: number(1, 1e8, 'Ω'),
  loadFarads: v.exactOptional(number(1e-13, 1e-3, 'F')),
  carrierHz: v.exactOptional(hertz()),
};

const detectorSchema = v.variant('kind', [
  object({
    id: shortId(),
    kind: v.literal('envelope'),
    node: nodeName(),
    polarity: oneOf('positive', 'negative'),
    ...diode,
  }),
  object({
    id: shortId(),
    kind: oneOf('discriminator', 'ratio'),
    plus: nodeName(),
    minus: nodeName(),
    ...diode,
    reservoirFarads: v.nullable(number(1e-12, 1e-2, 'F')),
  }),
]);

const converterSchema = object({
  from: nodeName(),
  into: elementName(),
  siemens: number(1e-9, 10, 'S'),
  oscillator: object({ node: nodeName(), drive: elementName(), fromHz: hertz(), toHz: hertz() }),
});

const oscillatorSchema = object({
  device: text(60),
  node: nodeName(),
  drive: elementName(),
  fromHz: hertz(),
  toHz: hertz(),
  capacitor: elementName(),
  fineTuningFarads: number(0, 1e-10, 'F'),
  loopVolts: number(1e-3, 10, 'V'),
  loopOhms: number(0, 1e6, 'Ω'),
});

const videoFeedSchema = object({ detector: shortId(), into: elementName(), siemens: number(1e-9, 10, 'S') });

const { max: MOST_BIAS_VOLTS } = CONTROL_ROWS[BIAS_OUTPUTS[0].volts];
const biasSchema = object({
  at: shortId(),
  volts: number(-MOST_BIAS_VOLTS, MOST_BIAS_VOLTS, 'V'),
  toleranceVolts: number(0.01, 5, 'V'),
});

const setUpSchema = object({
  centreHz: controlSchema(CONTROL_ROWS.centreHz),
  spanHz: number(1e3, CONTROL_ROWS.spanHz.max, 'Hz'),
  mainsHz: oneOf(50, 60),
  injectAt: shortId(),
  observeAt: shortId(),
  observeWith: oneOf('detectorLead', 'probe'),
  levelDb: controlSchema(CONTROL_ROWS.levelDb),
  biases: list(biasSchema, 0, BIAS_OUTPUTS.length),
  source: oneOf('sweep', 'video'),
  slowSweep: v.exactOptional(v.literal(true)),
  carrierHz: v.nullable(hertz()),
  lowFrequencyAtLeft: yesOrNo(),
  markersHz: list(hertz(), 1, 8),
});

const responseSchema = object({
  id: shortId(),
  title: text(80),
  setUp: setUpSchema,
  quantity: v.variant('kind', [
    object({ kind: v.literal('carrier'), node: nodeName() }),
    object({ kind: v.literal('difference'), plus: nodeName(), minus: nodeName(), per: nodeName() }),
  ]),
  specification: specificationSchema,
});

const procedureStepSchema = object({
  phase: oneOf('safe', 'connect', 'setUp', 'align', 'prove'),
  text: text(240),
  parts: v.exactOptional(list(oneOf('sweep', 'phasing', 'blanking', 'bias', 'level', 'markers', 'trace'), 1, 7)),
  response: v.exactOptional(shortId()),
  at: v.exactOptional(shortId()),
  slugs: list(shortId(), 0, 24),
});

const byId = <T extends v.GenericSchema>(most: number, texts: T) =>
  v.pipe(v.record(shortId(), texts), v.maxEntries(most, asMessage(['atMost', most])));

const textSchema = object({
  setName: text(60),
  title: text(100),
  description: text(600),
  adjusters: byId(24, object({ label: text(60), does: text(200) })),
  testPoints: byId(24, object({ label: text(60), note: text(240) })),
  responses: byId(6, text(80)),
  procedure: list(text(240), 1, 24),
  cautions: list(text(240), 1, 12),
});

export const receiverSchema = object({
  format: v.literal('haystack-receiver'),
  version: v.literal(1),
  id: fileId(),
  setName: text(60),
  title: text(100),
  description: text(600),
  deck: deckFile(),
  mains: v.nullable(object({ hotChassis: yesOrNo(), highTensionVolts: number(0, 1000, 'V'), pictureTube: yesOrNo() })),
  adjusters: list(adjusterSchema, 1, 24),
  testPoints: list(testPointSchema, 2, 24),
  spreads: v.exactOptional(
    object({
      capacitors: v.exactOptional(number(0, 0.2)),
      resistors: v.exactOptional(number(0, 0.3)),
      couplings: v.exactOptional(number(0, 0.2)),
      transconductances: v.exactOptional(number(0, 0.3)),
    }),
  ),
  notParts: v.exactOptional(list(elementName(), 1, 80)),
  probeInDeck: v.nullable(object({ testPoint: shortId(), elements: list(elementName(), 1, 6) })),
  stages: list(stageSchema, 0, 16),
  biasLines: list(biasLineSchema, 0, 4),
  detectors: list(detectorSchema, 0, 8),
  converter: v.nullable(converterSchema),
  videoFeed: v.nullable(videoFeedSchema),
  oscillator: v.exactOptional(oscillatorSchema),
  crystalsHz: list(hertz(), 1, 24),
  responses: list(responseSchema, 1, 6),
  procedure: list(procedureStepSchema, 1, 24),
  cautions: list(text(240), 1, 12),
  plan: planSchema,
  language: v.exactOptional(languageTag()),
  translations: v.exactOptional(byLanguage(textSchema)),
});

type ReadReceiver = v.InferOutput<typeof receiverSchema>;
/** What its detectors leave out has been put in before the file is looked at. */
type WholeReceiver = Omit<ReadReceiver, 'detectors'> & {
  readonly detectors: readonly Required<ReadReceiver['detectors'][number]>[];
};

/** A receiver that is whole in itself, or every problem of the file. Whether its deck bears it out is for `checkReceiver` to say. */
export function parseReceiver(json: unknown, file: string): Result<Receiver> {
  return resultOf(readReceiver(json, file));
}

/** As `parseReceiver`; with problems it still has what is known of the receiver, to be checked as far as that goes (`known.ts`). */
export function readReceiver(json: unknown, file: string): Reading<Receiver> {
  const big = tooBig(json, file);
  if (big !== null) return { value: null, problems: [big] };
  const forward = bringForward(json, RECEIVER_HISTORY, file);
  if (!forward.ok) return { value: null, problems: forward.problems };
  const shape = v.safeParse(receiverSchema, withDetectorDefaults(withoutNotes(forward.value, new Set(), 'atHead')));
  const issues = shape.issues ?? [];
  const receiver = knownOf<WholeReceiver>(shape.output, issues);
  const beyond = receiver === null ? [] : receiverConsistency(receiver, file);
  return { value: receiver, problems: listed([...problemsOf(issues, file), ...beyond], file) };
}
