/**
 * The circuit diagram of any receiver, worked out from its deck and file: the signal's line from left to right, parts to earth hanging from it, parts that go past
 * others in arches over it, valves and transistors between. Every part of the tray has its place; the losses of coils and the like are left out, as on a sheet.
 *
 * Over 300 lines: one walk from left to right, whose kinds of symbol share the pen's place and what has been drawn.
 */
import { type Coupling, type Deck, findElement, nodeKey } from '../../physics/deck.ts';
import { type Part, partsTray } from '../../receiver/faults/partsTray.ts';
import type { Adjuster, Receiver, TestPoint } from '../../receiver/receiver.ts';
import { slugLetters } from '../../receiver/slugLetters.ts';
import { type Branch, type CircuitGraph, circuitGraph, detectorNode, hot, type StageBranch } from './circuitGraph.ts';
import { boundsOf, CircuitPen, LEVEL, lettering } from './circuitPen.ts';
import { type CircuitDiagram, type CircuitWords, letteringWidth } from './circuitTypes.ts';

export function circuitDiagram(receiver: Receiver, deck: Deck, words: CircuitWords): CircuitDiagram {
  return new Drawing(receiver, deck, words).draw();
}

const KINDS = { R: 'resistor', C: 'capacitor', L: 'coil', D: 'diode' } as const;
const HALF = {
  resistor: { x: 7, y: 19 },
  capacitor: { x: 13, y: 7 },
  coil: { x: 16, y: 26 },
  diode: { x: 11, y: 11 },
} as const;

class Drawing {
  private readonly pen = new CircuitPen();
  private readonly graph: CircuitGraph;
  private readonly tray: readonly Part[];
  private readonly letters: ReadonlyMap<string, string>;
  private readonly drawn = new Set<Branch>();
  private readonly couplings: { element: string; at: { x: number; y: number } }[] = [];
  /** couplings that the drawing has shown, by lines or in words */
  private readonly shown = new Set<Coupling>();
  /** the coil that was placed last and has nothing beside it yet */
  private beside: string | null = null;
  private readonly openArches = new Map<Branch, CircuitPen['arches'][number]>();
  private readonly openLinks = new Map<string, CircuitPen['arches'][number]>();
  /** where the bias of a stage comes in, by test point */
  private readonly biased = new Map<string, { x: number; y: number; section: number }[]>();

  constructor(
    private readonly receiver: Receiver,
    private readonly deck: Deck,
    private readonly words: CircuitWords,
  ) {
    this.graph = circuitGraph(receiver, deck);
    this.tray = partsTray(receiver, deck);
    this.letters = slugLetters(receiver);
  }

  draw(): CircuitDiagram {
    const { pen, graph } = this;
    pen.x = 60;
    pen.sections.push({ stage: null, fromX: 0 });
    this.earthPoint();
    let rail: readonly number[] | null = null;
    graph.order.forEach((node, i) => {
      rail = this.rail(node, i === 0 ? null : graph.order[i - 1]!, rail);
    });
    pen.span();
    this.biasLines();
    this.leftOver();
    const { symbols } = pen;
    const all = boundsOf([
      ...symbols.flatMap((s) => [
        s.box,
        ...(s.label === null ? [] : [s.label.box]),
        ...(s.note === null ? [] : [s.note.box]),
      ]),
      ...pen.wires.flatMap((w) => w.map(({ x, y }) => ({ x, y, width: 0, height: 0 }))),
    ]);
    const box = { x: all.x - 16, y: all.y - 16, width: all.width + 32, height: all.height + 32 };
    this.shield(box);
    const sections = pen.closeSections(box.x + box.width).map((s, i) => (i === 0 ? { ...s, fromX: box.x } : s));
    return { box, symbols, wires: pen.wires, dots: pen.dots, couplings: this.couplings, sections };
  }

  private trayName(name: string): string | null {
    return this.tray.find((p) => p.name.toLowerCase() === name.toLowerCase())?.name ?? null;
  }

  private own(kind: Part['kind'], at: string): string | null {
    return this.tray.find((p) => p.kind === kind && p.at?.toLowerCase() === at.toLowerCase())?.name ?? null;
  }

  private slugOf(coil: string): Adjuster | undefined {
    const key = coil.toLowerCase();
    return this.receiver.adjusters.find((a) => [a.element, ...a.ganged].some((e) => e.toLowerCase() === key));
  }

