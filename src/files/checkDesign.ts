/**
 * Whether a receiver's own design makes sense, which takes solving its circuit: tuned circuits near what the sheet measures, a sheet that the design meets, a gain line that can fail,
 * and traps that take something out. For whoever checks a file; what ships has been through it.
 */

import { isInside } from '../base/limits.ts';
import type { Problem } from '../base/result.ts';
import { type Deck, findElement, nodeKey } from '../physics/deck.ts';
import type { Receiver } from '../receiver/receiver.ts';
import { nominalTurns } from '../receiver/slugLaw.ts';
import { evaluateSpecification, type SpecItem } from '../receiver/specification.ts';
import { createStatedResponse } from '../receiver/statedResponse.ts';
import { type Complain, complaints } from './complaints.ts';
import { quantity } from './quantity.ts';

/** A circuit is tuned no farther than this from all that the sheet looks at: a part a thousand times out moves it by the root of that, 32. */
const FARTHEST = 16;
/** A set whose gain could fall by this much with the line still met has a line that does not fail. */
const MOST_SPARE_DB = 20;
/** A trap takes out at least this share of what comes through with its core at either stop. */
const LEAST_TAKEN = 0.05;

export function checkDesign(receiver: Receiver, deck: Deck, file: string): Problem[] {
  const { problems, complain } = complaints(file);
  complainOfTuning(receiver, deck, complain);
  // A curve of parts that are far out says nothing more.
  if (problems.length > 0) return problems;
  receiver.responses.forEach((response, i) => {
    const at = ['responses', i, 'specification'];
    const stated = createStatedResponse(receiver, deck, response);
    for (const item of evaluateSpecification(response.specification, stated.hz, stated.nominal.volts, null)) {
      const found = `a design whose ${nameOf(item)} is ${figure(item, item.measured)}`;
      if (!isInside(item, item.measured)) complain(at, found, `a design that meets its own sheet: ${limits(item)}`);
      else if (item.kind === 'gain' && item.measured - item.low! > MOST_SPARE_DB) {
        const wanted = `a line that can fail: a limit at most ${MOST_SPARE_DB} dB below the design`;
        complain([...at, 'gain'], `${found}, ${figure(item, item.measured - item.low!)} above its limit`, wanted);
      }
    }
  });
  complainOfTraps(receiver, deck, complain);
  return problems;
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
    const parts = across.map(({ name, value }) => `${name} (${quantity(value, 'F')})`).join(' and ');
    const found = `${coil.name} (${quantity(coil.value, 'H')}) with ${parts}, tuned to ${quantity(Number(hz.toPrecision(3)), 'Hz')}`;
    const range = [lowest, highest].map((edge) => quantity(Number(edge.toPrecision(3)), 'Hz'));
    complain(
      ['adjusters', i, 'element'],
      found,
      `a tuned circuit from ${range[0]} to ${range[1]}: is a value a thousand times out?`,
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
    const where = quantity(trapHz, 'Hz');
    const found =
      seen.length === 0
        ? `${where}, which no response of the sheet shows`
        : `${where}, where ${trap.id} takes nothing out`;
    complain(['adjusters', i, 'trapHz'], found, 'the frequency of a notch that the trap makes');
  });
}

function figure({ unit }: SpecItem, value: number): string {
  if (unit === 'hz') return quantity(Number(value.toPrecision(5)), 'Hz');
  return unit === 'db' ? `${Number(value.toFixed(2))} dB` : `${Number(value.toFixed(3))}`;
}

function nameOf({ kind, hz, toHz }: SpecItem): string {
  const to = toHz === null ? '' : ` to ${quantity(toHz, 'Hz')}`;
  return `${kind} at ${quantity(hz, 'Hz')}${to}`;
}

function limits(item: SpecItem): string {
  const { low, high } = item;
  if (low === null) return `at most ${figure(item, high!)}`;
  return high === null ? `at least ${figure(item, low)}` : `${figure(item, low)} to ${figure(item, high)}`;
}
