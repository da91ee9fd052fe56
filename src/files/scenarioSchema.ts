/**
 * The shape of a scenario file: every key, every bound. Unknown keys are errors. The published JSON Schema is made from this; what must hold beyond
 * the shape is in scenarioConsistency.ts, and what must hold against the receiver in checkScenario.ts.
 */
import * as v from 'valibot';
import type { Result } from '../base/result.ts';
import { PAR_NOT_KNOWN } from '../scenario/par.ts';
import { PROOFS } from '../scenario/proofId.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { inEarlierSense } from './earlierFaults.ts';
import { faultFromFile } from './faultFile.ts';
import { faultSchema } from './faultSchema.ts';
import { tooBig } from './guardSize.ts';
import { knownOf, mappedAsKnown, type Reading, resultOf, withMembers } from './known.ts';
import { bringForward } from './migrations.ts';
import { withoutNotes } from './notes.ts';
import { scenarioConsistency } from './scenarioConsistency.ts';
import { SCENARIO_HISTORY } from './scenarioHistory.ts';
import {
  byLanguage,
  fileId,
  integer,
  languageTag,
  list,
  number,
  object,
  oneOf,
  shortId,
  text,
  yesOrNo,
} from './schemaPieces.ts';
import { asMessage, listed, problemsOf } from './schemaProblems.ts';
import { startControlsSchema } from './startControlsSchema.ts';

const turns = (most: number) => number(-most, most, 'turns');
const points = () => number(0, 100);
const title = () => text(60);
const words = () => object({ brief: text(240), story: text(800), lesson: text(300) });
const hints = () => list(text(240), 0, 8);

const NO_CHANCE = 1;

const startSchema = object({
  slugs: v.optional(v.pipe(v.record(shortId(), turns(60)), v.maxEntries(24, asMessage(['slugsAtMost', 24]))), {}),
  randomTurns: v.optional(number(0, 60, 'turns'), 0),
  controls: v.optional(startControlsSchema, {}),
  prepared: v.optional(list(oneOf('safe', 'connect'), 0, 2), []),
  leads: v.exactOptional(
    object({
      rf: v.exactOptional(v.nullable(shortId())),
      y: v.exactOptional(v.nullable(shortId())),
      earth: v.exactOptional(v.nullable(shortId())),
      biasA: v.exactOptional(v.nullable(shortId())),
      biasB: v.exactOptional(v.nullable(shortId())),
    }),
  ),
  steelIn: v.exactOptional(shortId()),
});

const benchSchema = object({
  phaseLagDegrees: v.optional(number(-85, 85, 'degrees'), 0),
  xSwapped: v.optional(yesOrNo(), false),
  mainsHz: v.optional(oneOf(50, 60), 60),
  dialErrorHz: v.optional(number(-1e6, 1e6, 'Hz'), 0),
  centreErrorHz: v.exactOptional(number(-1e6, 1e6, 'Hz')),
});

const lifeSchema = object({
  noise: v.exactOptional(number(0, 4)),
  cold: v.exactOptional(yesOrNo()),
  driftFarads: v.exactOptional(number(0, 1e-12, 'F')),
  biasHumVolts: v.exactOptional(number(0, 1, 'V')),
  supplyHum: v.exactOptional(number(0, 0.2)),
  unevenDb: v.exactOptional(number(0, 6, 'dB')),
  leakageDb: v.exactOptional(v.nullable(number(-120, -20, 'dB'))),
  harmonicDb: v.exactOptional(v.nullable(number(-80, -6, 'dB'))),
  handFarads: v.exactOptional(number(0, 1e-12, 'F')),
  biasKnobError: v.exactOptional(number(0, 0.5)),
  biasOhms: v.exactOptional(number(0, 100e3, 'Ω')),
  crystalHarmonics: v.exactOptional(number(0, 1)),
  strapHumVolts: v.exactOptional(number(0, 1, 'V')),
  yGainError: v.exactOptional(number(-0.5, 1)),
});

