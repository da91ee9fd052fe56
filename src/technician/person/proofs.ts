/** Proving the picture: each act is done and undone, so that the bench stands as before, and what was seen is read off and written down. */
import { baseLine, extent, heightAt, see, swing } from './eyes.ts';
import { clip, type Hands, set } from './hands.ts';
import { shimmerExtent } from './oscillator.ts';
import type { PrintedSheet } from './sheet.ts';

type Proof = PrintedSheet['proofs'][number];
/** These need pips on the trace; the others are better without. */
const WITH_PIPS: readonly Proof[] = ['markersOffOn', 'liftCrystal', 'pipDown'];
type Pipped = 'markersOffOn' | 'liftCrystal' | 'pipDown';
type Finding = Omit<Extract<Parameters<Hands['act']>[0], { type: 'findingStated' }>, 'type' | 'proof'>;

/** Where the skirts are looked at, divisions from the middle. */
const SKIRT_DIV = 4;
const HARDLY = 0.85;
const ALIKE_DIV = 0.5;
const LEAST_SEEN_DIV = 0.2;
/** In a sealed job the card counts hum of two divisions and more; he makes sure of it. */
const COUNTED_HUM_DIV = 2.2;
/** The half of a wave that lies on the retrace is a quarter less than the whole at most. */
const MOST_HALF_WAVE_DIV = 6;

/** `beats`: the tube shows an oscillator's beat in place of a curve. */
export function prove(hands: Hands, sheet: PrintedSheet, beats: boolean): void {
  const { pipHeightDiv } = hands.knobs();
  // What setting up happened to prove was not looked at: it is made again, with open eyes.
  for (const proof of sheet.proofs) hands.act({ type: 'findingStated', proof, answer: 'again', figure: null });
  // Heights are read without pips in the way.
  set(hands, 'pipHeightDiv', 0);
  const seen = new Map<Proof, Finding>();
  for (const proof of sheet.proofs) {
    if (WITH_PIPS.includes(proof)) continue;
    hands.note({ kind: 'proves', proof });
    seen.set(proof, actAndLook(hands, sheet, proof as Exclude<Proof, Pipped>, beats));
  }
  if (sheet.proofs.includes('markersOffOn')) hands.note({ kind: 'proves', proof: 'markersOffOn' });
  set(hands, 'pipHeightDiv', pipHeightDiv);
  if (sheet.proofs.includes('markersOffOn')) seen.set('markersOffOn', pipsAway(hands, pipHeightDiv));
  if (sheet.proofs.includes('liftCrystal')) seen.set('liftCrystal', crystalOut(hands, pipHeightDiv));
  if (sheet.proofs.includes('pipDown')) seen.set('pipDown', downAtPip(hands, pipHeightDiv));
  for (const [proof, finding] of seen) {
    hands.note({ kind: 'saw', proof, ...finding });
    hands.act({ type: 'findingStated', proof, ...finding });
  }
}

