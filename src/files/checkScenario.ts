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
import { type Complain, complaints, oneOf } from './complaints.ts';
import { shown } from './schemaProblems.ts';

export function checkScenario(
  scenario: Scenario,
  { receiver, deck }: { readonly receiver: Receiver; readonly deck: Deck },
  file = `${scenario.id}.json`,
): Problem[] {
  const { problems, complain } = complaints(file);
  if (scenario.receiver !== receiver.id) complain(['receiver'], ['named', scenario.receiver], ['named', receiver.id]);
  const measured = receiver.responses.map((r) => r.id);
  scenario.responses?.forEach((name, i) => {
    if (!measured.includes(name)) complain(['responses', i], ['named', name], oneOf(measured));
  });
  for (const [control, value] of Object.entries(scenario.start.controls)) {
    if (CONTROLS.check(receiver, control, value) !== 'notInThisScenario') continue;
    complain(['start', 'controls', control], shown(value), ['anotherChoice']);
  }
  const known = receiver.adjusters.map((a) => a.id);
  for (const [id, away] of Object.entries(scenario.start.slugs)) {
    const adjuster = receiver.adjusters.find((a) => a.id === id);
    if (adjuster === undefined) {
      complain(['start', 'slugs', id], ['named', id], oneOf(known));
      continue;
    }
    const nominal = nominalTurns(adjuster);
    if (nominal + away < 0 || nominal + away > adjuster.travelTurns) {
      const [least, most] = [-nominal, adjuster.travelTurns - nominal];
      complain(['start', 'slugs', id], shown(away, 'turns'), ['insideTravel', least, most]);
    }
  }
  complainOfLeads(scenario, receiver, complain);
  const { steelIn } = scenario.start;
  if (steelIn !== undefined && !known.includes(steelIn))
    complain(['start', 'steelIn'], ['named', steelIn], oneOf(known));
  const scattered = receiver.adjusters.filter((a) => !Object.hasOwn(scenario.start.slugs, a.id));
  const room = Math.min(...scattered.map((a) => Math.min(nominalTurns(a), a.travelTurns - nominalTurns(a))));
  if (scenario.start.randomTurns > room) {
    complain(['start', 'randomTurns'], shown(scenario.start.randomTurns, 'turns'), ['atMostRoom', room]);
  }
  checkFaults(scenario.faults, receiver, deck, complain);
  return problems;
}

function complainOfLeads(scenario: Scenario, { testPoints }: Receiver, complain: Complain): void {
  const { leads = {} } = scenario.start;
  for (const [lead, end] of Object.entries(leads) as [keyof typeof leads, string | null][]) {
    if (end === null) continue;
    const wanted = testPoints.filter((point) => pointTakes(lead, point)).map(({ id }) => id);
    if (!wanted.includes(end)) complain(['start', 'leads', lead], ['named', end], oneOf(wanted));
  }
  const [first, second] = BIAS_OUTPUTS;
  const end = leads[second.lead] ?? null;
  if (end !== null && end === leads[first.lead])
    complain(['start', 'leads', second.lead], ['named', end], ['lineBeside', first.lead]);
}