  /** One node: its line with all that hangs on it. Gives the taps on its line. */
  private rail(node: string, before: string | null, last: readonly number[] | null): readonly number[] {
    const { pen, graph } = this;
    const taps: number[] = [];
    const stages = graph.stages.filter((s) => s.output === node);
    const direct = stages.find((s) => s.control === before);
    const inLine =
      direct === undefined && before !== null && last !== null
        ? graph.branches.find((b) => !this.drawn.has(b) && b.ends.includes(before) && b.ends.includes(node))
        : undefined;
    for (const stage of [...(direct === undefined ? [] : [direct]), ...stages.filter((s) => s !== direct)]) {
      taps.push(this.stage(stage, stage === direct ? last!.at(-1)! : null));
    }
    if (inLine !== undefined) {
      const { left, right, end } = this.lying(inLine, pen.x, 0);
      pen.wire([last!.at(-1)!, 0], [left, 0]);
      taps.push(right);
      pen.x = end;
      this.beside = null;
    } else if (stages.length === 0) pen.x += before === null ? 0 : 30;
    const fm = graph.fm.find((d) => detectorNode(d.id) === node);
    if (fm !== undefined) taps.push(this.fmDetector(fm.id, fm.plus, fm.minus));

    const isSecondary = (b: Branch) => inLine === undefined && this.coupling(b.name, this.beside) !== undefined;
    const hanging = graph.branches.filter((b) => hot(b.ends) === node && b.ends.includes('0') && !this.drawn.has(b));
    const coils = hanging.filter((b) => b.kind === 'L');
    const secondary = coils.find(isSecondary);
    const onward = coils.find((b) => b !== secondary && this.leadsOn(b, node));
    const cold = stages.length > 0 && coils.length > 0;
    const others = hanging.filter((b) => b !== secondary && b !== onward);
    if (secondary !== undefined)
      taps.push(...this.hang([secondary], 0, cold), ...this.islands(secondary.name, 'after', false));
    this.source(node, taps);
    for (const point of this.pointsAt(node)) taps.push(this.point(point));
    this.anchors(node, inLine, taps);
    if (others.length > 0) {
      const hosts = others.filter((b) => graph.islands.has(b.name));
      taps.push(
        ...this.hang(
          others.filter((b) => !hosts.includes(b)),
          0,
          cold,
        ),
      );
      for (const host of hosts) {
        this.islands(host.name, 'before', true);
        taps.push(...this.hang([host], 0, cold));
        this.islands(host.name, 'after', false);
      }
    }
    if (onward !== undefined) {
      this.islands(onward.name, 'before', false);
      taps.push(...this.hang([onward], 0, cold));
    }
    if (taps.length === 0) {
      taps.push(pen.x + 10);
      pen.x += 20;
    }
    const [first, ...rest] = [...new Set(taps)].sort((a, b) => a - b);
    if (rest.length > 0) pen.wire([first!, 0], [rest.at(-1)!, 0]);
    for (const x of rest.slice(0, -1)) pen.dot(x, 0);
    return [first!, ...rest];
  }

  private coupling(a: string, b: string | null): Coupling | undefined {
    if (b === null) return undefined;
    const pair = [a.toLowerCase(), b.toLowerCase()];
    return this.graph.couplings.find(
      ({ coils: [p, q] }) => p !== q && [p, q].every((c) => pair.includes(c.toLowerCase())),
    );
  }

  /** The coil is coupled to one of the circuit that stands right after this one. */
  private leadsOn(coil: Branch, node: string): boolean {
    const { order, branches, stages } = this.graph;
    const next = order[order.indexOf(node) + 1];
    if (next === undefined || stages.some((s) => s.output === next)) return false;
    if (branches.some((b) => b.ends.includes(node) && b.ends.includes(next))) return false;
    return branches.some(
      (b) => b.kind === 'L' && b.ends.includes(next) && b.ends.includes('0') && this.coupling(coil.name, b.name),
    );
  }

