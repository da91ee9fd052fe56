/** Whether a scenario can be played on its receiver: slugs that exist, starts inside the travel, faults that are known. */
import type { Problem } from '../base/result.ts';
import { BIAS_OUTPUTS } from '../bench/biasOutputs.ts';
import { CONTROLS } from '../bench/controls/controls.ts';
import type { Deck } from '../physics/deck.ts';
import { pointTakes } from '../receiver/leadEnds.ts';
import type { Receiver } from '../receiver/receiver.ts';
import { nominalTurns } from '../receiver/slugLaw.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { checkFaults } from './checkFaults.ts';
import { type Complain, complaints, oneOfThese } from './complaints.ts';

export function checkScenario(
  scenario: Scenario,
  { receiver, deck }: { readonly receiver: Receiver; readonly deck: Deck },
  file = `${scenario.id}.json`,
): Problem[] {
  const { problems, complain } = complaints(file);
  if (scenario.receiver !== receiver.id) complain(['receiver'], `"${scenario.receiver}"`, `"${receiver.id}"`);
  const measured = receiver.responses.map((r) => r.id);
  scenario.responses?.forEach((name, i) => {
    if (!measured.includes(name)) complain(['responses', i], `"${name}"`, oneOfThese(measured));
  });
  for (const [control, value] of Object.entries(scenario.start.controls)) {
    if (CONTROLS.check(receiver, control, value) !== 'notInThisScenario') continue;
    complain(['start', 'controls', control], `"${value}"`, 'another choice, as the receiver has no part for it');
  }
  const known = receiver.adjusters.map((a) => a.id);
  for (const [id, away] of Object.entries(scenario.start.slugs)) {
    const adjuster = receiver.adjusters.find((a) => a.id === id);
    if (adjuster === undefined) {
      complain(['start', 'slugs', id], `"${id}"`, oneOfThese(known));
      continue;
    }
    const nominal = nominalTurns(adjuster);
    if (nominal + away < 0 || nominal + away > adjuster.travelTurns) {
      const wanted = `between ${(-nominal).toFixed(2)} and ${(adjuster.travelTurns - nominal).toFixed(2)}, so that it stands inside its travel`;
      complain(['start', 'slugs', id], String(away), wanted);
    }
  }
  complainOfLeads(scenario, receiver, complain);
  const { steelIn } = scenario.start;
  if (steelIn !== undefined && !known.includes(steelIn))
    complain(['start', 'steelIn'], `"${steelIn}"`, oneOfThese(known));
  const scattered = receiver.adjusters.filter((a) => !Object.hasOwn(scenario.start.slugs, a.id));
  const room = Math.min(...scattered.map((a) => Math.min(nominalTurns(a), a.travelTurns - nominalTurns(a))));
  if (scenario.start.randomTurns > room) {
    complain(
      ['start', 'randomTurns'],
      String(scenario.start.randomTurns),
      `at most ${room.toFixed(2)}, the room to the nearer stop`,
    );
  }
  checkFaults(scenario.faults, receiver, deck, complain);
  return problems;
}

function complainOfLeads(scenario: Scenario, { testPoints }: Receiver, complain: Complain): void {
  const { leads = {} } = scenario.start;
  for (const [lead, end] of Object.entries(leads) as [keyof typeof leads, string | null][]) {
    if (end === null) continue;
    const wanted = testPoints.filter((point) => pointTakes(lead, point)).map(({ id }) => id);
    if (!wanted.includes(end)) complain(['start', 'leads', lead], `"${end}"`, oneOfThese(wanted));
  }
  const [first, second] = BIAS_OUTPUTS;
  const end = leads[second.lead] ?? null;
  if (end !== null && end === leads[first.lead])
    complain(['start', 'leads', second.lead], `"${end}"`, `another line than ${first.lead}`);
}