const aidsSchema = object({
  hints: v.optional(yesOrNo(), false),
  toleranceMarks: v.optional(yesOrNo(), false),
});

const weightsSchema = object({
  response: points(),
  truth: points(),
  proofs: points(),
  care: points(),
  economy: points(),
});
const USUAL_WEIGHTS = { response: 50, truth: 20, proofs: 10, care: 10, economy: 10 };
const proofsSchema = list(oneOf(...PROOFS), 0, PROOFS.length);

/** What is left out of a file holds as it says here: what is the same in every job need not be written. */
export const scenarioSchema = object({
  format: v.literal('haystack-scenario'),
  version: v.literal(2),
  id: fileId(),
  code: v.pipe(v.string(asMessage(['cardCode'])), v.regex(/^[A-Z]{1,3}-[0-9]{2}$/, asMessage(['cardCode']))),
  title: title(),
  author: v.exactOptional(text(80)),
  track: fileId(),
  order: integer(1, 999),
  difficulty: v.optional(oneOf(1, 2, 3), 1),
  recommendedAfter: v.optional(list(fileId(), 0, 8), []),
  receiver: fileId(),
  responses: v.exactOptional(list(shortId(), 1, 6)),
  words: words(),
  seed: v.optional(integer(0, 2 ** 31 - 1), NO_CHANCE),
  set: v.exactOptional(integer(0, 2 ** 31 - 1)),
  attempt: v.exactOptional(integer(0, 2 ** 31 - 1)),
  start: startSchema,
  bench: v.optional(benchSchema, {}),
  life: v.exactOptional(lifeSchema),
  faults: v.optional(list(faultSchema, 0, 8), []),
  dealsFaults: v.exactOptional(yesOrNo()),
  slugsRight: v.exactOptional(yesOrNo()),
  aids: v.optional(aidsSchema, {}),
  sealed: v.optional(yesOrNo(), false),
  timeLimitSeconds: v.optional(v.nullable(integer(60, 14_400, 'seconds')), null),
  toleranceFactor: v.optional(number(0.5, 5), 1),
  weights: v.optional(weightsSchema, USUAL_WEIGHTS),
  proofs: v.optional(proofsSchema, ['halveLevel', 'markersOffOn', 'touchEarth']),
  par: v.exactOptional(object({ turns: number(0.125, 2000, 'turns'), seconds: integer(30, 14_400, 'seconds') })),
  hints: v.optional(hints(), []),
  language: v.exactOptional(languageTag()),
  translations: v.exactOptional(byLanguage(object({ title: title(), words: words(), hints: hints() }))),
});

/** Objects whose keys are names and not ours. */
const SCENARIO_MAPS = new Set(['slugs', 'controls', 'translations']);

/** A scenario that is whole in itself, or every problem of the file. Whether its receiver bears it out is for `checkScenario` to say. */
export function parseScenario(json: unknown, file: string): Result<Scenario> {
  return resultOf(readScenario(json, file));
}

/** As `parseScenario`; with problems it still has what is known of the scenario, to be checked as far as that goes (`known.ts`). */
export function readScenario(json: unknown, file: string): Reading<Scenario> {
  const big = tooBig(json, file);
  if (big !== null) return { value: null, problems: [big] };
  const forward = bringForward(json, SCENARIO_HISTORY, file);
  if (!forward.ok) return { value: null, problems: forward.problems };
  const shape = v.safeParse(scenarioSchema, withoutNotes(forward.value, SCENARIO_MAPS, 'anywhere'));
  const issues = shape.issues ?? [];
  const known = knownOf<v.InferOutput<typeof scenarioSchema>>(shape.output, issues);
  const wrong = inEarlierSense(forward.value, problemsOf(issues, file), file);
  if (known === null) return { value: null, problems: wrong };
  const scenario = withMembers(known, {
    par: () => known.par ?? PAR_NOT_KNOWN,
    faults: () => mappedAsKnown(known.faults, faultFromFile),
  }) as Scenario;
  return {
    value: scenario,
    problems: listed([...wrong, ...scenarioConsistency(scenario, file)], file),
  };
}
