/**
 * The circuit diagram of any receiver, worked out from its deck and file: the signal's line from left to right, parts to earth hanging from it, parts that go past
 * others in arches over it, valves and transistors between. Every part of the tray has its place; the losses of coils and the like are left out, as on a sheet.
 *
 * Over 300 lines: one walk from left to right, whose kinds of symbol share the pen's place and what has been drawn.
 */
import { type Coupling, type Deck, nodeKey } from '../../physics/deck.ts';
import type { Receiver, TestPoint } from '../../receiver/receiver.ts';
import { HALF, KINDS } from './circuitDrawing.ts';
import { type Branch, detectorNode, hot } from './circuitGraph.ts';
import { boundsOf, LEVEL, lettering } from './circuitPen.ts';
import { CircuitStages } from './circuitStages.ts';
import { type CircuitDiagram, type CircuitWords, letteringWidth } from './circuitTypes.ts';

export function circuitDiagram(receiver: Receiver, deck: Deck, words: CircuitWords): CircuitDiagram {
  return new Drawing(receiver, deck, words).draw();
}

class Drawing extends CircuitStages {
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
    const lid = this.shield(all);
    const box = { x: all.x - 16, y: all.y - 16 - lid, width: all.width + 32, height: all.height + 32 + lid };
    const sections = pen.closeSections(box.x + box.width).map((s, i) => (i === 0 ? { ...s, fromX: box.x } : s));
    return { box, symbols, wires: pen.wires, dots: pen.dots, couplings: this.couplings, sections };
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
    if (secondary !== undefined) {
      taps.push(...this.hang([secondary], 0, cold));
      this.islands(secondary.name, 'after', false);
    }
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
  private islands(host: string, side: 'before' | 'after', spareAfter: boolean): void {
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
        ? lettering(branch.name, x + 6, lineY > 0 ? 20 : 21)
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

  /** The first part between this node and the one that comes right after it lies in the line itself. */
  private isNext(node: string, branch: Branch): boolean {
    const { order, branches, stages } = this.graph;
    const next = order[order.indexOf(node) + 1];
    if (next === undefined || stages.some((s) => s.output === next && s.control === node)) return false;
    return branches.find((b) => !this.drawn.has(b) && b.ends.includes(node) && b.ends.includes(next)) === branch;
  }

  private pointsAt(node: string): readonly TestPoint[] {
    return this.receiver.testPoints.filter((point) => {
      if (point.role === 'agc' || point.role === 'earth') return false;
      const detector = this.receiver.detectors.find((d) => d.id === point.detector);
      if (detector !== undefined && point.role === 'detector') return detectorNode(detector.id) === node;
      return point.node !== null && nodeKey(point.node) === node;
    });
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
