/**
 * The endless track: scenarios made from a seed, each certified before it is given out. The same id makes the same scenario everywhere, so that it can be shared by its
 * id alone and a run of it regraded by anyone.
 *
 * Level 3 is sealed: the scenario that its name makes is what its attempts are dealt from (attempt.ts), each with a set, a start and perhaps a failed part of its own.
 *
 * 1: one or two slugs off, the bench ready. 2: about half of the slugs, bare knobs, a lag and perhaps X the wrong way round. 3: every slug, cold and sealed, and in
 * two of five a part that has failed.
 */
import { DEALS_ON } from '../base/engine.ts';
import { seededRandom } from '../base/random.ts';
import { type BenchSetup, RESTING_CONTROLS } from '../bench/setup.ts';
import { settings, sheetControls } from '../bench/sheetSetUp.ts';
import type { LoadedReceiver } from '../files/library.ts';
import type { Adjuster } from '../receiver/receiver.ts';
import { workResponses } from '../receiver/responses.ts';
import { nominalTurns } from '../receiver/slugLaw.ts';
import { type EndlessDifficulty, readEndlessId } from '../scenario/endlessId.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { certifyScenario } from './certifyScenario.ts';
import { mayHaveFailed } from './dealFaults.ts';
import { endlessText, endlessTitle } from './endlessText.ts';

/** A seed whose first idea cannot be certified has so many more. */
export const IDEAS_OF_SEED = 16;
const EIGHTH = 1 / 8;

/** The scenario of an id; null where the id is none of the track's, or (not met so far) no idea of its seed can be certified. `onIdea` hears which idea is being tried, from 0. */
export function endlessScenario(
  receivers: ReadonlyMap<string, LoadedReceiver>,
  id: string,
  onIdea: (idea: number) => void = () => {},
): Scenario | null {
  const asked = readEndlessId(id);
  if (asked === null) return null;
  const { difficulty, seed } = asked;
  const chance = seededRandom(numberOf(id));
  const ids = [...receivers.keys()].sort();
  for (let idea = 0; idea < IDEAS_OF_SEED; idea++) {
    onIdea(idea);
    const loaded = receivers.get(ids[Math.floor(chance() * ids.length)]!)!;
    const scenario = draw(loaded, id, seed, difficulty, chance);
    const outcome = certifyScenario({ ...loaded, scenario, engine: DEALS_ON });
    // Where the sheet is met as found there is nothing to do.
    if (!outcome.ok || (outcome.certificate.asFound.excess <= 0 && scenario.faults.length === 0)) continue;
    return { ...scenario, par: outcome.certificate.par };
  }
  return null;
}

function draw(
  { receiver, deck }: LoadedReceiver,
  id: string,
  seed: string,
  difficulty: EndlessDifficulty,
  chance: () => number,
): Scenario {
  const hard = difficulty === 3;
  const faults = hard ? mayHaveFailed({ receiver, deck }, chance) : [];
  const scenario: Scenario = {
    format: 'haystack-scenario',
    version: 2,
    id,
    code: `E-0${difficulty}`,
    title: endlessTitle(receiver, seed),
    track: 'endless',
    order: difficulty,
    difficulty,
    recommendedAfter: [],
    receiver: receiver.id,
    words: endlessText(receiver, difficulty),
    seed: numberOf(id) & 0x7fffffff,
    start: {
      slugs: slugsOff(receiver.adjusters, difficulty, chance),
      randomTurns: 0,
      controls: {},
      prepared: difficulty === 1 ? ['safe', 'connect'] : difficulty === 2 ? ['safe'] : [],
    },
    bench: {
      phaseLagDegrees: difficulty === 1 ? 8 : Math.round(60 * chance() - 30),
      xSwapped: difficulty > 1 && chance() < 0.4,
      mainsHz: receiver.responses[0]!.setUp.mainsHz,
      dialErrorHz: 100 * Math.round((chance() - 0.5) * 1e-4 * receiver.responses[0]!.setUp.spanHz),
    },
    faults,
    aids: { hints: false, toleranceMarks: difficulty === 1 },
    sealed: hard,
    timeLimitSeconds: null,
    toleranceFactor: [1.4, 1.2, 1.1][difficulty - 1]!,
    weights: { response: 50, truth: 20, proofs: 10, care: 10, economy: 10 },
    proofs: hard
      ? ['halveLevel', 'markersOffOn', 'touchEarth', 'swingPhase', 'skirts']
      : ['halveLevel', 'markersOffOn', 'touchEarth'],
    par: { turns: EIGHTH, seconds: 30 },
    hints: [],
  };
  return difficulty === 1
    ? { ...scenario, start: { ...scenario.start, controls: readyControls({ receiver, deck, scenario }) } }
    : scenario;
}

/** Eighths of a turn away from nominal, either way; less for traps and fine threads, which the sheet wants nearer. */
function slugsOff(
  adjusters: readonly Adjuster[],
  difficulty: EndlessDifficulty,
  chance: () => number,
): Readonly<Record<string, number>> {
  const count =
    difficulty === 3 ? adjusters.length : difficulty === 2 ? Math.ceil(adjusters.length / 2) : chance() < 0.5 ? 1 : 2;
  const order = adjusters.map((a) => ({ a, at: chance() })).sort((x, y) => x.at - y.at);
  const off: Record<string, number> = {};
  for (const { a } of order.slice(0, count)) {
    const most = a.kind === 'trap' ? 1.5 : 2.5;
    const room = Math.min(nominalTurns(a), a.travelTurns - nominalTurns(a)) - 1;
    const size = Math.min(room, 0.5 + (most - 0.5) * chance());
    const turns = Math.max(EIGHTH, Math.round(size / EIGHTH) * EIGHTH);
    off[a.id] = chance() < 0.5 ? turns : -turns;
  }
  return off;
}

/** Knobs as the sheet of the first response asks for them. */
function readyControls({ receiver, scenario }: BenchSetup): Scenario['start']['controls'] {
  const { setUp } = workResponses(receiver, scenario)[0]!;
  const said = settings(sheetControls(setUp)).filter(
    ([control, value]) =>
      typeof value === 'number' || control.startsWith('bias') || value !== RESTING_CONTROLS[control],
  );
  return { ...Object.fromEntries(said), blanking: true };
}

/** FNV-1a, 32 bit (Fowler, Noll, Vo; from memory): makes a seed of any text. */
function numberOf(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return hash >>> 0;
}
