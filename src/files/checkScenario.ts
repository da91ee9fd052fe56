/** Whether a scenario can be played on its receiver: slugs that exist, starts inside the travel, faults that are known. */
import type { Phrase } from '../base/phrases.ts';
import type { Problem } from '../base/result.ts';
import { BIAS_OUTPUTS } from '../bench/biasOutputs.ts';
import { CONTROLS } from '../bench/controls/controls.ts';
import type { Deck } from '../physics/deck.ts';
import { pointTakes } from '../receiver/leadEnds.ts';
import type { Adjuster, Receiver } from '../receiver/receiver.ts';
import { nominalTurns } from '../receiver/slugLaw.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { checkFaults } from './checkFaults.ts';
import { type Complain, complaints, oneOf } from './complaints.ts';
import { asFarAsKnown, eachKnown } from './known.ts';
import { shown } from './schemaProblems.ts';

export function checkScenario(
  scenario: Scenario,
  { receiver, deck }: { readonly receiver: Receiver; readonly deck: Deck },
  file = `${scenario.id}.json`,
): Problem[] {
  const { problems, complain } = complaints(file);
  const known = receiver.adjusters.map((a) => a.id);
  asFarAsKnown(() => {
    if (scenario.receiver !== receiver.id) complain(['receiver'], ['named', scenario.receiver], ['named', receiver.id]);
  });
  const measured = receiver.responses.map((r) => r.id);
  eachKnown(
    () => scenario.responses ?? [],
    (name, i) => {
      if (!measured.includes(name)) complain(['responses', i], ['named', name], oneOf(measured));
    },
  );
  eachKnown(
    () => Object.keys(scenario.start.controls) as (keyof Scenario['start']['controls'])[],
    (control) => {
      const value = scenario.start.controls[control]!;
      if (CONTROLS.check(receiver, control, value) !== 'notInThisScenario') return;
      complain(['start', 'controls', control], shown(value), ['anotherChoice']);
    },
  );
  eachKnown(
    () => Object.keys(scenario.start.slugs),
    (id) => {
      const adjuster = receiver.adjusters.find((a) => a.id === id);
      if (adjuster === undefined) {
        complain(['start', 'slugs', id], ['named', id], oneOf(known));
        return;
      }
      const away = scenario.start.slugs[id]!;
      const nominal = nominalTurns(adjuster);
      if (nominal + away >= 0 && nominal + away <= adjuster.travelTurns) return;
      complain(['start', 'slugs', id], shown(away, 'turns'), travelOf(adjuster));
    },
  );
  complainOfLeads(scenario, receiver, complain);
  asFarAsKnown(() => {
    const { steelIn } = scenario.start;
    if (steelIn === undefined || known.includes(steelIn)) return;
    complain(['start', 'steelIn'], ['named', steelIn], oneOf(known));
  });
  asFarAsKnown(() => {
    const { slugs, randomTurns } = scenario.start;
    const scattered = receiver.adjusters.filter((a) => !Object.hasOwn(slugs, a.id));
    const room = Math.min(...scattered.map((a) => Math.min(nominalTurns(a), a.travelTurns - nominalTurns(a))));
    if (randomTurns <= room) return;
    complain(['start', 'randomTurns'], shown(randomTurns, 'turns'), ['atMostRoom', room]);
  });
  asFarAsKnown(() => checkFaults(scenario.faults, receiver, deck, complain));
  return problems;
}

const travelOf = (adjuster: Adjuster): Phrase => {
  const nominal = nominalTurns(adjuster);
  return ['insideTravel', -nominal, adjuster.travelTurns - nominal];
};

/** Problems that the reader found of a scenario, where a slug further off than any receiver's may be is told what its own receiver allows. */
export function byTravel(problems: readonly Problem[], { receiver }: { readonly receiver: Receiver }): Problem[] {
  return problems.map((problem) => {
    const adjuster = receiver.adjusters.find(({ id }) => problem.place === `/start/slugs/${id}`);
    return adjuster === undefined || problem.wanted[0] !== 'from'
      ? problem
      : { ...problem, wanted: travelOf(adjuster) };
  });
}

function complainOfLeads(scenario: Scenario, { testPoints }: Receiver, complain: Complain): void {
  eachKnown(
    () => Object.keys(scenario.start.leads ?? {}) as (keyof NonNullable<Scenario['start']['leads']>)[],
    (lead) => {
      const end = scenario.start.leads?.[lead];
      if (end === undefined || end === null) return;
      const wanted = testPoints.filter((point) => pointTakes(lead, point)).map(({ id }) => id);
      if (!wanted.includes(end)) complain(['start', 'leads', lead], ['named', end], oneOf(wanted));
    },
  );
  asFarAsKnown(() => {
    const { leads = {} } = scenario.start;
    const [first, second] = BIAS_OUTPUTS;
    const end = leads[second.lead] ?? null;
    if (end !== null && end === leads[first.lead])
      complain(['start', 'leads', second.lead], ['named', end], ['lineBeside', first.lead]);
  });
}
