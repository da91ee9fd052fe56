/** A set through which next to nothing comes: how much there is, whether it is dead or its circuits are far apart, and which parts would stop it there. */
import { axisOf, readVolts } from './eyes.ts';
import { type Hands, set } from './hands.ts';
import type { PrintedCurve, PrintedResponse, PrintedSheet } from './sheet.ts';

/**
 * Nothing on the tube from the front: the parts of the chart that let through from each point of the sheet what comes through here, and stop what is stopped. `shareFrom`: of a
 * printed curve's height, what stands on the tube; `least`: what more than next to nothing is.
 */
export function stoppingParts(
  sheet: PrintedSheet,
  main: PrintedResponse,
  shareFrom: (curve: PrintedCurve) => number,
  least: number,
): readonly string[] {
  const own = sheet.curves.filter(({ response }) => response === main.id);
  const through = own.map((curve) => ({ curve, passes: shareFrom(curve) > least }));
  const fit = sheet.chart.filter(({ voltsFrom }) =>
    through.every(({ curve, passes }) => {
      const volts = voltsFrom[curve.injectAt];
      return volts === undefined || tallest(volts) > least * tallest(curve.volts) === passes;
    }),
  );
  return [...new Set(fit.map(({ part }) => part))];
}

function tallest(volts: readonly number[]): number {
  return volts.reduce((most, v) => Math.max(most, Math.abs(v)), 0);
}

/** Of a printed curve's height, what stands on the tube. */
export function shareOnTube(hands: Hands, { hz, volts }: PrintedCurve): number {
  return tallest(readVolts(hands, hz, axisOf(hands))) / tallest(volts);
}

/** Of the printed height: slugs of a wide curve that are far out leave more. */
export const PASSES = 0.002;

/**
 * Whether more than next to nothing comes through a narrow set once the source is turned up and the sweep opened: circuits that are far apart let a little through, and not where they
 * should, a dead stage nothing however loud.
 */
export function comesThroughLoud(hands: Hands, { volts }: PrintedCurve): boolean {
  const { levelDb, spanHz, centreHz } = hands.knobs();
  turnUp(hands);
  set(hands, 'spanHz', Math.min(WIDER * spanHz, hands.scale('spanHz').high));
  const wide = hands.knobs().spanHz;
  const hz = Array.from({ length: PLACES }, (_, i) => centreHz + (i / (PLACES - 1) - 0.5) * INSIDE_FACE * wide);
  const share = tallest(readVolts(hands, hz, axisOf(hands))) / tallest(volts);
  set(hands, 'spanHz', spanHz);
  set(hands, 'levelDb', levelDb);
  return share > PASSES_LOUD;
}

const WIDER = 3;
const PLACES = 81;
const INSIDE_FACE = 0.96;

export function turnUp(hands: Hands): void {
  set(hands, 'levelDb', Math.min(hands.knobs().levelDb + LOUDER_DB, hands.scale('levelDb').high));
}

const LOUDER_DB = 20;
/** At ten times the level a detector far down its knee gives up to a hundred times the volts. */
const PASSES_LOUD = 0.02;