  /** Traps on this coil. `before` it all but the last that finds room after it. */
  private islands(host: string, side: 'before' | 'after', spareAfter: boolean): number[] {
    const nodes = (this.graph.islands.get(host) ?? []).filter((n) =>
      this.graph.branches.some((b) => b.ends.includes(n) && !this.drawn.has(b)),
    );
    const some = side === 'before' && spareAfter ? nodes.slice(0, 1) : nodes;
    for (const node of some) {
      const hanging = this.graph.branches.filter((b) => b.ends.includes(node));
      const coil = hanging.filter((b) => b.kind === 'L');
      const rest = hanging.filter((b) => b.kind !== 'L');
      const all = side === 'before' ? [...rest, ...coil] : [...coil, ...rest];
      const taps = this.hang(all, LEVEL.island, false);
      if (taps.length > 1) this.pen.wire([taps[0]!, LEVEL.island], [taps.at(-1)!, LEVEL.island]);
    }
    return [];
  }

  /** Parts side by side from the line to earth, or to the supply where a stage draws its current through them. */
  private hang(branches: readonly Branch[], lineY: number, cold: boolean): number[] {
    if (branches.length === 0) return [];
    const { pen } = this;
    const taps = branches.map((b) => this.hanging(b, lineY));
    const [left, right] = [taps[0]!, taps.at(-1)!];
    if (right > left) pen.wire([left, LEVEL.foot], [right, LEVEL.foot]);
    for (const x of taps.slice(1, -1)) pen.dot(x, LEVEL.foot);
    const onSupply = cold && branches.some((b) => b.kind !== 'C');
    if (!onSupply) {
      const middle = taps[Math.floor((taps.length - 1) / 2)]!;
      pen.earth(middle, LEVEL.foot);
      return taps;
    }
    pen.put({ kind: 'supply', at: { x: left, y: LEVEL.foot + 14 }, half: { x: 9, y: 14 }, name: null, part: null });
    let at = left;
    for (const b of branches) {
      const part = this.own('decoupling', b.name);
      if (part === null) continue;
      at += 36;
      pen.wire([Math.min(right, at), LEVEL.foot], [at, LEVEL.foot], [at, LEVEL.foot + 22]);
      pen.dot(at === left + 36 ? left : at - 36, LEVEL.foot);
      const y = LEVEL.foot + 29;
      pen.put({
        kind: 'capacitor',
        at: { x: at, y },
        half: HALF.capacitor,
        name: part,
        part,
        label: lettering(this.words.own.decoupling, at + 18, y + 5),
      });
      pen.wire([at, y + 7], [at, y + 20]);
      pen.earth(at, y + 20);
      at += 18 + letteringWidth(this.words.own.decoupling);
      pen.x = Math.max(pen.x, at + 10);
    }
    return taps;
  }

  /** One part that hangs; gives where. A coil coupled to the one right before stands close to it. */
  private hanging(branch: Branch, lineY: number): number {
    const { pen } = this;
    const kind = KINDS[branch.kind];
    const coupled = branch.kind === 'L' ? this.coupling(branch.name, this.beside) : undefined;
    const half = HALF[kind];
    const x = pen.x + (branch.kind === 'L' ? 24 : 16);
    const y = LEVEL.hanging;
    if (coupled !== undefined) {
      const previous = pen.symbols.findLast((s) => s.kind === 'coil')!;
      this.couplings.push({ element: coupled.name, at: { x: (previous.at.x + x) / 2, y } });
      this.shown.add(coupled);
    }
    const { slug, disc, note, width } = this.coilMarks(branch, x);
    const label = branch.detector
      ? null
      : branch.kind === 'L'
        ? lettering(branch.name, x + 6, 21 + (lineY > 0 ? 14 : 0))
        : lettering(branch.name, x + half.x + 4, y + 5);
    pen.put({
      kind,
      at: { x, y: branch.kind === 'L' && lineY > 0 ? y + 4 : y },
      half,
      name: branch.name,
      part: branch.detector ? branch.name : this.trayName(branch.name),
      slug,
      label,
      disc,
      note,
    });
    const lower = branch.kind === 'L' && lineY > 0 ? 4 : 0;
    pen.wire([x, lineY], [x, y - half.y + lower]);
    pen.wire([x, y + half.y + lower], [x, LEVEL.foot]);
    this.drawn.add(branch);
    const right = label === null ? x + half.x : Math.max(label.box.x + label.box.width, x + half.x);
    pen.x = Math.max(right + 6, x + width);
    this.beside = branch.kind === 'L' ? branch.name : null;
    return x;
  }

