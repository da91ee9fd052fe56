/**
 * What keeps a step of the sheet from its tick, said where the step stands: what is missing, where, and which way. Of a missed line of the sheet it comes in
 * stages, the one who asks deciding how far: where to look, what it means, which slug and which way.
 */

import type { BenchState } from '../bench/benchState.ts';
import { besideBand, halfBand } from '../bench/besideBand.ts';
import { BIAS_OUTPUTS } from '../bench/biasOutputs.ts';
import type { Facts } from '../bench/facts.ts';
import { faintByLevel } from '../bench/faintByLevel.ts';
import { heatersComingUp } from '../bench/heat.ts';
import type { BenchSetup } from '../bench/setup.ts';
import { sheetFittings, sheetLeads } from '../bench/sheetSetUp.ts';
import { linesOf } from '../grading/lines.ts';
import { SHEET_RULES } from '../grading/rules/sheetRules.ts';
import { responseById } from '../receiver/responses.ts';
import type { OffLine } from '../session/alignment.ts';
import type { MissingSaid } from '../words/missingSaid.ts';
import type { Words } from '../words/words.ts';
import { lineWords } from './ruleWords.ts';
import { saidOf } from './said.ts';
import { missingSentence } from './sentence.ts';
import { slugName } from './slugName.ts';

/** As `StepLack` of the steps has it. */
export interface Lack {
  readonly code: string;
  readonly line?: OffLine;
  readonly slug?: { readonly id: string; readonly turns: number };
}

type Moment = Pick<BenchState, 'controls' | 'heat' | 'powered' | 'seconds'>;

/** At least one sentence. */
export function lackStages(
  words: Words,
  setup: Pick<BenchSetup, 'receiver' | 'scenario'>,
  facts: Facts,
  state: Moment,
  lack: Lack,
): readonly string[] {
  if (lack.line !== undefined) return lineStages(words, setup, lack.line, lack.slug ?? null);
  const { missingAt } = words;
  if (!Object.hasOwn(missingAt, lack.code)) return [missingSentence(words, lack.code)];
  return [missingAt[lack.code as keyof typeof missingAt](saidOfSheet(setup, facts, state))];
}

function lineStages(
  words: Words,
  { receiver }: Pick<BenchSetup, 'receiver'>,
  line: OffLine,
  slug: Lack['slug'] | null,
): readonly string[] {
  const cause = slug === null || slug === undefined ? null : { slug: slug.id, turns: slug.turns };
  const [draft] = linesOf(SHEET_RULES, { demand: [{ ...line, cause }] });
  if (draft === undefined) return [missingSentence(words, 'linesOutside')];
  const { look, turn, noSlug } = words.lineAdvice;
  const { bad, seen, look: lookAt } = lineWords(words, draft.rule);
  const { id, rule, block, measured, low, high, unit, hz = null, toHz = null } = draft;
  const figure = { id, rule, block, measured, low, high, unit, hz, toHz, cause };
  const said = saidOf(words, { ...figure, points: 0, max: 0, subject: null, atSeconds: null }, receiver);
  const told = (text: typeof bad): string => (typeof text === 'string' ? text : text(said));
  const what = told(bad);
  return [
    look(told(lookAt ?? seen ?? bad)),
    `${what.charAt(0).toUpperCase()}${what.slice(1)}.`,
    // A core that stands too far in has to come out.
    cause === null ? noSlug : turn(slugName(words, receiver, cause.slug), cause.turns < 0),
  ];
}

/** A step of the knob is 0.1 V. */
const SAME_VOLTS = 0.05;

function knobSays({ controls }: Pick<BenchState, 'controls'>, output: number, volts: number): boolean {
  const { volts: knob, polarity } = BIAS_OUTPUTS[output]!;
  const said = (controls[polarity] === '-' ? -1 : 1) * controls[knob];
  return Math.abs(said - volts) < SAME_VOLTS;
}

function saidOfSheet(
  { receiver, scenario }: Pick<BenchSetup, 'receiver' | 'scenario'>,
  facts: Facts,
  state: Moment,
): MissingSaid {
  const response = responseById(receiver, facts.response);
  const { setUp } = response;
  const { rf, y, earth } = sheetLeads(receiver, response);
  return {
    rf: rf ?? '',
    y: y ?? '',
    earth: earth ?? '',
    probe: sheetFittings(setUp).yTip === 'probe',
    biases: setUp.biases.map(({ at, volts }, i) => ({
      output: BIAS_OUTPUTS[i]!.lead === 'biasA' ? 'A' : 'B',
      at,
      volts,
      knobSays: knobSays(state, i, volts),
    })),
    oscillator: response.specification.peaks.some((peak) => peak.oscillator),
    centreHz: setUp.centreHz,
    spanHz: setUp.spanHz,
    levelDb: setUp.levelDb,
    carrierHz: setUp.carrierHz,
    video: setUp.source === 'video',
    crystalsHz: facts.markersMissingHz,
    faint: faintByLevel({ receiver }, facts, state),
    besideBand: besideBand(facts),
    halfBand: halfBand({ receiver, scenario }, facts, state),
    heating: heatersComingUp({ receiver, scenario }, state),
  };
}
