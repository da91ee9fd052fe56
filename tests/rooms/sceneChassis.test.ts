/** The chassis plan as it is drawn: places to touch, letters, names, the drawing itself, the magnified slug's parts and its leader. */

import { describe, expect, it } from 'vitest';
import { chassisArt } from '../../src/kit/chassis/chassisArt.ts';
import { canNames, type Line, letterLine } from '../../src/present/canNames.ts';
import { around, chassisPlaces, type PlanBox, partBox, textBox } from '../../src/present/chassisPlaces.ts';
import { DISC_RADIUS } from '../../src/receiver/planSizes.ts';
import type { Receiver } from '../../src/receiver/receiver.ts';
import { insetPlaces, ringOnPage } from '../../src/rooms/bench/scene/insetPlaces.ts';
import { leaderRoute } from '../../src/rooms/bench/scene/leaderRoute.ts';
import { en } from '../../src/words/en/index.ts';
import { pseudoWords } from '../../src/words/pseudo.ts';
import { SCENES, SETUPS } from './sceneSets.ts';

const overlap = (a: PlanBox, b: PlanBox): number => {
  const w = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
  const h = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
  return w > 0.01 && h > 0.01 ? w * h : 0;
};
const inside = (inner: PlanBox, outer: PlanBox): boolean =>
  inner.x >= outer.x - 0.01 &&
  inner.y >= outer.y - 0.01 &&
  inner.x + inner.width <= outer.x + outer.width + 0.01 &&
  inner.y + inner.height <= outer.y + outer.height + 0.01;

/** Walked along in small steps, so that it is no second copy of what it checks. */
const crosses = ([from, to]: Line, box: PlanBox): boolean =>
  Array.from({ length: 201 }, (_, i) => i / 200).some((t) =>
    inside({ x: from.x + t * (to.x - from.x), y: from.y + t * (to.y - from.y), width: 0, height: 0 }, box),
  );

