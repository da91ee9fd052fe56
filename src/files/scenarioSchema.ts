/**
 * The shape of a scenario file: every key, every bound. Unknown keys are errors. The published JSON Schema is made from this; what must hold beyond
 * the shape is in scenarioConsistency.ts, and what must hold against the receiver in checkScenario.ts.
 */
import * as v from 'valibot';
import { bad, type Result } from '../base/result.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { faultSchema } from './faultSchema.ts';
import { tooBig } from './guardSize.ts';
import { bringForward, SCENARIO_HISTORY } from './migrations.ts';
import { scenarioConsistency } from './scenarioConsistency.ts';
import {
  byLanguage,
  fileId,
  integer,
  languageTag,
  list,
  number,
  oneOf,
  shortId,
  text,
  yesOrNo,
} from './schemaPieces.ts';
import { problemsOf } from './schemaProblems.ts';
import { startControlsSchema } from './startControlsSchema.ts';

const turns = (most: number) => number(-most, most);
const points = () => number(0, 100);
const title = () => text(60);
const words = () => v.strictObject({ brief: text(240), story: text(800), lesson: text(300) });
const hints = () => list(text(240), 0, 8);

const startSchema = v.strictObject({
  slugs: v.pipe(v.record(shortId(), turns(60)), v.maxEntries(24, 'at most 24 slugs')),
  scatterTurns: number(0, 60),
  controls: startControlsSchema,
  prepared: list(oneOf('safe', 'connect'), 0, 2),
  leads: v.exactOptional(
    v.strictObject({
      rf: v.exactOptional(v.nullable(shortId())),
      y: v.exactOptional(v.nullable(shortId())),
      earth: v.exactOptional(v.nullable(shortId())),
      biasA: v.exactOptional(v.nullable(shortId())),
      biasB: v.exactOptional(v.nullable(shortId())),
    }),
  ),
  steelIn: v.exactOptional(shortId()),
});

const benchSchema = v.strictObject({
  phaseLagDegrees: number(-85, 85),
  xSwapped: yesOrNo(),
  mainsHz: oneOf(50, 60),
  dialErrorHz: number(-1e6, 1e6),
  centreErrorHz: v.exactOptional(number(-1e6, 1e6)),
});

const lifeSchema = v.strictObject({
  noise: v.exactOptional(number(0, 4)),
  cold: v.exactOptional(yesOrNo()),
  driftFarads: v.exactOptional(number(0, 1e-12)),
  biasHumVolts: v.exactOptional(number(0, 1)),
  supplyHum: v.exactOptional(number(0, 0.2)),
  unevenDb: v.exactOptional(number(0, 6)),
  leakageDb: v.exactOptional(v.nullable(number(-120, -20))),
  harmonicDb: v.exactOptional(v.nullable(number(-80, -6))),
  handFarads: v.exactOptional(number(0, 1e-12)),
});

export const scenarioSchema = v.strictObject({
  format: v.literal('haystack-scenario'),
  version: v.literal(1),
  id: fileId(),
  code: v.pipe(
    v.string('a code such as "S-01"'),
    v.regex(/^[A-Z]{1,3}-[0-9]{2}$/, 'one to three capitals, a hyphen and two digits, such as "S-01"'),
  ),
  title: title(),
  track: fileId(),
  order: integer(1, 999),
  difficulty: oneOf(1, 2, 3),
  after: list(fileId(), 0, 8),
  receiver: fileId(),
  work: v.exactOptional(list(shortId(), 1, 6)),
  words: words(),
  seed: integer(0, 2 ** 31 - 1),
  set: v.exactOptional(integer(0, 2 ** 31 - 1)),
  attempt: v.exactOptional(integer(0, 2 ** 31 - 1)),
  start: startSchema,
  bench: benchSchema,
  life: v.exactOptional(lifeSchema),
  faults: list(faultSchema, 0, 8),
  aids: v.strictObject({ hints: yesOrNo(), waxMarks: yesOrNo(), exactReadouts: yesOrNo() }),
  sealed: yesOrNo(),
  timeLimitSeconds: v.nullable(integer(60, 14_400)),
  toleranceFactor: number(0.5, 5),
  weights: v.strictObject({
    response: points(),
    truth: points(),
    proofs: points(),
    care: points(),
    economy: points(),
  }),
  proofs: list(oneOf('halveLevel', 'markersOffOn', 'touchEarth', 'swingPhase', 'skirts'), 0, 5),
  par: v.strictObject({ turns: number(0.125, 2000), seconds: integer(30, 14_400) }),
  hints: hints(),
  language: v.exactOptional(languageTag()),
  translations: v.exactOptional(byLanguage(v.strictObject({ title: title(), words: words(), hints: hints() }))),
});

/** A scenario that is whole in itself, or every problem of the file. Whether its receiver bears it out is for `checkScenario` to say. */
export function parseScenario(json: unknown, file: string): Result<Scenario> {
  const big = tooBig(json, file);
  if (big !== null) return bad(big);
  const forward = bringForward(json, SCENARIO_HISTORY, file);
  if (!forward.ok) return forward;
  const shape = v.safeParse(scenarioSchema, forward.value);
  if (!shape.success) return bad(...problemsOf(shape.issues, file));
  const scenario: Scenario = shape.output;
  const problems = scenarioConsistency(scenario, file);
  return problems.length === 0 ? { ok: true, value: scenario } : bad(...problems);
}
