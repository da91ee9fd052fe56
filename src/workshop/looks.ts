/**
 * What a learner will have before him: the tube with everything connected and set as the sheet says and the set as it is handed out, the curve that the sheet wants,
 * and the lines of the sheet that are wrong. The bench is made once for whatever does not change while a slug turns.
 */
import { once } from '../base/once.ts';
import { asSheetSays } from '../bench/asSheetSays.ts';
import type { BenchState } from '../bench/benchState.ts';
import type { BenchDisplay } from '../bench/display.ts';
import { type BenchSetup, designOf, initialState } from '../bench/setup.ts';
import { createDemands, type Demands, type Standing } from '../certify/demands.ts';
import { benchOf, displayOf } from '../drills/picture.ts';
import { fitted } from '../drills/scene.ts';
import { faultEffects } from '../receiver/faults/faultEffects.ts';
import { responseById, workResponses } from '../receiver/responses.ts';
import { NO_LIFE } from '../scenario/life.ts';
import type { Draft } from './draft.ts';

interface Scene {
  readonly setup: BenchSetup;
  readonly state: BenchState;
}

interface SoundScene extends Scene {
  /** drawn once: nobody else looks at this bench, so its beam stays as it is */
  wanted(): BenchDisplay;
}

export interface Looks {
  /** the work of the first looks in pieces, each of which stands on those before it: for a page that must not stand still while all of it is done */
  readonly pieces: readonly ((setup: BenchSetup, response: string) => void)[];
  /** its beam is written anew by the next look */
  handedOut(setup: BenchSetup, response: string): BenchDisplay;
  /** the same bench without a fault, every slug in its place: one and the same display for as long as no slug, fault or word alone has changed */
  wanted(setup: BenchSetup, response: string): BenchDisplay;
  /** every line of the sheet that is judged, as the set is handed out; the worst first */
  lines(setup: BenchSetup): readonly Standing[];
}

/** Long enough for every valve to be warm. */
const WARM_SECONDS = 3600;

export function createLooks(): Looks {
  const scenes = keptBy<Scene>();
  const clean = keptBy<Scene>();
  const sound = keptBy<SoundScene>();
  const demands = keptBy<Demands>();

  /** without a fault and every slug in its place, the curve as tall as it happens to be */
  const cleanScene = (setup: BenchSetup, response: string): Scene =>
    clean(setup, response, [setup.scenario.bench.mainsHz], () => {
      const { mainsHz } = setup.scenario.bench;
      const bench = { phaseLagDegrees: 0, xSwapped: false, mainsHz, dialErrorHz: 0 };
      const start = { slugs: {}, randomTurns: 0, controls: {}, prepared: [] };
      const sane = { ...setup, scenario: { ...setup.scenario, start, bench, faults: [], life: NO_LIFE } };
      return { setup: sane, state: firstLook(sane, response) };
    });
  const soundScene = (setup: BenchSetup, response: string): SoundScene => {
    const unfitted = cleanScene(setup, response);
    return sound(setup, response, [unfitted], () => {
      const scene = fitted(unfitted);
      return { ...scene, wanted: once(() => displayOf(scene)) };
    });
  };
  /** The circuit alone: nothing listens at the set, so that nothing is detected and drawn. With less from the source its detector needs less of the table of its diode. */
  const solved = ({ setup, state }: Scene, lessDb: number): void => {
    const { leads, controls } = state;
    const less = { ...controls, levelDb: controls.levelDb - lessDb, pipHeightDiv: 0 };
    displayOf({ setup, state: { ...state, leads: { ...leads, y: null }, controls: less } });
  };

  const looks: Looks = {
    pieces: [
      (setup, response) => void benchOf(cleanScene(setup, response).setup),
      (setup, response) => solved(cleanScene(setup, response), QUIET_DB),
      (setup, response) => solved(cleanScene(setup, response), 0),
      (setup, response) => void soundScene(setup, response),
      (setup, response) => void looks.handedOut(setup, response),
      (setup, response) => void looks.wanted(setup, response),
    ],
    wanted: (setup, response) => soundScene(setup, response).wanted(),
    handedOut(setup, response) {
      const { scenario } = setup;
      const { bench, faults, life, seed, start } = scenario;
      // Slugs and words change nothing that the bench keeps.
      const scene = scenes(setup, response, [bench, faults, life, seed, start.steelIn], () => {
        const made = { ...setup, scenario: withoutSlugs(scenario) };
        const fit = soundScene(setup, response).state.controls;
        const { yVoltsPerDiv, yPositionDiv, yInvert } = fit;
        const state = firstLook(made, response);
        return {
          setup: made,
          state: { ...state, controls: { ...state.controls, yVoltsPerDiv, yPositionDiv, yInvert } },
        };
      });
      return displayOf({ setup: scene.setup, state: { ...scene.state, slugs: initialState(setup).slugs } });
    },
    lines(setup) {
      const { receiver, deck, scenario } = setup;
      const { faults, toleranceFactor, responses } = scenario;
      const asked = demands(setup, '', [faults, toleranceFactor, responses], () => {
        const failed = faultEffects(receiver, deck, faults, []);
        const slugs = receiver.adjusters.map((a) => a.id);
        const work = workResponses(receiver, scenario);
        return createDemands(failed.receiver, failed.deck, work, toleranceFactor, slugs, designOf(setup));
      });
      const { slugs } = initialState(setup);
      const turns = Object.fromEntries(Object.entries(slugs).map(([id, slug]) => [id, slug.coreTurns]));
      return [...asked.standings(turns)].sort((a, b) => b.excess - a.excess);
    },
  };
  return looks;
}

export const wrongLines = (lines: readonly Standing[]): readonly Standing[] => lines.filter(({ excess }) => excess > 0);

function withoutSlugs(scenario: Draft): Draft {
  return { ...scenario, start: { ...scenario.start, slugs: {}, randomTurns: 0 } };
}

/** Ready for the first look, and warm. */
function firstLook(setup: BenchSetup, id: string): BenchState {
  const response = responseById(setup.receiver, id);
  return {
    ...asSheetSays(setup, response, { blanking: true, pipHeightDiv: 0.5 }),
    seconds: WARM_SECONDS,
    crystals: response.setUp.markersHz.slice(0, MOST_CRYSTALS),
  };
}

const MOST_CRYSTALS = 8;
/** A diode's table goes by the logarithm of the volts: with so much less from the source a good third of it is drawn up. */
const QUIET_DB = 24;

/** One thing for each response, kept while receiver, deck and the other parts are the same objects or the same values. */
function keptBy<T>(): (setup: BenchSetup, response: string, parts: readonly unknown[], make: () => T) => T {
  const kept = new Map<string, { readonly of: readonly unknown[]; readonly made: T }>();
  return (setup, response, parts, make) => {
    const of = [setup.receiver, setup.deck, ...parts];
    const known = kept.get(response);
    if (known !== undefined && known.of.length === of.length && known.of.every((part, i) => Object.is(part, of[i])))
      return known.made;
    const made = make();
    kept.set(response, { of, made });
    return made;
  };
}
