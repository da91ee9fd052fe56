/** The shipped scenarios can be done, need doing, and say what is true. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random.ts';
import type { LoadedReceiver } from '../../src/files/library.ts';
import type { SheetResponse } from '../../src/receiver/receiver.ts';
import { mainResponse, workResponses } from '../../src/receiver/responses.ts';
import { nominalTurns, slugHenries } from '../../src/receiver/slugLaw.ts';
import { slugLetters } from '../../src/receiver/slugLetters.ts';
import { evaluateSpecification, isInside, widenSpecification } from '../../src/receiver/specification.ts';
import { createStatedResponse, type StatedResponse } from '../../src/receiver/statedResponse.ts';
import { shippedLibrary } from './shipped.ts';

const library = shippedLibrary();
/** As many ways of turning all slugs as are tried; with more than eight slugs they are drawn. */
const WAYS = 256;
const scenarios = library.scenarios.map((scenario) => [scenario.code, scenario] as const);

const made = new Map<SheetResponse, StatedResponse>();
/** The curve that a response of a design states; of those of the design there is one for all scenarios. */
function statedBy({ receiver, deck }: LoadedReceiver, response: SheetResponse): StatedResponse {
  const stated = made.get(response) ?? createStatedResponse(receiver, deck, response);
  made.set(response, stated);
  return stated;
}

describe.each([...library.receivers])('receiver %s', (_, design) => {
  const { receiver } = design;
  const sheets = receiver.responses.map((response) => statedBy(design, response));
  const outside = (turns: Record<string, number>) =>
    sheets.flatMap((sheet) => {
      const { hz, volts } = sheet.solve(turns);
      const { id, specification } = sheet.response;
      const items = evaluateSpecification(specification, hz, volts, sheet.nominal);
      return items.filter((item) => !isInside(item)).map((item) => `${id} ${item.id}`);
    });

  it('meets its own sheet as printed with every slug nominal', () => {
    expect(outside({})).toEqual([]);
  });

  it('meets it with every slug 1/32 turn off, whichever way each', () => {
    const all = 2 ** receiver.adjusters.length;
    const chance = seededRandom(32);
    const ways =
      all <= WAYS
        ? Array.from({ length: all }, (_way, way) => way)
        : Array.from({ length: WAYS }, () => Math.floor(chance() * all));
    const bit = (way: number, i: number): number => (way >> i) & 1;
    // Sorted so that what stands before the detector moves most often: what stands in front of it need not be worked out again.
    const fromTheFront = (way: number): number => receiver.adjusters.reduce((sum, _a, i) => 2 * sum + bit(way, i), 0);
    for (const way of ways.toSorted((a, b) => fromTheFront(a) - fromTheFront(b))) {
      const turns = Object.fromEntries(
        receiver.adjusters.map((a, i) => [a.id, nominalTurns(a) + (bit(way, i) === 1 ? 1 : -1) / 32]),
      );
      expect(outside(turns), `way ${way}`).toEqual([]);
    }
  });

  it('needs every slug: each has a place on either side where it does not meet it', () => {
    for (const a of receiver.adjusters) {
      const nominal = nominalTurns(a);
      expect(outside({ [a.id]: 0.05 * nominal }).length, `${a.id} out`).toBeGreaterThan(0);
      expect(outside({ [a.id]: a.travelTurns - 0.05 * nominal }).length, `${a.id} in`).toBeGreaterThan(0);
    }
  });
});

