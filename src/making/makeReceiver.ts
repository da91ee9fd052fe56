/**
 * A whole receiver file from a deck and as much of the file as cannot be known from it. The service sheet is worked out from the design where the file has none; a sheet
 * that is there already stays.
 */
import type { Problem, Result } from '../base/result.ts';
import { bad, good } from '../base/result.ts';
import { checkReceiver } from '../files/checkReceiver.ts';
import { readReceiver } from '../files/receiverSchema.ts';
import type { Deck } from '../physics/deck.ts';
import { createDetectedLevels } from '../receiver/detectedLevels.ts';
import type { Receiver } from '../receiver/receiver.ts';
import { sCurveFrom } from './sCurveFrom.ts';
import { specificationFrom } from './specificationFrom.ts';
import { type Draft, type Json, type MakerWords, procedure, wholeReceiver } from './wholeReceiver.ts';

export interface MadeReceiver {
  /** the file, every key of it */
  readonly json: Json;
  readonly receiver: Receiver;
}

/** `file` is what problems call the file; whether the design meets its sheet is for `checkDesign` to say. */
export function makeReceiver(
  given: unknown,
  deck: Deck,
  file: string,
  names: { readonly id: string; readonly deck: string },
  say: MakerWords,
): Result<MadeReceiver> {
  const lacking = lacks(given, file, say);
  if (lacking.length > 0) return bad(...lacking);
  const draft = given as Draft;
  const whole = wholeReceiver(draft, deck, names, say);
  const asked = draft.responses.map((one, i) => {
    const { quantity } = (whole.responses as readonly Json[])[i]! as { readonly quantity?: Json };
    return one.specification ?? nothingAsked(one.setUp, quantity?.kind === 'difference');
  });
  const gauged = soundReceiver(withSpecifications(whole, asked), deck, file);
  if (!gauged.ok) return gauged;
  const problems: Problem[] = [];
  const specifications = gauged.value.receiver.responses.map((response, i) => {
    if (draft.responses[i]!.specification !== undefined) return draft.responses[i]!.specification;
    const place = `/responses/${i}`;
    const isSCurve = response.quantity.kind === 'difference';
    const made = (isSCurve ? sCurveFrom : specificationFrom)(gauged.value.receiver, deck, response);
    if (made !== null && typeof made !== 'string') return made;
    problems.push(
      made === null ? said(file, place, say.noSCurve, say.wantSCurve) : said(file, place, say[made], say.wantTop),
    );
    return response.specification;
  });
  if (problems.length > 0) return bad(...problems);
  const made = soundReceiver(withSpecifications(whole, specifications), deck, file);
  if (!made.ok || draft.procedure !== undefined) return made;
  const { json, receiver } = made.value;
  const lines = json as Json & Parameters<typeof procedure>[0];
  return soundReceiver({ ...json, procedure: procedure(lines, say, levelSaid(receiver, deck, say)) }, deck, file);
}

/** A sheet asks for its level as the tube shows it: volts, which have two figures. */
function levelSaid(receiver: Receiver, deck: Deck, say: MakerWords): string {
  const [first] = receiver.responses;
  const { referenceHz, sCurve } = first!.specification;
  const volts = Number(createDetectedLevels(receiver, deck, first!).referenceDetectedVolts.toPrecision(2));
  if (sCurve !== null) return say.levelOfPeaks(volts);
  return referenceHz === undefined ? say.level(volts) : say.levelAt(volts, referenceHz);
}

/** Without these nothing can be worked out. */
function lacks(json: unknown, file: string, say: MakerWords): Problem[] {
  if (typeof json !== 'object' || json === null || Array.isArray(json))
    return [said(file, '', say.noObject, say.wantObject)];
  const draft = json as Json;
  const missing = (['adjusters', 'testPoints', 'responses'] as const).filter((key) => !isList(draft[key]));
  const problems = missing.map((key): Problem => {
    return { file, place: `/${key}`, found: ['nothing'], wanted: ['valueFor', key] };
  });
  if (isList(draft.responses)) {
    draft.responses.forEach((one, i) => {
      if (typeof one.setUp === 'object' && one.setUp !== null) return;
      problems.push({ file, place: `/responses/${i}/setUp`, found: ['nothing'], wanted: ['valueFor', 'setUp'] });
    });
  }
  return problems;
}

function said(file: string, place: string, found: string, wanted: string): Problem {
  return { file, place, found: ['said', found], wanted: ['said', wanted] };
}

function isList(value: unknown): value is readonly Json[] {
  return Array.isArray(value) && value.length > 0 && value.every((one) => typeof one === 'object' && one !== null);
}

function withSpecifications(whole: Json, all: readonly unknown[]): Json {
  const responses = (whole.responses as readonly Json[]).map((one, i) => ({ ...one, specification: all[i] }));
  return { ...whole, responses };
}

function soundReceiver(json: Json, deck: Deck, file: string): Result<MadeReceiver> {
  const { value, problems: own } = readReceiver(json, file);
  const problems = [...own, ...(value === null ? [] : checkReceiver(value, deck, file))];
  return value === null || problems.length > 0 ? bad(...problems) : good({ json, receiver: value });
}

/** Stands where the specification is still to be worked out. */
const nothingAsked = ({ centreHz, spanHz }: Json, isSCurve: boolean): Json => ({
  fromHz: Number(centreHz) - Number(spanHz) / 2,
  toHz: Number(centreHz) + Number(spanHz) / 2,
  ...{ points: [], windows: [], tilts: [], traps: [], skirts: [], bandwidths: [], peaks: [] },
  sCurve: isSCurve ? anySCurve(Number(centreHz), Number(spanHz)) : null,
  gain: { hz: centreHz, minDb: -1, nominal: 1, weight: 1 },
});

const anySCurve = (centreHz: number, spanHz: number): Json => ({
  ...{ centreHz, risesWithFrequency: true },
  zero: { toleranceHz: spanHz / 10, weight: 1 },
  separation: { minHz: spanHz / 10, maxHz: spanHz, weight: 1 },
  symmetry: { low: 0.5, high: 2, weight: 1 },
  linearity: null,
});
