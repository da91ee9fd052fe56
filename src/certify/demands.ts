/**
 * What the sheet asks of a set of slugs, as residuals for least squares, and how far a setting is outside.
 *
 * Demands: for every line of the sheet the distance beyond limits drawn in by SPARE of a tolerance, in tolerances times the root of the line's weight; 0 inside. Its
 * slope is taken by walking the curve along responseJacobian.ts a little way and measuring again, so that only `specification.ts` says what a line is.
 * Printed: decibels of the curve against the nominal design's at PRINTED frequencies (S-curve: difference over the height, ten times), as one lays a trace on the
 * printed curve. Levels far below the peak count less: a floor of FLOOR of the nominal's highest is added in power.
 */
import { excessOver } from '../base/limits.ts';
import { once } from '../base/once.ts';
import type { Deck } from '../physics/deck.ts';
import type { ResponseCurve } from '../receiver/curveReading.ts';
import type { SetParts } from '../receiver/individualSet.ts';
import type { Receiver, SheetResponse, Specification } from '../receiver/receiver.ts';
import { responseJacobian } from '../receiver/responseJacobian.ts';
import { evaluateSpecification, type SpecItem, widenSpecification } from '../receiver/specification.ts';
import { specificationFrequencies } from '../receiver/specificationGrid.ts';
import { type CoreTurns, createStatedResponse, type StatedResponse } from '../receiver/statedResponse.ts';
import type { Residuals } from './leastSquares.ts';

/** A line of the sheet at some setting. */
export interface Standing {
  readonly response: string;
  readonly item: SpecItem;
  /** tolerances outside the limits; negative: inside by so much */
  readonly excess: number;
}

export interface Demands {
  /** every line of every response; `excess` in tolerances */
  standings(turns: CoreTurns): readonly Standing[];
  demanded(turns: CoreTurns): Float64Array;
  demandedSlopes(turns: CoreTurns): Residuals;
  /** `excess` of each line, in the order of `standings`, and its slopes */
  excessSlopes(turns: CoreTurns): Residuals;
  printed(turns: CoreTurns): Float64Array;
  printedSlopes(turns: CoreTurns): Residuals;
  /** level at a frequency on the first curve that shows it, for setting a trap by itself; null where none does */
  levelAt(hz: number): ((turns: CoreTurns) => number) | null;
}

const SPARE = 0.2;
const PRINTED = 61;
const FLOOR = 3e-3;
const WALK_TURNS = 1e-4;

interface Sheet {
  readonly response: SheetResponse;
  /** made when first asked: a stage of a search looks at the one alone, a certificate on the spot at the other */
  fine(): StatedResponse;
  coarse(): StatedResponse;
  readonly spec: Specification;
  /** volts of the sound nominal design at the coarse frequencies, and the greatest of them */
  wanted(): Wanted;
}

interface Wanted {
  readonly volts: Float64Array;
  readonly height: number;
}

/**
 * `receiver`, `deck`: what stands on the bench. `slugs`: those that turn, in the order of the columns. `printed`: the design that the sheet was printed from.
 * `evenPoints`: see specificationGrid.ts; left out, as the sheet is read everywhere else. `probePulses`: see `probeDiode`.
 */
