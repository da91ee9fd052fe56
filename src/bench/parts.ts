/**
 * Replacing a part from the tray. A new part is good; where the old one was good too, that is an incident. A coil comes with a whole core, half way in.
 * Work with the soldering iron is done on a set that is off.
 */
import { cureOf } from '../receiver/faults/cure.ts';
import { type Part, partsTray } from '../receiver/faults/partsTray.ts';
import { offersParts } from '../scenario/diagnosis.ts';
import type { Applied } from './benchEvent.ts';
import { type BenchState, NO_PROOFS } from './benchState.ts';
import { withIncident } from './incidents.ts';
import { done, refused } from './outcome.ts';
import { type BenchSetup, designOf } from './setup.ts';

export function replacePart(setup: BenchSetup, state: BenchState, name: string): Applied {
  const { scenario, receiver, deck } = setup;
  if (!offersParts(scenario)) return refused('notInThisScenario');
  const part = partsTray(receiver, deck).find((p) => p.name === name);
  if (part === undefined) return refused('noSuchPart');
  const slug = part.slug === null ? undefined : state.slugs[part.slug];
  const cracked = slug?.cracked === true;
  if (state.replaced.includes(name) && !cracked) return refused('alreadySo');
  const cures = scenario.faults.some((fault) => {
    const cure = cureOf(fault, receiver, deck);
    return cure.kind === 'replace' && cure.parts.includes(name) && !state.replaced.includes(name);
  });
  const live = receiver.mains !== null && state.powered;
  const handled = live ? withIncident(state, 'wrongPowerOrder', name) : state;
  const noted = cures || cracked ? handled : withIncident(handled, 'goodPartReplaced', name);
  const replaced = noted.replaced.includes(name) ? noted.replaced : [...noted.replaced, name];
  // Another part is another curve: what was proved before is not proved now.
  const after: BenchState = { ...noted, replaced, proofs: NO_PROOFS };
  if (part.slug === null) return done(after, { kind: 'clip' });
  const travel = receiver.adjusters.find((a) => a.id === part.slug)?.travelTurns ?? 0;
  const fresh = { screwTurns: travel / 2, coreTurns: travel / 2, cracked: false, forcedTurns: 0, wear: 0 };
  return done({ ...after, slugs: { ...after.slugs, [part.slug]: fresh } }, { kind: 'clip' });
}

/** The tray as people read it: a new part bears the value that the sheet prints, not that of the one in this very set. */
export function printedTray(setup: BenchSetup): readonly Part[] {
  const { receiver, deck } = designOf(setup);
  return partsTray(receiver, deck);
}
