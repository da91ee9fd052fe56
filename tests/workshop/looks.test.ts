/** What a learner will see of a draft, against the same lines as the grader's truth has them. */
import { describe, expect, it } from 'vitest';
import { createFaultBook } from '../../src/bench/faultsNow.ts';
import { initialState } from '../../src/bench/setup.ts';
import { createTruth } from '../../src/bench/truth.ts';
import { responseById } from '../../src/receiver/responses.ts';
import { evaluateSpecification } from '../../src/receiver/specification.ts';
import { newDraft, withFault, withSlug } from '../../src/workshop/draft.ts';
import { newFault } from '../../src/workshop/faultCards.ts';
import { flawRow } from '../../src/workshop/flaws.ts';
import { createLooks, wrongLines } from '../../src/workshop/looks.ts';
import { shippedLibrary } from '../files/shipped.ts';

const can = shippedLibrary().receivers.get('loose-can-10m7')!;
const response = can.receiver.responses[0]!.id;
const slug = can.receiver.adjusters[0]!.id;
const sound = newDraft('loose-can-10m7', 1);
const points = ({ data, count }: { readonly data: Float32Array; readonly count: number }) => data.slice(0, 3 * count);

describe('the look at a draft', () => {
  it('of a sound set has no line wrong, of one astray those that the grader would find', () => {
    const looks = createLooks();
    expect(wrongLines(looks.lines({ ...can, scenario: sound }))).toEqual([]);
    const setup = { ...can, scenario: withSlug(sound, slug, 1.5) };
    const lines = looks.lines(setup);
    const { hz, relative } = createTruth(setup, createFaultBook(setup)).of(initialState(setup), response);
    const { specification } = responseById(can.receiver, response);
    const own = evaluateSpecification(specification, hz, relative, null).filter(({ kind }) => kind !== 'gain');
    for (const item of own) {
      const line = lines.find((one) => one.item.id === item.id)!;
      expect(line.item.measured, item.id).toBeCloseTo(item.measured, 6);
    }
    expect(own.length).toBeGreaterThan(5);
    expect(wrongLines(lines).length).toBeGreaterThan(2);
    expect([...lines].sort((a, b) => b.excess - a.excess)).toEqual(lines);
  });

  it('is the same piece by piece as at once', () => {
    const scenario = withSlug(sound, slug, 1.5);
    const setup = { ...can, scenario };
    const atOnce = createLooks();
    const inPieces = createLooks();
    for (const piece of inPieces.pieces) piece(setup, response);
    expect(points(inPieces.wanted(setup, response).beam)).toEqual(points(atOnce.wanted(setup, response).beam));
    expect(points(inPieces.handedOut(setup, response).beam)).toEqual(points(atOnce.handedOut(setup, response).beam));
  });

  it('follows slugs, faults and the bench, and comes back when they do', () => {
    const looks = createLooks();
    const look = (scenario: typeof sound) => points(looks.handedOut({ ...can, scenario }, response).beam);
    const kept = looks.wanted({ ...can, scenario: sound }, response);
    const first = look(sound);
    const turned = look(withSlug(sound, slug, 1));
    expect(turned).not.toEqual(first);
    const failed = look(withFault(sound, 0, newFault('openResistor', can, [])!));
    expect(failed).not.toEqual(first);
    expect(look(flawRow('phaseLag').write(sound, 20))).not.toEqual(first);
    expect(look(sound)).toEqual(first);
    // What the sheet wants does not move with the draft.
    const wanted = points(kept.beam);
    expect(looks.wanted({ ...can, scenario: withSlug(sound, slug, 1) }, response)).toBe(kept);
    // Any number of looks at what is handed out leave its beam alone: it is the one of a bench that is made anew.
    expect(points(createLooks().wanted({ ...can, scenario: sound }, response).beam)).toEqual(wanted);
  });

  it('shows a set that stands cold as it is when it is warm', () => {
    const looks = createLooks();
    const { note } = looks.handedOut({ ...can, scenario: flawRow('cold').write(sound, true) }, response);
    expect(note).toBe('none');
  });
});
