/** Leads on the bench: where they may go, and the geometry of how they lie. */

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyEvent } from '../../src/bench/applyEvent.ts';
import { type BenchState, TUBE_X } from '../../src/bench/benchState.ts';
import { legalEnds } from '../../src/bench/leads.ts';
import { initialState } from '../../src/bench/setup.ts';
import { sheetLeads } from '../../src/bench/sheetSetUp.ts';
import { chassisPlaces } from '../../src/present/chassisPlaces.ts';
import { mainResponse } from '../../src/receiver/responses.ts';
import { endUnder, labelUnder, nextEnd } from '../../src/rooms/bench/scene/leadAim.ts';
import { LEADS } from '../../src/rooms/bench/scene/leadKinds.ts';
import {
  bent,
  dashes,
  handleEnd,
  type LeadRoute,
  leadPolyline,
  lengthOf,
  type Polyline,
  swing,
} from '../../src/rooms/bench/scene/leadPath.ts';
import { carriedLead, leadGround, placeLeads } from '../../src/rooms/bench/scene/leadPlaces.ts';
import { SCENES, SETUPS } from './sceneSets.ts';

const point = (line: Polyline, k: number) => ({ x: line[2 * k]!, y: line[2 * k + 1]! });
const last = (line: Polyline) => point(line, line.length / 2 - 1);
const pointsOf = (line: Polyline) => Array.from({ length: line.length / 2 }, (_, k) => point(line, k));

describe.each(SETUPS)('legal ends of $receiver.id', (setup) => {
  const ready: BenchState = { ...initialState(setup), cautionsAcknowledged: true, isolated: true };
  const all = [TUBE_X, ...setup.receiver.testPoints.map((p) => p.id)];

  it('are just those that the bench accepts', () => {
    for (const { id } of LEADS) {
      const legal = legalEnds(setup, ready.leads, id);
      for (const to of all) {
        const applied = applyEvent(setup, ready, { type: 'leadConnected', lead: id, to }, 1);
        expect(legal.includes(to), `${id} to ${to}`).toBe(applied.ok);
      }
    }
  });

  it('leave out the point where the other bias output is', () => {
    const lines = setup.receiver.testPoints.filter((p) => p.role === 'agc').map((p) => p.id);
    const leads = { ...ready.leads, biasA: lines[0] ?? null };
    expect(legalEnds(setup, leads, 'biasB')).toEqual(lines.slice(1));
    expect(legalEnds(setup, leads, 'biasA')).toEqual(lines);
  });
});

describe('walking from point to point', () => {
  it('goes round and never leaves the legal ones', () => {
    const legal = ['a', 'b', 'c'];
    expect([null, 'a', 'b', 'c', 'elsewhere'].map((from) => nextEnd(legal, from, 1))).toEqual([
      'a',
      'b',
      'c',
      'a',
      'a',
    ]);
    expect([null, 'a', 'c'].map((from) => nextEnd(legal, from, -1))).toEqual(['c', 'c', 'b']);
    expect(nextEnd([], 'a', 1)).toBeNull();
  });

  it('lets a tip that is let go fall on the nearest point within reach', () => {
    const ends = new Map([
      ['a', { x: 0, y: 0 }],
      ['b', { x: 30, y: 0 }],
    ]);
    expect(endUnder(ends, 10, 0, 22)).toBe('a');
    expect(endUnder(ends, 18, 5, 22)).toBe('b');
    expect(endUnder(ends, 15, 40, 22)).toBeNull();
  });
});

describe('the way of a lead', () => {
  const routes = fc.record({
    jack: fc.record({ x: fc.integer({ min: 0, max: 400 }), y: fc.integer({ min: 0, max: 900 }) }),
    jackDegrees: fc.constantFrom(0, 90, 180, -90),
    laneX: fc.oneof(fc.constant(null), fc.integer({ min: 0, max: 450 })),
    tip: fc.record({ x: fc.integer({ min: 450, max: 900 }), y: fc.integer({ min: 0, max: 900 }) }),
    tipDegrees: fc.integer({ min: 90, max: 270 }),
    tipLength: fc.constantFrom(18, 46, 58),
    leaveDy: fc.integer({ min: -100, max: 100 }),
  }) satisfies fc.Arbitrary<LeadRoute>;

  it('runs from the plug to the handle in even small steps', () => {
    fc.assert(
      fc.property(routes, (route) => {
        const line = leadPolyline(route);
        const start = point(line, 0);
        const plug = route.jackDegrees === -90 ? 0 : 18;
        expect(Math.hypot(start.x - route.jack.x, start.y - route.jack.y)).toBeCloseTo(plug, 6);
        const end = handleEnd(route);
        expect(last(line).x).toBeCloseTo(end.x, 6);
        expect(last(line).y).toBeCloseTo(end.y, 6);
        const points = pointsOf(line);
        const steps = points.slice(1).map((b, i) => Math.hypot(points[i]!.x - b.x, points[i]!.y - b.y));
        // A chord across a bend is a little shorter than the way along it, never longer.
        expect(Math.max(...steps)).toBeLessThanOrEqual(6.01);
      }),
    );
  });

  it('is woven without a gap: stitches and spaces make the whole length', () => {
    fc.assert(
      fc.property(routes, fc.integer({ min: 1, max: 9 }), fc.integer({ min: 1, max: 9 }), (route, on, off) => {
        const line = leadPolyline(route);
        const pieces = dashes(line, on, off);
        const total = lengthOf(line);
        const drawn = pieces.reduce((sum, piece) => sum + lengthOf(piece), 0);
        const rounds = Math.floor(total / (on + off));
        expect(drawn).toBeCloseTo(rounds * on + Math.min(on, total - rounds * (on + off)), 4);
      }),
    );
  });

  it('swings once and comes to rest with its ends held', () => {
    const line = leadPolyline({
      jack: { x: 0, y: 300 },
      jackDegrees: 0,
      laneX: 30,
      tip: { x: 120, y: 100 },
      tipDegrees: 168,
      tipLength: 46,
      leaveDy: 6,
    });
    expect([swing(-0.1), swing(0), swing(1), swing(2)]).toEqual([0, 0, 0, 0]);
    let turns = 0;
    for (let t = 0.01; t < 1; t += 0.01) {
      expect(Math.abs(swing(t))).toBeLessThan(1);
      if (Math.sign(swing(t)) !== Math.sign(swing(t - 0.01)) && swing(t - 0.01) !== 0) turns++;
    }
    expect(turns).toBe(1);
    const moved = bent(line, 9);
    expect(point(moved, 0)).toEqual(point(line, 0));
    expect(last(moved).x).toBeCloseTo(last(line).x, 9);
    expect(bent(line, 0)).toBe(line);
  });
});

