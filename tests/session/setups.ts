/** Two shipped receivers with scenarios of our own, for tests that need the real bench. */
import { readFileSync } from 'node:fs';
import type { BenchSetup } from '../../src/bench/setup.ts';
import { loadReceiver } from '../../src/files/library.ts';
import { PROOFS } from '../../src/scenario/proofId.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { proofsOn } from './acts.ts';

const SCENARIO: Scenario = {
  format: 'haystack-scenario',
  version: 2,
  id: 'harbour-evening',
  code: 'X-01',
  title: 'An evening in the training room',
  track: 'first-sweep',
  order: 1,
  difficulty: 1,
  recommendedAfter: [],
  receiver: 'loose-can-10m7',
  words: { brief: 'A can to set.', story: 'It came back from the summer fair.', lesson: 'Two slugs, one hump.' },
  seed: 7,
  start: { slugs: {}, randomTurns: 0, controls: {}, prepared: [] },
  bench: { phaseLagDegrees: 23, xSwapped: false, mainsHz: 60, dialErrorHz: 0 },
  faults: [],
  aids: { hints: true, toleranceMarks: true },
  sealed: false,
  timeLimitSeconds: null,
  toleranceFactor: 1,
  weights: { response: 50, truth: 20, proofs: 10, care: 10, economy: 10 },
  proofs: PROOFS,
  par: { turns: 6, seconds: 600 },
  hints: ['Look at the pips.'],
};

function setupOf(id: string, extra: Partial<Scenario>): BenchSetup {
  const folder = `scenarios/receivers/${id}`;
  const named = (name: string) => ({ file: `${folder}/${name}`, text: readFileSync(`${folder}/${name}`, 'utf8') });
  const loaded = loadReceiver(named('receiver.json'), named('network.cir'));
  if (!loaded.ok) throw new Error(JSON.stringify(loaded.problems));
  return { ...loaded.value, scenario: { ...SCENARIO, receiver: id, proofs: proofsOn(loaded.value), ...extra } };
}

/** Two slugs, both away; no mains, no bias, the probe on the secondary. */
export function canSetup(extra: Partial<Scenario> = {}): BenchSetup {
  return setupOf('loose-can-10m7', { start: { ...SCENARIO.start, slugs: { T1B: 2, T1T: -1.5 } }, ...extra });
}

/** Nine slugs and traps, mains with a live chassis, a bias line. */
export function stripSetup(extra: Partial<Scenario> = {}): BenchSetup {
  const slugs = { T1: 1.5, A2: 1, T4: -1 };
  return setupOf('video-valve-45m', { id: 'harbour-night', start: { ...SCENARIO.start, slugs }, ...extra });
}
