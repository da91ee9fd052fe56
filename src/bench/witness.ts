/**
 * What the tube showed while a proof was made, from the state that the bench then had: the answers that fit, and between which figures a reading off the graticule
 * fits. Pure: the same run gives the same on every machine.
 *
 * halveLevel    how tall the trace stands with the level down; in an attempt at a sealed job, how tall at a place
 * swingPhase    how far the pip nearest to the middle has slid, or stands from its twin on the retrace
 * markersOffOn  how tall the curve stands at one of the pips, counted from the left
 * touchEarth    how tall the hum is, from edge to edge, with the strap off
 * skirts        how tall the trace stands four divisions left of the middle, with the picture large; in an attempt at a place that it picks
 * bias          volts that the needle showed at the bias line
 * liftCrystal   how tall the curve stands where the pip went
 * pipDown       how far down the curve is at one of the pips, counted from the left, decibels under its top
 */
import { RULES_VERSION, type RulesVersion } from '../base/engine.ts';
import type { SeenAnswer } from '../scenario/findingAnswer.ts';
import { PROOFS, type ProofId } from '../scenario/proofId.ts';
import { askedPlace, SKIRT_AT_DIV } from './askedPlace.ts';
import { atOscillatorLoop, beatHeight, beatReadings } from './beatSeen.ts';
import type { Bench } from './bench.ts';
import type { BenchEvent } from './benchEvent.ts';
import type { BenchState, ProofWatch } from './benchState.ts';
import { chanceOf } from './finding.ts';
import { HALF_HEIGHT_DIV } from './instruments.ts';
import { mostSaid } from './mostSaid.ts';
import { bare, downAtPip, downPips, liftedPip, meteredBias } from './pipWitness.ts';
import { type Unreadable, unreadableIn } from './readable.ts';
import { readersBench } from './readersBench.ts';
import { heightNear, middlePip, near, pipsInView, READ_WITHIN_DIV, type Reach, tall } from './readOffFace.ts';
import type { BenchSetup } from './setup.ts';

export interface Witness {
  /** more than one where it is a matter of opinion */
  readonly answers: readonly SeenAnswer[];
  /** null: there was nothing to read, and any figure will do */
  readonly figure: Reach | null;
}

/** Since this version of the rules a proof is read where the card asks, on a picture that can be read. */
const ASKED_SINCE = 6;
/** And in practice too since this one: who makes a proof on a picture that shows nothing has not gone through the lesson. */
const READABLE_EVERYWHERE_SINCE = 7;
/** Below this the curve is at its foot, where all attempts are alike, divisions. */
const PLAIN_PIP_DIV = 0.8;
/** Less than this is not seen, divisions. */
const LEAST_SEEN_DIV = 0.15;
/** Hum taller than this is plain to everybody, divisions. */
const PLAIN_HUM_DIV = 0.5;
/** Two skirts may be called alike or not alike where they differ by between these, divisions. */
const ALIKE_DIV = 0.3;
const APART_DIV = 0.7;
/** As the rules have it: more compression than this, decibels, shows; pips under two per cent of the trace do not. */
const SHOWN_COMPRESSION_DB = 0.5;
const SHOWN_PIPS = 0.02;
/** Down to this share of its full height a trace has hardly shrunk. */
const HARDLY = 0.85;
/** Half a wave of hum lies on the trace and half on the retrace, and its second harmonic adds to one of them: a share of its height. */
const HUM_SHAPE = 0.2;
/** No way of reading it finds more than the whole wave, which is so much over what the strap's volts make. */
const HUM_WHOLE = 0.02;

/** Which pip the question is about, from 1 at the left; null where none stands on the trace. Chance of the run's own picks it. */
export function pipAskedFor(
  setup: BenchSetup,
  state: BenchState,
  proof: ProofId,
  rules: RulesVersion = RULES_VERSION,
): number | null {
  const { act } = state.proofs[proof];
  if (act === undefined) return null;
  const bench = readersBench(setup);
  if (proof === 'pipDown') {
    const down = downPips(bench, act);
    return down.length === 0 ? null : down[Math.abs(chanceOf(setup, state)) % down.length]!.no;
  }
  if (proof !== 'markersOffOn') return null;
  const pips = pipsInView(bench.display(act.rest)).map(({ xDiv }, i) => ({ no: i + 1, xDiv: xDiv! }));
  // Under a beat the curve has no height of its own.
  const still = atOscillatorLoop(setup, act.rest)
    ? pips.filter(({ xDiv }) => beatHeight(bench, act.away, xDiv) < READ_WITHIN_DIV)
    : pips;
  const standing = rules < ASKED_SINCE || setup.scenario.attempt === undefined ? [] : plainPips(bench, act, still);
  const asked = standing.length > 1 ? standing : still.length > 0 ? still : pips;
  return asked.length === 0 ? null : asked[Math.abs(chanceOf(setup, state)) % asked.length]!.no;
}

