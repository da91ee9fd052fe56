/** The chassis on the desk for scenarios: slips that say how far a slug is off, and marks where a fault sits. */
import { describe, expect, it } from 'vitest';
import { canNames } from '../../src/present/canNames.ts';
import { around, chassisPlaces, type PlanBox, textBox } from '../../src/present/chassisPlaces.ts';
import { faultMarks } from '../../src/present/faultMarks.ts';
import { faultSpots } from '../../src/present/faultSpots.ts';
import { slugFlags } from '../../src/present/slugFlags.ts';
import type { Fault } from '../../src/receiver/faults/fault.ts';
import { stoodSlugs } from '../../src/rooms/workshop/scenario/stoodSlugs.ts';
import { newDraft, withScatter, withSlug } from '../../src/workshop/draft.ts';
import { shippedLibrary } from '../files/shipped.ts';

const RECEIVERS = [...shippedLibrary().receivers.values()];
const overlap = (a: PlanBox, b: PlanBox): boolean =>
  Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x) > 0.01 &&
  Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y) > 0.01;

describe.each(RECEIVERS.map((set) => ({ id: set.receiver.id, set })))('slips on the plan of $id', ({ set }) => {
  const { receiver } = set;
  it.each([0.85, 1.1])('cover no hole, point, name or letter, and not one another, at %s px a unit', (scale) => {
    const places = chassisPlaces(receiver, scale);
    const wanted = receiver.adjusters.map(({ id }) => ({ slug: id, text: '\u22122 3/8' }));
    const flags = slugFlags(receiver, places, wanted);
    expect(flags.size).toBe(receiver.adjusters.length);
    const clear = places.slugs.flatMap(({ disc, hole, holeRadius }) => [
      around(disc, places.discRadius),
      around(hole, holeRadius),
    ]);
    for (const point of places.points) clear.push(around(point.at, 7), textBox(point.label, point.id, places.textSize));
    const all = [...flags];
    for (const [i, [slug, flag]] of all.entries()) {
      expect(flag.x, slug).toBeGreaterThanOrEqual(0);
      expect(flag.x + flag.width, slug).toBeLessThanOrEqual(receiver.plan.width);
      for (const box of clear) expect(overlap(flag, box), `${slug} on ${JSON.stringify(box)}`).toBe(false);
      for (const [other, box] of all.slice(i + 1)) expect(overlap(flag, box), `${slug}, ${other}`).toBe(false);
    }
  });
});

// Common practice, no source: what stands on a drawing can be read.
describe.each(RECEIVERS.map((set) => ({ id: set.receiver.id, set })))('numbers of eight faults on $id', ({ set }) => {
  const { receiver, deck } = set;
  const parts = (kind: 'R' | 'C') => deck.elements.filter((one) => one.kind === kind).slice(0, 8);
  const crowds: readonly (readonly Fault[])[] = [
    parts('R').map(({ name }) => ({ kind: 'openResistor', element: name })),
    parts('C').map(({ name }) => ({ kind: 'openCapacitor', element: name, farads: 1e-12 })),
  ];
  it.each([0.85, 1.1])(
    'cover no hole, point, name or letter, and not one another or a slip, at %s px a unit',
    (scale) => {
      const places = chassisPlaces(receiver, scale);
      const clear = [...canNames(places).map(({ box }) => box)];
      for (const { disc, hole, holeRadius } of places.slugs)
        clear.push(around(disc, places.discRadius), around(hole, holeRadius));
      for (const point of places.points)
        clear.push(around(point.at, 7), textBox(point.label, point.id, places.textSize));
      for (const faults of crowds) {
        const marks = faultMarks(receiver, places, faultSpots(set, places, faults), 20 / scale);
        expect(marks.length).toBeGreaterThan(0);
        const wanted = receiver.adjusters.map(({ id }) => ({ slug: id, text: '\u22121/8' }));
        const boxes = marks.map(({ mark }) => mark);
        const flags = [...slugFlags(receiver, places, wanted, boxes).values()];
        for (const [i, mark] of boxes.entries()) {
          expect(mark.x).toBeGreaterThanOrEqual(0);
          expect(mark.y).toBeGreaterThanOrEqual(0);
          expect(mark.x + mark.width).toBeLessThanOrEqual(receiver.plan.width);
          expect(mark.y + mark.height).toBeLessThanOrEqual(receiver.plan.height);
          for (const box of [...clear, ...boxes.slice(i + 1), ...flags])
            expect(overlap(mark, box), `${i + 1} on ${JSON.stringify(box)}`).toBe(false);
        }
      }
    },
  );
});

describe('marks of faults', () => {
  const set = shippedLibrary().receivers.get('video-valve-45m')!;
  const places = chassisPlaces(set.receiver, 1);
  const named = (...faults: Parameters<typeof faultSpots>[2]) =>
    faultSpots(set, places, faults).map(({ at, name }) => `${at} ${name}`);

  it('stand at the can of the coil that the part hangs on, at the valve, the slug, the point', () => {
    expect(named({ kind: 'openResistor', element: 'Rmix' })).toEqual(['0 T1']);
    expect(named({ kind: 'weakStage', element: 'G2', factor: 0.5 })).toEqual(['0 V2']);
    expect(named({ kind: 'leakyBiasLine', at: 'AGC', ohms: 220e3 })).toEqual(['0 AGC']);
    expect(named({ kind: 'crackedSlug', slug: 'T4' })).toEqual(['0 T4']);
    expect(named({ kind: 'looseEarth' })).toEqual(['0 Earth']);
    // Two capacitors that have changed places: a mark at each.
    expect(named({ kind: 'swappedTraps', first: 'C39', second: 'C47' })).toEqual(['0 A1', '0 A2']);
  });

  it('bear the number of their card, and nothing marks what sits nowhere', () => {
    expect(named({ kind: 'screwedIn' }, { kind: 'openCoupling', element: 'Kdet' })).toEqual(['1 T5']);
  });
});

describe('how slugs stand', () => {
  const set = shippedLibrary().receivers.get('video-valve-45m')!;
  it('is what the draft says, between stops that whole eighths reach', () => {
    const draft = withSlug(withScatter(newDraft(set.receiver.id, 1), 1), 'T4', -2.375);
    const stood = stoodSlugs(draft, set);
    expect(stood.find(({ id }) => id === 'T4')!.turns).toBeCloseTo(-2.375, 9);
    for (const { least, most, turns, adjuster } of stood) {
      expect(Number.isInteger(least * 8) && Number.isInteger(most * 8)).toBe(true);
      expect(most - least).toBeLessThanOrEqual(adjuster.travelTurns);
      expect(Math.abs(turns)).toBeLessThanOrEqual(2.375 + 1e-9);
    }
    expect(stood.filter(({ turns }) => turns !== 0).length).toBeGreaterThan(5);
  });
});