describe.each(SCENES)('places of $name', ({ setup: { receiver }, layout }) => {
  const { scale } = layout.chassis;
  const places = chassisPlaces(receiver, scale);

  it('give every slug a place of its own to touch', () => {
    expect(places.slugs).toHaveLength(receiver.adjusters.length);
    for (const [i, a] of places.slugs.entries()) {
      expect(inside({ ...a.hole, width: 0, height: 0 }, a.touch), `${a.letter} holds its hole`).toBe(true);
      // 24 px is the least target of WCAG 2.2, 2.5.8 (from memory); the aim here is 44 one way at least.
      expect(Math.min(a.touch.width, a.touch.height) * scale, a.letter).toBeGreaterThanOrEqual(28);
      expect(Math.max(a.touch.width, a.touch.height) * scale, a.letter).toBeGreaterThanOrEqual(44);
      for (const b of places.slugs.slice(i + 1)) expect(overlap(a.touch, b.touch), `${a.letter}, ${b.letter}`).toBe(0);
    }
  });

  it('put letters inside the pan, off holes and one another', () => {
    const pan = { x: 0, y: 0, width: receiver.plan.width, height: receiver.plan.height };
    expect(new Set(places.slugs.map((s) => s.letter)).size).toBe(places.slugs.length);
    for (const [i, a] of places.slugs.entries()) {
      const disc = around(a.disc, DISC_RADIUS);
      expect(inside(disc, pan), a.letter).toBe(true);
      for (const b of places.slugs)
        expect(overlap(disc, around(b.hole, b.holeRadius)), `${a.letter} on ${b.letter}`).toBe(0);
      for (const b of places.slugs.slice(i + 1)) expect(overlap(disc, around(b.disc, DISC_RADIUS))).toBe(0);
    }
  });

  it('keep the names of test points off points, holes and one another', () => {
    const names = places.points.map((p) => textBox(p.label, p.id, places.textSize));
    for (const [i, name] of names.entries()) {
      for (const p of places.points)
        expect(overlap(name, around(p.at, 6)), `${places.points[i]!.id} on ${p.id}`).toBe(0);
      for (const s of places.slugs) expect(overlap(name, around(s.hole, s.holeRadius))).toBe(0);
      for (const other of names.slice(i + 1)) expect(overlap(name, other)).toBe(0);
    }
  });

  it('letter nothing smaller than 12 px', () => {
    for (const words of chassisArt(en.scene, receiver, scale).lettering)
      expect(words.size * scale).toBeGreaterThanOrEqual(11.99);
  });

  it('lead from each slug to the ring with level and upright lines, past other letters and holes', () => {
    const ring = ringOnPage(layout);
    for (const place of places.slugs) {
      const way = leaderRoute(layout, receiver, places, place);
      const end = way[way.length - 1]!;
      expect(end.x).toBeCloseTo(ring.x - ring.r, 6);
      expect(end.y).toBeCloseTo(ring.y, 6);
      for (let i = 1; i < way.length; i++) {
        const a = way[i - 1]!;
        const b = way[i]!;
        expect(Math.min(Math.abs(a.x - b.x), Math.abs(a.y - b.y)), `${place.letter}, leg ${i}`).toBeLessThan(1e-6);
        const leg = {
          x: (Math.min(a.x, b.x) - layout.chassis.x) / scale,
          y: (Math.min(a.y, b.y) - layout.chassis.y) / scale,
          width: Math.abs(a.x - b.x) / scale + 0.5,
          height: Math.abs(a.y - b.y) / scale + 0.5,
        };
        for (const other of places.slugs) {
          if (other === place) continue;
          expect(overlap(leg, around(other.disc, DISC_RADIUS)), `${place.letter} over letter ${other.letter}`).toBe(0);
          expect(overlap(leg, around(other.hole, other.holeRadius)), `${place.letter} over hole ${other.letter}`).toBe(
            0,
          );
        }
      }
    }
  });

  it('fit the magnified slug into its rectangle', () => {
    const { slugInset: rect, form } = layout;
    const whole = { x: 0, y: 0, width: rect.width, height: rect.height };
    const p = insetPlaces(form, rect);
    const ring = around(p.ring, p.ring.r);
    const buttons = [p.fine, p.out, p.in];
    expect(p.ring.r).toBeGreaterThanOrEqual(55);
    for (const part of [ring, p.head, p.reading, ...buttons, ...(p.section ? [p.section] : [])])
      expect(inside(part, whole), JSON.stringify(part)).toBe(true);
    for (const button of buttons) {
      expect(button.height).toBeGreaterThanOrEqual(44);
      expect(overlap(button, ring)).toBe(0);
    }
    expect(overlap(p.fine, p.out) + overlap(p.out, p.in)).toBe(0);
    if (p.section) {
      // With the depth scale at its right.
      const section = { ...p.section, width: p.section.width + 16 };
      expect(overlap(section, ring)).toBe(0);
      for (const other of [p.head, p.reading, ...buttons]) expect(overlap(section, other)).toBe(0);
    }
  });
});

