/** What there was to be seen while one crystal was out, at a pip on the skirts, and on the needle at a bias line: for the witness of a finding. */
import { responseById } from '../receiver/responses.ts';
import type { SeenAnswer } from '../scenario/findingAnswer.ts';
import type { Bench } from './bench.ts';
import type { BenchState, ProofWatch } from './benchState.ts';
import { choicesOf } from './controlRange.ts';
import { sizeDb } from './proofs.ts';
import { heightNear, near, pipsInView, type Reach, tall } from './readOffFace.ts';
import type { BenchSetup } from './setup.ts';

type Act = NonNullable<ProofWatch['act']>;
interface Seen {
  readonly answers: readonly SeenAnswer[];
  readonly figure: Reach | null;
}

/** A pip this near to the middle line may be called left of it or right of it, divisions. */
const MIDDLE_DIV = 0.3;

export function liftedPip(bench: Bench, { away, rest }: Act, unseen: boolean): Seen {
  const before = pipsInView(bench.display(rest));
  const left = new Set(pipsInView(bench.display(away)).map(({ hz }) => hz));
  const gone = before.find(({ hz }) => !left.has(hz));
  if (unseen || gone === undefined) return { answers: ['noPipWent'], figure: null };
  const xDiv = gone.xDiv!;
  const side: SeenAnswer = xDiv < 0 ? 'pipLeft' : 'pipRight';
  const sides: readonly SeenAnswer[] = Math.abs(xDiv) < MIDDLE_DIV ? ['pipLeft', 'pipRight'] : [side];
  const answers: readonly SeenAnswer[] = rest.controls.markerRoute === 'added' ? sides : ['curveBent'];
  return { answers, figure: heightNear(bench.display(bare(away)), away, xDiv) };
}

/** A pip above this stands on the top of the curve, one below that at its foot, decibels down. */
const TOP_DB = 3;
const FOOT_DB = 20;
/** This near to either it is a matter of opinion. */
const OPINION_DB = 2;
/** A pip is asked about where the curve stands so far down, and so tall on the large picture, or on the plain one where it runs off the face of the large. */
const LEAST_DOWN_DB = 4;
const LEAST_TALL_DIV = 0.8;

interface DownPip {
  /** from 1 at the left */
  readonly no: number;
  /** decibels under the top as a reading may have it, and in the middle of that */
  readonly reach: Reach;
  readonly db: number;
}

/** The pips that may be asked about: well down, and to be read on one of the two pictures. */
export function downPips(bench: Bench, { away, rest }: Act): readonly DownPip[] {
  const pips = pipsInView(bench.display(rest)).map(({ xDiv }) => xDiv!);
  const withPips = tall(bench.display(rest), rest);
  const [plain, large] = [bare(rest), bare(away)];
  const heightsOn = (picture: BenchState): readonly (Reach | null)[] => {
    const shown = bench.display(picture);
    return pips.map((xDiv) => heightNear(shown, picture, xDiv));
  };
  const [onLarge, onPlain] = [heightsOn(large), heightsOn(plain)];
  const whole = tall(bench.display(plain), plain);
  const top = near(whole, withPips);
  return pips.flatMap((_, i) => {
    const larger = onLarge[i] === null ? 0 : sizeDb(away) - sizeDb(rest);
    const height = onLarge[i] ?? onPlain[i] ?? null;
    if (height === null || height.low <= 0) return [];
    const middle = (height.low + height.high) / 2;
    const db = decibels(whole / middle) + larger;
    if (middle < LEAST_TALL_DIV || db < LEAST_DOWN_DB) return [];
    const reach = { low: decibels(top.low / height.high) + larger, high: decibels(top.high / height.low) + larger };
    return [{ no: i + 1, reach, db }];
  });
}

export function downAtPip(bench: Bench, act: Act, no: number | null): Seen {
  const pip = downPips(bench, act).find((one) => one.no === no);
  if (pip === undefined) return { answers: ['offFace'], figure: null };
  const fits: readonly [SeenAnswer, boolean][] = [
    ['onTop', pip.db < TOP_DB + OPINION_DB],
    ['onSlope', pip.db > TOP_DB - OPINION_DB && pip.db < FOOT_DB + OPINION_DB],
    ['atFoot', pip.db > FOOT_DB - OPINION_DB],
  ];
  return { answers: fits.filter(([, fit]) => fit).map(([answer]) => answer), figure: pip.reach };
}

/** A needle is read to half of its small divisions, of which a range has ten, on the finest range that holds it; and two per cent of what it shows. */
const NEEDLE_SHARE = 0.05;
const READ_SHARE = 0.02;
/** So near to the edge of the sheet's tolerance, from inside, it is a matter of opinion: a share of it. */
const EDGE = 0.7;

export function meteredBias(setup: BenchSetup, bench: Bench, away: BenchState): Seen {
  const { meterVolts } = bench.display(away);
  const { biases } = responseById(setup.receiver, bench.facts(away).response).setUp;
  const asked = biases.find(({ at }) => at === away.leads.meter);
  const size = Math.abs(meterVolts);
  const ranges = choicesOf(setup, 'meterRangeVolts').map(Number);
  const room = NEEDLE_SHARE * (ranges.find((range) => range >= size) ?? size) + READ_SHARE * size;
  const figure = { low: Math.max(0, size - room), high: size + room };
  // A line of which the sheet says nothing has nothing to be compared with.
  if (asked === undefined) return { answers: [], figure };
  const { volts, toleranceVolts } = asked;
  if (meterVolts * volts < 0 && size > room) return { answers: ['otherSide'], figure };
  const off = Math.abs(size - Math.abs(volts));
  const side: SeenAnswer = size < Math.abs(volts) ? 'under' : 'over';
  const fits: readonly [SeenAnswer, boolean][] = [
    ['asSheet', off <= toleranceVolts + room],
    [side, off > EDGE * toleranceVolts],
  ];
  return { answers: fits.filter(([, fit]) => fit).map(([answer]) => answer), figure };
}

/** The curve without pips on it. */
export function bare(state: BenchState): BenchState {
  return { ...state, controls: { ...state.controls, pipHeightDiv: 0 } };
}

function decibels(ratio: number): number {
  return 20 * Math.log10(ratio);
}
