/** Sets as the certificates keep them: laid out they are what dealing gives, to the last digit; and nothing is believed that was kept of something else. */
import { describe, expect, it } from 'vitest';
import { certifiedSet } from '../../scripts/makeCourseIndex.ts';
import { benchSetup } from '../../src/certify/benchSetup.ts';
import { type KnownSet, knownBench, knownSetIn } from '../../src/certify/knownSet.ts';
import { shippedLibrary } from '../files/shipped.ts';
import { setupOf } from '../technician/oneScenario.ts';

const { receivers, scenarios } = shippedLibrary();

describe('the set that a certificate keeps', () => {
  // One of the quickest; the certification step does this for all of them.
  it.each(['off-centre', 'the-first-pair'])('of %s is what dealing gives, to the last digit', (id) => {
    expect(certifiedSet(id)).not.toBeNull();
    expect(setupOf(id)).toEqual(setupOf(id, true));
  });

  it('is there for every scenario that deals one, and holds for it', () => {
    for (const scenario of scenarios) {
      const known = knownBench(receivers.get(scenario.receiver)!, scenario, certifiedSet(scenario.id));
      expect(known !== null, scenario.id).toBe(scenario.set !== undefined);
      if (known !== null) expect(known.ok, scenario.id).toBe(true);
    }
  });

  const scenario = scenarios.find((one) => one.id === 'off-centre')!;
  const design = receivers.get(scenario.receiver)!;
  const known = certifiedSet('off-centre')!;

  it.each<[string, Partial<KnownSet>]>([
    ['another seed', { seed: known.seed + 1 }],
    ['another receiver', { receiverHash: '0'.repeat(64) }],
    ['another engine', { engine: '0.0.1' }],
  ])('is not believed for %s: the set is dealt', (_, other) => {
    // A figure that no dealing gives: it would show in what is put on the bench.
    const henries = Object.fromEntries(Object.keys(known.henries).map((slug) => [slug, 1]));
    const forged = { ...known, ...other, henries };
    expect(knownBench(design, scenario, forged)).toBeNull();
    expect(benchSetup(design, scenario, forged)).toEqual(benchSetup(design, scenario));
  });

  it('cannot be had from a certificate that has none', () => {
    expect(knownSetIn(JSON.stringify({ set: null, receiverHash: '', engine: '' }))).toBeNull();
    expect(knownBench(design, scenario, null)).toBeNull();
  });
});
