/**
 * Every drill's looks held against the engine: what is said to be right is right on the bench, and what is wrong is wrong there. Levels and limits of the
 * checks are our own judgement (common practice, no source) unless a source stands beside them.
 */
import { describe, expect, it } from 'vitest';
import { DRILLS, type DrillId, type Question, type Scene } from '../../src/drills/drill.ts';
import { landmarksOf, VISION_SETS } from '../../src/drills/landmarks.ts';
import { halfOf } from '../../src/drills/looks/overload.ts';
import { isRight, zeroHzOf } from '../../src/drills/marking.ts';
import {
  apartDiv,
  benchOf,
  displayOf,
  type Heights,
  heightsOf,
  meanApartDiv,
  PLACES,
  placeDiv,
  scenePicture,
} from '../../src/drills/picture.ts';
import { lookSeed, question, receiverOf } from '../../src/drills/question.ts';
import { withControls, withSlug } from '../../src/drills/scene.ts';
import { nominalTurns } from '../../src/receiver/slugLaw.ts';
import { shippedLibrary } from '../files/shipped.ts';

const { receivers } = shippedLibrary();
const LOOKS = 5;

function looksOf(drill: DrillId): Question[] {
  return Array.from({ length: LOOKS }, (_, look) => {
    const seed = lookSeed(drill, 'harbour', look);
    return question(drill, seed, receivers.get(receiverOf(drill, seed))!);
  });
}

const looks: Readonly<Record<DrillId, readonly Question[]>> = Object.fromEntries(
  DRILLS.map((drill) => [drill, looksOf(drill)]),
) as Record<DrillId, Question[]>;

/** Where on the graticule a frequency of the sweep stands, divisions from the middle. */
function xDivOf({ state }: Scene, hz: number): number {
  const { centreHz, spanHz } = state.controls;
  return ((hz - centreHz) / spanHz) * 2 * placeDiv(PLACES - 1);
}

/** The height at a place, straight between its neighbours. */
function heightAt(picture: Heights, xDiv: number): number {
  const right = placeDiv(PLACES - 1);
  const place = ((xDiv + right) / (2 * right)) * (PLACES - 1);
  const at = Math.max(0, Math.min(PLACES - 2, Math.floor(place)));
  return picture[at]! + (picture[at + 1]! - picture[at]!) * (place - at);
}

const bare = (scene: Scene): Scene => withControls(scene, { pipHeightDiv: 0 });
const adjusterOf = ({ scene }: Question, id: string) => scene.setup.receiver.adjusters.find((a) => a.id === id)!;

describe('every drill', () => {
  it.each(DRILLS)('%s: a choice is right by its place alone, and the picture can be seen', (drill) => {
    for (const one of looks[drill]) {
      expect(one.drill).toBe(drill);
      expect(one.told.drill).toBe(drill);
      expect(displayOf(one.scene).note).toBe('none');
      const { ask } = one;
      if (ask.kind !== 'choice') continue;
      const marks = ask.choices.map((_, at) => isRight(one, { kind: 'choice', at }));
      expect(marks.filter((right) => right)).toHaveLength(1);
      expect(marks[ask.right]).toBe(true);
      expect(isRight(one, { kind: 'turned', state: one.scene.state })).toBe(false);
      expect(new Set(ask.choices.map((choice) => JSON.stringify(choice))).size).toBe(ask.choices.length);
    }
  });

  it('the same seed makes the same look, another one another', () => {
    const seed = lookSeed('per-cent', 'harbour', 0);
    const again = question('per-cent', seed, receivers.get(receiverOf('per-cent', seed))!);
    expect(JSON.stringify(again)).toBe(JSON.stringify(looks['per-cent'][0]));
    expect(JSON.stringify(looks['per-cent'][1])).not.toBe(JSON.stringify(looks['per-cent'][0]));
  });
});

