/** `sheet`: makes the service sheet of a receiver from its deck and what its file says already, and prints the file to be kept. */
import { existsSync } from 'node:fs';
import path from 'node:path';
import type { Problem } from '../../base/result.ts';
import { checkDesign } from '../../files/checkDesign.ts';
import { checkReceiver } from '../../files/checkReceiver.ts';
import { readJson } from '../../files/parseJson.ts';
import { readReceiver } from '../../files/receiverSchema.ts';
import { withTextPlaces } from '../../files/textPlaces.ts';
import type { Deck } from '../../physics/deck.ts';
import { readDeck } from '../../physics/readDeck.ts';
import type { Receiver } from '../../receiver/receiver.ts';
import { placeOf, readText } from '../files.ts';
import { layOut } from '../layOut.ts';
import { EXIT, type ExitCode, type Terminal, tellProblems, worded } from '../terminal.ts';
import { specificationFrom } from './specificationFrom.ts';
import { type Draft, type Json, wholeReceiver } from './wholeReceiver.ts';

export interface SheetOptions {
  readonly receiver?: string;
}

export function sheet(terminal: Terminal, deckName: string, options: SheetOptions): ExitCode {
  const say = terminal.words.cli.sheet;
  const deckText = readText(terminal, deckName);
  const deck = deckText.ok ? readDeck(deckText.value, deckName) : deckText;
  if (!deck.ok) return tellProblems(terminal, deck.problems);
  const file = options.receiver ?? path.join(path.dirname(deckName), 'receiver.json');
  if (options.receiver === undefined && !existsSync(placeOf(file))) {
    const problem = worded({ file: deckName, place: '', found: say.noReceiver, wanted: say.wantReceiver });
    return tellProblems(terminal, [problem]);
  }
  const text = readText(terminal, file);
  if (!text.ok) return tellProblems(terminal, text.problems);
  const tell = (problems: readonly Problem[]): ExitCode =>
    tellProblems(terminal, withTextPlaces(problems, file, text.value));
  const json = readJson(text.value, file);
  if (json.problems.length > 0) return tell(json.problems);
  const lacking = lacks(terminal, json.value, file);
  if (lacking.length > 0) return tell(lacking);
  const draft = json.value as Draft;
  const names = { id: path.basename(path.dirname(placeOf(deckName))), deck: path.basename(deckName) };
  const whole = wholeReceiver(draft, deck.value, names, say);
  const gauged = withSpecifications(
    whole,
    draft.responses.map((one) => one.specification ?? NOTHING_ASKED(one.setUp)),
  );
  const first = soundReceiver(gauged, deck.value, file);
  if (first.receiver === null) return tell(first.problems);
  const { receiver } = first;
  const problems: Problem[] = [];
  const specifications = receiver.responses.map((response, i) => {
    if (draft.responses[i]!.specification !== undefined) return draft.responses[i]!.specification;
    const place = `/responses/${i}`;
    if (response.quantity.kind !== 'carrier') {
      problems.push(worded({ file, place, found: say.noSpecification, wanted: say.wantSpecification }));
      return response.specification;
    }
    const made = specificationFrom(receiver, deck.value, response);
    if (made === null) problems.push(worded({ file, place, found: say.flat, wanted: say.wantTop }));
    return made ?? response.specification;
  });
  if (problems.length > 0) return tell(problems);
  const made = withSpecifications(whole, specifications);
  const last = soundReceiver(made, deck.value, file);
  if (last.receiver === null) return tell(last.problems);
  const misses = checkDesign(last.receiver, deck.value, file);
  if (misses.length > 0) return tell(misses);
  terminal.out(layOut(made));
  return EXIT.good;
}

/** Without these nothing can be worked out. */
function lacks(terminal: Terminal, json: unknown, file: string): Problem[] {
  const say = terminal.words.cli.sheet;
  if (typeof json !== 'object' || json === null || Array.isArray(json))
    return [worded({ file, place: '', found: say.noObject, wanted: say.wantObject })];
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

function isList(value: unknown): value is readonly Json[] {
  return Array.isArray(value) && value.length > 0 && value.every((one) => typeof one === 'object' && one !== null);
}

function withSpecifications(whole: Json, all: readonly unknown[]): Json {
  const responses = (whole.responses as readonly Json[]).map((one, i) => ({ ...one, specification: all[i] }));
  return { ...whole, responses };
}

function soundReceiver(
  json: Json,
  deck: Deck,
  file: string,
): { readonly receiver: Receiver | null; readonly problems: readonly Problem[] } {
  const { value, problems: own } = readReceiver(json, file);
  const problems = [...own, ...(value === null ? [] : checkReceiver(value, deck, file))];
  return { receiver: problems.length > 0 ? null : value, problems };
}

/** Stands where the specification is still to be worked out. */
const NOTHING_ASKED = ({ centreHz, spanHz }: Json): Json => ({
  fromHz: Number(centreHz) - Number(spanHz) / 2,
  toHz: Number(centreHz) + Number(spanHz) / 2,
  ...{ points: [], windows: [], tilts: [], traps: [], skirts: [], bandwidths: [], peaks: [], sCurve: null },
  gain: { hz: centreHz, minDb: -1, nominal: 1, weight: 1 },
});