type Pip = { readonly no: number; readonly xDiv: number };

function plainPips(bench: Bench, { away }: NonNullable<ProofWatch['act']>, pips: readonly Pip[]): readonly Pip[] {
  const shown = bench.display(away);
  return pips.filter(({ xDiv }) => {
    const read = heightNear(shown, away, xDiv);
    return read !== null && (read.low + read.high) / 2 >= PLAIN_PIP_DIV;
  });
}

/** Where a height is asked for, divisions from the middle; null where it is not asked for at a place. */
export function placeAskedFor(
  setup: BenchSetup,
  state: BenchState,
  proof: ProofId,
  rules: RulesVersion = RULES_VERSION,
): number | null {
  const { act } = state.proofs[proof];
  if (act === undefined) return null;
  if (rules < ASKED_SINCE) return proof === 'skirts' ? SKIRT_AT_DIV : null;
  return askedPlace(setup, readersBench(setup), state, act, proof);
}

/** Why nothing could be read when a proof was made; null where something could, or where it has not been made. Until the rules of version 6 it is asked of sealed jobs alone. */
export function unreadable(
  setup: BenchSetup,
  state: BenchState,
  proof: ProofId,
  rules: RulesVersion = RULES_VERSION,
): Unreadable | null {
  const { act } = state.proofs[proof];
  if (act === undefined || (rules < READABLE_EVERYWHERE_SINCE && !setup.scenario.sealed)) return null;
  return unreadableIn(setup, readersBench(setup), act, proof, rules);
}

/** What was to be seen; null where the proof has not been made. `asked`: the pip that was asked about. */
export function witnessOf(
  setup: BenchSetup,
  state: BenchState,
  proof: ProofId,
  asked?: number | null,
  rules: RulesVersion = RULES_VERSION,
): Witness | null {
  const { act } = state.proofs[proof];
  if (act === undefined) return null;
  const no = asked === undefined ? pipAskedFor(setup, state, proof, rules) : asked;
  const bench = readersBench(setup);
  const { away, rest } = act;
  const place = placeAskedFor(setup, state, proof, rules);
  switch (proof) {
    case 'halveLevel': {
      if (atOscillatorLoop(setup, rest)) {
        const [bare, pipped] = beatReadings(bench, away);
        const shrank = bare <= HARDLY * beatReadings(bench, rest)[0];
        return { answers: [shrank ? 'shrankWhole' : 'hardly'], figure: near(bare, pipped) };
      }
      const small = tall(bench.display(away), away);
      const full = tall(bench.display(rest), rest);
      const answer: SeenAnswer =
        small > HARDLY * full
          ? 'hardly'
          : bench.facts(rest).compressionDb > SHOWN_COMPRESSION_DB
            ? 'topFlat'
            : 'shrankWhole';
      return { answers: [answer], figure: place === null ? near(small) : withPipsOrWithout(bench, away, place) };
    }
    case 'swingPhase': {
      const at = middlePip(bench.display(rest));
      const lag = setup.scenario.bench.phaseLagDegrees;
      const placeWith = (shown: BenchState): number | null =>
        at === null ? null : (bench.display(shown).tags.find((tag) => tag.hz === at.hz)?.xDiv ?? null);
      const moved = placeWith(away);
      // The retrace is drawn with the phase the other way round.
      const twin = placeWith({
        ...away,
        controls: { ...away.controls, phasingDegrees: -2 * lag - away.controls.phasingDegrees },
      });
      const from = away.controls.blanking ? (at?.xDiv ?? null) : twin;
      const apart = moved === null || from === null ? null : Math.abs(moved - from);
      if (apart !== null && apart < LEAST_SEEN_DIV) return { answers: ['together'], figure: near(apart) };
      return {
        answers: [away.controls.blanking ? 'slid' : 'parted'],
        figure: apart === null ? null : near(apart),
      };
    }
    case 'markersOffOn': {
      const ratio = bench.facts(rest).pipHeightRatio;
      const through = rest.controls.markerRoute !== 'added';
      const pip = no === null ? undefined : pipsInView(bench.display(rest))[no - 1];
      return {
        answers: [ratio < SHOWN_PIPS ? 'noPips' : through ? 'curveBent' : 'pipsOnly'],
        figure: pip?.xDiv == null ? null : heightNear(bench.display(away), away, pip.xDiv),
      };
    }
    case 'touchEarth': {
      // What runs off the face is read as the whole face.
      const hum = Math.min(bench.display(away).humDiv, 2 * HALF_HEIGHT_DIV);
      const stayed = bench.display(rest).humDiv;
      return {
        answers: seenOrNot(Math.abs(hum - stayed)),
        figure: near((1 - HUM_SHAPE) * hum, (1 + (rules < ASKED_SINCE ? HUM_SHAPE : HUM_WHOLE)) * hum),
      };
    }
    case 'skirts': {
      const at = place ?? SKIRT_AT_DIV;
      const shown = bench.display(away);
      const left = heightNear(shown, away, -Math.abs(at));
      const right = heightNear(bench.display(away), away, Math.abs(at));
      if (left === null || right === null) return { answers: ['offFace'], figure: null };
      const more = (left.low + left.high - right.low - right.high) / 2;
      const side: SeenAnswer = more > 0 ? 'leftHigher' : 'rightHigher';
      const size = Math.abs(more);
      const answers: readonly SeenAnswer[] = size < ALIKE_DIV ? ['alike'] : size < APART_DIV ? ['alike', side] : [side];
      return { answers, figure: at < 0 ? left : right };
    }
    case 'bias':
      return meteredBias(setup, bench, away);
    case 'liftCrystal': {
      const unseen = bench.facts(rest).pipHeightRatio < SHOWN_PIPS;
      return liftedPip(bench, act, unseen);
    }
    case 'pipDown':
      return downAtPip(bench, act, no);
  }
}

