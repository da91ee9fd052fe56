/**
 * A strip that sings: what it gives at its end comes back to an earlier stage strongly enough to keep itself up.
 *
 * The loop is cut at one stage, whose place a current source takes; what comes back to its control node over what stood there is the loop gain L. By Nyquist's criterion
 * (BSTJ January 1932) the loop grows where L(jw) goes round 1: counted here as crossings of the real axis beyond 1 with falling phase, less those with rising phase. It
 * grows until the stages give out: each passes i = Is tanh(v / Vs) at the fundamental (describingFunction.ts), and the cycle stands at the frequency where L is real and at
 * the size where it is 1 (describing function, Gelb and Vander Velde 1968, from memory). Of several that could, the one with the largest gain at the start is taken.
 *
 * To another, weaker signal of its own frequency a stage that sings with a sin(wt) has the mean of its slope left, N + a N' / 2 (dual-input describing function, same
 * source). Not modelled: that a signal close by pulls the oscillation along (Adler, Proc. IRE June 1946), and squegging.
 */
import { buildNetwork } from './buildNetwork.ts';
import { type Deck, findElement, nodeKey, type Transconductance } from './deck.ts';
import { fundamentalGain, fundamentalGainSlope } from './describingFunction.ts';
import { createSolver, type NodeLoad, type Solver } from './solver.ts';

export interface LimitCycle {
  readonly hz: number;
  /** at a node, peak */
  volts(node: string): number;
  /** by stage: what of its transconductance a weak signal of another frequency finds */
  readonly gains: ReadonlyMap<string, number>;
}

export interface LimitCycleFinder {
  setValue(element: string, value: number): void;
  setLoads(loads: readonly NodeLoad[]): void;
  /** null: it does not sing */
  find(fromHz: number, toHz: number): LimitCycle | null;
}

/** A third of a radian of the sharpest circuit here. */
const RATIO = 1.001;
const MOST_POINTS = 8000;
/** Of the stage's own volts: small enough that nothing saturates. */
const SMALL = 1e-6;
const LARGEST = 1e4;
/** How far about the frequency it is looked for, in steps of the first look: first with room for what loads do, then closely. */
const WINDOWS = [8, 1] as const;
const WINDOW = 33;
const ROUNDS = 36;

/** `saturations`: volts peak by stage, of those that have any. Null where nothing comes back to any stage. */
export function createLimitCycleFinder(deck: Deck, saturations: ReadonlyMap<string, number>): LimitCycleFinder | null {
  const cut = stageToCut(deck);
  const limit = cut === null ? undefined : saturations.get(cut.name);
  if (cut === null || limit === undefined) return null;
  const { name, nodes } = cut;
  const elements = deck.elements.map((e) =>
    e === cut ? ({ kind: 'I', name: DRIVE, nodes, value: 1, phaseDegrees: 0, dcAmps: 0 } as const) : e,
  );
  const built = buildNetwork({ ...deck, elements }, 'cut loop');
  if (!built.ok) return null;
  const solver = createSolver(built.value, Float64Array.of(1e6));
  for (const e of elements) if (e.kind === 'I' && e.name !== DRIVE) solver.setDrive(e.name, 0);
  for (const [stage, volts] of saturations) if (stage !== name) solver.setSaturation(stage, volts);
  let siemens = cut.value;

  /** Loop gain at each frequency with so many volts at the cut stage's control. */
  const loopGain = (volts: number): { readonly re: Float64Array; readonly im: Float64Array } => {
    solver.setDrive(DRIVE, siemens * fundamentalGain(volts / limit) * volts);
    solver.solve();
    const [re, im] = across(solver, cut);
    return { re: re.map((v) => v / volts), im: im.map((v) => v / volts) };
  };

  return {
    setValue(element, value) {
      if (element.toLowerCase() === name.toLowerCase()) siemens = value;
      else solver.setValue(element, value);
    },
    setLoads: (loads) => solver.setLoads(loads),
    find(fromHz, toHz) {
      if (siemens === 0) return null;
      const points = Math.min(MOST_POINTS, 2 + Math.ceil(Math.log(toHz / fromHz) / Math.log(RATIO)));
      const hz = Float64Array.from({ length: points }, (_, i) => fromHz * (toHz / fromHz) ** (i / (points - 1)));
      solver.setFrequencies(hz);
      const start = loudest(hz, loopGain(SMALL * limit));
      if (start === null) return null;
      let at = start;
      let volts = limit;
      for (const steps of WINDOWS) {
        const reach = steps * (RATIO - 1) * at;
        const near = Float64Array.from({ length: WINDOW }, (_, i) => at + reach * ((2 * i) / (WINDOW - 1) - 1));
        solver.setFrequencies(near);
        const about = at;
        volts =
          limit *
          Math.exp(
            zeroOf((logVolts) => {
              const found = realAt(near, loopGain(Math.exp(logVolts) * limit), about);
              if (found === null) return Math.log(SMALL);
              at = found.hz;
              return Math.log(found.gain);
            }),
          );
      }
      solver.setFrequencies(Float64Array.of(at));
      loopGain(volts);
      const standing = new Map(
        built.value.nodeNames.map((node) => [nodeKey(node), Math.hypot(solver.real(node)[0]!, solver.imag(node)[0]!)]),
      );
      const gains = new Map(
        [...saturations].map(([stage, most]) => {
          const element = findElement(deck, stage);
          if (element?.kind !== 'G') return [stage, 1] as const;
          const [re, im] = across(solver, element);
          return [stage, weakGain((stage === name ? volts : Math.hypot(re[0]!, im[0]!)) / most)] as const;
        }),
      );
      return { hz: at, volts: (node) => standing.get(nodeKey(node)) ?? 0, gains };
    },
  };
}

const DRIVE = 'Icut_loop';

