/**
 * A deck as a diagram needs it: which elements are drawn, what hangs on which node, and in what order the nodes stand from left to right: the signal's own, found
 * by following couplings and stages from the sources on.
 */
import { type Coupling, type Deck, findElement, nodeKey, type Transconductance } from '../../physics/deck.ts';
import type { Detector, FmDetector, Receiver } from '../../receiver/receiver.ts';

/** A part with two ends; a detector's diode counts as one. */
export interface Branch {
  readonly kind: 'R' | 'L' | 'C' | 'D';
  readonly name: string;
  readonly ends: readonly [string, string];
  /** part of a detector, whose name it bears */
  readonly detector: boolean;
}

export interface StageBranch {
  readonly element: Transconductance;
  readonly output: string;
  readonly control: string;
  /** the other ends, where they are not on earth */
  readonly cathode: string | null;
  readonly controlReturn: string | null;
}

export interface CircuitGraph {
  readonly branches: readonly Branch[];
  readonly stages: readonly StageBranch[];
  readonly couplings: readonly Coupling[];
  readonly fm: readonly FmDetector[];
  /** nodes from left to right, those of `islands` left out */
  readonly order: readonly string[];
  /** circuits that hang on one coil by coupling alone (absorption traps): their node, by the coil's name */
  readonly islands: ReadonlyMap<string, readonly string[]>;
}

/** The node behind a detector's diodes. */
export const detectorNode = (id: string): string => `!${id}`;

export function circuitGraph(receiver: Receiver, deck: Deck): CircuitGraph {
  const branches = branchesOf(receiver, deck);
  const stages = deck.elements.flatMap((e) => (e.kind === 'G' ? [stageOf(e)] : []));
  const couplings = deck.elements.filter((e) => e.kind === 'K');
  const fm = receiver.detectors.filter((d): d is FmDetector => d.kind !== 'envelope');
  const groups = groupsOf(branches, stages, deck, fm);
  const coilNode = (coil: string): string | null => {
    const found = branches.find((b) => b.name.toLowerCase() === coil.toLowerCase());
    return found === undefined ? null : hot(found.ends);
  };
  const islands = islandsOf(receiver, branches, stages, couplings, groups, coilNode);
  const order = orderOf({ receiver, deck, branches, stages, couplings, fm, groups, coilNode, islands });
  return { branches, stages, couplings, fm, order, islands };
}

export const hot = (ends: readonly [string, string]): string => (ends[0] === '0' ? ends[1] : ends[0]);

function stageOf(element: Transconductance): StageBranch {
  const [p, n] = element.nodes.map(nodeKey) as [string, string];
  const [cp, cn] = element.control.map(nodeKey) as [string, string];
  const output = hot([p, n]);
  const control = hot([cp, cn]);
  const cathode = output === p ? n : p;
  const controlReturn = control === cp ? cn : cp;
  return {
    element,
    output,
    control,
    cathode: cathode === '0' ? null : cathode,
    controlReturn: controlReturn === '0' || controlReturn === cathode ? null : controlReturn,
  };
}

/** Losses of coils, wiring and the like are nothing that a sheet draws, but where nothing else joins two nodes. */
function branchesOf(receiver: Receiver, deck: Deck): readonly Branch[] {
  const none = new Set((receiver.notParts ?? []).map((name) => name.toLowerCase()));
  const all = deck.elements.flatMap((e): Branch[] =>
    e.kind === 'R' || e.kind === 'L' || e.kind === 'C'
      ? [{ kind: e.kind, name: e.name, ends: e.nodes.map(nodeKey) as [string, string], detector: false }]
      : [],
  );
  const isPart = ({ name, kind }: Branch) => kind === 'L' || !none.has(name.toLowerCase());
  const joined = new Joined();
  for (const b of all) if (isPart(b)) joined.join(b.ends);
  const kept = all.filter((b) => {
    if (isPart(b)) return true;
    if (b.ends.includes('0') || joined.same(...b.ends)) return false;
    joined.join(b.ends);
    return true;
  });
  return [...kept, ...receiver.detectors.flatMap((d) => (d.kind === 'envelope' ? diodeAndLoad(d) : []))];
}

