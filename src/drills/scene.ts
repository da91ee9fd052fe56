/**
 * A receiver on the bench, ready as its sheet says: leads on, source and bias set, curve upright and as tall as the face allows. What a drill wants otherwise it says.
 */
import { asSheetSays } from '../bench/asSheetSays.ts';
import type { BenchState, Controls } from '../bench/benchState.ts';
import type { BenchSetup } from '../bench/setup.ts';
import type { Fault } from '../receiver/faults/fault.ts';
import type { SetParts } from '../receiver/individualSet.ts';
import type { SheetResponse } from '../receiver/receiver.ts';
import { responseById } from '../receiver/responses.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { Scene } from './drill.ts';
import { heightsOf, scenePicture } from './picture.ts';

export interface SceneOptions {
  /** of the receiver's sheet */
  readonly response: string;
  /** turns away from where each slug is right */
  readonly slugs?: Readonly<Record<string, number>>;
  readonly faults?: readonly Fault[];
  /** of the bench, between sweep and X drive */
  readonly lagDegrees?: number;
  readonly crystalsHz?: readonly number[];
  readonly controls?: Partial<Controls>;
}

/** The phasing is right, unless a lag is asked for. */
export function sceneOf({ receiver, deck }: SetParts, options: SceneOptions): Scene {
  const { response: id, slugs = {}, faults = [], lagDegrees = 0, crystalsHz = [], controls = {} } = options;
  const response = responseById(receiver, id);
  const setup: BenchSetup = { receiver, deck, scenario: scenarioOf(receiver.id, response, slugs, faults, lagDegrees) };
  const state: BenchState = {
    ...asSheetSays(setup, response, { blanking: true, pipHeightDiv: 0.5, ...controls }),
    crystals: crystalsHz,
  };
  return { setup, state };
}

export const withControls = ({ setup, state }: Scene, controls: Partial<Controls>): Scene => ({
  setup,
  state: { ...state, controls: { ...state.controls, ...controls } },
});

/** The core of one slug elsewhere; turns from where it is right. */
export function withSlug({ setup, state }: Scene, slug: string, coreTurns: number): Scene {
  const stood = state.slugs[slug]!;
  return {
    setup,
    state: {
      ...state,
      slugs: { ...state.slugs, [slug]: { ...stood, screwTurns: coreTurns, coreTurns } },
    },
  };
}

/** The frequency that stands at a place of the graticule, divisions from the middle; to the kilohertz, as a crystal is ground. */
export function hzAt({ state }: Scene, xDiv: number): number {
  const { centreHz, spanHz } = state.controls;
  return Math.round((centreHz + (spanHz * xDiv) / ACROSS_DIV) / 1e3) * 1e3;
}

const ACROSS_DIV = 10;

/** Divisions: base line and top of the face, with room for pips. */
const BASE_DIV = -3;
const TALLEST_DIV = 6;

/**
 * The Y gain at which the curve is tallest without leaving the face, and its base line low; of an S-curve half as tall about the middle. `share` of that height, where a
 * drill does not want every curve equally tall.
 */
export function fitted(scene: Scene, share = 1): Scene {
  const flat = withControls(scene, { pipHeightDiv: 0, yVoltsPerDiv: 1, yPositionDiv: 0, yInvert: false });
  const { low, high } = heightsOf(scenePicture(flat));
  const twoSided = Math.min(high, -low) > 0.2 * Math.max(high, -low);
  const volts = twoSided ? 2 * Math.max(high, -low) : Math.max(high, -low);
  const yVoltsPerDiv = Math.max(1e-4, volts / (TALLEST_DIV * share));
  const hanging = !twoSided && -low > high;
  return withControls(scene, {
    yVoltsPerDiv,
    yInvert: hanging,
    yPositionDiv: twoSided ? 0 : BASE_DIV,
  });
}

function scenarioOf(
  receiver: string,
  { id, setUp }: SheetResponse,
  slugs: Readonly<Record<string, number>>,
  faults: readonly Fault[],
  phaseLagDegrees: number,
): Scenario {
  return {
    format: 'haystack-scenario',
    version: 2,
    id: 'drill',
    code: 'D',
    title: 'drill',
    track: 'drills',
    order: 1,
    difficulty: 1,
    recommendedAfter: [],
    receiver,
    responses: [id],
    words: { brief: '', story: '', lesson: '' },
    seed: 1,
    start: { slugs, randomTurns: 0, controls: {}, prepared: ['safe', 'connect'] },
    bench: { phaseLagDegrees, xSwapped: false, mainsHz: setUp.mainsHz, dialErrorHz: 0 },
    faults,
    aids: { hints: false, toleranceMarks: false },
    sealed: false,
    timeLimitSeconds: null,
    toleranceFactor: 1,
    weights: { response: 100, truth: 0, proofs: 0, care: 0, economy: 0 },
    proofs: [],
    par: { turns: 1, seconds: 60 },
    hints: [],
  };
}
