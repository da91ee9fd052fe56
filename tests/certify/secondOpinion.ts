/** Evolution by differences over the slugs of a shipped scenario, downhill in the worst line of its sheet. Shares nothing with the certifier's search but the sheet. */
import { readFileSync } from 'node:fs';
import { seededRandom } from '../../src/base/random.ts';
import { designOf, initialState } from '../../src/bench/setup.ts';
import type { Certificate } from '../../src/certify/certificate.ts';
import { createDemands } from '../../src/certify/demands.ts';
import { faultEffects } from '../../src/receiver/faults/faultEffects.ts';
import { workResponses } from '../../src/receiver/responses.ts';
import { nominalTurns } from '../../src/receiver/slugLaw.ts';
import { setupOf } from '../technician/oneScenario.ts';

/** Common values: differences weigh 0.7, nine coordinates in ten are crossed (Storn and Price 1997; from memory). */
const WEIGHT = 0.7;
const CROSSED = 0.9;

export function certificateOf(id: string): Certificate {
  return JSON.parse(readFileSync(`certificates/${id}.json`, 'utf8')) as Certificate;
}

/** The least excess of the worst line, in tolerances, that so many looks find; a search that has met the sheet looks no further. */
export function secondOpinion(id: string, seed: number, looks: number, cured = false): number {
  const setup = setupOf(id);
  const { scenario } = setup;
  // A failed detector stands in the receiver, not in the deck.
  const { receiver, deck } = cured ? setup : faultEffects(setup.receiver, setup.deck, scenario.faults, []);
  const start = initialState(setup).slugs;
  const free = receiver.adjusters.filter((a) => cured || !start[a.id]!.cracked);
  const demands = createDemands(
    receiver,
    deck,
    workResponses(receiver, scenario),
    scenario.toleranceFactor,
    free.map((a) => a.id),
    designOf(setup),
  );
  const found = Object.fromEntries(Object.entries(start).map(([slug, { coreTurns }]) => [slug, coreTurns]));
  const excess = (x: readonly number[]): number =>
    Math.max(
      ...demands
        .standings({ ...found, ...Object.fromEntries(free.map((a, j) => [a.id, x[j]!])) })
        .map((one) => one.excess),
    );
  const chance = seededRandom(seed);
  const inside = (v: number, j: number): number => Math.min(Math.max(v, 0), free[j]!.travelTurns);
  const count = 4 * free.length;
  // The set's own best place, the start, and a crowd round the best place: further off a curve is none.
  const crowd = Array.from({ length: count }, (_, i) =>
    free.map((a, j) =>
      i === 0
        ? nominalTurns(a)
        : i === 1
          ? found[a.id]!
          : inside(nominalTurns(a) + 4 * (2 * chance() - 1) * (i / count), j),
    ),
  );
  const values = crowd.map(excess);
  const pick = (): readonly number[] => crowd[Math.floor(chance() * count)]!;
  for (let look = count; look < looks && Math.min(...values) > 0; look++) {
    const i = look % count;
    const [a, b, c] = [pick(), pick(), pick()];
    const sure = Math.floor(chance() * free.length);
    const child = crowd[i]!.map((v, j) =>
      j === sure || chance() < CROSSED ? inside(a[j]! + WEIGHT * (b[j]! - c[j]!), j) : v,
    );
    const value = excess(child);
    if (value > values[i]!) continue;
    crowd[i] = child;
    values[i] = value;
  }
  return Math.min(...values);
}