describe('phase it', () => {
  it('is right where the way back lies on the way out, and nowhere near where it was found', () => {
    for (const one of looks['phase-it']) {
      const { scene, told } = one;
      if (told.drill !== 'phase-it') throw new Error(told.drill);
      const phased = withControls(scene, { phasingDegrees: -told.lagDegrees });
      expect(isRight(one, { kind: 'turned', state: scene.state })).toBe(false);
      expect(isRight(one, { kind: 'turned', state: phased.state })).toBe(true);
      expect(waysApartDiv(phased)).toBeLessThan(0.35);
      expect(waysApartDiv(scene)).toBeGreaterThan(1);
      // The knob's own figure tells nothing: nought is no answer.
      expect(Math.abs(told.lagDegrees)).toBeLessThanOrEqual(90);
    }
    expect(looks['phase-it'].filter((one) => turnedTo(one, 0)).length).toBeLessThan(2);
  });

  const turnedTo = (one: Question, phasingDegrees: number): boolean =>
    isRight(one, { kind: 'turned', state: withControls(one.scene, { phasingDegrees }).state });

  /** How far apart the two ways stand at half height, from the beam itself. */
  function waysApartDiv(scene: Scene): number {
    const { data, count } = displayOf(scene).beam;
    const half = count / 2;
    const middle = (from: number): number => {
      const ys = Array.from({ length: half }, (_, i) => data[3 * (from + i) + 1]!);
      const xs = Array.from({ length: half }, (_, i) => data[3 * (from + i)]!);
      const level = (Math.min(...ys) + Math.max(...ys)) / 2;
      const over = xs.filter((_, i) => ys[i]! > level);
      return (Math.min(...over) + Math.max(...over)) / 2;
    };
    return Math.abs(middle(0) - middle(half));
  }
});

describe('which way', () => {
  it('the right turn brings the curve nearer to the wax and the other takes it away; where it is another slug, neither helps much', () => {
    for (const one of looks['which-way']) {
      const { told } = one;
      if (told.drill !== 'which-way') throw new Error(told.drill);
      const wanted = scenePicture(one.wax!);
      const now = bare(one.scene);
      const stands = now.state.slugs[told.slug]!.coreTurns;
      const leftAfter = (turns: number): number =>
        meanApartDiv(scenePicture(withSlug(now, told.slug, stands + turns)), wanted);
      const distance = leftAfter(0);
      expect(distance).toBeGreaterThan(0.25);
      if (told.way === 'notThis') {
        expect(stands).toBeCloseTo(nominalTurns(adjusterOf(one, told.slug)), 6);
        for (const turns of [-2, -1, 1, 2]) expect(leftAfter(turns)).toBeGreaterThan(0.5 * distance);
        const other = adjusterOf(one, told.other!);
        expect(meanApartDiv(scenePicture(withSlug(now, other.id, nominalTurns(other))), wanted)).toBeLessThan(0.1);
      } else {
        const sign = told.way === 'in' ? 1 : -1;
        expect(leftAfter(sign * 0.5)).toBeLessThan(distance);
        expect(leftAfter(-sign * 0.5)).toBeGreaterThan(distance);
      }
    }
  });
});

describe('read the per cent', () => {
  it('is the height of the curve under the pip, over that of the top, and no other choice comes near', () => {
    for (const one of looks['per-cent']) {
      const { told, subject, ask } = one;
      if (told.drill !== 'per-cent' || ask.kind !== 'choice') throw new Error(told.drill);
      const plain = bare(one.scene);
      const picture = scenePicture(plain);
      const { low, high } = heightsOf(picture);
      const percent = (100 * (heightAt(picture, xDivOf(plain, subject.hz!)) - low)) / (high - low);
      expect(Math.abs(percent - told.percent)).toBeLessThan(3);
      for (const [at, choice] of ask.choices.entries())
        if (at !== ask.right && choice.kind === 'percent')
          expect(Math.abs(choice.percent - percent)).toBeGreaterThan(10);
    }
  });
});

describe('find the trap', () => {
  it('the right pip stands lowest between higher ground, and the notch goes when the trap is put where it belongs', () => {
    for (const one of looks['find-the-trap']) {
      const { told } = one;
      if (told.drill !== 'find-the-trap') throw new Error(told.drill);
      const plain = bare(one.scene);
      const picture = scenePicture(plain);
      const places = one.scene.state.crystals.map((hz) => xDivOf(plain, hz));
      expect([...places].sort((a, b) => a - b)).toEqual(places);
      const at = places[told.pip - 1]!;
      const { low, high } = heightsOf(picture);
      const bottom = heightAt(picture, at);
      const rim = Math.min(
        ...[places[told.pip - 2] ?? at - 1.2, places[told.pip] ?? at + 1.2].map((_, side) =>
          Math.max(...around(picture, at, side === 0 ? -1.5 : 1.5)),
        ),
      );
      expect(rim - bottom).toBeGreaterThan(0.2 * (high - low));
      const trap = adjusterOf(one, told.slug);
      expect(trap.kind).toBe('trap');
      expect(trap.trapHz).toBe(told.meantHz);
      const mended = scenePicture(withSlug(plain, trap.id, nominalTurns(trap)));
      expect(heightAt(mended, at) - bottom).toBeGreaterThan(0.2 * (high - low));
    }
  });

  const around = (picture: Float64Array, at: number, reach: number): number[] =>
    Array.from({ length: 15 }, (_, i) => heightAt(picture, at + (reach * (i + 1)) / 15));
});