describe('the drawing', () => {
  it.each(SETUPS)('of $receiver.id holds no words, no broken figures, and the same ink each time', ({ receiver }) => {
    const { svg, lettering } = chassisArt(en.scene, receiver, 1);
    expect(svg).not.toMatch(/<text|NaN|undefined|Infinity/);
    expect(chassisArt(en.scene, receiver, 1).svg).toBe(svg);
    const words = lettering.map((l) => l.words);
    for (const point of receiver.testPoints) expect(words).toContain(point.id);
    for (const part of receiver.plan.parts) {
      if (part.kind === 'valve' || part.kind === 'electrolytic' || part.kind === 'transformer')
        expect(words).toContain(part.label);
      expect(partBox(part).width).toBeGreaterThan(0);
    }
  });

  it.each(SETUPS)('of $receiver.id writes the names of its cans off every letter, line and hole', ({ receiver }) => {
    for (const scale of [0.85, 1.1, 1.6]) {
      const places = chassisPlaces(receiver, scale);
      for (const { id, box } of canNames(places))
        for (const { letter, disc, hole, holeRadius } of places.slugs) {
          const line = letterLine(disc, hole, places.discRadius);
          expect(line !== null && crosses(line, box), `${id}, line of ${letter} at ${scale}`).toBe(false);
          expect(overlap(box, around(hole, holeRadius / Math.SQRT2)), `${id}, hole of ${letter}`).toBe(0);
        }
    }
  });

  it('writes a can\u2019s name elsewhere where a letter\u2019s line comes through it', () => {
    const { receiver } = SETUPS.find((set) => set.receiver.id === 'loose-can-10m7')!;
    const [slug] = receiver.adjusters;
    const { x, y, can } = slug!.plan;
    const named = (letter: { x: number; y: number }) => {
      const adjusters = receiver.adjusters.map((a) => (a === slug ? { ...a, plan: { ...a.plan, letter } } : a));
      const places = chassisPlaces({ ...receiver, adjusters }, 1);
      return { box: canNames(places).find(({ id }) => id === can)!.box, places };
    };
    // Letters all round the can, as a drag may bring them: its name is never under a line.
    for (let degrees = 0; degrees < 360; degrees += 5) {
      const turn = (degrees * Math.PI) / 180;
      const { box, places } = named({ x: x + 60 * Math.cos(turn), y: y + 60 * Math.sin(turn) });
      for (const { disc, hole } of places.slugs) {
        const line = letterLine(disc, hole, places.discRadius);
        expect(line !== null && crosses(line, box), `letter at ${degrees}`).toBe(false);
      }
    }
  });

  it('warns of the fenced corner only where there is one', () => {
    const hot = SETUPS.find((s) => s.receiver.plan.hot !== null)!.receiver;
    const bare: Receiver = { ...hot, plan: { ...hot.plan, hot: null, parts: [] } };
    const warning = (r: Receiver) =>
      chassisArt(en.scene, r, 1).lettering.some((l) => l.words.includes(`${hot.plan.hot!.volts} V`));
    expect(warning(hot)).toBe(true);
    expect(warning(bare)).toBe(false);
  });

  it.each(SETUPS.filter(({ receiver }) => receiver.plan.hot !== null))(
    'of $receiver.id keeps the warning inside its fence, off what stands there',
    ({ receiver }) => {
      const cage = receiver.plan.hot!;
      const { live } = en.scene;
      // The ink of the warning is that of nothing else on the plan.
      const ink = chassisArt(en.scene, receiver, 1).lettering.find(({ words }) =>
        words.includes(live(cage.volts)),
      )!.fill;
      // In English and in longer words.
      for (const [say, scale] of [en.scene, pseudoWords(en).scene].flatMap((one) =>
        [0.73, 0.79, 0.85, 1, 1.6].map((by) => [one, by] as const),
      )) {
        const { svg, lettering } = chassisArt(say, receiver, scale);
        const warning = lettering.filter(({ fill }) => fill === ink);
        const told = warning.map(({ words }) => words.replace(',', '')).join(' ');
        expect(told).toBe(`${say.live(cage.volts)} ${say.keepOut}`);
        for (const one of warning) {
          const box = textBox(one, one.words, one.size);
          expect(inside(box, cage), `${one.words} at ${scale}`).toBe(true);
          for (const part of receiver.plan.parts) expect(overlap(box, partBox(part)), part.kind).toBe(0);
        }
        // The sign's own path, as it is drawn: a triangle 34 by 29 about its place.
        const [, x, y, by] = /translate\(([\d.]+) ([\d.]+)\) scale\(([\d.]+)\)"><path d="M0 -14\.5l17 29h-34z"/
          .exec(svg)!
          .map(Number);
        const sign = { x: x! - 17 * by!, y: y! - 14.5 * by!, width: 34 * by!, height: 29 * by! };
        expect(inside(sign, cage), `sign at ${scale}`).toBe(true);
        for (const one of warning) expect(overlap(sign, textBox(one, one.words, one.size))).toBe(0);
      }
    },
  );

  it('finds places for letters that the file does not give', () => {
    for (const { receiver } of SETUPS) {
      const adjusters = receiver.adjusters.map((a) => {
        const { letter: _, ...plan } = a.plan;
        return { ...a, plan };
      });
      const { slugs } = chassisPlaces({ ...receiver, adjusters }, 1);
      for (const [i, a] of slugs.entries()) {
        for (const b of slugs) expect(overlap(around(a.disc, DISC_RADIUS), around(b.hole, b.holeRadius))).toBe(0);
        for (const b of slugs.slice(i + 1))
          expect(overlap(around(a.disc, DISC_RADIUS), around(b.disc, DISC_RADIUS))).toBe(0);
      }
    }
  });
});