describe.each(SCENES)('leads of $name', ({ setup, layout }) => {
  const ground = leadGround(layout, setup.receiver);
  const start = initialState(setup);
  const connected = { ...start, leads: sheetLeads(setup.receiver, mainResponse(setup.receiver)) };
  const inPage = ({ x, y }: { x: number; y: number }): boolean =>
    x >= -2 && y >= -2 && x <= layout.page.width + 2 && y <= layout.page.height + 2;

  it('end on the points that the state says', () => {
    for (const place of placeLeads(ground, connected)) {
      if (place.end === null) continue;
      expect(place.route.tip).toEqual(ground.ends.get(place.end));
    }
  });

  it('are put down on a point by its name as well, and each name is of one point', () => {
    const { labels, ends } = leadGround(layout, setup.receiver);
    expect(new Set(labels.keys())).toEqual(new Set(ends.keys()));
    for (const [id, box] of labels) {
      expect(labelUnder(labels, box.x + box.width / 2, box.y + box.height / 2)).toBe(id);
    }
    expect(labelUnder(labels, -500, -500)).toBeNull();
  });

  it('stay on the page, loose or connected, and above the shelf', () => {
    for (const state of [start, connected]) {
      for (const place of placeLeads(ground, state)) {
        for (const spot of [place.route.tip, place.grip, handleEnd(place.route)])
          expect(inPage(spot), `${place.kind.id} ${JSON.stringify(spot)}`).toBe(true);
        expect(
          pointsOf(place.line).filter((spot) => !inPage(spot)),
          place.kind.id,
        ).toEqual([]);
        if (layout.shelf !== null) expect(place.grip.y, place.kind.id).toBeLessThan(layout.shelf.y);
      }
    }
  });

  it('leave every slug’s hole and letter in sight', () => {
    const { slugs } = chassisPlaces(setup.receiver, layout.chassis.scale);
    const { x, y, scale } = layout.chassis;
    for (const place of placeLeads(ground, connected)) {
      for (const { hole, holeRadius, disc, letter } of slugs) {
        // A million points and slugs in all: the nearest is held against the limit, not each.
        let [toHole, toDisc] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
        for (let k = 0; k < place.line.length / 2; k++) {
          const p = point(place.line, k);
          toHole = Math.min(toHole, Math.hypot(p.x - x - hole.x * scale, p.y - y - hole.y * scale));
          toDisc = Math.min(toDisc, Math.hypot(p.x - x - disc.x * scale, p.y - y - disc.y * scale));
        }
        expect(toHole, `${place.kind.id} on ${letter}`).toBeGreaterThan(holeRadius * scale + 3);
        expect(toDisc, `${place.kind.id} on ${letter}`).toBeGreaterThan(10 * scale + 3);
      }
    }
  });

  it('have grips far enough apart to take hold of each', () => {
    for (const state of [start, connected]) {
      const grips = placeLeads(ground, state).map((p) => p.grip);
      for (const [i, a] of grips.entries())
        for (const b of grips.slice(i + 1)) expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeGreaterThanOrEqual(24);
    }
  });

  it('are held by the grip while carried', () => {
    const hand = { x: layout.chassis.x + 60, y: layout.chassis.y + 150 };
    const place = carriedLead(ground, 'rf', 'clip', hand);
    expect(place.grip.x).toBeCloseTo(hand.x, 6);
    expect(place.grip.y).toBeCloseTo(hand.y, 6);
  });
});

describe('a point behind two slugs', () => {
  it('is reached round them, not over them', () => {
    const setup = SETUPS.find((s) => s.receiver.adjusters.length === 2)!;
    const [a, b] = setup.receiver.adjusters;
    const row = a!.plan.y;
    const behind = Math.max(a!.plan.x, b!.plan.x) + 60;
    const receiver = {
      ...setup.receiver,
      testPoints: setup.receiver.testPoints.map((p) =>
        p.id === mainResponse(setup.receiver).setUp.injectAt ? { ...p, plan: { x: behind, y: row } } : p,
      ),
    };
    const layout = SCENES[0]!.layout;
    const ground = leadGround(layout, receiver);
    const state = initialState(setup);
    const rf = placeLeads(ground, {
      ...state,
      leads: { ...state.leads, rf: mainResponse(setup.receiver).setUp.injectAt },
    })[0]!;
    expect(rf.route.tip.x).toBeCloseTo(layout.chassis.x + behind * layout.chassis.scale, 6);
    for (let k = 0; k < rf.line.length / 2; k++) {
      const p = point(rf.line, k);
      for (const { plan } of [a!, b!])
        expect(Math.hypot(p.x - layout.chassis.x - plan.x, p.y - layout.chassis.y - plan.y)).toBeGreaterThan(12);
    }
  });
});