describe('overload', () => {
  it('is overload where a stage really gives out, and the halved picture then has another shape', () => {
    for (const one of looks.overload) {
      const { told } = one;
      if (told.drill !== 'overload') throw new Error(told.drill);
      const { compressionDb } = benchOf(one.scene.setup).facts(one.scene.state);
      const change = apartDiv(scenePicture(one.scene), scenePicture(halfOf(one.scene)));
      expect(one.scene.state.controls.levelDb - halfOf(one.scene).state.controls.levelDb).toBe(6);
      if (told.overloaded) {
        expect(compressionDb).toBeGreaterThan(2.9);
        expect(change).toBeGreaterThan(0.7);
      } else {
        expect(compressionDb).toBeLessThan(0.75);
        expect(change).toBeLessThan(0.4);
      }
    }
  });
});

describe('zero the S-curve', () => {
  it('is right with the slug where it belongs and wrong as found; what the tube shows says the same', () => {
    for (const one of looks.zero) {
      const { told, ask } = one;
      if (told.drill !== 'zero' || ask.kind !== 'turn' || ask.turn.kind !== 'slug') throw new Error(told.drill);
      const { withinHz } = ask.turn;
      const mended = withSlug(one.scene, told.slug, nominalTurns(adjusterOf(one, told.slug)));
      expect(isRight(one, { kind: 'turned', state: one.scene.state })).toBe(false);
      expect(isRight(one, { kind: 'turned', state: mended.state })).toBe(true);
      const picture = scenePicture(bare(mended));
      const hzAcross = one.scene.state.controls.spanHz / 10;
      const { low, high } = heightsOf(picture);
      const slope = (heightAt(picture, 0.5) - heightAt(picture, -0.5)) / hzAcross;
      expect(Math.abs(heightAt(picture, 0) / slope)).toBeLessThan(withinHz / 2);
      expect(Math.abs(slope) * hzAcross).toBeGreaterThan(0.1 * (high - low));
      // Somewhere within the knob's reach its steps of a thirty-second meet the tolerance.
      const start = one.scene.state.slugs[told.slug]!.coreTurns;
      const home = Math.round((mended.state.slugs[told.slug]!.coreTurns - start) * 32);
      expect(Math.abs(home)).toBeLessThanOrEqual(80);
      const steps = Array.from({ length: 9 }, (_, i) => start + (home + i - 4) / 32);
      const hits = steps.filter((turns) => {
        const zeroHz = zeroHzOf(withSlug(one.scene, told.slug, turns));
        return zeroHz !== null && Math.abs(zeroHz - told.centreHz) <= withinHz;
      });
      expect(hits.length).toBeGreaterThanOrEqual(2);
    }
  });
});

describe('which part', () => {
  it('a new one of it brings the sound curve back, and a new one of the others changes nothing', () => {
    for (const one of looks['which-part']) {
      const { told, ask } = one;
      if (told.drill !== 'which-part' || ask.kind !== 'choice') throw new Error(told.drill);
      expect(one.scene.setup.scenario.faults.map(({ kind }) => kind)).toEqual([told.fault]);
      const sound = scenePicture(bare(one.wax!));
      const now = bare(one.scene);
      expect(apartDiv(scenePicture(now), sound)).toBeGreaterThan(0.7);
      for (const [at, choice] of ask.choices.entries()) {
        if (choice.kind !== 'part') throw new Error(choice.kind);
        const { name } = choice.part;
        const mended = { setup: now.setup, state: { ...now.state, replaced: [name] } };
        const left = meanApartDiv(scenePicture(mended), sound);
        if (at === ask.right) expect(left).toBeLessThan(0.1);
        else expect(left).toBeGreaterThan(0.15);
      }
    }
  });
});