  private coilMarks(branch: Branch, x: number, y: number = LEVEL.foot - 11, always = false) {
    if (branch.kind !== 'L') return { slug: null, disc: null, note: null, width: 0 };
    const adjuster = this.slugOf(branch.name);
    const others = this.graph.couplings.filter(
      (k) => !this.shown.has(k) && k.coils.some((c) => c.toLowerCase() === branch.name.toLowerCase()),
    );
    const told = others.flatMap((k) => {
      const other = k.coils.find((c) => c.toLowerCase() !== branch.name.toLowerCase());
      const placed = other !== undefined && [...this.drawn].find((b) => b.name.toLowerCase() === other.toLowerCase());
      if (!placed) return [];
      this.shown.add(k);
      return [placed.name];
    });
    const disc = adjuster === undefined ? null : { letter: this.letters.get(adjuster.id)!, at: { x: x + 16, y } };
    const text = [
      ...(adjuster?.trapHz == null ? [] : [this.words.hertz(adjuster.trapHz)]),
      ...(told.length === 0 ? [] : [this.words.coupledWith(told[0]!)]),
    ].join(', ');
    const from = disc === null ? x + 6 : x + 29;
    const note = text === '' && !always ? null : text === '' ? null : lettering(text, from, y + 5);
    const width = note === null ? (disc === null ? 0 : 32) : from - x + note.box.width + 6;
    return { slug: adjuster?.id ?? null, disc, note, width };
  }

  /** A part that lies in a line at height `y`, its left end after `x`. */
  private lying(branch: Branch, x: number, y: number): { left: number; right: number; end: number } {
    const kind = KINDS[branch.kind];
    const half = { x: HALF[kind].y, y: HALF[kind].x };
    const named = letteringWidth(branch.name);
    const middle = x + 14 + Math.max(half.x, named / 2);
    const { slug, disc, note, width } = this.coilMarks(branch, middle - 16, y + 27);
    this.pen.put({
      kind,
      lying: true,
      at: { x: middle, y },
      half,
      name: branch.name,
      part: branch.detector ? branch.name : this.trayName(branch.name),
      slug,
      label: lettering(branch.name, middle, y - half.y - 5, true),
      disc,
      note,
    });
    this.drawn.add(branch);
    return {
      left: middle - half.x,
      right: middle + half.x,
      end: Math.max(middle + Math.max(half.x, named / 2) + 12, middle - 16 + width + 6),
    };
  }

  /** Ends of arches on this line: parts that go past others, and the leads of stages that stand elsewhere. */
  private anchors(node: string, inLine: Branch | undefined, taps: number[]): void {
    const { pen, graph } = this;
    for (const branch of graph.branches) {
      if (branch === inLine || branch.ends.includes('0') || !branch.ends.includes(node)) continue;
      if (branch.ends[0] === branch.ends[1]) continue;
      const open = this.openArches.get(branch);
      if (open === undefined && this.drawn.has(branch)) continue;
      const x = pen.x + 12;
      if (open !== undefined) {
        open.to = x;
        this.openArches.delete(branch);
        pen.x += 22;
      } else if (this.isNext(node, branch)) continue;
      else {
        // Its place over the line is kept free now; how high it lies is known when all arches are.
        const at = pen.symbols.length;
        const { left, right, end } = this.lying(branch, x, 0);
        const symbol = pen.symbols[at]!;
        const arch = {
          from: x,
          to: null,
          fromY: 0,
          toY: 0,
          part: (y: number) => {
            pen.symbols[at] = lifted(symbol, y);
            return { left, right };
          },
        };
        pen.arches.push(arch);
        this.openArches.set(branch, arch);
        pen.x = end;
      }
      taps.push(x);
      this.beside = null;
    }
    for (const stage of graph.stages) {
      for (const [which, at] of this.leads(stage)) {
        if (at !== node) continue;
        const x = pen.x + 12;
        const key = `${stage.element.name} ${which}`;
        const open = this.openLinks.get(key);
        if (open === undefined) {
          const arch = { from: x, to: null, fromY: 0, toY: 0, part: null };
          pen.arches.push(arch);
          this.openLinks.set(key, arch);
        } else open.to = x;
        taps.push(x);
        pen.x += 22;
        this.beside = null;
      }
    }
    for (const d of graph.fm) {
      for (const [which, at] of [
        ['plus', d.plus],
        ['minus', d.minus],
      ] as const) {
        if (nodeKey(at) === node) taps.push(this.lead(`${d.id} ${which}`));
      }
    }
  }