/** The height at a place with pips on the trace and without: a reader may take either. */
function withPipsOrWithout(bench: Bench, away: BenchState, place: number): Reach | null {
  const without = bare(away);
  const [a, b] = [heightNear(bench.display(away), away, place), heightNear(bench.display(without), without, place)];
  return a === null || b === null ? (a ?? b) : { low: Math.min(a.low, b.low), high: Math.max(a.high, b.high) };
}

/** A finding has been stated, and it is what the tube showed. */
export function findingFits(
  setup: BenchSetup,
  state: BenchState,
  proof: ProofId,
  rules: RulesVersion = RULES_VERSION,
): boolean {
  const { finding } = state.proofs[proof];
  const witness = finding === undefined ? null : witnessOf(setup, state, proof, undefined, rules);
  if (finding === undefined || witness === null) return false;
  const { answer, figure } = finding;
  if (answer === 'notLooked' || !witness.answers.includes(answer)) return false;
  if (rules >= ASKED_SINCE && unreadable(setup, state, proof, rules) !== null) return false;
  if (witness.figure === null) return true;
  return figure !== null && figure >= witness.figure.low - 1e-9 && figure <= witness.figure.high + 1e-9;
}

/** What a finding still needs: nothing, its statement, or the act once more. */
export type FindingStanding = 'right' | 'asked' | 'again';
export type Findings = Readonly<Partial<Record<ProofId, FindingStanding>>>;

const known = new WeakMap<BenchSetup, WeakMap<ProofWatch, FindingStanding>>();

/** Of the proofs that have been made; it is asked after every act, and what the tube showed is worked out once for each finding. */
export function findingsOf(setup: BenchSetup, state: BenchState): Findings {
  const memory = known.get(setup) ?? new WeakMap<ProofWatch, FindingStanding>();
  known.set(setup, memory);
  const made = PROOFS.filter((proof) => state.proofs[proof].done);
  return Object.fromEntries(
    made.map((proof) => {
      const watch = state.proofs[proof];
      const standing = memory.get(watch) ?? standingOf(setup, state, proof);
      memory.set(watch, standing);
      return [proof, standing];
    }),
  );
}

function standingOf(setup: BenchSetup, state: BenchState, proof: ProofId): FindingStanding {
  const { finding } = state.proofs[proof];
  if (finding === undefined) return 'asked';
  if (findingFits(setup, state, proof)) return 'right';
  if (unreadable(setup, state, proof) !== null) return 'again';
  return finding.answer === 'notLooked' || finding.said >= mostSaid(setup.scenario) ? 'again' : 'asked';
}

/** The finding of somebody who looked and read well; `no`: the pip that was asked about, where the page has picked it. */
export function trueFinding(setup: BenchSetup, state: BenchState, proof: ProofId, no?: number): BenchEvent {
  const witness = witnessOf(setup, state, proof, no);
  const [answer = 'notLooked'] = witness?.answers ?? [];
  const { figure } = witness ?? { figure: null };
  return { type: 'findingStated', proof, answer, figure: figure === null ? null : (figure.low + figure.high) / 2 };
}

/** The height at a place of the tube, divisions above the base line; null where there is none to read. */
export function heightShown(setup: BenchSetup, shown: BenchState, xDiv: number): number | null {
  const read = heightNear(readersBench(setup).display(shown), shown, xDiv);
  return read === null ? null : (read.low + read.high) / 2;
}

/** And over the whole trace. */
export function tallShown(setup: BenchSetup, shown: BenchState): number {
  return tall(readersBench(setup).display(shown), shown);
}

/** A little hum may be called hum or nothing. */
function seenOrNot(hum: number): readonly SeenAnswer[] {
  if (hum < LEAST_SEEN_DIV) return ['nothing'];
  return hum < PLAIN_HUM_DIV ? ['humCame', 'nothing'] : ['humCame'];
}