describe('which part, by a guess', () => {
  it('is not told by the kind of part: a stage, a coupling or a by-pass is right no oftener than it is offered', () => {
    const MANY = 16;
    let offered = 0;
    let right = 0;
    for (let look = 0; look < MANY; look++) {
      const seed = lookSeed('which-part', 'guess', look);
      const { ask } = question('which-part', seed, receivers.get(receiverOf('which-part', seed))!);
      if (ask.kind !== 'choice') throw new Error(ask.kind);
      const active = ask.choices.map((one) => one.kind === 'part' && /^(stage|coupling|bypass)$/.test(one.part.kind));
      offered += active.filter((is) => is).length / ask.choices.length;
      right += Number(active[ask.right]);
      // One alone of its kind would be a hint.
      expect(active.filter((is) => is).length).toBeGreaterThan(0);
    }
    // Three deviations of a coin thrown sixteen times are six.
    expect(Math.abs(right - offered)).toBeLessThan(5);
  });
});

describe('what lies here', () => {
  // Distances in a channel: ITU-R BT.470, systems M and B (from memory); in the IF the channel stands the other way round.
  it('names the carriers by the channel plan', () => {
    expect(landmarksOf('video-valve-45m').get('sound')).toBe(41.25e6);
    expect(landmarksOf('video-valve-45m').get('adjacentSound')).toBe(47.25e6);
    expect(landmarksOf('video-valve-45m').get('adjacentVision')).toBe(39.75e6);
    expect(landmarksOf('video-valve-45m').get('colour')).toBeCloseTo(42.170455e6, 0);
    expect(landmarksOf('video-b-38m9').get('sound')).toBe(33.4e6);
    expect(landmarksOf('video-b-38m9').get('adjacentSound')).toBe(40.4e6);
    expect(landmarksOf('video-b-38m9').get('adjacentVision')).toBe(31.9e6);
    expect(landmarksOf('video-b-38m9').get('colour')).toBeCloseTo(34.46638e6, -2);
  });

  it('and each set has its traps where a landmark lies that is to be kept out, its half height at the vision carrier', () => {
    for (const id of VISION_SETS) {
      const marks = landmarksOf(id);
      const { receiver } = receivers.get(id)!;
      const out = [marks.get('sound'), marks.get('adjacentSound'), marks.get('adjacentVision')];
      for (const { trapHz } of receiver.adjusters) if (trapHz !== null) expect(out).toContain(trapHz);
      const points = receiver.responses.find((one) => one.id === 'if')!.specification.points;
      expect(points.find(({ hz }) => hz === marks.get('vision'))?.target).toBe(0.5);
    }
  });

  it('puts one pip there, and says nowhere at what frequency', () => {
    for (const one of looks['what-lies-here']) {
      const { told, ask } = one;
      if (told.drill !== 'what-lies-here' || ask.kind !== 'choice') throw new Error(told.drill);
      expect(one.scene.state.crystals).toEqual([told.hz]);
      expect(one.unnamedPips).toBe(true);
      expect(ask.choices[ask.right]).toEqual({ kind: 'landmark', landmark: told.landmark });
      expect(landmarksOf(one.scene.setup.receiver.id).get(told.landmark)).toBe(told.hz);
    }
  });
});

describe('what is turned', () => {
  const MANY = 40;
  const wanted = (drill: DrillId, receiver: string, of: (one: Question) => number): number[] =>
    Array.from({ length: MANY }, (_, look) =>
      of(question(drill, lookSeed(drill, 'mole', look), receivers.get(receiver)!)),
    );
  /** Of all answers the most that any single one, with what counts as near enough round it, would have right. */
  const mostBy = (answers: readonly number[], near: number): number =>
    Math.max(...answers.map((at) => answers.filter((one) => Math.abs(one - at) <= 2 * near).length));

  it('is another place of the knob each time, and as often to one side as to the other', () => {
    const knob = wanted('phase-it', 'loose-can-10m7', ({ told }) => (told.drill === 'phase-it' ? -told.lagDegrees : 0));
    expect(mostBy(knob, 2)).toBeLessThanOrEqual(MANY / 5);
    const core = wanted('zero', 'aft-45m75', (one) => {
      const slug = one.subject.slug!;
      return nominalTurns(adjusterOf(one, slug)) - one.scene.state.slugs[slug]!.coreTurns;
    });
    expect(mostBy(core, 1 / 32)).toBeLessThanOrEqual(MANY / 3);
    for (const answers of [knob, core]) {
      const up = answers.filter((one) => one > 0).length;
      expect(Math.abs(up - MANY / 2)).toBeLessThan(2 * Math.sqrt(MANY));
    }
  });
});