/** Where a falling function of the logarithm of the size is zero: halving, which nothing puts off. */
function zeroOf(of: (logVolts: number) => number): number {
  let [low, high] = [Math.log(SMALL), Math.log(LARGEST)];
  for (let round = 0; round < ROUNDS; round++) {
    const middle = (low + high) / 2;
    if (of(middle) > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Mean slope of tanh over a swing of `a`: what a weak signal beside a strong one meets. */
export function weakGain(a: number): number {
  return fundamentalGain(a) + (a * fundamentalGainSlope(a)) / 2;
}

/** Mean of |a + b e^{j phi}| over all phases: 2 (a + b) / pi times the complete elliptic integral E of m = 4 a b / (a + b)^2, by the arithmetic-geometric mean. */
export function meanOfTwo(a: number, b: number): number {
  const sum = a + b;
  if (sum === 0) return 0;
  let [x, y] = [1, Math.abs(a - b) / sum];
  let less = (4 * a * b) / (sum * sum) / 2;
  if (y < 1e-12) return (2 * sum) / Math.PI;
  for (let power = 1; Math.abs(x - y) > 1e-12; power *= 2) {
    const c = (x - y) / 2;
    [x, y] = [(x + y) / 2, Math.sqrt(x * y)];
    less += power * c * c;
  }
  return (sum / x) * (1 - less);
}

interface LoopGain {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** Where the loop gain is real and largest, if it goes round 1 at all. */
function loudest(hz: Float64Array, gain: LoopGain): number | null {
  let round = 0;
  let best: { readonly hz: number; readonly gain: number } | null = null;
  for (let i = 1; i < hz.length; i++) {
    const crossing = crossingAt(hz, gain, i);
    if (crossing === null || crossing.gain <= 1) continue;
    round += crossing.falling ? 1 : -1;
    if (crossing.falling && crossing.gain > (best?.gain ?? 0)) best = crossing;
  }
  return round > 0 && best !== null ? best.hz : null;
}

/** The crossing of the positive real axis nearest to a frequency. */
function realAt(hz: Float64Array, gain: LoopGain, nearHz: number) {
  let best: ReturnType<typeof crossingAt> = null;
  for (let i = 1; i < hz.length; i++) {
    const crossing = crossingAt(hz, gain, i);
    if (crossing === null || crossing.gain <= 0) continue;
    if (best === null || Math.abs(crossing.hz - nearHz) < Math.abs(best.hz - nearHz)) best = crossing;
  }
  return best;
}

function crossingAt(hz: Float64Array, { re, im }: LoopGain, i: number) {
  const [before, after] = [im[i - 1]!, im[i]!];
  if (before > 0 === after > 0) return null;
  const share = before / (before - after);
  return {
    hz: hz[i - 1]! + share * (hz[i]! - hz[i - 1]!),
    gain: re[i - 1]! + share * (re[i]! - re[i - 1]!),
    falling: before > 0,
  };
}

/** Volts of a stage's control. */
function across(solver: Solver, { control }: Transconductance): readonly [Float64Array, Float64Array] {
  const part = (of: (node: string) => Float64Array): Float64Array => {
    const [plus, minus] = control.map((node) => (nodeKey(node) === '0' ? null : of(node)));
    return Float64Array.from(solver.hz, (_, f) => (plus?.[f] ?? 0) - (minus?.[f] ?? 0));
  };
  return [part(solver.real), part(solver.imag)];
}

/** A stage whose output comes back to its control; where one stage taken out leaves no other such, that one. */
function stageToCut(deck: Deck): Transconductance | null {
  const stages = deck.elements.filter((e) => e.kind === 'G');
  const inLoop = (among: readonly Transconductance[]): readonly Transconductance[] => {
    const reach = reachOf(deck, among);
    return among.filter((stage) => reach(stage.nodes).some((at) => stage.control.some((node) => at === groupOf(node))));
  };
  const groups = groupsOf(deck);
  const groupOf = (node: string): string => groups(nodeKey(node));
  const looped = inLoop(stages);
  return looped.find((stage) => inLoop(stages.filter((one) => one !== stage)).length === 0) ?? looped.at(-1) ?? null;
}

/** Nodes that parts other than stages tie to each other bear one name; earth ties nothing. */
function groupsOf(deck: Deck): (key: string) => string {
  const leader = new Map<string, string>();
  const find = (key: string): string => {
    let at = key;
    while (leader.has(at)) at = leader.get(at)!;
    return at;
  };
  for (const e of deck.elements) {
    if (e.kind === 'G' || e.kind === 'I') continue;
    const coils = e.kind === 'K' ? e.coils.map((coil) => findElement(deck, coil)) : [e];
    const keys = coils.flatMap((one) => (one === undefined || one.kind === 'K' ? [] : one.nodes.map(nodeKey)));
    const [first, ...rest] = keys.filter((key) => key !== '0');
    if (first === undefined) continue;
    for (const key of rest) if (find(key) !== find(first)) leader.set(find(key), find(first));
  }
  return find;
}

/** Groups that a signal at some nodes gets to, by way of stages. */
function reachOf(deck: Deck, stages: readonly Transconductance[]): (from: readonly string[]) => readonly string[] {
  const groups = groupsOf(deck);
  const of = (nodes: readonly string[]): string[] =>
    nodes.map(nodeKey).flatMap((key) => (key === '0' ? [] : [groups(key)]));
  return (from) => {
    const seen = new Set(of(from));
    for (let grown = true; grown; ) {
      grown = false;
      for (const { control, nodes } of stages) {
        if (!of(control).some((group) => seen.has(group))) continue;
        for (const group of of(nodes)) {
          if (!seen.has(group)) grown = true;
          seen.add(group);
        }
      }
    }
    return [...seen];
  };
}
