/**
 * Nonlinear loads inside one block: the voltages that stand once diodes load their nodes.
 *
 * With U the block's response to one amp drawn at the loaded nodes (so -U is its Thevenin impedance there) and V0 its voltages without them,  V = V0 + U I(V),
 * I = (g + j b)(|V|) V at each loaded node, the fundamental alone. One load leaves one real equation a frequency, |V| |1 - U Y(|V|)| = |V0|, whose left side rises
 * with |V| for a passive circuit: Newton's rule between bounds, begun from the last frequency's answer. Several loads are solved together by Newton's rule on the real and imaginary parts,
 * where that does not settle with the drive brought up in steps.
 * Two diodes that are a pair dent each other's crests by their pulses (diodePulses.ts): each load then goes by |V| + dent; the dents follow from the last answer.
 * A small change d of V0 becomes d + U dI, dI the change of the loads' currents: the same equations made linear. Nothing is allocated in the loops.
 *
 * Over 300 lines: one load, several loads and their small changes work on the same buffers.
 */
import { type Admittance, admittanceOf } from './admittance.ts';
import type { Chirp } from './chirp.ts';
import { eliminate, eliminateFour, factor } from './eliminate.ts';
import { addDrawn, allOf, type FollowedLaw, followMany, followOne, type LoadedBlock } from './loadedBlock.ts';
import { createPairDents } from './pairDents.ts';
import { sweepLoads } from './sweptBlock.ts';

export interface BlockLoads {
  /** the block's voltages without the loads become those with them; `columns` tells where the response to each load stands */
  apply(block: LoadedBlock, columns: Int32Array, chirp?: Chirp | null): void;
  /** of a pair of diodes, what the k-th goes by over its carrier, by frequency: the other's pulses dent its crest; null where there is no pair. A view until the next apply() */
  crest(k: number): Float64Array | null;
  /** changes of the voltages of some local nodes, the loaded ones among them, without the loads' own, become whole ones; `at` holds the voltages themselves */
  follow(block: LoadedBlock, columns: Int32Array, at: LoadedBlock, locals: ArrayLike<number>): void;
}

const MOST_ROUNDS = 60;
const RAMP_STEPS = 16;
const PAIR_ROUNDS = 16;
/** Of the carriers: the last step that is taken. */
const PAIR_CLOSE = 1e-5;
/** The answer is some hundred times the square of this from the true one at worst. */
const CLOSE = 1e-5;

