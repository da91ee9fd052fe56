/**
 * What was wrong with the set as it was found, worked out from the set itself, and what was said of it at signing beside that (G65, G66).
 * A slug was wrong where it alone, in a set that is sound and right otherwise, puts a line of the sheet two tolerances or more from what is wanted.
 */

import type { BenchEvent } from '../bench/benchEvent.ts';
import { readersBench } from '../bench/readersBench.ts';
import { type BenchSetup, initialState } from '../bench/setup.ts';
import { statedOn } from '../bench/statedOn.ts';
import { type Cure, cureOf } from '../receiver/faults/cure.ts';
import { faultEffects } from '../receiver/faults/faultEffects.ts';
import { workResponses } from '../receiver/responses.ts';
import { nominalTurns } from '../receiver/slugLaw.ts';
import { asksDiagnosis, type Diagnosis } from '../scenario/diagnosis.ts';
import { roundMeasured, tolerancesAway } from './falling.ts';
import { allCures } from './faultLines.ts';
import type { Contact, JudgedDiagnosis, SetAsFound } from './judgedDiagnosis.ts';
import { createSheetJudge } from './response.ts';

/** So far from what is wanted, in tolerances, and so near to its place, in turns. */
const ASTRAY_TOLERANCES = 2;
const IN_PLACE_TURNS = 0.1;

const known = new WeakMap<BenchSetup, SetAsFound>();

export function setAsFound(setup: BenchSetup): SetAsFound {
  const found = known.get(setup) ?? lookedOver(setup);
  known.set(setup, found);
  return found;
}

function lookedOver(setup: BenchSetup): SetAsFound {
  const { receiver, deck, scenario } = setup;
  const start = initialState(setup);
  const cures = scenario.faults.map((fault) => cureOf(fault, receiver, deck));
  const failed = cures.filter((cure): cure is Cure & { kind: 'replace' } => cure.kind === 'replace');
  const badContacts = [...new Set(cures.flatMap((cure) => (cure.kind === 'reconnect' ? [cure.lead] : [])))];
  const facts = readersBench(setup).facts(start);
  const stood: Readonly<Record<Contact, boolean>> = {
    earth: facts.earthed,
    rf: facts.rfConnected && facts.rfAtSheetPoint && facts.rfTerminated && facts.rfThroughCapacitor,
  };
  const sound = faultEffects(receiver, deck, scenario.faults, allCures(setup));
  const judge = createSheetJudge(
    receiver,
    workResponses(receiver, scenario).map((one) => statedOn(setup.engine, sound, one)),
    scenario.toleranceFactor,
  );
  const away = receiver.adjusters.map((adjuster) => {
    const { coreTurns } = start.slugs[adjuster.id]!;
    return { slug: adjuster.id, coreTurns, turns: roundMeasured(coreTurns - nominalTurns(adjuster), 'turns') };
  });
  const inPlace = away.filter(({ turns }) => Math.abs(turns) <= IN_PLACE_TURNS).map(({ slug }) => slug);
  const astray = away
    .filter(({ slug, coreTurns }) => {
      if (inPlace.includes(slug)) return false;
      const demands = judge.demands({ [slug]: coreTurns }, false);
      return demands.some(({ item }) => tolerancesAway(item.measured, item) >= ASTRAY_TOLERANCES);
    })
    .map(({ slug, turns }) => ({ slug, turns }));
  return {
    failed: failed.map(({ parts }) => parts),
    badContacts,
    goodContacts: (['earth', 'rf'] as const).filter((lead) => stood[lead] && !badContacts.includes(lead)),
    astray,
    inPlace,
    good: failed.length + badContacts.length + astray.length === 0,
  };
}

export function judgeDiagnosis(setup: BenchSetup, stated: Diagnosis | null): JudgedDiagnosis {
  const asFound = setAsFound(setup);
  const { failed, badContacts, goodContacts, astray, inPlace } = asFound;
  const { parts, setUp, slugs } = stated ?? { parts: [], setUp: [], slugs: [] };
  // Whoever names the coil of a slug has named the slug too, and whoever names the slug in a failed coil has looked at the right place.
  const coilOf = (slug: string): string =>
    setup.receiver.adjusters.find(({ id }) => id === slug)!.element.toLowerCase();
  const inFailedCoil = (slug: string): boolean =>
    failed.some((names) => names.some((name) => name.toLowerCase() === coilOf(slug)));
  return {
    stated,
    asFound,
    unnamed: [
      ...failed.filter((names) => !names.some((name) => parts.includes(name))).map(([name]) => name!),
      ...badContacts.filter((lead) => !setUp.includes(lead)),
    ],
    blamed: [
      ...parts.filter((part) => !failed.some((names) => names.includes(part))),
      ...goodContacts.filter((lead) => setUp.includes(lead)),
    ],
    slugsUnnamed: astray.flatMap(({ slug }) => (slugs.includes(slug) || inFailedCoil(slug) ? [] : [slug])),
    slugsBlamed: slugs.filter((slug) => inPlace.includes(slug) && !inFailedCoil(slug)),
  };
}

/** The diagnosis of somebody who knows the set; null where the scenario asks for none. */
export function trueDiagnosis(setup: BenchSetup): BenchEvent | null {
  if (!asksDiagnosis(setup.scenario)) return null;
  const { failed, badContacts, astray } = setAsFound(setup);
  const parts = [...new Set(failed.map(([name]) => name!))];
  return { type: 'diagnosisStated', slugs: astray.map(({ slug }) => slug), parts, setUp: badContacts };
}
