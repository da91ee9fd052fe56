/**
 * A set that was dealt when its scenario was certified, laid out again without a search: the draw is known, and so is what each coil has where its slug is right.
 *
 * Only what comes with the project is believed: whoever hands in a file hands in no certificate. What is kept holds for one receiver, one seed and one engine; where any
 * of them is another the set is dealt anew. That it is to the last digit what dealing gives, `scripts/certify-course.ts` proves of every scenario.
 */
import { CERTIFYING } from '../base/engine.ts';
import { bad, good, type Result } from '../base/result.ts';
import { type BenchSetup, designOf } from '../bench/setup.ts';
import { checkScenario } from '../files/checkScenario.ts';
import { hashOf } from '../files/hash.ts';
import { drawParts, placeSlugs, type SetParts, slugDepths, spreadsOf } from '../receiver/individualSet.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { Certificate, CertifiedSet } from './certificate.ts';

/** What a certificate says of the set that its scenario puts on the bench. */
export interface KnownSet extends CertifiedSet {
  readonly receiverHash: string;
  readonly engine: string;
}

/** What lays the set of a bench out again; null where the design itself stands there. Where its slugs are right follows from the inductances of its coils. */
export function setOf({ receiver, scenario, draw }: BenchSetup): CertifiedSet | null {
  if (scenario.set === undefined || draw === undefined) return null;
  const henries = Object.fromEntries(receiver.adjusters.map((a) => [a.id, a.nominalHenries]));
  return { seed: scenario.set, draw, henries };
}

/** The set of a bench that stands here, as a certificate would have it. */
export function knownOf(setup: BenchSetup): KnownSet | null {
  const set = setOf(setup);
  return set === null ? null : { ...set, receiverHash: fingerprint(designOf(setup)), engine: CERTIFYING };
}

/** What the text of one of the project's own certificates says of the set; null where its scenario deals none. */
export function knownSetIn(certificate: string): KnownSet | null {
  const { set, receiverHash, engine } = JSON.parse(certificate) as Certificate;
  return set ? { ...set, receiverHash, engine } : null;
}

/** The bench of a scenario with its set as it is known; null where nothing is known that holds for it. Quick enough for the page itself. */
export function knownBench(
  design: SetParts,
  scenario: Scenario,
  known: KnownSet | null,
  file = scenario.id,
): Result<BenchSetup> | null {
  if (known === null || known.seed !== scenario.set || known.engine !== CERTIFYING) return null;
  if (known.receiverHash !== fingerprint(design)) return null;
  const { seed, draw, henries } = known;
  const drawn = drawParts(design, seed, draw, spreadsOf(design.receiver));
  const set = placeSlugs(drawn, henries, slugDepths(design.receiver, seed));
  return onBenchWith(design, scenario, set, draw, file);
}

/** Where the slugs of a set are right is its own, so the scenario's turns are held against them. */
export function onBenchWith(
  design: SetParts,
  scenario: Scenario,
  set: SetParts,
  draw: number,
  file: string,
): Result<BenchSetup> {
  const problems = checkScenario(scenario, set, file);
  return problems.length > 0 ? bad(...problems) : good({ ...set, scenario, design, draw });
}

const fingerprints = new WeakMap<SetParts['receiver'], string>();

function fingerprint({ receiver, deck }: SetParts): string {
  const known = fingerprints.get(receiver) ?? hashOf({ receiver, deck });
  fingerprints.set(receiver, known);
  return known;
}
