/**
 * What the loads of one block draw while the source sweeps over its frequencies at one rate (chirp.ts).
 *
 * At an instant V = b + U I(V), U the response at the frequency of the moment, as at rest (blockLoads.ts); b is what stands there without what is drawn just then:
 *   b = C (V0 + U C^-1 I) - U I,
 * V0 the lines without the loads and I the currents of the round before; the first round takes C V0. Each load draws by how it charges (`Admittance.pull`), its crests those of the round before; that is looked at
 * twice and then stands, for what is noise from sample to sample would grow by it from round to round. At a lag of 0.05 three rounds are gone through, at 0.18 four.
 * Source: waveform relaxation, any text on harmonic balance (from memory).
 */
import type { Admittance } from './admittance.ts';
import type { Chirp } from './chirp.ts';
import type { LoadedBlock } from './loadedBlock.ts';

export interface SweptLoads {
  /** local numbers of the loaded nodes, and what hangs on each */
  readonly nodes: Int32Array;
  readonly laws: readonly (readonly Admittance[])[];
  /** the currents of each load by frequency, real parts first: draw() leaves them here, and here they end as lines */
  readonly room: Float64Array;
  /** currents where such voltages stand without them; `urge`: of each load and frequency, how much more it draws than where all stands still. Returns crests over carriers of a pair, else null */
  draw(at: LoadedBlock, urge: Float64Array): Float64Array | null;
}

const MOST_ROUNDS = 6;
const CHARGED_ROUNDS = 2;
/** Of the largest current: a round that moves none by more is the last. */
const RESTS = 5e-3;

/** `block` holds the lines without the loads; `columns` tells where the response to each load stands. */
export function sweepLoads(
  block: LoadedBlock,
  columns: Int32Array,
  chirp: Chirp,
  { nodes, laws, room, draw }: SweptLoads,
): void {
  const { n, count, unitRe, unitIm } = block;
  const m = nodes.length;
  const lines = Array.from(nodes, (node) => [block.re[node]!.slice(), block.im[node]!.slice()] as const);
  const instants = Array.from(nodes, () => [new Float64Array(count), new Float64Array(count)] as const);
  const at = { ...block, re: block.re.slice(), im: block.im.slice() };
  for (const [k, node] of nodes.entries()) [at.re[node], at.im[node]] = instants[k]!;
  const urge = new Float64Array(m * count).fill(1);
  const drawn = new Float64Array(2 * m * count);
  const seconds = (count * chirp.stepHz) / Math.abs(chirp.rate);

  /** Adds what the currents in `from` bring about at a node, or takes it off. */
  const addAt = (node: number, from: Float64Array, re: Float64Array, im: Float64Array, sign: 1 | -1): void => {
    for (let j = 0; j < m; j++) {
      const unit = (columns[j]! * n + node) * count;
      for (let f = 0; f < count; f++) {
        const ur = unitRe[unit + f]!;
        const ui = unitIm[unit + f]!;
        const ir = from[j * count + f]!;
        const ii = from[(m + j) * count + f]!;
        re[f] = re[f]! + sign * (ur * ir - ui * ii);
        im[f] = im[f]! + sign * (ur * ii + ui * ir);
      }
    }
  };

  const follow = (crests: Float64Array | null): void => {
    for (const [k, node] of nodes.entries()) {
      const [law, ...more] = laws[k]!;
      if (law?.pull == null || more.length > 0) continue;
      const [re, im] = [instants[k]![0].slice(), instants[k]![1].slice()];
      addAt(node, room, re, im, 1);
      const crest = re.map((r, f) => Math.hypot(r, im[f]!) * (crests === null ? 1 : crests[k * count + f]!));
      const out = urge.subarray(k * count, (k + 1) * count);
      // In the order in which the source passes them.
      if (chirp.rate < 0) crest.reverse();
      law.pull(crest, seconds, out);
      if (chirp.rate < 0) out.reverse();
    }
  };

  for (let round = 0, rests = false; round < MOST_ROUNDS && !rests; round++) {
    for (const [k, node] of nodes.entries()) {
      const [re, im] = instants[k]!;
      re.set(lines[k]![0]);
      im.set(lines[k]![1]);
      if (round > 0) addAt(node, room, re, im, 1);
      chirp.toTime(re, im);
      if (round > 0) addAt(node, drawn, re, im, -1);
    }
    const crests = draw(at, urge);
    rests = round > CHARGED_ROUNDS - 1 && farthest(room, drawn) < RESTS * farthest(room, null);
    drawn.set(room);
    if (round < CHARGED_ROUNDS) follow(crests);
    for (let k = 0; k < m; k++)
      chirp.toLines(room.subarray(k * count, (k + 1) * count), room.subarray((m + k) * count, (m + k + 1) * count));
  }
}

/** The largest of what two arrays are apart, or of one. */
function farthest(one: Float64Array, other: Float64Array | null): number {
  let most = 0;
  for (let i = 0; i < one.length; i++) most = Math.max(most, Math.abs(one[i]! - (other === null ? 0 : other[i]!)));
  return most;
}