function actAndLook(hands: Hands, sheet: PrintedSheet, proof: Exclude<Proof, Pipped>, beats: boolean): Finding {
  const knobs = hands.knobs();
  switch (proof) {
    case 'halveLevel': {
      const full = tall(hands, beats);
      const withHalf = <T>(read: () => T): T => {
        set(hands, 'levelDb', Math.max(knobs.levelDb - 6, hands.scale('levelDb').low));
        const seen = read();
        set(hands, 'levelDb', knobs.levelDb);
        return seen;
      };
      const half = withHalf(() => tall(hands, beats));
      const answer = half > HARDLY * full ? 'hardly' : 'shrankWhole';
      const place = hands.placeAskedFor('halveLevel');
      // The card may ask about a place, and the level goes down once more.
      return { answer, figure: place === null ? half : withHalf(() => tallAt(see(hands), place)) };
    }
    case 'touchEarth': {
      const earth = sheet.testPoints.find((p) => p.role === 'earth');
      if (earth === undefined) return { answer: 'notLooked', figure: null };
      // The base line in the middle: hum goes both ways.
      set(hands, 'yPositionDiv', 0);
      const lift = (): { readonly hum: number; readonly whole: boolean } => {
        hands.act({ type: 'leadRemoved', lead: 'earth' });
        const { back } = see(hands);
        const lifted = { hum: swing(back), whole: extent(back).whole };
        hands.act({ type: 'leadConnected', lead: 'earth', to: earth.id });
        return lifted;
      };
      const again = (gain: number): typeof seen => {
        hands.act({ type: 'findingStated', proof: 'touchEarth', answer: 'again', figure: null });
        set(hands, 'yVoltsPerDiv', gain);
        return lift();
      };
      let seen = lift();
      // It runs off the face, or would if more of the wave than the half on the retrace were to be seen: the strap goes on, the gain down, and it is done once more.
      const offFace = (): boolean => !seen.whole || (sheet.sealed && seen.hum > MOST_HALF_WAVE_DIV);
      for (let gain = coarser(hands); gain !== null && offFace(); gain = coarser(hands)) seen = again(gain);
      // Or it is too small to count in a sealed job: the gain goes up, and a click back where that was too much.
      for (
        let gain = oneFiner(hands);
        sheet.sealed && gain !== null && seen.hum < COUNTED_HUM_DIV;
        gain = oneFiner(hands)
      ) {
        seen = again(gain);
        if (!offFace()) continue;
        seen = again(coarser(hands)!);
        break;
      }
      const { hum } = seen;
      const still = swing(see(hands).back);
      set(hands, 'yVoltsPerDiv', knobs.yVoltsPerDiv);
      set(hands, 'yPositionDiv', knobs.yPositionDiv);
      // A picture that was made larger for the hum is not where skirts are looked at.
      for (const larger of sheet.proofs.filter((one) => one === 'skirts' || one === 'pipDown'))
        hands.act({ type: 'findingStated', proof: larger, answer: 'again', figure: null });
      return { answer: hum - still > LEAST_SEEN_DIV ? 'humCame' : 'nothing', figure: hum };
    }
    case 'swingPhase': {
      const from = pips(hands).reduce<number | null>(
        (best, x) => (best === null || Math.abs(x) < Math.abs(best) ? x : best),
        null,
      );
      const at = from === null ? -1 : pips(hands).indexOf(from);
      const away = knobs.phasingDegrees > 0 ? -15 : 15;
      set(hands, 'phasingDegrees', knobs.phasingDegrees + away);
      const to = pips(hands)[at];
      set(hands, 'phasingDegrees', knobs.phasingDegrees);
      return { answer: 'slid', figure: from === null || to === undefined ? null : Math.abs(to - from) };
    }
    case 'bias':
      return needleAtBias(hands, sheet);
    case 'skirts': {
      const { low, high } = { low: knobs.levelDb, high: hands.scale('levelDb').high };
      const gain = finer(hands, knobs.yVoltsPerDiv);
      const largerAt = (x: number): (number | null)[] => {
        // With the gain at its end already the level makes the picture larger.
        if (gain > knobs.yVoltsPerDiv / 3.2) set(hands, 'levelDb', Math.min(low + 12, high));
        else set(hands, 'yVoltsPerDiv', gain);
        const sight = see(hands);
        const seen = [-x, x].map((at) => tallAt(sight, at));
        set(hands, 'levelDb', knobs.levelDb);
        set(hands, 'yVoltsPerDiv', knobs.yVoltsPerDiv);
        return seen;
      };
      let [left, right] = largerAt(SKIRT_DIV);
      const place = hands.placeAskedFor('skirts') ?? -SKIRT_DIV;
      // The card may ask about another place, and the picture is made larger once more.
      if (Math.abs(place) !== SKIRT_DIV) [left, right] = largerAt(Math.abs(place));
      if (left == null || right == null) return { answer: 'offFace', figure: null };
      const answer = Math.abs(left - right) < ALIKE_DIV ? 'alike' : left > right ? 'leftHigher' : 'rightHigher';
      return { answer, figure: place < 0 ? left : right };
    }
  }
}

/** They have been off and are on again: the curve is read where the card asks, with the pips out of the way once more. */
function pipsAway(hands: Hands, pipHeightDiv: number): Finding {
  const at = pips(hands)[(hands.pipAskedFor('markersOffOn') ?? 0) - 1];
  set(hands, 'pipHeightDiv', 0);
  const figure = at === undefined ? null : tallAt(see(hands), at);
  set(hands, 'pipHeightDiv', pipHeightDiv);
  return { answer: 'pipsOnly', figure };
}

/** The meter's prods are made for live work. */
function needleAtBias(hands: Hands, sheet: PrintedSheet): Finding {
  const bias = sheet.responses.flatMap(({ setUp }) => setUp.biases).find(({ at }) => hands.leads().biasA === at);
  if (bias === undefined) return { answer: 'notLooked', figure: null };
  const size = Math.abs(bias.volts);
  const { clicks } = hands.scale('meterRangeVolts');
  set(hands, 'meterMode', 'dc');
  set(hands, 'meterRangeVolts', clicks.find((range) => range > 1.2 * size) ?? clicks.at(-1)!);
  clip(hands, 'meter', bias.at);
  const step = hands.knobs().meterRangeVolts / NEEDLE_STEPS;
  const read = Math.round(hands.look().meterVolts / step) * step;
  clip(hands, 'meter', null);
  const less = Math.abs(read) < size ? 'under' : 'over';
  const near = Math.abs(Math.abs(read) - size) <= bias.toleranceVolts + step / 2;
  const answer = read * bias.volts < 0 ? 'otherSide' : near ? 'asSheet' : less;
  return { answer, figure: Math.abs(Math.round(100 * read) / 100) };
}

/** A needle is read to half of a small division, of which a range has ten. */
const NEEDLE_STEPS = 20;