  /** One end of a lead that goes over the line, at the pen. */
  private lead(key: string, down = 0): number {
    const x = this.pen.x + 12;
    const open = this.openLinks.get(key);
    if (open === undefined) {
      const arch = { from: x, to: null, fromY: down, toY: 0, part: null };
      this.pen.arches.push(arch);
      this.openLinks.set(key, arch);
    } else {
      open.to = x;
      open.toY = down;
    }
    this.pen.x += 22;
    this.beside = null;
    return x;
  }

  /** The first part between this node and the one that comes right after it lies in the line itself. */
  private isNext(node: string, branch: Branch): boolean {
    const { order, branches, stages } = this.graph;
    const next = order[order.indexOf(node) + 1];
    if (next === undefined || stages.some((s) => s.output === next && s.control === node)) return false;
    return branches.find((b) => !this.drawn.has(b) && b.ends.includes(node) && b.ends.includes(next)) === branch;
  }

  /** Leads of a stage that cannot go straight to it. */
  private leads(stage: StageBranch): readonly (readonly [string, string])[] {
    const { order } = this.graph;
    const direct = order[order.indexOf(stage.output) - 1] === stage.control;
    return [
      ...(direct ? [] : [['grid', stage.control] as const]),
      ...(stage.cathode === null ? [] : [['cathode', stage.cathode] as const]),
      ...(stage.controlReturn === null ? [] : [['return', stage.controlReturn] as const]),
    ];
  }

  /** A valve or transistor; gives where its output meets the line. */
  private stage(stage: StageBranch, lineEnd: number | null): number {
    const { pen, words } = this;
    const { name } = stage.element;
    const known = this.receiver.stages.find((s) => s.element.toLowerCase() === name.toLowerCase());
    const device = known?.device ?? name;
    const called = device.split(/[\s,]/)[0]!;
    const kind = /^q\d|npn|pnp|transistor/i.test(device) ? 'transistor' : 'valve';
    this.beside = null;
    pen.x += 6;
    pen.sections.push({ stage: name, fromX: pen.x });
    for (const [which] of this.leads(stage)) if (which !== 'grid') this.lead(`${name} ${which}`, LEVEL.grid + 26);
    let x = lineEnd === null ? this.lead(`${name} grid`, LEVEL.grid) : pen.x + 12;
    if (lineEnd !== null) pen.wire([lineEnd, 0], [x, 0], [x, LEVEL.grid]);
    const y = LEVEL.grid;
    const coupling = this.own('coupling', name);
    if (coupling !== null) {
      const width = Math.max(44, letteringWidth(words.own.coupling) + 10);
      const middle = x + 4 + width / 2;
      pen.put({
        kind: 'capacitor',
        lying: true,
        at: { x: middle, y },
        half: { x: 7, y: 13 },
        name: coupling,
        part: coupling,
        label: lettering(words.own.coupling, middle, y - 18, true),
      });
      pen.wire([x, y], [middle - 7, y]);
      pen.wire([middle + 7, y], [x + width + 10, y]);
      x += width + 10;
    } else {
      pen.wire([x, y], [x + 12, y]);
      x += 12;
    }
    if (known?.agc != null && this.receiver.biasLines.some((line) => line.at === known.agc)) {
      const section = pen.sections.length - 1;
      this.biased.set(known.agc, [...(this.biased.get(known.agc) ?? []), { x, y, section }]);
    }
    const middle = x + 50;
    pen.wire([x, y], [middle - 28, y]);
    const label = lettering(called === name ? name : `${called} (${name})`, middle + 34, y - 16);
    pen.put({ kind, at: { x: middle, y }, half: { x: 29, y: 29 }, name, part: this.trayName(name), label });
    pen.wire([middle, y - 29], [middle, 0]);
    const bypass = this.own('bypass', name);
    const foot = y + 29;
    let right = label.box.x + label.box.width;
    if (bypass === null) {
      pen.wire([middle, foot], [middle, foot + 10]);
      pen.earth(middle, foot + 10);
    } else {
      pen.wire([middle, foot], [middle, foot + 12], [middle + 38, foot + 12], [middle + 38, foot + 29]);
      pen.dot(middle, foot + 12);
      pen.put({ kind: 'resistor', at: { x: middle, y: foot + 36 }, half: { x: 7, y: 16 }, name: null, part: null });
      pen.wire([middle, foot + 12], [middle, foot + 20]);
      const caption = lettering(words.own.bypass, middle + 56, foot + 41);
      pen.put({
        kind: 'capacitor',
        at: { x: middle + 38, y: foot + 36 },
        half: HALF.capacitor,
        name: bypass,
        part: bypass,
        label: caption,
      });
      pen.wire([middle + 38, foot + 43], [middle + 38, foot + 62]);
      pen.wire([middle, foot + 52], [middle, foot + 62]);
      pen.earth(middle, foot + 62);
      pen.earth(middle + 38, foot + 62);
      right = Math.max(right, caption.box.x + caption.box.width);
    }
    pen.x = right + 12;
    return middle;
  }