describe.each(scenarios)('scenario %s', (_, scenario) => {
  const design = library.receivers.get(scenario.receiver)!;
  const { receiver } = design;
  const sheets = workResponses(receiver, scenario).map((response) => statedBy(design, response));
  const start = Object.fromEntries(
    receiver.adjusters.map((a) => [a.id, nominalTurns(a) + (scenario.start.slugs[a.id] ?? 0)]),
  );
  const outside = (turns: Record<string, number>) =>
    sheets.flatMap((sheet) => {
      const spec = widenSpecification(sheet.response.specification, scenario.toleranceFactor);
      const { hz, volts } = sheet.solve(turns);
      return evaluateSpecification(spec, hz, volts, sheet.nominal).filter((item) => !isInside(item));
    });

  const screwedIn = scenario.faults.some((fault) => fault.kind === 'screwedIn');

  it('starts inside the travel', () => {
    for (const a of receiver.adjusters) {
      expect(start[a.id]).toBeGreaterThan(0);
      expect(start[a.id]).toBeLessThan(a.travelTurns);
    }
  });

  it('reaches the sheet with the slugs nominal', () => {
    expect(outside({})).toEqual([]);
  });

  it('has the par of its certificate, which the straight way fits into', () => {
    const lost = scenario.faults.flatMap((f) => (f.kind === 'shortedTrap' || f.kind === 'crackedSlug' ? [f.slug] : []));
    const ways = receiver.adjusters.map((a) => {
      const nominal = nominalTurns(a);
      if (screwedIn) return a.travelTurns - nominal;
      // A new coil comes with its core half way in.
      if (lost.includes(a.id)) return Math.abs(nominal - a.travelTurns / 2);
      return Math.abs(scenario.start.slugs[a.id] ?? 0);
    });
    const straight = ways.reduce((sum, turns) => sum + turns, 0);
    expect(scenario.par.turns).toBeGreaterThanOrEqual(Math.max(straight, 1 / 8));
    const certificate = JSON.parse(readFileSync(`certificates/${scenario.id}.json`, 'utf8'));
    expect(scenario.par).toEqual(certificate.par);
  });

  it('gives hints where it is not sealed, and speaks only of slugs and points that are there', () => {
    expect(scenario.hints.length).toBeGreaterThanOrEqual(scenario.sealed ? 0 : 3);
    expect(scenario.hints.length).toBeLessThanOrEqual(scenario.sealed ? 0 : 5);
    const known = new Set([
      ...slugLetters(receiver).values(),
      ...receiver.testPoints.map((p) => p.id),
      // The tube's axes, volts and the S of a discriminator are no slugs.
      ...['X', 'Y', 'V', 'S'],
    ]);
    const words = [...scenario.hints, ...Object.values(scenario.words)].join(' ');
    // Single capitals inside a sentence are slugs; "A" also begins sentences, and "G element" is a name of the deck.
    for (const [letter] of words.matchAll(/(?<!-)\b[B-HJ-Z]\b|\bTP\d\b/g)) expect([...known]).toContain(letter);
  });

  it('runs on the mains of its receiver', () => {
    for (const { setUp } of workResponses(receiver, scenario)) expect(scenario.bench.mainsHz).toBe(setUp.mainsHz);
  });
});

describe('the flat top that lies', () => {
  const scenario = library.scenarios.find((s) => s.id === 'flat-top')!;
  const { receiver, deck } = library.receivers.get(scenario.receiver)!;

  it('meets the sheet on the overloaded strip, and not at the level of the sheet', () => {
    const response = mainResponse(receiver);
    const { specification, setUp } = response;
    const levels = ['point', 'window', 'tilt'];
    const turns = Object.fromEntries(
      receiver.adjusters.map((a) => [a.id, nominalTurns(a) + (scenario.start.slugs[a.id] ?? 0)]),
    );
    const stated = (levelDb: number) =>
      createStatedResponse(receiver, deck, { ...response, setUp: { ...setUp, levelDb } });
    const outsideAt = (levelDb: number) => {
      const { hz, volts } = stated(levelDb).solve(turns);
      const items = evaluateSpecification(specification, hz, volts, null);
      return items.filter((item) => levels.includes(item.kind) && !isInside(item)).length;
    };
    expect(outsideAt(Number(scenario.start.controls.levelDb))).toBeLessThanOrEqual(1);
    expect(outsideAt(setUp.levelDb)).toBeGreaterThan(4);
    expect(stated(setUp.levelDb).path.compressionDb()).toBeLessThan(0.5);
  });
});

describe('what the words say', () => {
  const stripOf = (id: string) => library.scenarios.find((s) => s.id === id)!;

  it('"core in" and "core out" are the ways that the slugs need', () => {
    const inMeansMore = library.receivers.get('video-valve-45m')!.receiver.adjusters[0]!;
    expect(slugHenries(inMeansMore, 10)).toBeGreaterThan(slugHenries(inMeansMore, 9));
    // E wants to go in; C (39.75) out, D (47.25) in; G out.
    expect(stripOf('one-slug-out').start.slugs.T3).toBe(-2);
    expect(stripOf('traps-astray').start.slugs.A1).toBeGreaterThan(0);
    expect(stripOf('traps-astray').start.slugs.A2).toBeLessThan(0);
    expect(stripOf('flat-top').start.slugs.T4).toBe(0.5);
  });

  it('a trap set for least meets the sheet, as the procedure has it', () => {
    const { receiver, deck } = library.receivers.get('video-valve-45m')!;
    const response = createStatedResponse(receiver, deck, mainResponse(receiver));
    for (const a of receiver.adjusters.filter((adjuster) => adjuster.kind === 'trap')) {
      let least = Number.POSITIVE_INFINITY;
      let best = 0;
      for (let off = -2; off <= 2; off += 1 / 32) {
        const { hz, volts } = response.solve({ [a.id]: nominalTurns(a) + off });
        const level = volts[hz.indexOf(a.trapHz!)]!;
        if (level < least) [least, best] = [level, off];
      }
      const { hz, volts } = response.solve({ [a.id]: nominalTurns(a) + best });
      const outside = evaluateSpecification(mainResponse(receiver).specification, hz, volts, response.nominal).filter(
        (i) => !isInside(i),
      );
      expect(
        outside.map((i) => i.id),
        a.id,
      ).toEqual([]);
      expect(Math.abs(best)).toBeLessThan(0.25);
    }
  });
});