/** The crystal whose pip is the leftmost comes out: where it was, the curve is read without pips. */
function crystalOut(hands: Hands, pipHeightDiv: number): Finding {
  const tags = hands.look().tags.filter(({ kind, xDiv }) => kind === 'crystal' && xDiv !== null && Math.abs(xDiv) <= 5);
  const [first] = [...tags].sort((a, b) => a.xDiv! - b.xDiv!);
  if (first === undefined) return { answer: 'notLooked', figure: null };
  const { hz } = first;
  const at = Math.round(first.xDiv! * 20) / 20;
  hands.act({ type: 'crystalPulled', hz });
  const stayed = hands.look().tags.some((tag) => tag.hz === hz && tag.xDiv !== null);
  set(hands, 'pipHeightDiv', 0);
  const sight = see(hands);
  const read = heightAt(sight.forward, at);
  set(hands, 'pipHeightDiv', pipHeightDiv);
  hands.act({ type: 'crystalPlugged', hz });
  if (stayed) return { answer: 'noPipWent', figure: 0 };
  const figure = read === null ? null : Math.abs(read - (baseLine(sight) ?? 0));
  return { answer: at < 0 ? 'pipLeft' : 'pipRight', figure };
}

/** How many decibels the curve is down at the pip that the card asks about: its height on the large picture against the top on the plain one. */
function downAtPip(hands: Hands, pipHeightDiv: number): Finding {
  const knobs = hands.knobs();
  set(hands, 'pipHeightDiv', 0);
  const top = tall(hands, false);
  const plain = see(hands);
  const gain = finer(hands, knobs.yVoltsPerDiv);
  const louder = Math.min(knobs.levelDb + 12, hands.scale('levelDb').high);
  const more = gain > knobs.yVoltsPerDiv / 3.2 ? louder - knobs.levelDb : 20 * Math.log10(knobs.yVoltsPerDiv / gain);
  if (gain > knobs.yVoltsPerDiv / 3.2) set(hands, 'levelDb', louder);
  else set(hands, 'yVoltsPerDiv', gain);
  const sight = see(hands);
  set(hands, 'levelDb', knobs.levelDb);
  set(hands, 'yVoltsPerDiv', knobs.yVoltsPerDiv);
  set(hands, 'pipHeightDiv', pipHeightDiv);
  const at = pips(hands)[(hands.pipAskedFor('pipDown') ?? 0) - 1];
  if (at === undefined) return { answer: 'offFace', figure: 0 };
  // What runs off the face of the large picture is read on the plain one.
  const onLarge = heightAt(sight.forward, at);
  const read = onLarge ?? heightAt(plain.forward, at);
  if (read === null) return { answer: 'offFace', figure: 0 };
  const height = Math.abs(read - (baseLine(onLarge === null ? plain : sight) ?? 0));
  const down = 20 * Math.log10(top / Math.max(height, 0.1)) + (onLarge === null ? 0 : more);
  return { answer: down < 3 ? 'onTop' : down < 20 ? 'onSlope' : 'atFoot', figure: Math.round(10 * down) / 10 };
}

/** Above the base line at a place; null where the trace is off the face there. */
function tallAt(sight: ReturnType<typeof see>, xDiv: number): number | null {
  const read = heightAt(sight.forward, xDiv);
  return read === null ? null : Math.abs(read - (baseLine(sight) ?? 0));
}

/** From the base line or the lowest place to the top. */
function tall(hands: Hands, beats: boolean): number {
  if (beats) {
    const { low, high } = shimmerExtent(hands);
    return high - low;
  }
  const sight = see(hands);
  const { low, high } = extent(sight.forward);
  const base = baseLine(sight) ?? low;
  return Math.max(high, base) - Math.min(low, base);
}

/** Places of the crystals' pips, from the left. */
function pips(hands: Hands): number[] {
  return hands
    .look()
    .tags.flatMap(({ xDiv }) => (xDiv === null || Math.abs(xDiv) > 5 ? [] : [Math.round(xDiv * 20) / 20]))
    .sort((a, b) => a - b);
}

/** The next lower gain; null at the end of the knob. */
function coarser(hands: Hands): number | null {
  const { yVoltsPerDiv } = hands.knobs();
  return hands.scale('yVoltsPerDiv').clicks.find((click) => click > yVoltsPerDiv * 1.01) ?? null;
}

/** The next higher gain; null at the end of the knob. */
function oneFiner(hands: Hands): number | null {
  const { yVoltsPerDiv } = hands.knobs();
  return hands.scale('yVoltsPerDiv').clicks.findLast((click) => click < yVoltsPerDiv * 0.99) ?? null;
}

/** At least ten decibels more gain, where the knob goes so far. */
function finer(hands: Hands, voltsPerDiv: number): number {
  const { clicks, low } = hands.scale('yVoltsPerDiv');
  return clicks.findLast((gain) => gain <= voltsPerDiv / 3.2) ?? low;
}