  private fmDetector(id: string, plus: string, minus: string): number {
    const { pen, graph } = this;
    const placed = (node: string) => graph.order.includes(nodeKey(node));
    pen.sections.push({ stage: null, fromX: pen.x });
    const inner = placed(minus) ? this.lead(`${id} minus`, 96) : null;
    const outer = placed(plus) ? this.lead(`${id} plus`, 36) : null;
    const left = pen.x + 14;
    if (inner !== null) pen.wire([inner, 96], [left, 96]);
    if (outer !== null) pen.wire([outer, 36], [left, 36]);
    pen.put({
      kind: 'fmDetector',
      at: { x: left + 60, y: 68 },
      half: { x: 60, y: 56 },
      name: id,
      part: this.trayName(id),
      label: lettering(id, left + 60, 144, true),
    });
    pen.wire([left + 120, 68], [left + 134, 68], [left + 134, 0]);
    pen.x = left + 140;
    return left + 134;
  }

  private pointsAt(node: string): readonly TestPoint[] {
    return this.receiver.testPoints.filter((point) => {
      if (point.role === 'agc' || point.role === 'earth') return false;
      const detector = this.receiver.detectors.find((d) => d.id === point.detector);
      if (detector !== undefined && point.role === 'detector') return detectorNode(detector.id) === node;
      return point.node !== null && nodeKey(point.node) === node;
    });
  }

  private point(point: TestPoint): number {
    const { pen } = this;
    const half = Math.max(10, letteringWidth(point.id) / 2 + 4);
    const x = pen.x + half;
    pen.put({
      kind: 'point',
      at: { x, y: -24 },
      half: { x: 9, y: 9 },
      name: point.id,
      part: null,
      label: lettering(point.id, x, -38, true),
    });
    pen.wire([x, 0], [x, -15]);
    pen.x = x + half + 4;
    this.beside = null;
    return x;
  }

  /** Where a deck's source drives a node and no test point does: the signal comes from elsewhere. */
  private source(node: string, taps: number[]): void {
    const { pen } = this;
    for (const e of this.deck.elements) {
      if (e.kind !== 'I' || hot(e.nodes.map(nodeKey) as [string, string]) !== node) continue;
      const driven = this.receiver.testPoints.some(
        (p) => p.inject?.kind === 'deckSource' && p.inject.element.toLowerCase() === e.name.toLowerCase(),
      );
      if (driven) continue;
      const x = pen.x + 18;
      const label = lettering(e.name, x + 18, LEVEL.hanging + 5);
      pen.put({ kind: 'source', at: { x, y: LEVEL.hanging }, half: { x: 14, y: 14 }, name: e.name, part: null, label });
      pen.wire([x, 0], [x, LEVEL.hanging - 14]);
      pen.wire([x, LEVEL.hanging + 14], [x, LEVEL.foot]);
      pen.earth(x, LEVEL.foot);
      pen.x = label.box.x + label.box.width + 8;
      taps.push(x);
      this.beside = null;
    }
  }