export function createDemands(
  receiver: Receiver,
  deck: Deck,
  responses: readonly SheetResponse[],
  toleranceFactor: number,
  slugs: readonly string[],
  printed: SetParts,
  evenPoints?: number,
  probePulses = true,
): Demands {
  const sheets = responses.map((response): Sheet => {
    const { specification } = response;
    const hz = printedFrequencies(specification);
    const coarse = once(() => createStatedResponse(receiver, deck, response, hz, probePulses));
    return {
      response,
      fine: once(() =>
        createStatedResponse(
          receiver,
          deck,
          response,
          specificationFrequencies(specification, evenPoints),
          probePulses,
        ),
      ),
      coarse,
      spec: widenSpecification(specification, toleranceFactor),
      wanted: once(() => {
        const { volts } = deck === printed.deck ? coarse().nominal : printedCurve(printed, response, hz, probePulses);
        return { volts, height: volts.reduce((top, v) => Math.max(top, Math.abs(v)), 0) };
      }),
    };
  });
  const itemsOf = ({ fine, spec }: Sheet, volts: Float64Array): SpecItem[] =>
    evaluateSpecification(spec, fine().hz, volts, null);

  const slopesOf = (
    turns: CoreTurns,
    part: (sheet: Sheet) => StatedResponse,
    measure: (sheet: Sheet, volts: Float64Array) => Float64Array,
  ): Residuals => {
    const all = sheets.map((sheet) => {
      const stated = part(sheet);
      // First, for it may stand there already; the slopes leave it solved anew.
      const { volts } = stated.solve(turns);
      const r = measure(sheet, volts);
      const jacobian = responseJacobian(receiver, deck, stated, turns, slugs);
      const along = new Float64Array(volts.length);
      const columns = slugs.map((slug) => {
        const slope = jacobian.get(slug)!;
        const walked = (turns: number): Float64Array => {
          for (let f = 0; f < along.length; f++) along[f] = volts[f]! + turns * slope[f]!;
          return measure(sheet, along);
        };
        const [up, down] = [walked(WALK_TURNS), walked(-WALK_TURNS)];
        for (let i = 0; i < up.length; i++) up[i] = (up[i]! - down[i]!) / (2 * WALK_TURNS);
        return up;
      });
      return { r, columns };
    });
    const count = all.reduce((sum, one) => sum + one.r.length, 0);
    const r = new Float64Array(count);
    const jacobian = new Float64Array(count * slugs.length);
    let row = 0;
    for (const one of all) {
      for (let i = 0; i < one.r.length; i++, row++) {
        r[row] = one.r[i]!;
        for (let j = 0; j < slugs.length; j++) jacobian[row * slugs.length + j] = one.columns[j]![i]!;
      }
    }
    return { r, jacobian };
  };
  const joined = (parts: readonly Float64Array[]): Float64Array => {
    if (parts.length === 1) return parts[0]!;
    const all = new Float64Array(parts.reduce((sum, part) => sum + part.length, 0));
    let at = 0;
    for (const part of parts) {
      all.set(part, at);
      at += part.length;
    }
    return all;
  };
  const demandsIn = (sheet: Sheet, volts: Float64Array): Float64Array =>
    Float64Array.from(itemsOf(sheet, volts).map((item) => Math.sqrt(item.weight) * signedExcess(item, SPARE)));
  const excessIn = (sheet: Sheet, volts: Float64Array): Float64Array =>
    Float64Array.from(itemsOf(sheet, volts), excessOf);

  return {
    standings: (turns) =>
      sheets.flatMap((sheet) =>
        itemsOf(sheet, sheet.fine().solve(turns).volts).map((item) => ({
          response: sheet.response.id,
          item,
          excess: excessOf(item),
        })),
      ),
    demanded: (turns) => joined(sheets.map((sheet) => demandsIn(sheet, sheet.fine().solve(turns).volts))),
    demandedSlopes: (turns) => slopesOf(turns, (sheet) => sheet.fine(), demandsIn),
    excessSlopes: (turns) => slopesOf(turns, (sheet) => sheet.fine(), excessIn),
    printed: (turns) => joined(sheets.map((sheet) => laidOver(sheet, sheet.coarse().solve(turns).volts))),
    printedSlopes: (turns) => slopesOf(turns, (sheet) => sheet.coarse(), laidOver),
    levelAt(hz) {
      const response = responses.find(({ specification: s }) => s.sCurve === null && hz >= s.fromHz && hz <= s.toHz);
      if (response === undefined) return null;
      const stated = createStatedResponse(receiver, deck, response, Float64Array.of(hz), probePulses);
      return (turns) => stated.solve(turns).volts[0]!;
    },
  };
}

/** Tolerances outside the limits; inside it is negative. A yes-or-no line has no margin: right is a whole tolerance inside, wrong a whole one outside. */
function excessOf(item: SpecItem): number {
  const excess = excessOver(item, item.measured) / item.tolerance;
  return item.kind === 'polarity' ? (excess <= 0 ? -1 : 1) : excess;
}

/** Distance beyond limits that are drawn in by `spare` tolerances, with its sign, in tolerances; 0 inside. */
function signedExcess({ kind, low, high, measured, tolerance }: SpecItem, spare: number): number {
  const drawn = kind === 'polarity' ? 0 : spare * tolerance;
  if (high !== null && measured > high - drawn) return (measured - high + drawn) / tolerance;
  if (low !== null && measured < low + drawn) return (measured - low - drawn) / tolerance;
  return 0;
}

function laidOver({ spec, wanted: wantedOf }: Sheet, volts: Float64Array): Float64Array {
  const { volts: wanted, height } = wantedOf();
  const share = 1 / Math.sqrt(volts.length);
  const out = new Float64Array(volts.length);
  const floor = (FLOOR * height) ** 2;
  for (let f = 0; f < out.length; f++) {
    const v = volts[f]!;
    out[f] =
      spec.sCurve !== null
        ? (10 * share * (v - wanted[f]!)) / height
        : 10 * share * Math.log10((v * v + floor) / (wanted[f]! ** 2 + floor));
  }
  return out;
}

const curves = new WeakMap<Receiver, WeakMap<Deck, Map<string, ResponseCurve>>>();

/** The nominal design's curve, which is the same for every draw of it. */
function printedCurve(
  { receiver, deck }: SetParts,
  response: SheetResponse,
  hz: Float64Array,
  probePulses: boolean,
): ResponseCurve {
  const ofReceiver = curves.get(receiver) ?? new WeakMap<Deck, Map<string, ResponseCurve>>();
  curves.set(receiver, ofReceiver);
  const known = ofReceiver.get(deck) ?? new Map<string, ResponseCurve>();
  ofReceiver.set(deck, known);
  const key = JSON.stringify([response, probePulses]);
  const curve = known.get(key) ?? createStatedResponse(receiver, deck, response, hz, probePulses).nominal;
  known.set(key, curve);
  return curve;
}

function printedFrequencies({ fromHz, toHz }: Specification): Float64Array {
  return Float64Array.from({ length: PRINTED }, (_, i) => fromHz + ((toHz - fromHz) * i) / (PRINTED - 1));
}