/** `nodes`: local numbers of the loaded nodes; `laws`: what hangs on each. */
export function createBlockLoads(nodes: Int32Array, laws: () => readonly (readonly Admittance[])[]): BlockLoads {
  const m = nodes.length;
  const size = 2 * m;
  const y = new Float64Array(4);
  const scratch = new Float64Array(4);
  /** of the loads: voltages, what would stand without them, and the responses among them (row by row) */
  const v = new Float64Array(size);
  const bare = new Float64Array(size);
  const uRe = new Float64Array(m * m);
  const uIm = new Float64Array(m * m);
  const off = new Float64Array(size);
  const trial = new Float64Array(size);
  const matrix = new Float64Array(size * (size + 1));
  const current = new Float64Array(size);
  /** admittances with their slopes, as linearize() has met them last */
  const slopes = new Float64Array(4 * m);
  /** of each frequency: crest over carrier, of the first and then of the second */
  let crests = new Float64Array(0);
  const before = new Float64Array(size);
  const earlier = new Float64Array(size);
  const pair = createPairDents();
  const { dents } = pair;
  let paired = false;
  let followed: FollowedLaw | null = null;
  let followedStands = false;
  let drawnBefore = new Float64Array(0);

  /** Room for complex currents at each frequency, real parts first. */
  const drawn = (length: number): Float64Array => {
    if (drawnBefore.length !== length) drawnBefore = new Float64Array(length);
    return drawnBefore;
  };

  /** under a sweep, of each load and frequency: how much more it draws as it charges; null: nothing stands still longer than it */
  let pull: Float64Array | null = null;

  const admittance = (list: readonly Admittance[], hz: number, amplitude: number, at: number): void => {
    admittanceOf(list, hz, amplitude, y, scratch);
    if (pull !== null) for (let j = 0; j < 4; j++) y[j] = y[j]! * pull[at]!;
  };

  /** |V| where one load hangs on the response ur + j ui, `from` where the search begins; y is left as it is there, without slopes. */
  const oneAmplitude = (
    list: readonly Admittance[],
    hz: number,
    ur: number,
    ui: number,
    bareVolts: number,
    from: number,
    at: number,
  ): number => {
    let low = 0;
    let high = Number.POSITIVE_INFINITY;
    let a = from;
    for (let round = 0; round < MOST_ROUNDS; round++) {
      admittance(list, hz, a, at);
      const g = y[0]!;
      const b = y[1]!;
      const dg = y[2]!;
      const db = y[3]!;
      const dr = 1 - (ur * g - ui * b);
      const di = -(ur * b + ui * g);
      const d = Math.sqrt(dr * dr + di * di);
      const wrong = a * d - bareVolts;
      if (wrong > 0) high = a;
      else low = a;
      const slope = d - (a * (dr * (ur * dg - ui * db) + di * (ur * db + ui * dg))) / d;
      let next = a - wrong / slope;
      if (!(next > low && next < high)) next = high === Number.POSITIVE_INFINITY ? 2 * a : (low + high) / 2;
      const moved = next - a;
      a = next;
      // The rule doubles the good figures each time, and on so short a way the load goes in a straight line.
      if (Math.abs(moved) <= CLOSE * a || high - low <= 1e-15 * a) {
        y[0] = g + dg * moved;
        y[1] = b + db * moved;
        break;
      }
    }
    return a;
  };

  /** What the one load draws, into the room of drawn(). */
  const drawOne = (block: LoadedBlock, column: number): void => {
    const { n, count, hz, re, im, unitRe, unitIm } = block;
    const node = nodes[0]!;
    const list = laws()[0]!;
    const own = (column * n + node) * count;
    const vr = re[node]!;
    const vi = im[node]!;
    const drawnRe = drawn(2 * count);
    const drawnIm = drawnRe.subarray(count);
    // What is the same at every amplitude need not be searched for one.
    const still = list.every((law) => law.still);
    if (still) admittance(list, 0, 0, 0);
    /** |V| over |V0| at the last three frequencies: the search begins on their parabola */
    let share = 0.5;
    let second = 0.5;
    let third = 0.5;
    for (let f = 0; f < count; f++) {
      const br = vr[f]!;
      const bi = vi[f]!;
      const bareVolts = Math.sqrt(br * br + bi * bi);
      if (bareVolts === 0) {
        drawnRe[f] = 0;
        drawnIm[f] = 0;
        continue;
      }
      const ur = unitRe[own + f]!;
      const ui = unitIm[own + f]!;
      if (!still) {
        const ahead = 3 * (share - second) + third;
        const a = oneAmplitude(list, hz[f]!, ur, ui, bareVolts, bareVolts * (ahead > 0 ? ahead : share), f);
        third = second;
        second = share;
        share = a / bareVolts;
      }
      // V = V0 / (1 - U Y), I = Y V.
      const g = y[0]!;
      const b = y[1]!;
      const dr = 1 - (ur * g - ui * b);
      const di = -(ur * b + ui * g);
      const d = dr * dr + di * di;
      const xr = (br * dr + bi * di) / d;
      const xi = (bi * dr - br * di) / d;
      drawnRe[f] = g * xr - b * xi;
      drawnIm[f] = g * xi + b * xr;
    }
  };

  /** which of how many frequencies several loads are solved at */
  let place = 0;
  let placed = 0;

  /** y as a carrier of a volts meets it whose crest is dented: the current at a + dent. */
  const dentedAdmittance = (list: readonly Admittance[], hz: number, a: number, k: number): void => {
    const crest = Math.max(a + dents[k]!, 0);
    admittance(list, hz, crest, k * placed + place);
    const share = crest / a;
    const bent = (1 - share) / a;
    y[2] = share * y[2]! + bent * y[0]!;
    y[3] = share * y[3]! + bent * y[1]!;
    y[0] = share * y[0]!;
    y[1] = share * y[1]!;
  };

  /** The loads' currents at `at`, and from them how far `at` is from the answer; returns the square of that. */
  const measure = (at: Float64Array, list: readonly (readonly Admittance[])[], hz: number, share: number): number => {
    for (let k = 0; k < m; k++) {
      const x = at[2 * k]!;
      const z = at[2 * k + 1]!;
      const a = Math.sqrt(x * x + z * z);
      if (paired && a > 0) dentedAdmittance(list[k]!, hz, a, k);
      else admittance(list[k]!, hz, a, k * placed + place);
      for (let j = 0; j < 4; j++) slopes[4 * k + j] = y[j]!;
      current[2 * k] = y[0]! * x - y[1]! * z;
      current[2 * k + 1] = y[0]! * z + y[1]! * x;
    }
    let sum = 0;
    for (let k = 0; k < m; k++) {
      let r = at[2 * k]! - share * bare[2 * k]!;
      let i = at[2 * k + 1]! - share * bare[2 * k + 1]!;
      for (let j = 0; j < m; j++) {
        const ur = uRe[k * m + j]!;
        const ui = uIm[k * m + j]!;
        r -= ur * current[2 * j]! - ui * current[2 * j + 1]!;
        i -= ur * current[2 * j + 1]! + ui * current[2 * j]!;
      }
      off[2 * k] = r;
      off[2 * k + 1] = i;
      sum += r * r + i * i;
    }
    return sum;
  };

  /** matrix = 1 - U dI/dV at `at`, where measure() has been last, real and imaginary parts in turn; its last column is left alone. */
  const linearize = (at: Float64Array): void => {
    const width = size + 1;
    for (let j = 0; j < m; j++) {
      const x = at[2 * j]!;
      const z = at[2 * j + 1]!;
      const a = Math.sqrt(x * x + z * z);
      const g = slopes[4 * j]!;
      const b = slopes[4 * j + 1]!;
      const dg = slopes[4 * j + 2]!;
      const db = slopes[4 * j + 3]!;
      const cx = a > 0 ? x / a : 0;
      const cz = a > 0 ? z / a : 0;
      const pr = dg * x - db * z;
      const pi = dg * z + db * x;
      // dI by x and by z.
      const rx = g + pr * cx;
      const ix = b + pi * cx;
      const rz = -b + pr * cz;
      const iz = g + pi * cz;
      for (let k = 0; k < m; k++) {
        const ur = uRe[k * m + j]!;
        const ui = uIm[k * m + j]!;
        const own = k === j ? 1 : 0;
        matrix[2 * k * width + 2 * j] = own - (ur * rx - ui * ix);
        matrix[(2 * k + 1) * width + 2 * j] = -(ur * ix + ui * rx);
        matrix[2 * k * width + 2 * j + 1] = -(ur * rz - ui * iz);
        matrix[(2 * k + 1) * width + 2 * j + 1] = own - (ur * iz + ui * rz);
      }
    }
  };

  /** The step of Newton's rule from v, in the last column of the matrix; false where there is none. */
  const toStep = (): boolean => {
    linearize(v);
    for (let k = 0; k < size; k++) matrix[k * (size + 1) + size] = -off[k]!;
    return size === 4 ? eliminateFour(matrix) : eliminate(matrix, size);
  };

  /** Newton's rule from where v stands, the drive at `share` of the whole; false where it does not settle. */
  const settle = (list: readonly (readonly Admittance[])[], hz: number, share: number): boolean => {
    let wrong = measure(v, list, hz, share);
    for (let round = 0; round < MOST_ROUNDS; round++) {
      if (!toStep()) return false;
      let length = 0;
      let scale = 0;
      for (let k = 0; k < size; k++) {
        const step = matrix[k * (size + 1) + size]!;
        length += step * step;
        scale += v[k]! * v[k]!;
      }
      let part = 1;
      for (;;) {
        for (let k = 0; k < size; k++) trial[k] = v[k]! + part * matrix[k * (size + 1) + size]!;
        const then = measure(trial, list, hz, share);
        if (then < wrong || length <= 1e-26 * scale) {
          wrong = then;
          break;
        }
        part /= 2;
        if (part < 1e-6) return length <= 1e-20 * scale;
      }
      v.set(trial);
      if (part * part * length <= 1e-26 * scale) return true;
    }
    return false;
  };

  const many = (list: readonly (readonly Admittance[])[], hz: number): void => {
    if (!paired || !settlePair(list, hz)) settled(list, hz);
  };

  /** Newton's rule from where v stands, the dents brought up to date at each step; false where it does not settle. */
  const settlePair = (list: readonly (readonly Admittance[])[], hz: number): boolean => {
    for (let round = 0; round < PAIR_ROUNDS; round++) {
      measure(v, list, hz, 1);
      pair.update(list, v, slopes);
      if (!toStep()) return false;
      let length = 0;
      let scale = 0;
      for (let k = 0; k < size; k++) {
        const step = matrix[k * (size + 1) + size]!;
        length += step * step;
        v[k] = v[k]! + step;
        scale += v[k]! * v[k]!;
      }
      if (length <= PAIR_CLOSE * PAIR_CLOSE * scale) {
        measure(v, list, hz, 1);
        return true;
      }
    }
    return false;
  };

  /** v and the dents go on to frequency f along the parabola through the last three. */
  const goAhead = (f: number): void => {
    for (let k = 0; k < size; k++) {
      const now = v[k]!;
      if (f > 2) v[k] = 3 * (now - before[k]!) + earlier[k]!;
      else if (f > 1) v[k] = 2 * now - before[k]!;
      earlier[k] = before[k]!;
      before[k] = now;
    }
    pair.goAhead(f);
  };

  const settled = (list: readonly (readonly Admittance[])[], hz: number): void => {
    if (settle(list, hz, 1)) return;
    v.fill(0);
    for (let step = 1; step <= RAMP_STEPS; step++) {
      const share = step / RAMP_STEPS;
      if (step === 1) for (let k = 0; k < size; k++) v[k] = share * bare[k]!;
      else for (let k = 0; k < size; k++) v[k] = (v[k]! * step) / (step - 1);
      settle(list, hz, share);
    }
  };

  const fetch = ({ n, count, re, im, unitRe, unitIm }: LoadedBlock, columns: Int32Array, f: number): void => {
    for (let k = 0; k < m; k++) {
      const node = nodes[k]!;
      bare[2 * k] = re[node]![f]!;
      bare[2 * k + 1] = im[node]![f]!;
      for (let j = 0; j < m; j++) {
        const at = (columns[j]! * n + node) * count + f;
        uRe[k * m + j] = unitRe[at]!;
        uIm[k * m + j] = unitIm[at]!;
      }
    }
  };

  /** What the loads draw at each frequency, into the room of drawn(). */
  const draw = (block: LoadedBlock, columns: Int32Array): void => {
    if (m === 1) {
      drawOne(block, columns[0]!);
      return;
    }
    const list = laws();
    const { count } = block;
    const drawnRe = drawn(2 * m * count);
    const drawnIm = drawnRe.subarray(m * count);
    paired = m === 2 && list.every((one) => one.length === 1 && one[0]!.mutual !== null);
    pair.rest();
    if (paired && crests.length !== 2 * count) crests = new Float64Array(2 * count);
    v.fill(0);
    placed = count;
    for (let f = 0; f < count; f++) {
      place = f;
      fetch(block, columns, f);
      if (paired) goAhead(f);
      many(list, block.hz[f]!);
      if (paired) {
        for (let k = 0; k < 2; k++) {
          const a = Math.sqrt(v[2 * k]! * v[2 * k]! + v[2 * k + 1]! * v[2 * k + 1]!);
          crests[k * count + f] = a > 0 ? 1 + dents[k]! / a : 1;
        }
      }
      for (let k = 0; k < m; k++) {
        drawnRe[k * count + f] = current[2 * k]!;
        drawnIm[k * count + f] = current[2 * k + 1]!;
      }
    }
  };

  /** How the loads give way about the voltages `at`, which stand until the next apply(): of use to every change that is followed there. */
  const lawAt = (at: LoadedBlock, columns: Int32Array): FollowedLaw => {
    if (followed !== null && followedStands) return followed;
    const { count } = at;
    const list = laws();
    followed ??= {
      matrices: new Float64Array(count * size * size),
      rows: new Uint8Array(count * size),
      steps: new Uint8Array(count),
      y: new Float64Array(4 * m * count),
    };
    const law = followed;
    for (let f = 0; f < count; f++) {
      fetch(at, columns, f);
      paired = false;
      measure(bare, list, at.hz[f]!, 1);
      linearize(bare);
      const from = f * size * size;
      for (let k = 0; k < size; k++)
        for (let j = 0; j < size; j++) law.matrices[from + k * size + j] = matrix[k * (size + 1) + j]!;
      law.steps[f] = factor(law.matrices, from, size, law.rows, f * size);
      law.y.set(slopes, 4 * m * f);
    }
    followedStands = true;
    return law;
  };

  return {
    crest: (k) => (paired ? crests.subarray((k * crests.length) / 2, ((k + 1) * crests.length) / 2) : null),
    apply(block, columns, chirp = null) {
      followedStands = false;
      const { count } = block;
      const room = drawn(2 * m * count);
      if (chirp === null) draw(block, columns);
      else {
        sweepLoads(block, columns, chirp, {
          nodes,
          laws: laws(),
          room,
          draw(at, urge) {
            pull = urge;
            draw(at, columns);
            pull = null;
            return paired ? crests : null;
          },
        });
      }
      const locals = allOf(block);
      for (let k = 0; k < m; k++) addDrawn(block, columns[k]!, room, room.subarray(m * count), k * count, locals);
    },
    follow(block, columns, at, locals) {
      const law = lawAt(at, columns);
      const { count } = block;
      const drawnRe = drawn(2 * m * count);
      const drawnIm = drawnRe.subarray(m * count);
      if (m === 1) {
        followOne(nodes[0]!, law, block, at, drawnRe, drawnIm);
        addDrawn(block, columns[0]!, drawnRe, drawnIm, 0, locals);
        return;
      }
      followMany(nodes, law, block, at, bare, drawnRe, drawnIm);
      for (let k = 0; k < m; k++) addDrawn(block, columns[k]!, drawnRe, drawnIm, k * count, locals);
    },
  };
}
