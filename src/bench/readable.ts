/**
 * Whether there was anything to read when a proof was made, since the rules of version 6. What every bench shows that is set to show nothing, or more than its face holds,
 * can be said without a look: a trace turned down to a line is 0 divisions tall everywhere, and hum at the finest Y gain fills the face. Since
 * version 7 it also has to be large enough that a reading off the graticule says more than that it was taken: between what is just large enough and a little more there is little to choose.
 */
import type { RulesVersion } from '../base/engine.ts';
import type { ProofId } from '../scenario/proofId.ts';
import { SKIRT_AT_DIV } from './askedPlace.ts';
import { atOscillatorLoop, beatHeight } from './beatSeen.ts';
import type { Bench } from './bench.ts';
import type { BenchState, ProofWatch } from './benchState.ts';
import { choicesOf } from './controlRange.ts';
import { HALF_HEIGHT_DIV } from './instruments.ts';
import { liftedPip } from './pipWitness.ts';
import { sizeDb } from './proofs.ts';
import { heightNear, middlePip, pipsInView, tall } from './readOffFace.ts';
import type { BenchSetup } from './setup.ts';

type Act = NonNullable<ProofWatch['act']>;

/** Why nothing could be read. */
export type Unreadable = 'offTube' | 'small' | 'narrow' | 'turnedDown' | 'tooLarge' | 'noPip' | 'humOff' | 'humSmall';

/** The trace stands so tall at least, divisions (until rules 6, and a beat today); and so tall still with the level down. */
const LEAST_TALL_DIV = 1.5;
/** And a curve of a sealed job since rules 7: the clicks of the Y gain bring any to three divisions and more that is not to leave the face. */
const LEAST_CURVE_DIV = 3;
const LEAST_HALVED_DIV = 0.6;
/** Two clicks of the Y gain: if a picture no larger than that runs off the face, the learner is not to blame, decibels. */
const MOST_ENLARGED_DB = 14.5;
/** Less than this can hardly be read off a face. */
const LEAST_HUM_DIV = 0.35;
/** And less than this tells one attempt from another no more, since rules 7. */
const LEAST_TOLD_HUM_DIV = 2;
/** Half is 6 dB; more than this is no half. */
const MOST_HALVED_DB = 8;
const LARGE_SINCE = 7;

export function unreadableIn(
  setup: BenchSetup,
  bench: Bench,
  { away, rest }: Act,
  proof: ProofId,
  rules: RulesVersion,
): Unreadable | null {
  const { sealed } = setup.scenario;
  const large = rules >= LARGE_SINCE && sealed;
  const picture = pictureThatIs(large);
  switch (proof) {
    case 'bias':
      return null;
    case 'touchEarth':
      return humOf(setup, bench, away, rules);
    case 'halveLevel': {
      // In practice a curve that has grown off the face while it was aligned may be read once it is lower, and pips slide sideways.
      const read = sealed ? rest : away;
      return (
        picture(setup, bench, rest, read) ?? (isTurnedDown(setup, bench, { away, rest }, large) ? 'turnedDown' : null)
      );
    }
    case 'swingPhase': {
      const read = sealed ? rest : null;
      return picture(setup, bench, rest, read) ?? (middlePip(bench.display(rest)) === null ? 'noPip' : null);
    }
    case 'markersOffOn':
      return picture(setup, bench, rest) ?? (asTheSheetHas(bench, rest) ? null : 'noPip');
    case 'liftCrystal': {
      const went = !liftedPip(bench, { away, rest }, false).answers.includes('noPipWent');
      return picture(setup, bench, rest) ?? (went ? null : 'noPip');
    }
    case 'skirts': {
      const shown = bench.display(away);
      const off = [SKIRT_AT_DIV, -SKIRT_AT_DIV].some((x) => heightNear(shown, away, x) === null);
      const tooLarge = off && sizeDb(away) - sizeDb(rest) > MOST_ENLARGED_DB;
      return picture(setup, bench, rest) ?? (tooLarge ? 'tooLarge' : null);
    }
    case 'pipDown':
      // Where none of the sheet's pips lies far enough down, that is what there is to be seen.
      return picture(setup, bench, rest) ?? (asTheSheetHas(bench, rest) ? null : 'noPip');
  }
}

/** Every crystal of the sheet is in, so that the card has its choice, and pips stand on the trace. */
function asTheSheetHas(bench: Bench, rest: BenchState): boolean {
  return bench.facts(rest).markersMissingHz.length === 0 && pipsInView(bench.display(rest)).length > 0;
}

/** The trace is tall enough, all of it stands on the face where it is `read`, and where it has to be large the sweep covers the band. */
const pictureThatIs =
  (large: boolean) =>
  (setup: BenchSetup, bench: Bench, rest: BenchState, read: BenchState | null = rest): Unreadable | null => {
    const height = heightOf(setup, bench, rest);
    const beats = atOscillatorLoop(setup, rest);
    if (height < (beats || !large ? LEAST_TALL_DIV : LEAST_CURVE_DIV)) return 'small';
    if (beats) return height >= 2 * HALF_HEIGHT_DIV - 1e-6 ? 'offTube' : null;
    if (read !== null && !bench.facts(read).traceOnScreen) return 'offTube';
    return bench.facts(rest).spanCovers || !large ? null : 'narrow';
  };

function isTurnedDown(setup: BenchSetup, bench: Bench, { away, rest }: Act, large: boolean): boolean {
  if (heightOf(setup, bench, away) < LEAST_HALVED_DIV) return true;
  return large && rest.controls.levelDb - away.controls.levelDb > MOST_HALVED_DB;
}

function heightOf(setup: BenchSetup, bench: Bench, state: BenchState): number {
  return atOscillatorLoop(setup, state) ? beatHeight(bench, state) : tall(bench.display(state), state);
}

/** Only an attempt is dealt a hum; whoever sees it run off the face turns the gain down and lifts the strap once more. */
function humOf(setup: BenchSetup, bench: Bench, away: BenchState, rules: RulesVersion): Unreadable | null {
  const { scenario } = setup;
  if (scenario.attempt === undefined || scenario.life?.strapHumVolts === undefined) return null;
  const { humDiv } = bench.display(away);
  if (humDiv > 2 * HALF_HEIGHT_DIV) return 'humOff';
  // At the end of the knob nobody can make it larger.
  const atFinest = away.controls.yVoltsPerDiv <= Math.min(...choicesOf(setup, 'yVoltsPerDiv').map(Number));
  return humDiv < (rules < LARGE_SINCE || atFinest ? LEAST_HUM_DIV : LEAST_TOLD_HUM_DIV) ? 'humSmall' : null;
}
