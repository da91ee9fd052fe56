/** The nearest that works: what the certifier refuses is mended by one figure, and by no more than it takes. */
import { describe, expect, it } from 'vitest';
import type { CertifyProblem } from '../../src/certify/certificate.ts';
import { certifyScenario } from '../../src/certify/certifyScenario.ts';
import { type Draft, newDraft, withFault, withScatter, withSet, withSlug } from '../../src/workshop/draft.ts';
import { ideas, nearestThatCertifies } from '../../src/workshop/nearest.ts';
import { shippedLibrary } from '../files/shipped.ts';

const can = shippedLibrary().receivers.get('loose-can-10m7')!;
const [first] = can.receiver.adjusters;
const bare = newDraft('loose-can-10m7', 1);

function refusal(draft: Draft): readonly CertifyProblem[] {
  const outcome = certifyScenario({ ...can, scenario: draft });
  if (outcome.ok) throw new Error('it can be certified as it is');
  return outcome.problems;
}
const isCertified = (draft: Draft): boolean => certifyScenario({ ...can, scenario: draft }).ok;

describe('the nearest that works', () => {
  it('of a set with nothing to do has a slug a little further off', () => {
    const problems = refusal(bare);
    expect(problems).toEqual([{ code: 'nothingToDo' }]);
    const shares: number[] = [];
    const nearest = nearestThatCertifies(bare, problems, can, (share) => shares.push(share))!;
    expect(nearest.change).toMatchObject({ kind: 'slug', slug: first!.id, from: 0 });
    expect(isCertified(nearest.draft)).toBe(true);
    expect(nearest.draft.start.slugs).toEqual({ [first!.id]: (nearest.change as { to: number }).to });
    expect(shares[0]).toBe(0);
    // Every smaller step is refused.
    const smaller = ideas(bare, problems, can).slice(0, shares.length - 1);
    for (const idea of smaller) expect(isCertified(idea.draft)).toBe(false);
  });

  it('of a scatter that is too small has a wider one', () => {
    const draft = withScatter(bare, 0.001);
    const nearest = nearestThatCertifies(draft, refusal(draft), can)!;
    expect(nearest.change).toMatchObject({ kind: 'scatter', from: 0.001 });
    expect(isCertified(nearest.draft)).toBe(true);
  });

  it('of a fault that slugs make up for has a worse one', () => {
    const capacitor = can.deck.elements.find(({ kind, name }) => kind === 'C' && name === 'C1')!;
    const fault = { kind: 'driftedCapacitor', element: capacitor.name, factor: 1.01 } as const;
    const draft = withFault(withSlug(bare, first!.id, 1), 0, fault);
    const problems = refusal(draft);
    expect(problems.map(({ code }) => code)).toContain('nothingToSee');
    const nearest = nearestThatCertifies(draft, problems, can)!;
    expect(nearest.change).toMatchObject({ kind: 'amount', fault: 0, key: 'factor', from: 1.01 });
    expect(isCertified(nearest.draft)).toBe(true);
  });

  it('tries other sets and wider tolerances where the sheet is out of reach, and nothing for other reasons', () => {
    const line = { response: 'x', line: 'x', unit: 'db', measured: 0, low: null, high: 0, excess: 1 } as const;
    const kinds = (draft: Draft) => ideas(draft, [{ code: 'outOfReach', line }], can).map(({ change }) => change.kind);
    expect(new Set(kinds(withSet(bare, 4)))).toEqual(new Set(['set', 'tolerance']));
    expect(new Set(kinds(bare))).toEqual(new Set(['tolerance']));
    expect(ideas(bare, [{ code: 'refused', act: '', reason: '' }], can)).toEqual([]);
    expect(nearestThatCertifies(bare, [{ code: 'lineLost', line: 'G1', share: 0.5 }], can)).toBeNull();
  });
});