function diodeAndLoad(detector: Extract<Detector, { kind: 'envelope' }>): Branch[] {
  const out = detectorNode(detector.id);
  const named = { name: detector.id, detector: true };
  return [
    { kind: 'D', ends: [nodeKey(detector.node), out], ...named },
    { kind: 'R', ends: [out, '0'], ...named },
    { kind: 'C', ends: [out, '0'], ...named },
  ];
}

/** Nodes that hang together; earth joins nothing. */
class Joined {
  private readonly leader = new Map<string, string>();
  find(key: string): string {
    let at = key;
    while (true) {
      const next = this.leader.get(at);
      if (next === undefined) this.leader.set(at, at);
      if (next === undefined || next === at) return at;
      at = next;
    }
  }
  join([a, b]: readonly [string, string]): void {
    if (a !== '0' && b !== '0') this.leader.set(this.find(b), this.find(a));
  }
  same(a: string, b: string): boolean {
    return this.find(a) === this.find(b);
  }
}

function groupsOf(
  branches: readonly Branch[],
  stages: readonly StageBranch[],
  deck: Deck,
  fm: readonly FmDetector[],
): ReadonlyMap<string, readonly string[]> {
  const joined = new Joined();
  const nodes = new Set<string>();
  const see = (...seen: (string | null)[]) => {
    for (const node of seen) if (node !== null && node !== '0') nodes.add(node);
  };
  for (const e of deck.elements) if (e.kind !== 'K') see(...e.nodes.map(nodeKey));
  for (const b of branches) {
    see(...b.ends);
    joined.join(b.ends);
  }
  for (const s of stages) see(s.output, s.control, s.cathode, s.controlReturn);
  for (const d of fm) see(detectorNode(d.id));
  const groups = new Map<string, string[]>();
  for (const node of nodes) {
    const leader = joined.find(node);
    groups.set(leader, [...(groups.get(leader) ?? []), node]);
  }
  return new Map([...groups.values()].flatMap((group) => group.map((node) => [node, group] as const)));
}

type CoilNode = (coil: string) => string | null;

function islandsOf(
  receiver: Receiver,
  branches: readonly Branch[],
  stages: readonly StageBranch[],
  couplings: readonly Coupling[],
  groups: ReadonlyMap<string, readonly string[]>,
  coilNode: CoilNode,
): ReadonlyMap<string, readonly string[]> {
  const used = new Set([
    ...stages.flatMap((s) => [s.output, s.control, s.cathode, s.controlReturn]),
    ...receiver.detectors.flatMap((d) => (d.kind === 'envelope' ? [d.node] : [d.plus, d.minus])).map(nodeKey),
    ...receiver.testPoints.map((p) => (p.node === null ? null : nodeKey(p.node))),
    ...receiver.responses.flatMap((r) => (r.quantity.kind === 'carrier' ? [nodeKey(r.quantity.node)] : [])),
  ]);
  const islands = new Map<string, string[]>();
  for (const [node, group] of groups) {
    if (group.length > 1 || used.has(node)) continue;
    const coils = branches.filter((b) => b.kind === 'L' && b.ends.includes(node)).map((b) => b.name);
    const hosts = couplings.flatMap(({ coils: [a, b] }) =>
      coilNode(a) === node ? [b] : coilNode(b) === node ? [a] : [],
    );
    const host = hosts[0];
    if (coils.length !== 1 || hosts.length !== 1 || host === undefined) continue;
    const hostNode = coilNode(host);
    const hostBranch = branches.find((b) => b.name.toLowerCase() === host.toLowerCase());
    // Two circuits that have but each other are no trap and its circuit, and a host's coil has to hang beside it.
    if (hostNode === null || hostBranch === undefined || !hostBranch.ends.includes('0')) continue;
    if (hostNode === node || (groups.get(hostNode)?.length === 1 && !used.has(hostNode))) continue;
    islands.set(hostBranch.name, [...(islands.get(hostBranch.name) ?? []), node]);
  }
  return islands;
}

