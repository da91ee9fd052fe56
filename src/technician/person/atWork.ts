/** The person at work: what is in hand, how the bench is made to stand for a curve, what the clock leaves, and which slugs a curve is about. */
import type { Hands } from './hands.ts';
import { keepInside, letWarm, type Phased, setByNeedle, setUpFor } from './settings.ts';
import type { PrintedCurve, PrintedResponse, PrintedSheet } from './sheet.ts';
import type { Turner } from './turner.ts';

/** What is left of a curve, decibels rms, that a person calls right; and what no slug should leave. */
const RIGHT_DB = 0.25;
const WRONG_DB = 1.2;
const S_CURVE_RIGHT = 1;
const S_CURVE_WRONG = 6;
const RESERVE_SECONDS = 600;
const RESERVE_SHARE = 0.4;
const PROVING_SECONDS = 420;

export interface AtBench {
  readonly hands: Hands;
  readonly sheet: PrintedSheet;
  readonly turner: Turner;
  readonly crystalsHz: readonly number[];
  /** parts that were replaced where it was looked whether what was wrong went with them */
  readonly cured: Map<string, boolean>;
  /** how the phasing was found to stand for each curve, where a bias knob for each line's volts, and whether the set has been seen to stand still */
  readonly stood: { readonly phasing: Map<string, Phased>; readonly dials: Map<string, number>; warm: boolean };
}

/** `afresh`: phased again, although it has been for this curve. */
export function standFor(bench: AtBench, response: PrintedResponse, injectAt?: string, afresh = false): PrintedCurve {
  const { hands, sheet, crystalsHz, stood } = bench;
  const at = injectAt ?? response.setUp.injectAt;
  const curve = sheet.curves.find((c) => c.response === response.id && c.injectAt === at);
  if (curve === undefined) throw new Error(`the sheet has no curve of ${response.id} from ${at}`);
  // The sweep runs behind the tube's drive by as much wherever it goes in.
  const place = response.id;
  const phased = afresh ? undefined : stood.phasing.get(place);
  setUpFor(hands, sheet, response, curve, crystalsHz, isSCurve(response), phased);
  if (!stood.warm) {
    stood.warm = true;
    if (letWarm(hands)) setUpFor(hands, sheet, response, curve, crystalsHz, isSCurve(response));
  }
  setByNeedle(hands, sheet, response.setUp, stood.dials);
  keepInside(hands, response, isSCurve(response));
  stood.phasing.set(place, { degrees: hands.knobs().phasingDegrees, mirror: hands.knobs().mirror });
  return curve;
}

export function slugsOf(sheet: PrintedSheet, response: PrintedResponse): PrintedSheet['slugs'] {
  const first = sheet.responses[0];
  const named = new Set(
    sheet.procedure
      .filter((step) => step.phase === 'align' && (step.response ?? first?.id) === response.id)
      .flatMap((step) => step.slugs),
  );
  return sheet.slugs.filter((s) => named.has(s.id));
}

/** The curves in the order in which the procedure leaves them: what one hangs on is right before it is looked at. */
export function inOrderOfWork({ procedure, responses }: PrintedSheet): readonly PrintedResponse[] {
  const lastStep = ({ id }: PrintedResponse): number =>
    procedure.findLastIndex((step) => step.phase === 'align' && (step.response ?? responses[0]?.id) === id);
  return [...responses].reverse().sort((a, b) => lastStep(a) - lastStep(b));
}

/** The sheet wants something left where this trap works: it is not set for the least, but for a height. */
export function isShelf({ specification }: PrintedResponse, trapHz: number): boolean {
  return specification.points.some(({ hz, low }) => hz === trapHz && low > 0);
}

export function isSCurve({ specification }: PrintedResponse): boolean {
  return specification.sCurve !== null;
}

/** Of the middle of a band. */
const NARROW = 0.2;

/** One hump in the middle of a narrow band: what peaking is for. */
export function isNarrow({ specification, setUp }: PrintedResponse): boolean {
  const { traps, sCurve, fromHz, toHz } = specification;
  return sCurve === null && traps.length === 0 && setUp.source === 'sweep' && toHz - fromHz < NARROW * setUp.centreHz;
}

export function right(response: PrintedResponse): number {
  return isSCurve(response) ? S_CURVE_RIGHT : RIGHT_DB;
}

export function wrong(response: PrintedResponse): number {
  return isSCurve(response) ? S_CURVE_WRONG : WRONG_DB;
}

export function reaches(hands: Hands, hz: number): boolean {
  const { centreHz, spanHz } = hands.knobs();
  return Math.abs(hz - centreHz) < spanHz / 2;
}

/** Slugs of the response's traps whose notches are in the sweep. */
export function notchesInSight({ hands, sheet }: AtBench, response: PrintedResponse): PrintedSheet['slugs'] {
  return slugsOf(sheet, response).filter(
    ({ trapHz }) => trapHz !== null && !isShelf(response, trapHz) && reaches(hands, trapHz),
  );
}

/** Against the clock, what is left is kept for proving and signing. */
export function timeLeft({ hands, sheet }: AtBench): boolean {
  const { timeLimitSeconds: limit } = sheet;
  return limit === null || hands.clockSeconds() < limit - Math.max(RESERVE_SECONDS, RESERVE_SHARE * limit);
}

/** The last touches may take all but what proving and signing need. */
export function timeToProve({ hands, sheet }: AtBench): boolean {
  const { timeLimitSeconds: limit } = sheet;
  return limit === null || hands.clockSeconds() < limit - PROVING_SECONDS;
}

export function curveOf({ curves }: PrintedSheet, { id, setUp }: PrintedResponse): PrintedCurve {
  return curves.find((c) => c.response === id && c.injectAt === setUp.injectAt)!;
}