  private earthPoint(): void {
    const { pen } = this;
    for (const point of this.receiver.testPoints.filter((p) => p.role === 'earth')) {
      const label = lettering(point.id, pen.x - 40, LEVEL.foot - 38);
      const x = Math.max(pen.x - 20, label.box.x + label.box.width / 2);
      pen.put({
        kind: 'point',
        at: { x, y: LEVEL.foot - 24 },
        half: { x: 9, y: 9 },
        name: point.id,
        part: null,
        label,
      });
      pen.wire([x, LEVEL.foot - 15], [x, LEVEL.foot]);
      pen.earth(x, LEVEL.foot);
      pen.x = Math.max(pen.x, label.box.x + label.box.width) + 20;
    }
  }

  private biasLines(): void {
    const { pen, receiver } = this;
    const points = receiver.testPoints.filter((p) => p.role === 'agc');
    const names = [...new Set([...points.map((p) => p.id), ...receiver.biasLines.map((l) => l.at)])];
    let row = 0;
    for (const name of names) {
      const led = this.biased.get(name) ?? [];
      const y = LEVEL.bias + row++ * LEVEL.biasStep;
      const from = led.length === 0 ? 40 : Math.min(...led.map((l) => l.x)) - 40;
      const section = led[0]?.section ?? 0;
      const part = this.trayName(name);
      const pointX = from - 100 - letteringWidth(name);
      pen.put({
        kind: 'point',
        at: { x: pointX, y },
        half: { x: 9, y: 9 },
        name,
        part: null,
        label: lettering(name, pointX + 14, y - 12),
      });
      const symbols = pen.symbols.length - 1;
      pen.wire([pointX + 9, y], [from - 48, y]);
      pen.put({ kind: 'biasFeed', at: { x: from - 24, y: y }, half: { x: 24, y: 12 }, name, part });
      for (let i = symbols; i < pen.symbols.length; i++) pen.symbols[i] = { ...pen.symbols[i]!, section };
      if (led.length === 0) continue;
      const to = Math.max(...led.map((l) => l.x));
      pen.wire([from, y], [to, y]);
      for (const { x, y: gridY } of led) {
        pen.wire([x, gridY], [x, y]);
        pen.dot(x, gridY);
        if (x < to) pen.dot(x, y);
      }
    }
  }

  /** Parts that nothing above has a place for still have one. */
  private leftOver(): void {
    const { pen } = this;
    const has = new Set(pen.symbols.map((s) => s.part));
    for (const part of this.tray) {
      if (has.has(part.name) || part.kind === 'shield') continue;
      const kind = part.kind === 'resistor' ? 'resistor' : part.kind === 'coil' ? 'coil' : 'capacitor';
      const label = lettering(part.name, pen.x + 40, LEVEL.hanging + 5);
      const found = findElement(this.deck, part.name);
      const slug = found?.kind === 'L' ? (this.slugOf(found.name)?.id ?? null) : part.slug;
      pen.put({
        kind,
        at: { x: pen.x + 20, y: LEVEL.hanging },
        half: HALF[kind],
        name: part.name,
        part: part.name,
        slug,
        label,
      });
      pen.x = label.box.x + label.box.width + 12;
    }
  }

  private shield(box: { x: number; y: number; width: number }): void {
    const part = this.tray.find((p) => p.kind === 'shield');
    if (part === undefined) return;
    const width = letteringWidth(this.words.own.shield);
    const at = { x: box.x + 24 + width / 2, y: box.y - 4 };
    this.pen.put({
      kind: 'shield',
      at,
      half: { x: width / 2 + 8, y: 10 },
      name: part.name,
      part: part.name,
      label: lettering(this.words.own.shield, at.x, at.y + 5, true),
    });
    const symbols = this.pen.symbols;
    symbols[symbols.length - 1] = { ...symbols.at(-1)!, section: 0 };
  }
}

function lifted(symbol: CircuitDiagram['symbols'][number], by: number): CircuitDiagram['symbols'][number] {
  const up = <T extends { readonly y: number }>(one: T): T => ({ ...one, y: one.y + by });
  const letters = (one: CircuitDiagram['symbols'][number]['label']) =>
    one === null ? null : { ...up(one), box: up(one.box) };
  return {
    ...symbol,
    at: up(symbol.at),
    box: up(symbol.box),
    label: letters(symbol.label),
    note: letters(symbol.note),
    disc: symbol.disc === null ? null : { ...symbol.disc, at: up(symbol.disc.at) },
  };
}