interface DeckRead {
  readonly receiver: Receiver;
  readonly deck: Deck;
  readonly branches: readonly Branch[];
  readonly stages: readonly StageBranch[];
  readonly couplings: readonly Coupling[];
  readonly fm: readonly FmDetector[];
  readonly groups: ReadonlyMap<string, readonly string[]>;
  readonly coilNode: CoilNode;
  readonly islands: ReadonlyMap<string, readonly string[]>;
}

function orderOf(parts: DeckRead): readonly string[] {
  const { receiver, deck, branches, stages, couplings, fm, groups, coilNode } = parts;
  const order: string[] = [];
  const seen = new Set<string>([...parts.islands.values()].flat());
  const sourceNode = (name: string): string | null => {
    const found = findElement(deck, name);
    return found === undefined || found.kind === 'K' ? null : hot(found.nodes.map(nodeKey) as [string, string]);
  };
  /** from one group of nodes to those that it hands its signal to: where from, where to */
  const onward: (readonly [string | null, string | null])[] = [
    ...couplings.flatMap(({ coils: [a, b] }) => [
      [coilNode(a), coilNode(b)] as const,
      [coilNode(b), coilNode(a)] as const,
    ]),
    ...stages.map((s) => [s.control, s.output] as const),
    ...fm.map((d) => [nodeKey(d.plus), detectorNode(d.id)] as const),
  ];
  const { converter, videoFeed } = receiver;
  const handed = [
    ...(converter === null ? [] : [[nodeKey(converter.from), sourceNode(converter.into)] as const]),
    ...receiver.detectors.flatMap((d) =>
      d.id === videoFeed?.detector && d.kind === 'envelope'
        ? [[nodeKey(d.node), sourceNode(videoFeed.into)] as const]
        : [],
    ),
  ];
  onward.push(...handed);
  const exits = new Set(onward.map(([from]) => from));
  const visit = (entry: string): void => {
    if (seen.has(entry)) return;
    const group = groups.get(entry) ?? [entry];
    const pair = fm.find((d) => group.includes(nodeKey(d.plus)) && group.includes(nodeKey(d.minus)));
    const walked = walk(pair === undefined ? entry : nodeKey(pair.plus), branches, exits, pair !== undefined);
    for (const node of walked) {
      seen.add(node);
      order.push(node);
    }
    for (const [from, to] of onward) if (from !== null && to !== null && group.includes(from)) visit(to);
  };
  const sources = deck.elements.filter((e) => e.kind === 'I').map((e) => hot(e.nodes.map(nodeKey) as [string, string]));
  for (const node of sources) if (node !== '0' && !handed.some(([, to]) => to === node)) visit(node);
  for (const node of groups.keys()) visit(node);
  return order;
}

/** The nodes of one group, each after one that it is joined with; what leads on to the next group comes last. */
function walk(
  entry: string,
  branches: readonly Branch[],
  exits: ReadonlySet<string | null>,
  coilsFirst: boolean,
): string[] {
  const seen = new Set<string>();
  const next = (node: string): string[] => {
    const joining = branches.filter((b) => b.ends.includes(node) && !b.ends.includes('0'));
    if (coilsFirst) joining.sort((a, b) => Number(b.kind === 'L') - Number(a.kind === 'L'));
    return [...new Set(joining.map(({ ends: [a, b] }) => (a === node ? b : a)))];
  };
  const leadsOn = (node: string, without: ReadonlySet<string>): boolean => {
    const tried = new Set(without);
    const stack = [node];
    for (let at = stack.pop(); at !== undefined; at = stack.pop()) {
      if (tried.has(at)) continue;
      if (exits.has(at)) return true;
      tried.add(at);
      stack.push(...next(at));
    }
    return false;
  };
  const go = (node: string): void => {
    if (seen.has(node)) return;
    seen.add(node);
    const ways = next(node).filter((n) => !seen.has(n));
    for (const way of ways.filter((n) => !leadsOn(n, seen))) go(way);
    for (const way of ways) go(way);
  };
  go(entry);
  return [...seen];
}
