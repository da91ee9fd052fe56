/**
 * Whether a receiver's own design makes sense, which takes solving its circuit: tuned circuits near what the sheet measures, a sheet that the design meets and whose lines can fail,
 * and traps that take something out. For whoever checks a file; what ships has been through it.
 */

import { isInside } from '../base/limits.ts';
import type { Phrase, Unit } from '../base/phrases.ts';
import type { Problem } from '../base/result.ts';
import { type Deck, findElement, nodeKey } from '../physics/deck.ts';
import type { Receiver, Specification } from '../receiver/receiver.ts';
import { nominalTurns } from '../receiver/slugLaw.ts';
import { evaluateSpecification, type SpecItem } from '../receiver/specification.ts';
import { createStatedResponse } from '../receiver/statedResponse.ts';
import { type Complain, complaints, type Path } from './complaints.ts';

/** A circuit is tuned no farther than this from all that the sheet looks at: a part a thousand times out moves it by the root of that, 32. */
const FARTHEST = 16;
/** A set whose gain could fall by this much with the line still met has a line that does not fail. */
const MOST_SPARE_DB = 20;
export const MEASURED_UNITS: Readonly<Record<SpecItem['unit'], Unit>> = { ratio: '', db: 'dB', hz: 'Hz' };
/** A trap takes out at least this share of what comes through with its core at either stop. */
const LEAST_TAKEN = 0.05;

export function checkDesign(receiver: Receiver, deck: Deck, file: string): Problem[] {
  const { problems, complain } = complaints(file);
  complainOfTuning(receiver, deck, complain);
  // A curve of parts that are far out says nothing more.
  if (problems.length > 0) return problems;
  receiver.responses.forEach((response, i) => {
    const at = ['responses', i, 'specification'];
    complainOfEmptyLines(response.specification, at, complain);
    const stated = createStatedResponse(receiver, deck, response);
    for (const item of evaluateSpecification(response.specification, stated.hz, stated.nominal.volts, null)) {
      const { kind, hz, toHz, measured, low, high } = item;
      const unit = MEASURED_UNITS[item.unit];
      const found: Phrase = ['designGives', kind, hz, toHz, measured, unit];
      if (!isInside(item, measured)) complain(at, found, ['designMeets', low, high, unit]);
      else if (kind === 'gain' && measured - low! > MOST_SPARE_DB) {
        complain(
          [...at, 'gain'],
          ['designAbove', kind, hz, measured, unit, measured - low!],
          ['canFail', MOST_SPARE_DB],
        );
      }
    }
  });
  complainOfTraps(receiver, deck, complain);
  return problems;
}

/** Levels are shares of the highest between the ends of the sheet, and no curve is wider than the sheet: limits outside of that ask for nothing. */
function complainOfEmptyLines(spec: Specification, at: Path, complain: Complain): void {
  const met = (key: string, i: number, found: Phrase): void => complain([...at, key, i], found, ['canFail', null]);
  if (spec.referenceHz === undefined)
    spec.points.forEach(({ hz, low, high }, i) => {
      if (low <= 0 && high >= 1) met('points', i, ['alwaysMet', 'point', hz]);
    });
  spec.bandwidths.forEach(({ levelDb, minHz, maxHz, centreHz }, i) => {
    if (centreHz === null && minHz <= 0 && maxHz >= spec.toHz - spec.fromHz)
      met('bandwidths', i, ['alwaysMet', 'bandwidth', levelDb]);
  });
}

function complainOfTuning(receiver: Receiver, deck: Deck, complain: Complain): void {
  const { responses, converter } = receiver;
  const spans = responses.map(({ specification: s }) => [s.fromHz, s.toHz] as const);
  const oscillator = converter === null ? [] : [[converter.oscillator.fromHz, converter.oscillator.toHz] as const];
  const all = [...spans, ...oscillator].flat();
  const [lowest, highest] = [Math.min(...all) / FARTHEST, Math.max(...all) * FARTHEST];
  receiver.adjusters.forEach(({ element }, i) => {
    const coil = findElement(deck, element);
    if (coil?.kind !== 'L') return;
    const ends = coil.nodes.map(nodeKey);
    const across = deck.elements.filter((e) => e.kind === 'C' && e.nodes.every((n) => ends.includes(nodeKey(n))));
    if (across.length === 0) return;
    const farads = across.reduce((sum, { value }) => sum + value, 0);
    const hz = 1 / (2 * Math.PI * Math.sqrt(coil.value * farads));
    if (hz >= lowest && hz <= highest) return;
    complain(
      ['adjusters', i, 'element'],
      ['detuned', coil.name, coil.value, across.map((c) => c.name), across.map((c) => c.value), hz],
      ['tunedFrom', lowest, highest],
    );
  });
}

function complainOfTraps(receiver: Receiver, deck: Deck, complain: Complain): void {
  receiver.adjusters.forEach((trap, i) => {
    const { trapHz } = trap;
    if (trap.kind !== 'trap' || trapHz === null) return;
    const seen = receiver.responses.filter(
      ({ specification: s }) => s.sCurve === null && trapHz >= s.fromHz && trapHz <= s.toHz,
    );
    const takes = seen.some((response) => {
      const stated = createStatedResponse(receiver, deck, response, Float64Array.of(trapHz));
      const level = (turns: number): number => stated.solve({ [trap.id]: turns }).volts[0]!;
      const set = level(nominalTurns(trap));
      return Math.min(level(0), level(trap.travelTurns)) * (1 - LEAST_TAKEN) >= set;
    });
    if (takes) return;
    const found: Phrase = seen.length === 0 ? ['trapUnseen', trapHz] : ['trapTakesNothing', trapHz, trap.id];
    complain(['adjusters', i, 'trapHz'], found, ['notchFrequency']);
  });
}
